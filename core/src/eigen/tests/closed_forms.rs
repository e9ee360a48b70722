//! Pencils whose eigenvalues are known in closed form.

use std::f64::consts::PI;

use super::*;

/// A chain of equal masses and springs, free or held at both ends by springs to ground.
fn chain(masses: usize, held: bool) -> Assembled {
    let (stiffness, mass) = (3.0, 0.5);
    let mut elements: Vec<Element> = (1..masses)
        .map(|right| Element {
            equations: vec![right - 1, right],
            stiffness: vec![stiffness, -stiffness, -stiffness, stiffness],
            mass: vec![0.0; 4],
        })
        .collect();
    for end in 0..masses {
        let ground = if held && (end == 0 || end == masses - 1) { stiffness } else { 0.0 };
        elements.push(Element { equations: vec![end], stiffness: vec![ground], mass: vec![mass] });
    }
    assemble((0..masses as u32).collect(), &elements)
}

/// λ = (4k/m) sin²(angle/2) for the wave that turns by `angle` from mass to mass (any text on lattice waves, e.g. L. Brillouin,
/// "Wave Propagation in Periodic Structures", chapter 1; from memory).
fn wave(angle: f64) -> f64 {
    4.0 * 3.0 / 0.5 * (0.5 * angle).sin().powi(2)
}

#[test]
fn held_chain_has_its_closed_form_eigenvalues() {
    let pairs = chain(500, true).solve(&Request::count(20)).unwrap();
    let expected: Vec<f64> = (1..=20).map(|wave_number| wave(PI * f64::from(wave_number) / 501.0)).collect();
    assert_close(&pairs.values, &expected, 1e-10);
    assert_eq!(pairs.counted_below, 20);
}

#[test]
fn free_chain_has_a_zero_then_its_closed_form_eigenvalues() {
    let chain = chain(300, false);
    let expected: Vec<f64> = (1..=12).map(|wave_number| wave(PI * f64::from(wave_number) / 300.0)).collect();
    let pairs = chain.solve(&Request::count(13)).unwrap();
    assert!(pairs.values[0].abs() < 1e-10 * expected[0], "{}", pairs.values[0]);
    assert_close(&pairs.values[1..], &expected, 1e-10);

    let rigid = vec![1.0; 300];
    let pairs = chain.solve(&Request { rigid: Some(&rigid), ..Request::count(12) }).unwrap();
    assert_close(&pairs.values, &expected, 1e-10);
    assert_eq!(pairs.counted_below, 13);
}

/// The five-point Laplacian on a square with fixed sides: every eigenvalue with unequal wave numbers is exactly double.
pub(super) fn laplacian(side: usize) -> Assembled {
    let mut elements = Vec::new();
    for node in 0..side * side {
        elements.push(Element { equations: vec![node], stiffness: vec![4.0], mass: vec![1.0] });
        let mut coupled = |other: usize| {
            elements.push(Element {
                equations: vec![node, other],
                stiffness: vec![0.0, -1.0, -1.0, 0.0],
                mass: vec![0.0; 4],
            });
        };
        if node % side + 1 < side {
            coupled(node + 1);
        }
        if node + side < side * side {
            coupled(node + side);
        }
    }
    assemble((0..(side * side) as u32).collect(), &elements)
}

/// 4 sin²(pπ/2(n+1)) + 4 sin²(qπ/2(n+1)), ascending.
pub(super) fn laplacian_eigenvalues(side: usize) -> Vec<f64> {
    let one = |wave: usize| 4.0 * (0.5 * PI * wave as f64 / (side + 1) as f64).sin().powi(2);
    let mut values: Vec<f64> = (1..=side).flat_map(|p| (1..=side).map(move |q| one(p) + one(q))).collect();
    values.sort_by(f64::total_cmp);
    values
}

#[test]
fn square_membrane_keeps_both_of_each_repeated_pair() {
    let expected = laplacian_eigenvalues(20);
    for count in [1, 2, 3, 8, 20] {
        let pairs = laplacian(20).solve(&Request::count(count)).unwrap();
        assert_close(&pairs.values, &expected[..count], 1e-10);
        assert!(pairs.orthogonality.iter().all(|&departure| departure < 1e-10), "{:?}", pairs.orthogonality);
        assert!(pairs.residuals.iter().all(|&residual| residual < 1e-6), "{:?}", pairs.residuals);
    }
}
