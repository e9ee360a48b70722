//! The f-hole: two round eyes joined by a stem.
//!
//! Drawn on the treble side, with compass and a few easy curves. Round each eye goes a *hook*: an outer circle that
//! encloses the eye and touches it on its far side, and an inner circle, set off so that the slot between the two
//! narrows from the stem to the throat. The stem lies along the straight line that touches both hooks crosswise, its
//! sides easing into the circles. The wing is what the inner circle and the eye leave standing; its point is rounded.
//! The lower half is the upper half's construction turned by half a turn.

use std::f64::consts::{PI, TAU};

use super::{Eye, EyesAndAxis, StemAxis, impossible};
use crate::{
    design::{DesignError, EndCut, EyesAndStem},
    plan::{
        Arc, Cubic, Line, Loop, Piece, Point,
        vector::{along, cross, direction, dot, left_of, norm, scale, sub, unit},
    },
};

/// The slot's width where the hook leaves the stem, over the stem's width at the nicks, unless the design says otherwise.
const HOOK_SLOT: f64 = 0.8;
/// Where the outer circle touches the eye: angle from the stem's outer side, about the eye's middle, seen on the upper
/// eye. Half a turn would put the eye at the very end of the hook.
const TOUCH_DEG: f64 = 175.0;
/// How far before the straight line touches a circle the stem's side leaves it, outer and inner.
const OUTER_EASE_DEG: f64 = 52.0;
const INNER_EASE_DEG: f64 = 44.0;
/// How far the easing curve's handles reach towards the meeting of its tangents: a circle's arc of these turns has 0.55
/// to 0.65; more gathers the bend in the middle.
const HANDLE: f64 = 0.6;
/// How much steeper the stem stands at its nicks than the straight line between the hooks, unless the design says otherwise: its
/// sides then bend one way from the nicks to each hook, instead of swinging back.
const STEM_STEEPER_DEG: f64 = 9.0;
/// Half the width of a nick's mouth over its depth.
const NICK_MOUTH: f64 = 0.75;

