//! Where the inflection line meets a sound hole.

use crate::{
    plan::{
        Point,
        vector::{distance, dot, sub},
    },
    sound_holes::SoundHole,
    surface::Surface,
};

/// Step along the inflection line: a crossing shorter than this, a graze of the hole's boundary, may be missed.
const STEP_MM: f64 = 0.25;

/// One crossing of a hole by the inflection line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleCrossing {
    /// Where the line leaves the wood, coming from the bottom edge, mm.
    pub enters: Point,
    /// Where it meets wood again, mm.
    pub leaves: Point,
    /// Midway between both, measured along the stem from the nicks, mm: above zero towards the upper eye. `None` for a
    /// hole without a stem.
    pub from_nicks_mm: Option<f64>,
    /// True where the line crosses both sides of the stem; false in a hook, an eye or a round hole.
    pub on_stem: bool,
}

/// On which side of a hole a line runs that misses it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passing {
    /// Between the hole and the centreline.
    Inside,
    /// Between the hole and the edge.
    Outside,
}

/// How the inflection line runs past or through one hole. Makers let the turn from convex to concave fall within the hole
/// (common practice, no source).
#[derive(Clone, Debug, PartialEq)]
pub struct HoleMeeting {
    /// True for the hole on the treble side.
    pub treble_side: bool,
    /// Every crossing, from the bottom edge upwards; empty when the line misses the hole.
    pub crossings: Vec<HoleCrossing>,
    /// Where there is no crossing: the side on which the line passes, and the wood between, mm.
    pub misses: Option<(Passing, f64)>,
}

impl HoleMeeting {
    /// Follows the inflection line of the hole's side. The crossings' ends are exact to 1e-6 mm.
    pub fn new(surface: &Surface, hole: &SoundHole) -> HoleMeeting {
        let treble_side = hole.is_treble();
        let (low, high) = hole.boundary().bounds_mm();
        // A step beyond the hole on either side, so that the line starts and ends in the wood.
        let steps = ((high[1] - low[1]) / STEP_MM).ceil() as i32 + 2;
        let line = |y: f64| surface.inflection_point(y, treble_side);
        let station = |i: i32| low[1] + f64::from(i) * STEP_MM;
        let within = |y: f64| line(y).is_some_and(|p| hole.contains(p));
        let mut crossings = Vec::new();
        let mut entered: Option<f64> = None;
        for i in -1..steps {
            match (entered, within(station(i))) {
                (None, true) => entered = Some(turning(within, station(i), station(i - 1))),
                (Some(from), false) => {
                    let to = turning(within, station(i - 1), station(i));
                    if let (Some(enters), Some(leaves)) = (line(from), line(to)) {
                        let middle = [0.5 * (enters[0] + leaves[0]), 0.5 * (enters[1] + leaves[1])];
                        let from_nicks_mm = hole.stem().map(|stem| dot(sub(middle, stem.nicks), stem.upwards));
                        let on_stem = [enters, leaves].into_iter().all(|p| hole.on_stem(p));
                        crossings.push(HoleCrossing { enters, leaves, from_nicks_mm, on_stem });
                    }
                    entered = None;
                }
                _ => {}
            }
        }
        let misses =
            if crossings.is_empty() { passing(hole, (0..steps).filter_map(|i| line(station(i)))) } else { None };
        HoleMeeting { treble_side, crossings, misses }
    }

    /// True when the turn falls within the hole.
    pub fn falls_within(&self) -> bool {
        !self.crossings.is_empty()
    }
}

/// The station between one within and one without where the line crosses the boundary: 24 halvings of a step end below
/// 2e-8 mm.
fn turning(within: impl Fn(f64) -> bool, mut inside: f64, mut outside: f64) -> f64 {
    for _ in 0..24 {
        let middle = 0.5 * (inside + outside);
        if within(middle) { inside = middle } else { outside = middle }
    }
    0.5 * (inside + outside)
}

fn passing(hole: &SoundHole, line: impl Iterator<Item = Point>) -> Option<(Passing, f64)> {
    let nearest = |p: Point| hole.boundary().nearest(p);
    let closest = line.map(|p| (p, nearest(p))).min_by(|a, b| a.1.distance_mm.total_cmp(&b.1.distance_mm))?;
    let (p, on_hole) = closest;
    let side = if p[0].abs() < on_hole.point[0].abs() { Passing::Inside } else { Passing::Outside };
    Some((side, distance(p, on_hole.point)))
}
