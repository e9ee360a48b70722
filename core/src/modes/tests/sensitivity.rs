//! Slopes of frequencies against theory and against solving again.

use super::plate::{Plate, spruce};
use crate::design::Design;
use crate::design::fittings_tests::fit_out;
use crate::fittings::{Bare, Fittings};
use crate::mesh::MeshSize;
use crate::modes::{ModesRequest, Sensitivity, sensitivities, solve_modes};
use crate::shell::{ElementOptions, EnergySlopes, ShellGeometry, ShellModel};
use crate::top::{Carved, Held, Plan, Shape, Stages};
use crate::wood::{Wood, WoodConstant};

fn of_plate(thickness_mm: f64) -> Vec<Sensitivity> {
    let plate = Plate::new(158.0, 300.0, thickness_mm, [8, 8]);
    let modes = plate.modes(&spruce(), 6);
    sensitivities(&EnergySlopes::new(&plate.geometry, &spruce(), ElementOptions::default(), &modes.shapes).unwrap())
}

/// Rows V-EFF-E, V-EFF-DENS, V-EFF-THICK of `tests/reference/violin.csv` (elementary scaling; plate theory): all moduli
/// together ½, density −½, thickness 1 in the limit of a thin flat plate.
#[test]
fn a_thin_flat_plate_follows_the_scaling_laws() {
    for mode in of_plate(0.3) {
        let moduli: f64 = mode.by_constant[..6].iter().sum();
        assert!((moduli - 0.5).abs() < 1e-6, "{mode:?}");
        assert!((mode.by_density + 0.5).abs() < 1e-15);
        // Shear through the thickness takes (h/L)² E/G off, 1e-4 here.
        assert!((mode.by_thickness - 1.0).abs() < 1e-3, "{mode:?}");
    }
    // A plate as thick as bars for ringing stones shears, so thickness counts for less.
    assert!(of_plate(20.0).iter().all(|mode| mode.by_thickness < 0.97));
}

/// Every slope against two full solves, on a carved top.
#[test]
fn slopes_are_those_of_two_solves() {
    let mut stages = Stages::new(Design::demo());
    let wood = stages.design().wood.wood().unwrap();
    let (plan, carved) = stages.carved(MeshSize::Preview).unwrap();
    let request = ModesRequest { most: 5, below_hz: None, prove: false };
    let solve = |geometry: &ShellGeometry, wood: &Wood| {
        let model = ShellModel::assemble(geometry, wood, &plan.equations, ElementOptions::default()).unwrap();
        solve_modes(geometry, &plan.supports, &plan.equations, &model, &plan.symbolic, &request).unwrap()
    };
    let modes = solve(&carved.geometry, &wood);
    let slopes = EnergySlopes::new(&carved.geometry, &wood, ElementOptions::default(), &modes.shapes).unwrap();
    let got = sensitivities(&slopes);
    // The step's square times a slope's curvature, 1e-4 of it, is what two solves leave out.
    let step = 0.01;
    let check = |name: &str, by_two_solves: [Vec<f64>; 2], by_formula: &dyn Fn(&Sensitivity) -> f64| {
        let [more, less] = by_two_solves;
        for (mode, own) in got.iter().enumerate() {
            let exact = (more[mode] / less[mode]).ln() / ((1.0 + step) / (1.0_f64 - step)).ln();
            let own = by_formula(own);
            // One in a hundred; of slopes too small to matter, as much as that of a slope of a hundredth.
            assert!((own - exact).abs() < 0.01 * exact.abs().max(0.01), "{name}, mode {mode}: {own} against {exact}");
        }
    };
    for constant in WoodConstant::ALL {
        let solved = [1.0 + step, 1.0 - step].map(|by| {
            let constants = wood.constants.scaled(constant, by);
            solve(&carved.geometry, &Wood { constants, ..wood }).frequencies_hz
        });
        check(constant.symbol(), solved, &|own| own.by_constant[constant as usize]);
    }
    let solved = [1.0 + step, 1.0 - step].map(|by| {
        let density_kg_m3 = wood.density_kg_m3 * by;
        solve(&carved.geometry, &Wood { density_kg_m3, ..wood }).frequencies_hz
    });
    check("density", solved, &|own| own.by_density);
    let (nodes, mid) = (&carved.mid_surface.nodes_mm, &carved.mid_surface.across);
    let solved = [1.0 + step, 1.0 - step].map(|by| {
        let thickness: Vec<f64> = mid.thickness_mm.iter().map(|t| t * by).collect();
        let geometry = ShellGeometry::new(nodes, Some(&mid.normals), &thickness, &plan.mesh.triangles).unwrap();
        solve(&geometry, &wood).frequencies_hz
    });
    check("thickness", solved, &|own| own.by_thickness);
}

