//! The post against a spring and against a support.

use std::f64::consts::TAU;

use super::super::{Fittings, PointMass, Post};
use super::sheet::{only_upwards, plate};
use crate::shell::Supports;

fn post(place_m: [f64; 2], stiffness_n_per_m: f64, mass_kg: f64) -> Fittings {
    Fittings { post: Some(Post { place_m, stiffness_n_per_m, mass_kg }), ..Fittings::default() }
}

/// f = √(k/m)/2π (any vibration textbook): a plate that can only move up and down, far stiffer than the post, with a mass on it, and
/// a third of the post's.
#[test]
fn a_stiff_plate_bobs_on_a_soft_post() {
    let sheet = plate(4);
    let mut fittings = post([0.07, 0.11], 10.0, 0.03);
    fittings.masses.push(PointMass { place_m: [0.07, 0.11], mass_kg: 0.04 });
    let fitted = sheet.with(&fittings, only_upwards(sheet.nodes()));
    let modes = fitted.modes(1);
    let mass = fitted.model.total_mass_kg + 0.04 + 0.01;
    let exact = (10.0 / mass).sqrt() / TAU;
    assert!((modes.frequencies_hz[0] / exact - 1.0).abs() < 1e-3, "{} against {exact}", modes.frequencies_hz[0]);
    assert!(modes.rigid_hz.is_empty());
}

/// The stiffness of a dowel is E A / L (any strength of materials): 6 mm across, 55 mm long, 11.88 GPa gives 6.1 MN/m.
#[test]
fn a_dowels_stiffness_is_its_section_over_its_length() {
    let dowel = Post::dowel([0.0; 2], 6e-3, 55e-3, 11.88e9, 448.0);
    assert!((dowel.stiffness_n_per_m / 6.107e6 - 1.0).abs() < 1e-3);
    assert!((dowel.mass_kg / 0.697e-3 - 1.0).abs() < 1e-3);
}

/// A very stiff post is a support: the same modes as with the node under it held.
#[test]
fn a_very_stiff_post_holds_its_point() {
    let sheet = plate(8);
    let node = sheet.node(3, 5);
    let mut held = Supports::hinged(sheet.nodes(), &sheet.rim());
    let hinged = held.clone();
    held.held[node as usize][2] = true;
    let exact = sheet.bare(held).modes(3);
    let place = [3.0 * 0.025, 5.0 * 0.025];
    let got = sheet.with(&post(place, 1e12, 0.0), hinged.clone()).modes(3);
    let soft = sheet.with(&post(place, 0.0, 0.0), hinged.clone());
    for (got, exact) in got.frequencies_hz.iter().zip(&exact.frequencies_hz) {
        assert!((got / exact - 1.0).abs() < 1e-6, "{got} against {exact}");
    }
    assert_eq!(soft.model, sheet.bare(hinged).model);
}

/// A post under a plate in the hand takes one rigid motion away.
#[test]
fn a_post_under_a_free_plate_leaves_five_rigid_motions() {
    let sheet = plate(6);
    let fitted = sheet.with(&post([0.09, 0.1], 6e6, 0.7e-3), Supports::free(sheet.nodes()));
    let modes = fitted.modes(4);
    assert_eq!(modes.rigid_hz.len(), 5);
    assert_eq!(modes.names, [None; 4]);
    assert!(modes.frequencies_hz[0] > 100.0 * modes.rigid_hz.iter().copied().fold(0.0, f64::max));
}
