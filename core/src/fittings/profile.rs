//! The bar's height along its length, and what a rectangular section resists.

use std::f64::consts::PI;

/// Height along a bar: highest at one place, scooped towards both ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// At the highest place, m.
    pub height_m: f64,
    /// At both ends, m.
    pub end_height_m: f64,
    /// Where it is highest, as a share of the length.
    pub highest_share: f64,
}

impl Profile {
    /// The same height all along.
    #[must_use]
    pub fn even(height_m: f64) -> Self {
        Self { height_m, end_height_m: height_m, highest_share: 0.5 }
    }

    /// Height at a share of the length, m.
    ///
    /// Half a cosine wave from the highest place to each end: convex in the middle, hollow towards the ends and level there
    /// (common practice, no source).
    #[must_use]
    pub fn height_at_m(&self, share: f64) -> f64 {
        let reach = if share < self.highest_share { self.highest_share } else { 1.0 - self.highest_share };
        let place = if reach > 0.0 { ((share - self.highest_share) / reach).clamp(-1.0, 1.0) } else { 0.0 };
        self.end_height_m + (self.height_m - self.end_height_m) * 0.5 * (1.0 + (PI * place).cos())
    }
}

/// Torsion constant of a rectangle, m⁴: a b³ (1/3 − 0.21 b/a (1 − b⁴/12a⁴)), a the longer side; within 0.5 % (Roark's
/// Formulas for Stress and Strain, table of torsion of solid sections; from memory).
pub(super) fn torsion_constant(width_m: f64, height_m: f64) -> f64 {
    let (a, b) = (width_m.max(height_m), width_m.min(height_m));
    if b <= 0.0 {
        return 0.0;
    }
    let ratio = b / a;
    a * b.powi(3) * (1.0 / 3.0 - 0.21 * ratio * (1.0 - ratio.powi(4) / 12.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_is_highest_where_it_is_said_to_be_and_hollow_towards_its_ends() {
        let profile = Profile { height_m: 12e-3, end_height_m: 3e-3, highest_share: 0.4 };
        assert!((profile.height_at_m(0.4) - 12e-3).abs() < 1e-15);
        assert!((profile.height_at_m(0.0) - 3e-3).abs() < 1e-15);
        assert!((profile.height_at_m(1.0) - 3e-3).abs() < 1e-15);
        let bend =
            |s: f64| profile.height_at_m(s - 0.01) + profile.height_at_m(s + 0.01) - 2.0 * profile.height_at_m(s);
        assert!(bend(0.4) < 0.0 && bend(0.1) > 0.0 && bend(0.9) > 0.0);
    }

    /// Timoshenko & Goodier, Theory of Elasticity, the table of k₁ for rectangular bars (from memory): 0.1406 for a square,
    /// 0.229 for 2 : 1, 1/3 for a thin strip.
    #[test]
    fn a_rectangle_resists_twist_as_tabled() {
        assert!((torsion_constant(1.0, 1.0) / 0.1406 - 1.0).abs() < 0.005);
        assert!((torsion_constant(1.0, 2.0) / (2.0 * 0.229) - 1.0).abs() < 0.005);
        assert!((torsion_constant(1.0, 1e4) / (1e4 / 3.0) - 1.0).abs() < 1e-3);
        assert!(torsion_constant(1.0, 0.0) == 0.0);
    }
}
