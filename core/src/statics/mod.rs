//! Displacements under loads that don't change with time, and the stress along free edges that comes of them.

mod edge_stress;
mod greatest;

use thiserror::Error;

pub use edge_stress::{EdgeStress, edge_stresses};
pub use greatest::greatest_stress;

use crate::eigen::{EigenError, Factor, Pencil, Symbolic};
use crate::modes::rigid_motions;
use crate::shell::{DOFS_PER_NODE, Equations, ShellGeometry, ShellModel, Supports};

/// A force on a node, N along x, y and z.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PointLoad {
    /// The node.
    pub node: usize,
    /// (xyz) N.
    pub force_n: [f64; 3],
}

/// A load that has no answer.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum StaticsError {
    /// Something can move without resistance.
    #[error("the supports leave {motions} rigid motions free; hold the shell so that none is left")]
    Floats {
        /// How many.
        motions: usize,
    },
    /// A load on a node that isn't there.
    #[error("a load acts on node {node}, but the nodes are 0 to {last}")]
    NoSuchNode {
        /// The node named.
        node: usize,
        /// The last node there is.
        last: usize,
    },
    /// A force that isn't a number.
    #[error("the force on node {node} is {value} N; it must be a finite number")]
    NotFinite {
        /// The node.
        node: usize,
        /// The force given.
        value: f64,
    },
    /// The equations could not be solved.
    #[error(transparent)]
    Eigen(#[from] EigenError),
}

/// (node, dof): displacements (m) along x, y, z and rotations (rad) about them under `loads`.
///
/// Loads on one node add up; a load along a held degree of freedom goes into the support.
///
/// # Errors
/// [`StaticsError`] for loads or supports that have no answer.
pub fn displacements(
    geometry: &ShellGeometry,
    supports: &Supports,
    equations: &Equations,
    model: &ShellModel,
    symbolic: &Symbolic,
    loads: &[PointLoad],
) -> Result<Vec<[f64; DOFS_PER_NODE]>, StaticsError> {
    let motions = rigid_motions(geometry, supports, &model.ties, equations).len();
    if motions > 0 {
        return Err(StaticsError::Floats { motions });
    }
    check(equations, loads)?;
    let pencil = Pencil { pattern: &equations.pattern, stiffness: &model.stiffness, mass: &model.mass };
    let moved = Factor::new(&pencil, symbolic, 0.0)?.solve(&right_side(equations, loads));
    let at = |equation: Option<u32>| equation.map_or(0.0, |equation| moved[equation as usize]);
    Ok(equations.equation_of.iter().map(|dofs| dofs.map(at)).collect())
}

fn check(equations: &Equations, loads: &[PointLoad]) -> Result<(), StaticsError> {
    for load in loads {
        if load.node >= equations.equation_of.len() {
            let last = equations.equation_of.len().saturating_sub(1);
            return Err(StaticsError::NoSuchNode { node: load.node, last });
        }
        if let Some(&value) = load.force_n.iter().find(|force| !force.is_finite()) {
            return Err(StaticsError::NotFinite { node: load.node, value });
        }
    }
    Ok(())
}

/// (equation): the forces of `loads`, N, added up; none along held degrees of freedom and on nodes that aren't there.
#[must_use]
pub fn right_side(equations: &Equations, loads: &[PointLoad]) -> Vec<f64> {
    let mut right = vec![0.0; equations.count()];
    for load in loads {
        for (equation, value) in equations.equation_of.get(load.node).into_iter().flatten().zip(load.force_n) {
            if let Some(equation) = equation {
                right[*equation as usize] += value;
            }
        }
    }
    right
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shell::ElementOptions;
    use crate::wood::{OrthotropicConstants, Wood};

    /// A cantilever 100 × 10 × 2 mm of E 10 GPa, ν 0 under 1 N at its tip: w = P L³/(3 E I) plus 6 P L/(5 G A)
    /// (Timoshenko & Gere, Mechanics of Materials; from memory).
    #[test]
    fn a_cantilever_bends_as_the_beam_formula_says() {
        let (columns, rows) = (20_u32, 2_u32);
        let nodes: Vec<[f64; 3]> = (0..=rows)
            .flat_map(|j| (0..=columns).map(move |i| [f64::from(i) * 5.0, f64::from(j) * 5.0, 0.0]))
            .collect();
        let triangles: Vec<[u32; 3]> = (0..rows * columns)
            .flat_map(|cell| {
                let a = cell / columns * (columns + 1) + cell % columns;
                [[a, a + 1, a + columns + 2], [a, a + columns + 2, a + columns + 1]]
            })
            .collect();
        let geometry = ShellGeometry::new(&nodes, None, &vec![2.0; nodes.len()], &triangles).unwrap();
        let root: Vec<u32> = (0..=rows).map(|j| j * (columns + 1)).collect();
        let supports = Supports::clamped(nodes.len(), &root);
        let equations = Equations::new(&triangles, &supports).unwrap();
        let constants = OrthotropicConstants::isotropic(10.0, 0.0);
        let wood = Wood { constants, density_kg_m3: 400.0, ring_angle_deg: 0.0 };
        let model = ShellModel::assemble(&geometry, &wood, &equations, ElementOptions::default()).unwrap();
        let symbolic = Symbolic::new(&equations.pattern).unwrap();
        let tip = |j: u32| (j * (columns + 1) + columns) as usize;
        let loads = [0.25, 0.5, 0.25].map(|f| [0.0, 0.0, f]);
        let loads: Vec<_> = (0..=rows).zip(loads).map(|(j, force_n)| PointLoad { node: tip(j), force_n }).collect();
        let solve = |supports: &Supports, loads: &[PointLoad]| {
            displacements(&geometry, supports, &equations, &model, &symbolic, loads)
        };
        let moved = solve(&supports, &loads).unwrap();
        let got = moved[tip(1)][2];
        let exact = 0.1_f64.powi(3) / (3.0 * 10e9 * (0.01 * 0.002_f64.powi(3) / 12.0)) + 6.0 * 0.1 / (5.0 * 5e9 * 2e-5);
        // Mesh error of 20 elements along a cubic deflection.
        assert!((got / exact - 1.0).abs() < 2e-3, "{got} against {exact}");

        // Stress = moment times half the height over the second moment, in the outermost fibres; pulled up, the upper face is pressed.
        let side: Vec<u32> = (0..=columns).collect();
        for stress in &edge_stresses(&geometry, &wood, &side, false, &moved)[3..17] {
            let exact = -(100.0 - stress.at_mm[0]) * 1.0 / (10.0 * 2.0_f64.powi(3) / 12.0);
            assert!((stress.faces_mpa[0] / exact - 1.0).abs() < 0.02, "{stress:?} against {exact}");
            assert!(
                (stress.faces_mpa[0] + stress.faces_mpa[1]).abs() < 1e-6 && (stress.to_grain_deg - 90.0).abs() < 1e-9
            );
        }

        assert_eq!(solve(&Supports::free(nodes.len()), &loads), Err(StaticsError::Floats { motions: 6 }));
        let far = [PointLoad { node: 999, force_n: [0.0; 3] }];
        assert_eq!(solve(&supports, &far), Err(StaticsError::NoSuchNode { node: 999, last: 62 }));
    }
}
