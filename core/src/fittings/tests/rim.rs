//! The elastic rim between its limits.

use std::f64::consts::TAU;

use nalgebra::Matrix2;

use super::super::{Block, ElasticRim, Fittings, RimStiffness};
use super::sheet::{only_upwards, plate, spruce};
use crate::modes::Modes;
use crate::shell::Supports;

fn rim(moving: f64, turning: f64, block_factor: f64, blocks: Vec<Block>) -> Fittings {
    let bending = Matrix2::new(moving, 0.0, 0.0, turning);
    let stiffness = RimStiffness { upright: moving, along: moving, bending };
    Fittings { rim: Some(ElasticRim { stiffness, blocks, block_factor }), ..Fittings::default() }
}

fn agree(got: &Modes, exact: &Modes, tolerance: f64) {
    assert_eq!(got.rigid_hz.len(), exact.rigid_hz.len());
    for (got, exact) in got.frequencies_hz.iter().zip(&exact.frequencies_hz) {
        assert!((got / exact - 1.0).abs() < tolerance, "{got} against {exact}");
    }
}

#[test]
fn a_rim_without_stiffness_is_free() {
    let sheet = plate(6);
    let free = Supports::free(sheet.nodes());
    let got = sheet.with(&rim(0.0, 0.0, 1.0, Vec::new()), free.clone());
    assert_eq!(got.model, sheet.bare(free).model);
}

/// Springs some 10⁵ times the elements' stiffness leave 10⁻⁵ of give.
#[test]
fn a_very_stiff_rim_is_hinged_and_if_it_cannot_turn_clamped() {
    let mut sheet = plate(10);
    sheet.wood = spruce();
    let free = Supports::free(sheet.nodes());
    let hinged = sheet.bare(Supports::hinged(sheet.nodes(), &sheet.rim())).modes(4);
    agree(&sheet.with(&rim(1e14, 0.0, 1.0, Vec::new()), free.clone()).modes(4), &hinged, 1e-4);
    let clamped = sheet.bare(Supports::clamped(sheet.nodes(), &sheet.rim())).modes(4);
    let turned = sheet.with(&rim(1e14, 1e12, 1.0, Vec::new()), free).modes(4);
    // The rib resists turning about the rim only; a clamp also holds the edge upright along itself, which soft shear feels.
    agree(&turned, &clamped, 1e-2);
    assert!(clamped.frequencies_hz[0] > 1.3 * hinged.frequencies_hz[0]);
}

/// f = √(k/m)/2π: a plate far stiffer than its rim bobs on k' times its circumference (any vibration textbook). Nine of 32
/// nodes on a block of ten times the stiffness make it 1 + 9 · 9/32 times as much.
#[test]
fn a_stiff_plate_bobs_on_a_soft_rim() {
    let sheet = plate(8);
    let per_metre = 50.0;
    // Four nodes along either side from a corner, 25 mm apart, and the corner's own.
    let block = Block { centre_m: [0.0, 0.0], reach_m: 0.11 };
    for (blocks, factor) in [(Vec::new(), 1.0), (vec![block], 1.0 + 9.0 * 9.0 / 32.0)] {
        let fitted = sheet.with(&rim(per_metre, 0.0, 10.0, blocks), only_upwards(sheet.nodes()));
        let mass = fitted.model.total_mass_kg;
        let exact = (factor * per_metre * 0.8 / mass).sqrt() / TAU;
        let got = fitted.modes(1).frequencies_hz[0];
        assert!((got / exact - 1.0).abs() < 2e-3, "{got} against {exact}");
    }
}

/// A turn about the rim leans the rib outwards on every side: a dome's rim that opens and turns that way meets the same
/// resistance all round.
#[test]
fn the_rib_bends_the_same_way_on_every_side() {
    let sheet = plate(4);
    let bending = Matrix2::new(12.0, -6.0, -6.0, 4.0);
    let stiffness = RimStiffness { upright: 0.0, along: 0.0, bending };
    let fittings =
        Fittings { rim: Some(ElasticRim { stiffness, blocks: Vec::new(), block_factor: 1.0 }), ..Fittings::default() };
    let free = Supports::free(sheet.nodes());
    let (bare, fitted) = (sheet.bare(free.clone()), sheet.with(&fittings, free));
    // (node at mid side, outward displacement, the turn that leans z outwards)
    let sides = [
        (sheet.node(2, 0), (1, -1.0), (3, 1.0)),
        (sheet.node(4, 2), (0, 1.0), (4, 1.0)),
        (sheet.node(2, 4), (1, 1.0), (3, -1.0)),
        (sheet.node(0, 2), (0, -1.0), (4, -1.0)),
    ];
    let pattern = &fitted.equations.pattern;
    for (node, (move_dof, outward), (turn_dof, leaning)) in sides {
        let equations =
            [move_dof, turn_dof].map(|dof: usize| fitted.equations.equation_of[node as usize][dof].unwrap());
        let start = pattern.column_starts[equations[0] as usize];
        // A node's equations stand together, the diagonal first.
        let at = start + (equations[1] - equations[0]) as usize;
        assert_eq!(pattern.row_indices[at], equations[1]);
        let added = fitted.model.stiffness[at] - bare.model.stiffness[at];
        // -6 N/m per metre of rim on 50 mm, whichever way x and y point.
        assert!((added * outward * leaning + 6.0 * 0.05).abs() < 1e-6, "{node}: {added}");
    }
}
