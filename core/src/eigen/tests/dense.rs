//! Random pencils against a dense solver (nalgebra's Cholesky of M, then faer's symmetric eigensolver: nalgebra's may run on for ever).

use faer::{Mat, Side};
use nalgebra::DMatrix;
use proptest::prelude::*;

use super::*;

/// All eigenvalues, ascending.
fn reference(pencil: &Assembled) -> Vec<f64> {
    let dof = pencil.pattern.dof();
    let dense = |values: &[f64]| {
        let mut matrix = DMatrix::zeros(dof, dof);
        for column in 0..dof {
            let entries = pencil.pattern.column_starts[column]..pencil.pattern.column_starts[column + 1];
            for (&row, &value) in pencil.pattern.row_indices[entries.clone()].iter().zip(&values[entries]) {
                matrix[(row as usize, column)] = value;
                matrix[(column, row as usize)] = value;
            }
        }
        matrix
    };
    let lower = dense(&pencil.mass).cholesky().unwrap().unpack();
    let half = lower.solve_lower_triangular(&dense(&pencil.stiffness)).unwrap();
    let whole = lower.solve_lower_triangular(&half.transpose()).unwrap();
    Mat::from_fn(dof, dof, |row, column| whole[(row, column)]).self_adjoint_eigenvalues(Side::Lower).unwrap()
}

/// Nodes of one to three equations joined by positive semidefinite links g gᵀ, some of them to ground; every mass at least a half.
fn random_pencil() -> impl Strategy<Value = Assembled> {
    (proptest::collection::vec(1_usize..4, 4..25), any::<u64>()).prop_map(|(sizes, seed)| {
        let mut numbers = crate::eigen::sequence::Sequence::from(seed);
        let mut draw = |count: usize| {
            let mut drawn = vec![0.0; count];
            numbers.fill(&mut drawn);
            drawn
        };
        let node_of_equation: Vec<u32> =
            sizes.iter().enumerate().flat_map(|(node, &size)| vec![node as u32; size]).collect();
        let starts: Vec<usize> =
            sizes.iter().scan(0, |next, &size| Some(std::mem::replace(next, *next + size))).collect();
        let equations = |node: usize| starts[node]..starts[node] + sizes[node];
        let mut elements = Vec::new();
        for node in 0..sizes.len() {
            let other = (node as f64 + 1.0 + 3.0 * draw(1)[0].abs()) as usize % sizes.len();
            let mut joined: Vec<usize> = equations(node).collect();
            if other != node {
                joined.extend(equations(other));
            }
            let link = draw(joined.len());
            let stiffness = link.iter().flat_map(|a| link.iter().map(move |b| 100.0 * a * b)).collect();
            let weight = draw(joined.len());
            let mass = (0..joined.len() * joined.len())
                .map(|at| {
                    let (row, column) = (at / joined.len(), at % joined.len());
                    0.2 * weight[row] * weight[column] + if row == column { 0.5 } else { 0.0 }
                })
                .collect();
            elements.push(Element { equations: joined, stiffness, mass });
        }
        assemble(node_of_equation, &elements)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn lowest_pairs_agree_with_the_dense_solver(pencil in random_pencil(), share in 0.05_f64..1.0, block in 1_usize..10) {
        let expected = reference(&pencil);
        let count = ((expected.len() as f64 * share) as usize).max(1);
        let pairs = pencil.solve(&Request { block, ..Request::count(count) }).unwrap();
        prop_assert_eq!(pairs.values.len(), count);
        for (mode, got) in pairs.values.iter().enumerate() {
            let (exact, largest) = (expected[mode], expected[expected.len() - 1]);
            let others = expected.iter().enumerate().filter(|&(other, _)| other != mode);
            let gap = others.map(|(_, other)| (other - exact).abs()).fold(f64::INFINITY, f64::min) / exact.abs();
            // The residual bounds the relative error, and its square over the relative gap does (B. Parlett, "The Symmetric
            // Eigenvalue Problem", sections 4.5 and 11.7); ten covers the two norms. Rounding: eigenvalues of either solver are those of a
            // pencil within some rounding units of the largest.
            let tolerance = super::super::RESIDUAL_TOLERANCE;
            let bound = exact.abs() * (10.0 * tolerance * tolerance / gap).min(tolerance) + 1e-12 * largest;
            prop_assert!((got - exact).abs() <= bound, "{got} against {exact}, bound {bound:e}");
        }
        for departure in &pairs.orthogonality {
            prop_assert!(*departure < 1e-9, "orthogonality {departure:e}");
        }
    }

    #[test]
    fn counts_agree_with_the_dense_solver(pencil in random_pencil(), share in 0.0_f64..1.1) {
        let expected = reference(&pencil);
        let lambda = share * expected[expected.len() - 1];
        let near = expected.iter().any(|value| (value - lambda).abs() < 1e-6 * expected[expected.len() - 1]);
        match pencil.count(lambda) {
            Ok(count) if !near => prop_assert_eq!(count, expected.iter().filter(|&&value| value < lambda).count()),
            Ok(_) => {}
            Err(EigenError::CountUncertain { growth, limit, .. }) => prop_assert!(growth > limit),
            Err(error) => prop_assert!(false, "{error}"),
        }
    }
}
