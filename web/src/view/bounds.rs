//! The box round the top.

use glam::Vec3;

/// A box along the top's axes, mm. Invariant: `least` is at most `most` on each axis, and they differ on at least one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    least: Vec3,
    most: Vec3,
}

impl Default for Bounds {
    /// A common full-size top lying on its plane, so that an empty stage has a sensible scale.
    fn default() -> Self {
        Self { least: Vec3::new(-104.0, 0.0, 0.0), most: Vec3::new(104.0, 356.0, 16.0) }
    }
}

impl Bounds {
    /// The box round `positions_mm` (vertex, xyz), flat and finite; None for fewer than two different points.
    pub fn round(positions_mm: &[f32]) -> Option<Self> {
        let mut bounds = Self { least: Vec3::INFINITY, most: Vec3::NEG_INFINITY };
        for point in positions_mm.chunks_exact(3) {
            let point = Vec3::from_slice(point);
            bounds.least = bounds.least.min(point);
            bounds.most = bounds.most.max(point);
        }
        (bounds.least.cmple(bounds.most).all() && bounds.least != bounds.most).then_some(bounds)
    }

    /// The box round both.
    #[must_use]
    pub fn and(&self, other: Self) -> Self {
        Self { least: self.least.min(other.least), most: self.most.max(other.most) }
    }

    /// The middle of the box, mm.
    pub fn middle(&self) -> Vec3 {
        0.5 * (self.least + self.most)
    }

    /// Half the diagonal, mm: no corner is farther from the middle.
    pub fn radius(&self) -> f32 {
        0.5 * (self.most - self.least).length()
    }

    /// The eight corners seen from the middle, mm.
    pub fn corners(&self) -> [Vec3; 8] {
        let half = 0.5 * (self.most - self.least);
        std::array::from_fn(|corner| {
            let side = |bit: usize| if corner >> bit & 1 == 0 { -1.0 } else { 1.0 };
            half * Vec3::new(side(0), side(1), side(2))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_box_touches_the_outermost_points() {
        let bounds = Bounds::round(&[1.0, 2.0, 3.0, -1.0, 5.0, 3.0, 0.0, 0.0, 9.0]).expect("three points");
        assert_eq!(bounds.middle(), Vec3::new(0.0, 2.5, 6.0));
        assert_eq!(bounds.corners()[7], Vec3::new(1.0, 2.5, 3.0));
        assert_eq!(bounds.corners()[0], -bounds.corners()[7]);
        assert!((bounds.radius() - bounds.corners()[3].length()).abs() < 1e-6);
    }

    #[test]
    fn the_box_round_two_holds_both() {
        let of = |points: &[f32]| Bounds::round(points).expect("two points");
        let both = of(&[0.0, 0.0, 0.0, 1.0, 9.0, 2.0]).and(of(&[-1.0, 3.0, 1.0, 0.5, 4.0, 5.0]));
        assert_eq!(both, of(&[-1.0, 0.0, 0.0, 1.0, 9.0, 5.0]));
    }

    #[test]
    fn no_box_round_a_point_or_nothing() {
        assert_eq!(Bounds::round(&[]), None);
        assert_eq!(Bounds::round(&[1.0, 1.0, 1.0, 1.0, 1.0, 1.0]), None);
    }
}