/// With bar, post, ribs that give way and an added mass on the top, only the wood of the top itself changes.
#[test]
fn slopes_of_a_fitted_top_are_those_of_two_solves() {
    let mut design = Design::demo();
    fit_out(&mut design);
    let shape = Shape::new(&design).unwrap();
    let plan = Plan::new(&shape, Held::by(&design.rim), MeshSize::Preview).unwrap();
    let fittings = Fittings::of_design(&design).unwrap();
    let request = ModesRequest { most: 4, below_hz: None, prove: false };
    let solve = |wood: &Wood| {
        let carved = Carved::new(&plan, &shape, wood, &fittings).unwrap();
        carved.modes(&plan, &request).unwrap().frequencies_hz
    };
    let wood = design.wood.wood().unwrap();
    let mut stages = Stages::new(design);
    let slopes = stages.sensitivities(MeshSize::Preview, &request).unwrap();
    let step = 0.01_f64;
    let exact = |change: &dyn Fn(f64) -> Wood| -> Vec<f64> {
        let [more, less] = [1.0 + step, 1.0 - step].map(|by| solve(&change(by)));
        more.iter().zip(&less).map(|(more, less)| (more / less).ln() / ((1.0 + step) / (1.0_f64 - step)).ln()).collect()
    };
    for constant in WoodConstant::ALL {
        let change = |by| Wood { constants: wood.constants.scaled(constant, by), ..wood };
        for (own, exact) in slopes.iter().zip(exact(&change)) {
            let own = own.by_constant[constant as usize];
            assert!((own - exact).abs() < 0.01 * exact.abs().max(0.01), "{}: {own} against {exact}", constant.symbol());
        }
    }
    for (own, exact) in slopes.iter().zip(exact(&|by| Wood { density_kg_m3: wood.density_kg_m3 * by, ..wood })) {
        assert!((own.by_density - exact).abs() < 0.01 * exact.abs(), "{own:?} against {exact}");
    }
    // Thicker wood, the mid-surface where it was.
    let geometry = Carved::new(&plan, &shape, &wood, &fittings).unwrap().geometry;
    let [more, less] = [1.0 + step, 1.0 - step].map(|by| {
        let (geometry, options) = (geometry.thickened(by), ElementOptions::default());
        let mut model = ShellModel::assemble(&geometry, &wood, &plan.equations, options).unwrap();
        let bare = Bare { geometry: &geometry, wood: &wood, equations: &plan.equations, options };
        fittings.fit(&bare, &plan.mesh.rim_nodes, &mut model).unwrap();
        solve_modes(&geometry, &plan.supports, &plan.equations, &model, &plan.symbolic, &request).unwrap()
    });
    for (mode, own) in slopes.iter().enumerate() {
        let exact = (more.frequencies_hz[mode] / less.frequencies_hz[mode]).ln() / ((1.0 + step) / (1.0 - step)).ln();
        assert!((own.by_thickness - exact).abs() < 0.01 * exact.abs(), "{own:?} against {exact}");
    }
    let damping = stages.damping(MeshSize::Preview, &request).unwrap();
    for mode in &damping {
        let shares = mode.shares;
        assert!((shares.along + shares.across + shares.shear + shares.fittings - 1.0).abs() < 1e-5, "{shares:?}");
        assert!(shares.fittings > 0.0, "{shares:?}");
    }
}
