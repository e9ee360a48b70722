//! What a metre of rib resists.

use nalgebra::Matrix2;

/// A rib with its linings: a strip of plate standing upright on a back that doesn't move, glued to it and to the top.
///
/// Its grain runs round the outline, so upright it is loaded across the grain. Linings, one under the top and one on the
/// back, count as the rib's own wood.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rib {
    /// Height, m.
    pub height_m: f64,
    /// Thickness, m.
    pub thickness_m: f64,
    /// Height of each lining, m; 0 for none.
    pub lining_height_m: f64,
    /// Thickness of each lining, m.
    pub lining_thickness_m: f64,
    /// Young's modulus across the grain, Pa.
    pub across_pa: f64,
    /// Shear modulus in the rib's face, Pa.
    pub shear_pa: f64,
}

/// Stiffness per length of rim at its top.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RimStiffness {
    /// Against moving up, N/m².
    pub upright: f64,
    /// Against moving along the rim, N/m².
    pub along: f64,
    /// Against moving outwards (m) and turning about the rim (rad), together: N/m², N/m, N.
    pub bending: Matrix2<f64>,
}

impl RimStiffness {
    /// `factor` times as stiff.
    #[must_use]
    pub fn times(&self, factor: f64) -> Self {
        Self { upright: self.upright * factor, along: self.along * factor, bending: self.bending * factor }
    }
}

impl Rib {
    /// The rib's stiffness at the top.
    ///
    /// Derived here. Unit length of rib is a clamped column in three steps (lining, bare rib, lining). Pressed, its steps
    /// shorten in turn: 1/k = Σ h/(E t). Sheared along the rim: 1/k = Σ h/(G t). Bent by a force F and a couple M at the top,
    /// the moment at depth ζ is M + Fζ, so the flexibility is ∫ [ζ² ζ; ζ 1]/D dζ with D = E t³/12; its inverse for an even
    /// rib is the cantilever's D [12/H³ −6/H²; −6/H² 4/H] (any structural mechanics). Left out: the rib's bend round the
    /// outline, its own mass, the give of the back, and (1 − ν ν′), some per cent across the grain.
    #[must_use]
    pub fn stiffness(&self) -> RimStiffness {
        let lined = self.thickness_m + self.lining_thickness_m;
        let lining = self.lining_height_m.min(0.5 * self.height_m);
        let steps = [
            (0.0, lining, lined),
            (lining, self.height_m - lining, self.thickness_m),
            (self.height_m - lining, self.height_m, lined),
        ];
        let (mut height_over_thickness, mut flexibility) = (0.0, Matrix2::zeros());
        for (from, to, thickness) in steps {
            let power = |n: i32| (f64::powi(to, n) - f64::powi(from, n)) / f64::from(n);
            height_over_thickness += (to - from) / thickness;
            flexibility += Matrix2::new(power(3), power(2), power(2), power(1)) * (12.0 / thickness.powi(3));
        }
        RimStiffness {
            upright: self.across_pa / height_over_thickness,
            along: self.shear_pa / height_over_thickness,
            bending: flexibility.try_inverse().map_or_else(Matrix2::zeros, |stiffness| stiffness * self.across_pa),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BARE: Rib = Rib {
        height_m: 30e-3,
        thickness_m: 1.1e-3,
        lining_height_m: 0.0,
        lining_thickness_m: 0.0,
        across_pa: 1.6e9,
        shear_pa: 1.5e9,
    };

    /// The end stiffness of a clamped beam (any structural mechanics): 12 D/H³, −6 D/H², 4 D/H; E t/H pressed, G t/H sheared.
    #[test]
    fn a_bare_rib_is_a_cantilever() {
        let got = BARE.stiffness();
        let (h, d) = (BARE.height_m, BARE.across_pa * BARE.thickness_m.powi(3) / 12.0);
        let exact = d * Matrix2::new(12.0 / h.powi(3), -6.0 / h.powi(2), -6.0 / h.powi(2), 4.0 / h);
        assert!(got.bending.component_div(&exact).add_scalar(-1.0).amax() < 1e-9, "{}", got.bending);
        assert!((got.upright / (1.6e9 * 1.1e-3 / 30e-3) - 1.0).abs() < 1e-12);
        assert!((got.along / (1.5e9 * 1.1e-3 / 30e-3) - 1.0).abs() < 1e-12);
    }

    /// Linings over the whole height are a thicker rib; over a part they lie between.
    #[test]
    fn linings_stiffen_by_their_part() {
        let lined = |height: f64| Rib { lining_height_m: height, lining_thickness_m: 1.8e-3, ..BARE }.stiffness();
        let thick = Rib { thickness_m: 2.9e-3, ..BARE }.stiffness();
        let whole = lined(15e-3);
        assert!((whole.upright / thick.upright - 1.0).abs() < 1e-12);
        assert!((whole.bending - thick.bending).amax() < 1e-9 * thick.bending.amax());
        let part = lined(6e-3);
        let bare = BARE.stiffness();
        for (part, bare, thick) in [
            (part.upright, bare.upright, thick.upright),
            (part.bending[(0, 0)], bare.bending[(0, 0)], thick.bending[(0, 0)]),
            (part.bending[(1, 1)], bare.bending[(1, 1)], thick.bending[(1, 1)]),
        ] {
            assert!(bare < part && part < thick, "{bare} {part} {thick}");
        }
    }
}
