//! Whether stated errors hold the true ones.

use super::plate::{Plate, isotropic, spruce};
use crate::design::Design;
use crate::mesh::MeshSize;
use crate::modes::{Modes, ModesRequest, certainty, match_modes, mesh_errors_hz, sensitivities};
use crate::shell::{ElementOptions, EnergySlopes};
use crate::top::Stages;
use crate::wood::{Scatter, WoodConstant};

/// Modes in another order and with other signs are found by their shapes.
#[test]
fn modes_are_matched_by_shape_not_by_order() {
    let (coarse, fine) = (Plate::new(158.0, 300.0, 3.0, [6, 6]), Plate::new(158.0, 300.0, 3.0, [10, 10]));
    let [own, other] = [&coarse, &fine].map(|plate| plate.modes(&spruce(), 6));
    let length = other.shapes.len() / 6;
    let order = [3, 0, 5, 1, 4, 2];
    let shuffled = Modes {
        frequencies_hz: order.iter().map(|&mode| other.frequencies_hz[mode]).collect(),
        shapes: order
            .iter()
            .flat_map(|&mode| other.shapes[mode * length..(mode + 1) * length].iter().map(|value| -2.0 * value))
            .collect(),
        ..other
    };
    let found = match_modes((&coarse.geometry, &own), (&fine.geometry, &shuffled));
    let expected: Vec<_> = (0..6).map(|mode| order.iter().position(|own| *own == mode)).collect();
    assert_eq!(found, expected);
}

/// Thin free square plate: 1.622, 2.360, 2.922, 4.190, 4.190 Hz for 10 m, 0.05 m, 200 GPa, 8 000 kg/m³, ν 0.3 (row P-FV12-C of
/// `tests/reference/plates.csv`, NAFEMS FV12 converged), scaled as f ∝ h/a² √(E/ρ) to 300 × 300 × 0.6 mm, 10 GPa, 450 kg/m³.
#[test]
fn the_stated_error_holds_the_true_one_on_a_plate() {
    let scale = 13.333_333 * (10.0 / 450.0_f64 / (200.0 / 8000.0)).sqrt();
    let exact_hz = [1.622, 2.360, 2.922, 4.190, 4.190].map(|hz: f64| hz * scale);
    let wood = isotropic(0.3);
    let plates = [[8, 8], [12, 12]].map(|cells| Plate::new(300.0, 300.0, 0.6, cells));
    let modes = plates.each_ref().map(|plate| plate.modes(&wood, 5));
    let pair = |k: usize| (&plates[k].geometry, &modes[k]);
    for (own, other) in [(0, 1), (1, 0)] {
        let shapes = &modes[own].shapes;
        let slopes = EnergySlopes::new(&plates[own].geometry, &wood, ElementOptions::default(), shapes).unwrap();
        let stated = certainty(pair(own), pair(other), &sensitivities(&slopes), &Scatter::CLEAR_WOOD);
        for (stated, exact) in stated.iter().zip(exact_hz) {
            // The pair of equal frequencies may turn as it likes between meshes, and then has no partner.
            let (Some(numerical_hz), Some(converged_hz)) = (stated.numerical_hz(), stated.converged_hz) else {
                continue;
            };
            assert!((converged_hz - exact).abs() < numerical_hz, "{stated:?} against {exact} Hz");
            assert!(numerical_hz < 0.05 * exact, "{stated:?}");
        }
        assert!(stated[..3].iter().all(|stated| stated.numerical_pct.is_some()));
    }
    // The estimate has the true error's sign and is rather too large: a flat plate's errors fall with the second power of
    // the size, so that taking 1.25 between meshes 1.44 apart makes (1.44² − 1)/(1.44^1.25 − 1) = 1.9 times as much of it.
    let errors = mesh_errors_hz(pair(1), pair(0));
    for mode in 0..3 {
        let ratio = errors[mode].unwrap() / (modes[1].frequencies_hz[mode] - exact_hz[mode]);
        assert!((1.0..2.5).contains(&ratio), "mode {mode}: {ratio}");
    }
    assert_eq!(mesh_errors_hz(pair(1), pair(1)), [None; 5]);
}

/// Standard and fine mesh foretell one figure, whichever is asked about.
#[test]
fn both_of_two_meshes_foretell_the_same_figure() {
    let mut stages = Stages::new(Design::demo());
    let request = ModesRequest { most: 8, below_hz: None, prove: false };
    let [standard, fine] = [MeshSize::Standard, MeshSize::Fine].map(|size| stages.certainty(size, &request).unwrap());
    for (standard, fine) in standard.iter().zip(&fine) {
        let [from_standard, from_fine] = [standard, fine].map(|stated| stated.converged_hz.unwrap());
        assert!((from_standard / from_fine - 1.0).abs() < 1e-9, "{standard:?}, {fine:?}");
        assert_eq!(standard.best_hz(), from_standard);
        // The finer mesh has less to be corrected, and so less left open.
        assert!(fine.numerical_hz() < standard.numerical_hz(), "{standard:?}, {fine:?}");
    }
}

/// A figure that only one constant moves scatters as that constant does: where G_LR is small against the bending moduli it
/// carries a thin plate's twist (P-TWIST of `tests/reference/plates.csv`), whose frequency goes with its root; density adds
/// half of its own 10 %. √((22/2)² + (10/2)²) = 12.08 %.
#[test]
fn a_twist_scatters_as_shear_modulus_and_density_do() {
    let mut wood = spruce();
    wood.constants = wood.constants.scaled(WoodConstant::GLR, 0.05);
    let plate = Plate::new(200.0, 400.0, 3.0, [8, 8]);
    let modes = plate.modes(&wood, 1);
    let slopes = EnergySlopes::new(&plate.geometry, &wood, ElementOptions::default(), &modes.shapes).unwrap();
    let own = sensitivities(&slopes);
    let got = certainty((&plate.geometry, &modes), (&plate.geometry, &modes), &own, &Scatter::CLEAR_WOOD);
    assert!((own[0].by_constant[WoodConstant::GLR as usize] - 0.5).abs() < 0.01, "{own:?}");
    // As exact as the mode is pure: 0.01 of 22 %.
    assert!((got[0].wood_pct() - 12.08).abs() < 0.22, "{got:?}");
    assert!((got[0].wood_hz() / got[0].frequency_hz * 100.0 - got[0].wood_pct()).abs() < 1e-9);
}
