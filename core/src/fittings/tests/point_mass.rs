//! Added masses against Rayleigh's principle.

use super::super::{Fittings, PointMass};
use super::sheet::plate;
use crate::shell::Supports;

/// A small mass m at a point lowers the frequency by half of m φ² (Rayleigh, Theory of Sound, vol. 1, § 88; from memory); φ = (2/√M)
/// sin sin on a hinged rectangle, so at the middle by 2 m/M, at a quarter of both sides by m/2M.
#[test]
fn a_small_mass_lowers_the_frequency_by_rayleighs_share() {
    let sheet = plate(12);
    let supports = Supports::hinged(sheet.nodes(), &sheet.rim());
    let bare = sheet.bare(supports.clone());
    let plain = bare.modes(1).frequencies_hz[0];
    let whole = bare.model.total_mass_kg;
    // The first place is a node, the second lies inside a triangle, beside the quarter point.
    for place in [[100.0_f64, 100.0], [53.0, 48.0]] {
        let small = 1e-3 * whole;
        let mass = PointMass { place_m: place.map(|x| x * 1e-3), mass_kg: small };
        let loaded = sheet.with(&Fittings { masses: vec![mass], ..Fittings::default() }, supports.clone());
        assert!(loaded.model.total_mass_kg == whole);
        let got = 1.0 - loaded.modes(1).frequencies_hz[0] / plain;
        let phi: f64 = place.iter().map(|x| (std::f64::consts::PI * x / 200.0).sin()).product();
        let exact = 2.0 * phi.powi(2) * small / whole;
        // The mesh's shape is linear between its nodes: off by (π h/L)²/8, h/L 1/12, at most, twice that in its square; the next
        // term of the expansion is m/M.
        assert!((got / exact - 1.0).abs() < 0.025, "{got} against {exact}");
    }
}
