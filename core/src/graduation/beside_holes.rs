//! How near a point is to a sound hole, and how far out on a wing.

use super::smooth_step;
use crate::{
    plan::{
        Loop, Point,
        vector::{cross, distance, sub, unit},
    },
    regions::Wing,
    sound_holes::SoundHole,
};

/// How far out on a wing its own thickness holds, from the root on, over the root's width.
const FROM_ROOT: f64 = 0.5;

/// The holes and their wings.
#[derive(Clone, Debug, Default)]
pub(super) struct BesideHoles {
    reach_mm: f64,
    boundaries: Vec<Loop>,
    wings: Vec<Wing>,
}

impl BesideHoles {
    /// The wood up to `reach_mm` from a hole counts as round about it.
    pub(super) fn new(holes: &[SoundHole], wings: &[Wing], reach_mm: f64) -> BesideHoles {
        let boundaries = holes.iter().map(|hole| hole.boundary().clone()).collect();
        BesideHoles { reach_mm, boundaries, wings: wings.to_vec() }
    }

    /// 1 on a hole's boundary, 0 at the reach and further off. Between two holes nearer than twice the reach it is joined as
    /// 1 - (1 - a)(1 - b).
    pub(super) fn around(&self, p: Point) -> f64 {
        let mut rest = 1.0;
        for boundary in &self.boundaries {
            let (low, high) = boundary.bounds_mm();
            if (0..2).all(|axis| p[axis] > low[axis] - self.reach_mm && p[axis] < high[axis] + self.reach_mm) {
                rest *= 1.0 - smooth_step(1.0 - boundary.nearest(p).distance_mm / self.reach_mm);
            }
        }
        1.0 - rest
    }

    /// 0 at a wing's root and off the wings, 1 towards the point.
    pub(super) fn on_wing(&self, p: Point) -> f64 {
        let share = |wing: &Wing| {
            let [a, b] = wing.root;
            let from_root = cross(unit(sub(b, a)), sub(p, a));
            wing.covers(p).then(|| smooth_step(from_root / (FROM_ROOT * distance(a, b))))
        };
        self.wings.iter().find_map(share).unwrap_or(0.0)
    }
}
