//! The arc with reverse arc, a family of arch curves.
//!
//! One compass arc from the crest, level there, joined without a corner to one that turns the other way and runs out level
//! in the channel, as a cross arch is laid out with two compass settings. With half span X and rise h the radii add up to
//! R + r = (X^2 + h^2) / (2 h), from the distance of the two centres, and the arcs meet at x = X R / (R + r): where
//! they meet is the only parameter. Normals are continuous; the curvature jumps where the arcs meet.

/// The largest rise over half span: at 1 the arcs would stand upright where they meet.
pub(super) const STEEPEST: f64 = 0.9;
/// Where the arcs may meet: nearer to either end one of them is a mere edge break.
pub(super) const MEETING: [f64; 2] = [0.08, 0.96];

/// Two arcs scaled to half span 1 and rise 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArcWithReverseArc {
    /// h / X.
    aspect: f64,
    meeting: f64,
}

impl ArcWithReverseArc {
    /// By rise over half span (0 to 0.9) and the place where the arcs meet, 0 crest to 1 channel.
    pub fn from_inflection(aspect: f64, place: f64) -> ArcWithReverseArc {
        // A level arch has no radii; its limit are two parabolas, from which this differs by 1e-12.
        ArcWithReverseArc { aspect: aspect.max(1e-6), meeting: place }
    }

    /// By rise over half span and the fullness, the mean height over the rise. A circle of radius s w sags by the mean
    /// w g(s) over a half chord w, the same share for both arcs, so that the fullness v + (1 - 2 v) g / a is linear in
    /// the meeting place v.
    pub fn from_fullness(aspect: f64, fullness: f64) -> ArcWithReverseArc {
        let sag = mean_sag(aspect.max(1e-6));
        ArcWithReverseArc::from_inflection(aspect, (fullness - sag) / (1.0 - 2.0 * sag))
    }

    /// Mean height over the rise.
    pub fn fullness(&self) -> f64 {
        self.meeting + (1.0 - 2.0 * self.meeting) * mean_sag(self.aspect)
    }

    /// Where it turns from convex to concave: where the arcs meet.
    pub fn inflection(&self) -> f64 {
        self.meeting
    }

    /// Height and its first and second derivative by place, at a place 0 to 1.
    pub fn at(&self, place: f64) -> [f64; 3] {
        let on = self.towards(self, 0.0, place);
        [on.height, on.slope[0], on.bend[0]]
    }

    /// The curve a share of the way to another, whose aspect and meeting place are that share of the way between both.
    /// A mean of the two curves' heights would not do: along its nearly straight flank it can turn three times.
    pub(super) fn towards(&self, other: &ArcWithReverseArc, share: f64, place: f64) -> OnWay {
        let (by_meeting, by_aspect) = (other.meeting - self.meeting, other.aspect - self.aspect);
        let (v, a) = (self.meeting + share * by_meeting, self.aspect + share * by_aspect);
        // (R + r) / X and its derivatives by the aspect.
        let sum = [radii_sum(a), 0.5 - 0.5 / (a * a), 1.0 / (a * a * a)];
        // The radius of the arc at hand is `part` of the sum; `sign` is that of its share of the height, `turn` that of
        // the place measured from the arc's own level end.
        let crest = place < v;
        let (part, by_part, off) = if crest { (v, by_meeting, place) } else { (1.0 - v, -by_meeting, 1.0 - place) };
        let (sign, turn) = if crest { (-1.0, 1.0) } else { (1.0, -1.0) };
        let radius = part * sum[0];
        let first = by_part * sum[0] + part * sum[1] * by_aspect;
        let second = (2.0 * by_part * sum[1] + part * sum[2] * by_aspect) * by_aspect;
        let root = (radius * radius - off * off).sqrt();
        let root3 = root * root * root;
        // The sagitta c = R - sqrt(R^2 - o^2) in the form that doesn't cancel, and its derivatives by R.
        let c = off * off / (radius + root);
        let (c_r, c_rr) = (-c / root, off * off / root3);
        let along = c_r * first;
        OnWay {
            height: if crest { 1.0 - c / a } else { c / a },
            slope: [sign * turn * off / root / a, sign * (along - c * by_aspect / a) / a],
            bend: [
                sign * radius * radius / root3 / a,
                -sign * turn * off * (radius * first / root3 + by_aspect / (root * a)) / a,
                sign * (c_rr * first * first + c_r * second - 2.0 * (along - c * by_aspect / a) * by_aspect / a) / a,
            ],
        }
    }
}

/// A curve on the way between two, at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct OnWay {
    pub(super) height: f64,
    /// By place, by share of the way.
    pub(super) slope: [f64; 2],
    /// By place twice, by place and share, by share twice.
    pub(super) bend: [f64; 3],
}

/// (R + r) / X.
fn radii_sum(aspect: f64) -> f64 {
    (1.0 + aspect * aspect) / (2.0 * aspect)
}

/// Area between an arc of radius s and its tangent over the half chord 1, over the aspect. Closed form:
/// s - (sqrt(s^2 - 1) + s^2 asin(1/s)) / 2; beyond s = 20 that cancels, and its series is exact to 1e-11.
fn mean_sag(aspect: f64) -> f64 {
    let s = radii_sum(aspect);
    let area = if s > 20.0 {
        let q = 1.0 / (s * s);
        (1.0 / 6.0 + q * (1.0 / 40.0 + q / 112.0)) / s
    } else {
        s - 0.5 * ((s * s - 1.0).sqrt() + s * s * (1.0 / s).asin())
    };
    area / aspect
}
