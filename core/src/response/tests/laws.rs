//! Laws that hold for any passive linear thing: reciprocity, the balance of energy.

use super::plate::Plate;
use crate::response::{Complex, Port, QuadraticForm};
use crate::statics::PointLoad;

fn free_plate() -> (crate::response::ModalBasis, [Port; 2]) {
    let plate = Plate { sides_m: [0.2, 0.15], thickness_m: 0.003, cells: [12, 10], supported: false };
    let nodes = [plate.node([0.2, 0.3]), plate.node([0.8, 0.6])];
    let loads = nodes.map(|node| vec![PointLoad { node, force_n: [0.3, -0.2, 1.0] }]);
    let basis = plate.solvable().basis(12, 0.013, &loads);
    let ports = loads.map(|load| Port::new(&basis, &load).unwrap());
    (basis, ports)
}

#[test]
fn a_free_plate_floats_on_six_motions_and_two_loads_add_four() {
    let (basis, [port, _]) = free_plate();
    assert_eq!((basis.arrays().rigid, basis.arrays().residual, basis.count()), (6, 4, 22));
    assert!(basis.arrays().frequencies_hz[18] > basis.complete_to_hz());
    // A body in the hand at low frequency: a force moves its middle as Newton says, x = −F/(mω²).
    let mass: f64 = basis.surface().masses_kg.iter().sum();
    let (square, hz) = ((std::f64::consts::TAU * 0.1).powi(2), 0.1);
    let field = basis.resonators().motion(&[(Complex::from(1.0), &port)], hz).field(&basis);
    let weighed = |axis: usize| -> f64 {
        let masses = basis.surface().masses_kg.iter().enumerate();
        masses.map(|(node, own)| own * field.displacement(node)[axis].re).sum::<f64>() / mass
    };
    for (axis, force) in [0.3, -0.2, 1.0].into_iter().enumerate() {
        assert!((weighed(axis) * mass * square / -force - 1.0).abs() < 1e-4, "{axis}: {}", weighed(axis));
    }
}

#[test]
fn drive_here_and_watch_there_or_the_other_way_round() {
    let (basis, [a, b]) = free_plate();
    for hz in [50.0, 433.0, 1021.0, 3000.0, 20_000.0] {
        let (there, back) = (basis.resonators().receptance(&a, &b, hz), basis.resonators().receptance(&b, &a, hz));
        assert!((there - back).norm() < 1e-10 * there.norm());
        // The same through the whole field.
        let field = basis.resonators().motion(&[(Complex::from(1.0), &b)], hz);
        assert!((field.displacement(&a) - there).norm() < 1e-10 * there.norm());
    }
}

#[test]
fn what_goes_in_is_lost_and_nothing_else() {
    let (basis, [a, b]) = free_plate();
    let forces = [(Complex::new(0.7, -0.2), &a), (Complex::new(-1.1, 0.4), &b)];
    for hz in [50.0, 433.0, 1021.0, 3000.0, 20_000.0] {
        let motion = basis.resonators().motion(&forces, hz);
        let (input, lost) = (motion.power_in_w(&forces), motion.power_lost_w(basis.resonators()));
        assert!(input > 0.0 && (input / lost - 1.0).abs() < 1e-6, "{hz} Hz: {input} in, {lost} lost");
    }
}

/// Energies read from modal amplitudes are those of the field, node by node; all masses together come near to the energy of
/// the modes themselves, from which they differ by what a consistent mass couples between neighbours.
#[test]
fn energies_without_a_field_are_the_fields() {
    let (basis, [a, _]) = free_plate();
    let masses = &basis.surface().masses_kg;
    let motion = basis.resonators().motion(&[(Complex::from(1.0), &a)], 250.0);
    let field = motion.field(&basis);
    let half: Vec<f64> = masses.iter().enumerate().map(|(node, own)| if node % 2 == 0 { *own } else { 0.0 }).collect();
    let by_field: f64 = half
        .iter()
        .enumerate()
        .map(|(node, own)| own * field.displacement(node).iter().map(Complex::norm_sqr).sum::<f64>())
        .sum();
    let by_modes = QuadraticForm::of_displacements(&basis, &half).at(motion.amplitudes());
    assert!((by_modes / by_field - 1.0).abs() < 1e-5, "{by_modes} {by_field}");
    let outward: f64 = field.outward(&basis).iter().zip(&half).map(|(moved, own)| own * moved.norm_sqr()).sum();
    let by_modes = QuadraticForm::of_outward(&basis, &half).at(motion.amplitudes());
    assert!((by_modes / outward - 1.0).abs() < 1e-5, "{by_modes} {outward}");
    let all = 0.25 * motion.of_velocities(&QuadraticForm::of_displacements(&basis, masses));
    assert!((all / motion.kinetic_energy_j() - 1.0).abs() < 0.02, "{all} {}", motion.kinetic_energy_j());
}

#[test]
fn a_basis_that_does_not_fit_together_is_refused() {
    let (basis, _) = free_plate();
    let broken = |spoil: fn(&mut crate::response::ModalArrays)| {
        let mut arrays = basis.arrays().clone();
        spoil(&mut arrays);
        crate::response::ModalBasis::new(arrays).unwrap_err().to_string()
    };
    assert!(broken(|arrays| arrays.shapes.truncate(5)).contains("the shapes hold 5 numbers"));
    assert!(broken(|arrays| arrays.shapes[3] = f32::NAN).contains("the shapes hold NaN at index 3"));
    assert!(broken(|arrays| arrays.loss_factors[1] = -0.1).contains("the loss factors hold -0.1 at index 1"));
    assert!(broken(|arrays| arrays.surface.triangles[0][1] = 9999).contains("node 9999"));
    assert!(broken(|arrays| arrays.rigid = 99).contains("the frequencies"));
    let far = [PointLoad { node: 9999, force_n: [0.0; 3] }];
    assert!(Port::new(&basis, &far).is_err());
    assert!(Port::outward(&basis, [9.0, 9.0]).unwrap_err().to_string().contains("no wood at x = 9000.0 mm"));
}
