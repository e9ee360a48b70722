//! Free beams and their tensor products: eigenvalues of multiplicity four, four zeros, and an order of convergence known from theory.

use super::*;

/// Roots of cos β cosh β = 1, the free-free beam's wave numbers (R. Blevins, "Formulas for Natural Frequency and Mode
/// Shape", table 8-1; from memory, and each is checked against its equation below).
const FREE_BEAM: [f64; 3] = [4.730_040_744_862_704, 7.853_204_624_095_838, 10.995_607_838_001_671];

/// Stiffness and consistent mass of a free Hermite beam of unit length, EI and mass: dense, (row, column).
fn beam(elements: usize) -> (Vec<Vec<f64>>, Vec<Vec<f64>>) {
    let h = 1.0 / elements as f64;
    let size = 2 * (elements + 1);
    let (mut stiffness, mut mass) = (vec![vec![0.0; size]; size], vec![vec![0.0; size]; size]);
    // Equations are (deflection, h times slope), so h leaves the brackets. Any text on beam elements; from memory.
    let k = [[12.0, 6.0, -12.0, 6.0], [6.0, 4.0, -6.0, 2.0], [-12.0, -6.0, 12.0, -6.0], [6.0, 2.0, -6.0, 4.0]];
    let m =
        [[156.0, 22.0, 54.0, -13.0], [22.0, 4.0, 13.0, -3.0], [54.0, 13.0, 156.0, -22.0], [-13.0, -3.0, -22.0, 4.0]];
    for element in 0..elements {
        for a in 0..4 {
            for b in 0..4 {
                stiffness[2 * element + a][2 * element + b] += k[a][b] / h.powi(3);
                mass[2 * element + a][2 * element + b] += m[a][b] * h / 420.0;
            }
        }
    }
    (stiffness, mass)
}

/// K⊗M + M⊗K against M⊗M: its eigenvalues are all sums of two of the beam's. Four equations a node.
pub(super) fn crossed_beams(elements: usize) -> Assembled {
    let (k, m) = beam(elements);
    let (size, nodes) = (k.len(), elements + 1);
    let equation = |a: usize, b: usize| 4 * ((a / 2) * nodes + b / 2) + 2 * (a % 2) + b % 2;
    let neighbours = |a: usize| (2 * (a / 2)).saturating_sub(2)..(2 * (a / 2) + 4).min(size);
    let mut entries = Vec::new();
    for a in 0..size {
        for b in 0..size {
            for c in neighbours(a) {
                for d in neighbours(b) {
                    let (row, column) = (equation(a, b), equation(c, d));
                    if row >= column {
                        entries.push((column, row, k[a][c] * m[b][d] + m[a][c] * k[b][d], m[a][c] * m[b][d]));
                    }
                }
            }
        }
    }
    let node_of_equation = (0..size * size).map(|equation| (equation / 4) as u32).collect();
    assembly::compress(node_of_equation, entries)
}

/// Products of the beam's two rigid motions: (mode, equation).
pub(super) fn rigid(elements: usize) -> Vec<f64> {
    let (nodes, h) = (elements + 1, 1.0 / elements as f64);
    let shift = |equation: usize| if equation.is_multiple_of(2) { 1.0 } else { 0.0 };
    let turn = |equation: usize| if equation.is_multiple_of(2) { (equation / 2) as f64 * h } else { h };
    let motions: [&dyn Fn(usize) -> f64; 2] = [&shift, &turn];
    let mut modes = Vec::new();
    for first in motions {
        for second in motions {
            modes.extend((0..4 * nodes * nodes).map(|equation| {
                let (node, local) = (equation / 4, equation % 4);
                first(2 * (node / nodes) + local / 2) * second(2 * (node % nodes) + local % 2)
            }));
        }
    }
    modes
}

fn exact() -> Vec<f64> {
    let [first, second, _] = FREE_BEAM.map(|root| root.powi(4));
    vec![first, first, first, first, 2.0 * first, second, second, second, second]
}

#[test]
fn wave_numbers_of_the_free_beam_solve_their_equation() {
    for root in FREE_BEAM {
        assert!((root.cos() - 1.0 / root.cosh()).abs() < 1e-12);
    }
}

#[test]
fn crossed_free_beams_converge_with_the_fourth_power_and_keep_multiplicity_four() {
    let exact = exact();
    let errors: Vec<Vec<f64>> = [6, 8, 11]
        .into_iter()
        .map(|elements| {
            let rigid = rigid(elements);
            let request = Request { rigid: Some(&rigid), ..Request::count(9) };
            let pairs = crossed_beams(elements).solve(&request).unwrap();
            assert_eq!(pairs.counted_below, 4 + 9);
            let spread = pairs.values[3] / pairs.values[0] - 1.0;
            assert!(spread < 1e-9, "the fourfold eigenvalue is split by {spread:e}");
            pairs.values.iter().zip(&exact).map(|(got, exact)| got / exact - 1.0).collect()
        })
        .collect();
    // G. Strang and G. Fix, "An Analysis of the Finite Element Method", section 6.3: cubics give O(h⁴) in λ, from above. From memory.
    for (pair, ratio) in errors.windows(2).zip([8.0 / 6.0, 11.0 / 8.0_f64]) {
        let order = (pair[0][0] / pair[1][0]).ln() / ratio.ln();
        assert!((3.7..4.3).contains(&order), "order {order}, errors {errors:?}");
    }
    // The constant is (βh)⁴/720 for a consistent mass, to the next order in βh.
    for (mode, root) in [(0, FREE_BEAM[0]), (5, FREE_BEAM[1])] {
        let (got, bound) = (errors[2][mode], (root / 11.0).powi(4) / 720.0);
        assert!(got > 0.7 * bound && got < 1.3 * bound, "mode {mode}: {got:e} against {bound:e}");
    }
}

#[test]
fn zeros_come_out_as_eigenvalues_when_rigid_modes_are_not_given() {
    let pairs = crossed_beams(5).solve(&Request::count(13)).unwrap();
    let first = pairs.values[4];
    assert!(pairs.values[..4].iter().all(|value| value.abs() < 1e-8 * first), "{:?}", pairs.values);
    let rigid = rigid(5);
    let deflated = crossed_beams(5).solve(&Request { rigid: Some(&rigid), ..Request::count(9) }).unwrap();
    assert_close(&pairs.values[4..], &deflated.values, 1e-9);
}

#[test]
fn below_a_limit_returns_every_mode_there_and_no_other() {
    let elements = 6;
    let rigid = rigid(elements);
    let crossed = crossed_beams(elements);
    let [first, second, _] = FREE_BEAM.map(|root| root.powi(4));
    let below = |lambda, cap| {
        crossed
            .solve(&Request { extent: Extent::Below { lambda, cap }, rigid: Some(&rigid), ..Request::count(1) })
            .unwrap()
    };
    let pairs = below(0.5 * (2.0 * first + second), 100);
    assert_close(&pairs.values, &exact()[..5], 1e-3);
    assert_eq!(pairs.counted_below, 4 + 5);
    assert_eq!(below(0.5 * first, 100).values, Vec::<f64>::new());
    let capped = below(1.5 * second, 3);
    assert_close(&capped.values, &pairs.values[..3], 1e-9);
}
