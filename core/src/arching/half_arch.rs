//! Half an arch of any family: from the crest to the channel, scaled to half span 1 and rise 1.

use super::{
    ArcWithReverseArc, ArchSpline, CurtateCycloid,
    arc_with_reverse_arc::{MEETING, STEEPEST},
};
use crate::design::{ArchCurve, ArchPoint, DesignError};

/// A spline through fewer points than this would be the program's shape, not the maker's.
const FEWEST_POINTS: usize = 3;
/// More points than this are a scan: import it as a measured top.
const MOST_POINTS: usize = 60;

/// Level at both ends, 1 at the crest (place 0), 0 at the channel (place 1).
#[derive(Clone, Debug, PartialEq)]
pub enum HalfArch {
    /// Curtate cycloid.
    Cycloid(CurtateCycloid),
    /// Arc with reverse arc.
    Arcs(ArcWithReverseArc),
    /// Spline through measured points.
    Spline(ArchSpline),
}

impl HalfArch {
    /// The curve that a design asks for. `aspect` is rise over half span; `path` names the arch in messages, before
    /// `.fullness` or `.curve`.
    pub(super) fn new(curve: &ArchCurve, fullness: f64, aspect: f64, path: &str) -> Result<HalfArch, DesignError> {
        match curve {
            ArchCurve::CurtateCycloid {} => Ok(HalfArch::Cycloid(CurtateCycloid::from_fullness(fullness))),
            ArchCurve::ArcWithReverseArc {} => HalfArch::arcs(fullness, aspect, path),
            ArchCurve::Spline { points } => HalfArch::through(points, &format!("{path}.curve.points")),
        }
    }

    pub(super) fn arcs(fullness: f64, aspect: f64, path: &str) -> Result<HalfArch, DesignError> {
        if aspect > STEEPEST {
            return Err(DesignError::Impossible {
                kind: "arch_too_steep",
                path: path.into(),
                what: "the arch is too high for its width to be drawn with two arcs".into(),
                value: format!("{aspect:.2} of its half width"),
                limits: format!("its height may be at most {STEEPEST} of its half width"),
                remedy: "lower the apex, or take the curtate cycloid".into(),
            });
        }
        let arcs = ArcWithReverseArc::from_fullness(aspect, fullness);
        if !(MEETING[0]..=MEETING[1]).contains(&arcs.inflection()) {
            let reach = MEETING.map(|place| ArcWithReverseArc::from_inflection(aspect, place).fullness());
            return Err(DesignError::Impossible {
                kind: "fullness_beyond_arcs",
                path: path.into(),
                what: "two arcs can't be so full or so slight".into(),
                value: format!("fullness {fullness}"),
                limits: format!("arc with reverse arc reaches {:.3} to {:.3} here", reach[0], reach[1]),
                remedy: "change the fullness, or take the curtate cycloid".into(),
            });
        }
        Ok(HalfArch::Arcs(arcs))
    }

    pub(super) fn through(points: &[ArchPoint], path: &str) -> Result<HalfArch, DesignError> {
        if !(FEWEST_POINTS..=MOST_POINTS).contains(&points.len()) {
            return Err(DesignError::Impossible {
                kind: "wrong_number_of_points",
                path: path.into(),
                what: "an arch is drawn through a handful of points".into(),
                value: format!("{} points", points.len()),
                limits: format!("{FEWEST_POINTS} to {MOST_POINTS} points between centre and channel"),
                remedy: "give more points, or fewer; a whole scan is imported as a measured top".into(),
            });
        }
        for (index, pair) in points.windows(2).enumerate() {
            if pair[1].place <= pair[0].place {
                return Err(DesignError::Impossible {
                    kind: "points_out_of_order",
                    path: format!("{path}.{}.place", index + 1).into(),
                    what: "an arch's points run from the centre to the channel".into(),
                    value: format!("{}", pair[1].place),
                    limits: format!("it must be more than {}, the place of the point before", pair[0].place),
                    remedy: "put the points in order, and each place once".into(),
                });
            }
        }
        let points: Vec<[f64; 2]> = points.iter().map(|point| [point.place, point.height]).collect();
        Ok(HalfArch::Spline(ArchSpline::new(&points)))
    }

    /// Height and its first and second derivative by place. From the channel on it stays level.
    pub fn at(&self, place: f64) -> [f64; 3] {
        if place >= 1.0 {
            return [0.0; 3];
        }
        match self {
            HalfArch::Cycloid(curve) => {
                let on = curve.at(place);
                [on.height, on.slope[0], on.bend[0]]
            }
            HalfArch::Arcs(curve) => curve.at(place),
            HalfArch::Spline(curve) => curve.at(place),
        }
    }

    /// Where it turns from convex to concave.
    pub fn inflection(&self) -> f64 {
        match self {
            HalfArch::Cycloid(curve) => curve.inflection(),
            HalfArch::Arcs(curve) => curve.inflection(),
            HalfArch::Spline(curve) => curve.inflection(),
        }
    }

    /// Mean height over the rise.
    pub fn fullness(&self) -> f64 {
        match self {
            HalfArch::Cycloid(curve) => curve.fullness(),
            HalfArch::Arcs(curve) => curve.fullness(),
            HalfArch::Spline(curve) => curve.fullness(),
        }
    }
}