/// The clockwise boundary, and where its stem and eyes are.
///
/// `nick_station_mm` is the y of the inner nick. `distance_to_edge` gives the signed distance to the outline of a point
/// in the treble frame. `path` names the hole in messages.
pub(super) fn boundary(
    m: &EyesAndStem,
    nick_station_mm: f64,
    path: &str,
    distance_to_edge: impl Fn(Point) -> f64,
) -> Result<(Loop, EyesAndAxis), DesignError> {
    let upper_radius = 0.5 * m.upper_eye_diameter_mm;
    let lower_radius = 0.5 * m.lower_eye_diameter_mm;
    for (key, diameter) in
        [("upper_eye_diameter_mm", m.upper_eye_diameter_mm), ("lower_eye_diameter_mm", m.lower_eye_diameter_mm)]
    {
        if diameter < m.stem_width_mm {
            return Err(impossible(
                format!("{path}.{key}"),
                "the eye is smaller than the stem is wide",
                format!("{diameter} mm"),
                format!("it must be at least {} mm, the stem's width", m.stem_width_mm),
                "make the eye larger or the stem narrower",
            ));
        }
    }
    let slot = m.stem_at_hooks_mm.unwrap_or(HOOK_SLOT * m.stem_width_mm);
    if slot > m.stem_width_mm {
        return Err(impossible(
            format!("{path}.stem_at_hooks_mm"),
            "the stem must not widen from the nicks to the hooks",
            format!("{slot} mm"),
            format!("it must be at most {} mm, the stem's width at the nicks", m.stem_width_mm),
            "make the stem narrower at the hooks or wider at the nicks",
        ));
    }
    if m.throat_width_mm >= slot {
        return Err(impossible(
            format!("{path}.throat_width_mm"),
            "the slot must narrow from the stem to the throat",
            format!("{} mm", m.throat_width_mm),
            format!("it must be less than {slot:.2} mm, the stem's width where it runs into the hooks"),
            "make the throat narrower or the stem wider",
        ));
    }
    let upper_eye = [m.upper_eye_to_centreline_mm + upper_radius, m.upper_eye_station_mm];
    let lower_eye = place_lower_eye(m, path, distance_to_edge)?;

    let upper_outer = upper_radius + 0.5 * (m.upper_wing_width_mm + slot);
    let lower_outer = lower_radius + 0.5 * (m.lower_wing_width_mm + slot);
    // Centres of the outer circles: the eye touches from within.
    let touch = direction(TOUCH_DEG.to_radians());
    let upper_centre = along(upper_eye, touch, upper_radius - upper_outer);
    let lower_centre = along(lower_eye, touch, lower_outer - lower_radius);

    // The line that touches the middle of both slots crosswise. n points to the left of the stem.
    let between = sub(upper_centre, lower_centre);
    let span = norm(between);
    let reach = upper_outer + lower_outer - slot;
    if span <= reach || between[1] <= 0.0 {
        return Err(impossible(
            format!("{path}.upper_eye_station_mm"),
            "the eyes are too near each other for their wings",
            format!("{} mm", m.upper_eye_station_mm),
            format!("the hooks' middles, {span:.1} mm apart, must be more than {reach:.1} mm apart"),
            "move the eyes apart or make the wings narrower",
        ));
    }
    let n_angle = between[1].atan2(between[0]) + (reach / span).acos();
    let n = direction(n_angle);
    let up = scale(left_of(n), -1.0);
    let lower_touch = along(lower_centre, n, lower_outer - 0.5 * slot);
    // The nick's middle: its left end, the inner nick on the treble side, stands at the nick station.
    let half_stem = 0.5 * m.stem_width_mm;
    let steeper = m.stem_steeper_deg.unwrap_or(STEM_STEEPER_DEG).to_radians();
    let nick_left = direction(n_angle - steeper);
    let length = (span * span - reach * reach).sqrt();
    let at = (nick_station_mm - half_stem * nick_left[1] - lower_touch[1]) / up[1];
    if at < 0.15 * length || at > 0.85 * length {
        let low = lower_touch[1] + half_stem * nick_left[1] + 0.15 * length * up[1];
        let high = low + 0.7 * length * up[1];
        return Err(impossible(
            "sound_holes.stop_mm".into(),
            "the nicks do not lie on the stem's straight part",
            format!("nicks at {nick_station_mm:.1} mm from the bottom edge"),
            format!("the stem is straight from {low:.1} mm to {high:.1} mm"),
            "change the stop, or move the eyes up or down",
        ));
    }
    let nick = along(lower_touch, up, at);

    let upper_half = Hook {
        eye: upper_eye,
        eye_radius: upper_radius,
        centre: upper_centre,
        outer: upper_outer,
        slot,
        throat: m.throat_width_mm,
        rounding: match m.ends {
            EndCut::Round => m.wing_rounding_mm,
            EndCut::Sharp => 0.0,
        },
        turned: 0.0,
    };
    let lower_half = Hook {
        eye: lower_eye,
        eye_radius: lower_radius,
        centre: lower_centre,
        outer: lower_outer,
        turned: PI,
        ..upper_half
    };
    let stem = Stem { middle: nick, half_width: half_stem, nick_depth: m.nick_depth_mm, steeper };
    let mut pieces = Vec::new();
    let mut draw = |hook: Hook| {
        hook.draw(&stem, n_angle, &mut pieces).ok_or_else(|| {
            impossible(
                format!("{path}.wing_rounding_mm"),
                "the wing's point can't be rounded so far",
                format!("{} mm", m.wing_rounding_mm),
                "the rounding must fit between eye and slot".into(),
                "make the rounding smaller or the wing wider",
            )
        })
    };
    let eyes = [draw(upper_half)?, draw(lower_half)?];
    let stem = StemAxis { nicks: nick, upwards: scale(left_of(nick_left), -1.0) };
    Ok((Loop::new(pieces), EyesAndAxis { stem, eyes }))
}

/// The stem at its nicks.
struct Stem {
    middle: Point,
    half_width: f64,
    nick_depth: f64,
    /// Than the straight line between the hooks, radians.
    steeper: f64,
}

/// One eye with the circles round it.
#[derive(Clone, Copy)]
struct Hook {
    eye: Point,
    eye_radius: f64,
    centre: Point,
    outer: f64,
    slot: f64,
    throat: f64,
    rounding: f64,
    /// 0 for the upper hook, half a turn for the lower.
    turned: f64,
}

