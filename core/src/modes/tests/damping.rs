//! Losses of plates and of a top.

use nalgebra::{Complex, DMatrix};

use super::plate::{Plate, spruce};
use crate::modes::{Damping, ModeName, damping};
use crate::shell::{ElementOptions, EnergySlopes, ShellModel};
use crate::wood::{LossFactors, OrthotropicConstants, Wood};

const LOSSES: LossFactors = LossFactors::QUARTER_CUT_SPRUCE;

fn damped(plate: &Plate, wood: &Wood, shapes: &[f64]) -> Vec<Damping> {
    damping(&EnergySlopes::new(&plate.geometry, wood, ElementOptions::default(), shapes).unwrap(), &LOSSES)
}

/// A sheet bent to a cylinder has strain in one direction only, a twisted one in shear only: each loses as the wood does that
/// way (the definition of the three loss factors, McIntyre & Woodhouse 1988, Acta Metallurgica 36, 1397).
#[test]
fn pure_bends_and_twist_lose_as_the_wood_does_that_way() {
    let plate = Plate::new(40.0, 60.0, 3.0, [2, 2]);
    for ([xx, yy, xy], expected) in
        [([0.0, 1.0, 0.0], LOSSES.along), ([1.0, 0.0, 0.0], LOSSES.across), ([0.0, 0.0, 1.0], LOSSES.shear)]
    {
        let shape: Vec<f64> = plate
            .geometry
            .nodes_m()
            .iter()
            .flat_map(|p| {
                let w = 0.5 * (xx * p.x * p.x + yy * p.y * p.y) + xy * p.x * p.y;
                [0.0, 0.0, w, yy * p.y + xy * p.x, -(xx * p.x + xy * p.y), 0.0]
            })
            .collect();
        let [got] = damped(&plate, &spruce(), &shape)[..] else { panic!("one shape, one damping") };
        assert!((got.loss_factor / expected - 1.0).abs() < 1e-6, "{got:?} against {expected}");
        assert!((got.q() * expected - 1.0).abs() < 1e-6);
    }
}

/// A strip cut along the grain bends as a bar: σ_R vanishes, and its lowest mode loses as the grain does; one cut across as
/// wood across the grain. Some energy is in shear through the thickness, (h/L)² E/G of it in the order of magnitude.
#[test]
fn bars_lose_as_their_direction_does() {
    let along = Plate::new(12.0, 300.0, 2.0, [2, 40]);
    let across = Plate::new(300.0, 12.0, 2.0, [40, 2]);
    for (plate, expected) in [(along, LOSSES.along), (across, LOSSES.across)] {
        let got = damped(&plate, &spruce(), &plate.modes(&spruce(), 1).shapes)[0];
        assert!((got.loss_factor / expected - 1.0).abs() < 0.02, "{got:?} against {expected}");
    }
}

#[test]
fn a_plates_modes_lose_no_more_and_no_less_than_its_wood() {
    let plate = Plate::new(158.0, 300.0, 3.0, [8, 8]);
    let modes = plate.modes(&spruce(), 12);
    let all = damped(&plate, &spruce(), &modes.shapes);
    for got in &all {
        let shares = got.shares;
        assert!((shares.along + shares.across + shares.shear + shares.fittings - 1.0).abs() < 1e-5, "{shares:?}");
        assert!((LOSSES.along..=LOSSES.across).contains(&got.loss_factor), "{got:?}");
    }
    let twist = modes.names.iter().position(|name| *name == Some(ModeName::Twist)).unwrap();
    assert!((all[twist].loss_factor / LOSSES.shear - 1.0).abs() < 0.05, "{:?}", all[twist]);
}

/// Against complex eigenvalues: with moduli E(1 + iη) the eigenvalue of a mode is λ(1 + iη) (the correspondence principle;
/// any text on viscoelasticity). Solved whole and dense, by nalgebra's complex Schur form, with no use of the modes.
#[test]
fn the_mean_of_losses_is_the_complex_eigenvalues() {
    let plate = Plate::new(60.0, 100.0, 2.0, [2, 3]);
    let wood = spruce();
    let assembled = |constants: OrthotropicConstants| {
        let wood = Wood { constants, ..wood };
        ShellModel::assemble(&plate.geometry, &wood, &plate.equations, ElementOptions::default()).unwrap()
    };
    let pattern = &plate.equations.pattern;
    let size = plate.equations.count();
    let dense = |values: &[f64]| {
        let mut matrix = DMatrix::zeros(size, size);
        for column in 0..size {
            let entries = pattern.column_starts[column]..pattern.column_starts[column + 1];
            for (&row, value) in pattern.row_indices[entries.clone()].iter().zip(&values[entries]) {
                matrix[(row as usize, column)] = *value;
                matrix[(column, row as usize)] = *value;
            }
        }
        matrix
    };
    let model = assembled(wood.constants);
    // To the first order in the losses K(E(1 + iη)) = K + i (K(E(1 + εη)) − K(E(1 − εη)))/2ε.
    let eps = 1e-2;
    let lossy = |sign: f64| {
        let c = wood.constants;
        let [l, r] = [LOSSES.along, LOSSES.across].map(|loss| 1.0 + sign * eps * loss);
        let g = 1.0 + sign * eps * LOSSES.shear;
        // The coupling S_ij = −ν_ij/E_i scales as 1/√(s_i s_j).
        dense(
            &assembled(OrthotropicConstants {
                e_l_gpa: c.e_l_gpa * l,
                e_r_gpa: c.e_r_gpa * r,
                e_t_gpa: c.e_t_gpa * r,
                g_lr_gpa: c.g_lr_gpa * g,
                g_lt_gpa: c.g_lt_gpa * g,
                g_rt_gpa: c.g_rt_gpa * g,
                nu_lr: c.nu_lr * (l / r).sqrt(),
                nu_lt: c.nu_lt * (l / r).sqrt(),
                nu_rt: c.nu_rt,
            })
            .stiffness,
        )
    };
    let (stiffness, lost) = (dense(&model.stiffness), (lossy(1.0) - lossy(-1.0)) / (2.0 * eps));
    // Losses also mix modes, by their square over the distance of the eigenvalues: two of these lie 14 % apart, and at
    // full strength each takes 1e-3 from the other. A twentieth of the losses leaves a four hundredth of that.
    let strength = 0.05;
    // Turned over and shifted, 1/(λ + σ), so that the lowest modes come out largest and rounding is small beside them.
    let shift = 1e6;
    let mass = dense(&model.mass);
    let root = mass.clone().cholesky().unwrap().l().map(|value| Complex::new(value, 0.0));
    let shifted = (stiffness + mass * shift).map(|value| Complex::new(value, 0.0))
        + lost.map(|value| Complex::new(0.0, strength * value));
    let (_, triangular) = (root.transpose() * shifted.try_inverse().unwrap() * &root).schur().unpack();
    let mut eigenvalues: Vec<_> = triangular.diagonal().iter().map(|value| value.inv() - shift).collect();
    eigenvalues.sort_by(|a, b| a.re.total_cmp(&b.re));

    let modes = plate.modes(&wood, 6);
    for (mode, got) in damped(&plate, &wood, &modes.shapes).iter().enumerate() {
        let exact = eigenvalues[6 + mode];
        let hz = exact.re.sqrt() / std::f64::consts::TAU;
        assert!((modes.frequencies_hz[mode] / hz - 1.0).abs() < 1e-5, "the same mode");
        let loss_factor = exact.im / exact.re / strength;
        assert!((got.loss_factor / loss_factor - 1.0).abs() < 1e-5, "{got:?} against {loss_factor}");
    }
}
