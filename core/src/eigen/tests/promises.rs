//! Nothing missed, the same bytes twice, the solve, and the frame's measures.

use super::closed_forms::{laplacian, laplacian_eigenvalues};
use super::*;
use crate::eigen::LIMIT_MOVES;

/// Eight vectors that are even about the vertical middle line of a square grid.
fn even_block(side: usize) -> Vec<f64> {
    let mut block = Vec::new();
    for vector in 1..=8_usize {
        block.extend((0..side * side).map(|node| {
            let (x, y) = (node % side, node / side);
            ((x.min(side - 1 - x) * vector + 3 * y * y * vector) % 17) as f64 - 8.0
        }));
    }
    block
}

#[test]
fn modes_hidden_from_the_start_block_are_found_by_the_count() {
    let side = 15;
    let (grid, expected, block) = (laplacian(side), laplacian_eigenvalues(side), even_block(side));
    let request = Request { start: Some(&block), shift: Some(0.02), ..Request::count(4) };
    let unproven = grid.solve(&Request { prove: false, ..request }).unwrap();
    let missing = (unproven.values[2] / expected[2] - 1.0).abs() > 0.1;
    assert!(missing, "the start block hides nothing, so this test would show nothing: {:?}", unproven.values);
    let proven = grid.solve(&request).unwrap();
    assert_close(&proven.values, &expected[..4], 1e-10);
    let below = expected.iter().filter(|&&value| value < proven.counted_at.unwrap()).count();
    assert_eq!(proven.counted_below, below);
}

/// Nothing can be counted at an eigenvalue itself: the matrix is singular there.
#[test]
fn a_limit_at_an_eigenvalue_is_moved_up_a_little() {
    let side = 15;
    let (grid, expected) = (laplacian(side), laplacian_eigenvalues(side));
    let lambda = expected[7];
    let extent = Extent::Below { lambda, cap: 100 };
    let pairs = grid.solve(&Request { extent, shift: Some(0.02), ..Request::count(1) }).unwrap();
    let at = pairs.counted_at.unwrap();
    assert!(at > lambda && at <= lambda * (1.0 + LIMIT_MOVES), "{at} {lambda}");
    let below = expected.iter().filter(|&&value| value < at).count();
    assert!(below > 7);
    assert_close(&pairs.values, &expected[..below], 1e-10);
}

#[test]
fn a_multiplicity_beyond_the_block_is_found_whole() {
    // Equal masses on equal springs: one eigenvalue, as many times as there are masses.
    let elements: Vec<Element> =
        (0..40).map(|d| Element { equations: vec![d], stiffness: vec![2.0], mass: vec![0.5] }).collect();
    let pairs = assemble((0..40).collect(), &elements).solve(&Request { block: 3, ..Request::count(40) }).unwrap();
    assert_close(&pairs.values, &[4.0; 40], 1e-12);
}

#[test]
fn two_runs_give_the_same_bytes() {
    let frame = frame::frame(5);
    let request = Request { rigid: Some(&frame.rigid), ..Request::count(10) };
    let (first, second) = (frame.pencil.solve(&request).unwrap(), frame.pencil.solve(&request).unwrap());
    let bits = |values: &[f64]| values.iter().map(|value| value.to_bits()).collect::<Vec<u64>>();
    assert_eq!(bits(&first.vectors), bits(&second.vectors));
    assert_eq!(bits(&first.values), bits(&second.values));
}

#[test]
fn an_arched_lattice_has_six_zeros_and_modes_free_of_them() {
    let frame = frame::frame(8);
    let request = Request { rigid: Some(&frame.rigid), ..Request::count(12) };
    let pairs = frame.pencil.solve(&request).unwrap();
    assert_eq!(pairs.counted_below - 6, 12);
    for (residual, departure) in pairs.residuals.iter().zip(&pairs.orthogonality) {
        assert!(*residual < 1e-5 && *departure < 1e-9, "residual {residual:e}, orthogonality {departure:e}");
    }
    let with_zeros = frame.pencil.solve(&Request::count(18)).unwrap();
    assert_close(&with_zeros.values[6..], &pairs.values, 1e-7);
    assert!(with_zeros.values[..6].iter().all(|zero| zero.abs() < 1e-5 * pairs.values[0]), "{:?}", with_zeros.values);
}

#[test]
fn a_warm_start_and_any_shift_lead_to_the_same_modes() {
    let frame = frame::frame(6);
    let request = Request { rigid: Some(&frame.rigid), ..Request::count(8) };
    let cold = frame.pencil.solve(&request).unwrap();
    let warm = frame.pencil.solve(&Request { start: Some(&cold.vectors), ..request }).unwrap();
    assert_close(&warm.values, &cold.values, 1e-8);
    for share in [1e-2, 1.0, 30.0] {
        let shift = Some(share * cold.values[0]);
        assert_close(&frame.pencil.solve(&Request { shift, ..request }).unwrap().values, &cold.values, 1e-7);
    }
}

#[test]
fn a_factor_solves_several_right_sides() {
    let grid = laplacian(12);
    let symbolic = Symbolic::new(&grid.pattern).unwrap();
    let factor = Factor::new(&grid.pencil(), &symbolic, 0.0).unwrap();
    // The right side K x of a known x, for eleven columns: more than one group.
    let dof = grid.pattern.dof();
    let known: Vec<f64> = (0..11 * dof).map(|at| ((at * at) % 23) as f64 - 11.0).collect();
    let mut right_sides = vec![0.0; 11 * dof];
    for (x, b) in known.chunks_exact(dof).zip(right_sides.chunks_exact_mut(dof)) {
        for column in 0..dof {
            for entry in grid.pattern.column_starts[column]..grid.pattern.column_starts[column + 1] {
                let (row, value) = (grid.pattern.row_indices[entry] as usize, grid.stiffness[entry]);
                b[row] += value * x[column];
                if row != column {
                    b[column] += value * x[row];
                }
            }
        }
    }
    for (got, known) in factor.solve(&right_sides).iter().zip(&known) {
        assert!((got - known).abs() < 1e-11, "{got} against {known}");
    }
}