impl Hook {
    /// Appends the boundary from the nick on the stem's inner side round the hook to the nick on its outer side, both
    /// nicks' halves included. `n_angle` is the direction to the left of the stem. `None` if the point can't be rounded.
    fn draw(&self, stem: &Stem, n_angle: f64, pieces: &mut Vec<Piece>) -> Option<Eye> {
        let left = n_angle + self.turned;
        let right = left - PI;
        let across = n_angle + self.turned - stem.steeper;
        let along_stem = scale(left_of(direction(across)), -1.0);
        // Inner circle: the slot is `slot` wide where the stem comes in, `throat` on the other side.
        let inner_radius = self.outer - 0.5 * (self.slot + self.throat);
        let inner_centre = along(self.centre, direction(left), 0.5 * (self.slot - self.throat));

        let mouth = stem.nick_depth * NICK_MOUTH;
        let inner_edge = along(stem.middle, direction(across), stem.half_width);
        let outer_edge = along(stem.middle, direction(across), -stem.half_width);
        let away = along(inner_edge, along_stem, mouth);
        if mouth > 0.0 {
            pieces.push(Piece::Line(Line { start: along(inner_edge, direction(across), stem.nick_depth), end: away }));
        }

        // Up the inner side, and round the inner circle counter-clockwise to the wing's point.
        let leave = right + INNER_EASE_DEG.to_radians();
        let onto = along(inner_centre, direction(leave), inner_radius);
        pieces.push(eased(away, along_stem, onto, left_of(direction(leave))));
        let point = self.rounded_point(inner_centre, inner_radius, along_stem)?;
        let first = angle_of(sub(point, inner_centre));
        let second = angle_of(sub(point, self.eye));
        let sweep = (first - leave).rem_euclid(TAU);
        if sweep > PI {
            return None;
        }
        pieces.push(arc(inner_centre, inner_radius, leave, sweep));
        if self.rounding > 0.0 {
            let turn = (second + PI - first).rem_euclid(TAU);
            pieces.push(arc(point, self.rounding, first, turn));
        }

        // Round the eye clockwise to where the outer circle touches it, then over the outer circle to the stem.
        let touch = TOUCH_DEG.to_radians() + self.turned;
        pieces.push(arc(self.eye, self.eye_radius, second, -(second - touch).rem_euclid(TAU)));
        let arrive = right + OUTER_EASE_DEG.to_radians();
        pieces.push(arc(self.centre, self.outer, touch, -(touch - arrive).rem_euclid(TAU)));
        let off = along(self.centre, direction(arrive), self.outer);
        let back = along(outer_edge, along_stem, mouth);
        pieces.push(eased(off, scale(left_of(direction(arrive)), -1.0), back, scale(along_stem, -1.0)));
        if mouth > 0.0 {
            pieces.push(Piece::Line(Line { start: back, end: along(outer_edge, direction(across), -stem.nick_depth) }));
        }
        let outwards = unit(sub(point, self.centre));
        let throat = [along(point, outwards, self.rounding), along(self.centre, outwards, self.outer)];
        Some(Eye { centre: self.eye, radius_mm: self.eye_radius, throat })
    }

    /// Middle of the small circle that rounds the wing's point: inside the inner circle, outside the eye, touching both.
    fn rounded_point(&self, inner_centre: Point, inner_radius: f64, along_stem: Point) -> Option<Point> {
        let (a, b) = (inner_radius - self.rounding, self.eye_radius + self.rounding);
        let apart = sub(self.eye, inner_centre);
        let d = norm(apart);
        if a <= 0.0 || d == 0.0 {
            return None;
        }
        let foot = (d * d + a * a - b * b) / (2.0 * d);
        let height_squared = a * a - foot * foot;
        if height_squared <= 0.0 {
            return None;
        }
        let axis = unit(apart);
        let mut side = left_of(axis);
        if dot(side, along_stem) < 0.0 {
            side = scale(side, -1.0);
        }
        Some(along(along(inner_centre, axis, foot), side, height_squared.sqrt()))
    }
}

/// Finds the lower eye's middle at its station: as far in as its distance to the edge asks.
fn place_lower_eye(m: &EyesAndStem, path: &str, distance_to_edge: impl Fn(Point) -> f64) -> Result<Point, DesignError> {
    let wanted = m.lower_eye_to_edge_mm + 0.5 * m.lower_eye_diameter_mm;
    let y = m.lower_eye_station_mm;
    let (mut inner, mut outer) = (0.0, 0.0);
    if distance_to_edge([0.0, y]) <= wanted {
        return Err(impossible(
            format!("{path}.lower_eye_to_edge_mm"),
            "the lower eye would cross the centreline",
            format!("{} mm", m.lower_eye_to_edge_mm),
            format!("the centreline is {:.1} mm from the edge at this station", distance_to_edge([0.0, y])),
            "give a smaller distance to the edge",
        ));
    }
    // Outwards until it is too near the edge, then halving: 60 halvings end at rounding.
    while distance_to_edge([outer, y]) > wanted {
        inner = outer;
        outer += 1.0;
    }
    for _ in 0..60 {
        let middle = 0.5 * (inner + outer);
        if distance_to_edge([middle, y]) > wanted { inner = middle } else { outer = middle }
    }
    Ok([inner, y])
}

fn arc(centre: Point, radius_mm: f64, start_rad: f64, sweep_rad: f64) -> Piece {
    Piece::Arc(Arc { centre, radius_mm, start_rad, sweep_rad })
}

/// A curve that bends one way only: its handles reach `HANDLE` of the way to where the end tangents meet. Tangents that
/// don't meet between the ends get handles of a third of the span.
fn eased(start: Point, leaving: Point, end: Point, arriving: Point) -> Piece {
    let span = sub(end, start);
    let turn = cross(leaving, arriving);
    let meet = [cross(span, arriving) / turn, cross(leaving, span) / turn];
    let handles = if meet.iter().all(|&reach| reach > 0.0 && reach.is_finite()) {
        meet.map(|reach| HANDLE * reach)
    } else {
        [norm(span) / 3.0; 2]
    };
    Piece::Cubic(Cubic::hermite(start, leaving, end, arriving, handles))
}

fn angle_of(v: Point) -> f64 {
    v[1].atan2(v[0])
}
