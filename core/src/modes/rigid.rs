//! The rigid motions that the supports leave free.

use nalgebra::{DMatrix, Matrix6, SymmetricEigen, Vector3};

use crate::shell::{DOFS_PER_NODE, Equations, ShellGeometry, Supports, Tie};

/// Most sweeps of the eigensolver, which has no limit of its own; six unknowns take some ten.
const MOST_SWEEPS: usize = 300;

/// A combination of rigid motions is free when it moves the held degrees of freedom by less than this, relative to what
/// the most constrained one moves: far above rounding, far below any real support.
const FREE: f64 = 1e-12;

/// (rigid motion, equation): a basis of the rigid motions that `supports` and `ties` leave free.
///
/// Found from the 6 × 6 Gram matrix of the six motions about the shell's middle over the held degrees of freedom and the
/// motions that ties resist: its null space is free.
#[must_use]
pub fn rigid_motions(
    geometry: &ShellGeometry,
    supports: &Supports,
    ties: &[Tie],
    equations: &Equations,
) -> Vec<Vec<f64>> {
    let count = geometry.node_count();
    let places = geometry.nodes_m();
    let middle = places.iter().sum::<Vector3<f64>>() / count as f64;
    let reach = places.iter().map(|place| (place - middle).norm()).fold(f64::MIN_POSITIVE, f64::max);
    // (motion): what a node's six degrees of freedom do; turns are scaled to move the farthest node by one.
    let motion = |motion: usize, place: &Vector3<f64>| -> [f64; DOFS_PER_NODE] {
        let mut axis = Vector3::zeros();
        axis[motion % 3] = 1.0;
        let (shift, turn) = if motion < 3 {
            (axis, Vector3::zeros())
        } else {
            let turn = axis / reach;
            (turn.cross(&(place - middle)), turn)
        };
        [shift.x, shift.y, shift.z, turn.x * reach, turn.y * reach, turn.z * reach]
    };
    let mut gram = Matrix6::zeros();
    for (place, held) in places.iter().zip(&supports.held) {
        let moves: [[f64; DOFS_PER_NODE]; 6] = std::array::from_fn(|k| motion(k, place));
        for dof in (0..DOFS_PER_NODE).filter(|&dof| held[dof]) {
            gram += Matrix6::from_fn(|i, j| moves[i][dof] * moves[j][dof]);
        }
    }
    for tie in ties {
        let felt: [f64; 6] = std::array::from_fn(|k| {
            let own = motion(k, &tie.place_m);
            let part = if tie.turning { &own[3..] } else { &own[..3] };
            part.iter().zip(&tie.axis).map(|(own, axis)| own * axis).sum()
        });
        gram += Matrix6::from_fn(|i, j| felt[i] * felt[j]);
    }
    // Of a size known only at run time, like the solver's: the code is there once.
    let gram = DMatrix::from_column_slice(6, 6, gram.as_slice());
    let Some(spectrum) = SymmetricEigen::try_new(gram, f64::EPSILON, MOST_SWEEPS) else {
        // Unseen so far; the search finds zeros that it isn't told of.
        return Vec::new();
    };
    let largest = spectrum.eigenvalues.max();
    let free = (0..6).filter(|&index| spectrum.eigenvalues[index] <= FREE * largest);
    free.map(|index| {
        let share = spectrum.eigenvectors.column(index);
        let shift = Vector3::new(share[0], share[1], share[2]);
        // Undo the scaling of rotations made for the Gram matrix.
        let turn = Vector3::new(share[3], share[4], share[5]) / reach;
        let mut vector = vec![0.0; equations.count()];
        for (place, equation_of) in places.iter().zip(&equations.equation_of) {
            let moved = shift + turn.cross(&(place - middle));
            for (equation, value) in equation_of.iter().zip(moved.iter().chain(&turn)) {
                if let Some(equation) = equation {
                    vector[*equation as usize] = *value;
                }
            }
        }
        vector
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn strip() -> ShellGeometry {
        let nodes = [[0.0, 0.0, 0.0], [10.0, 0.0, 1.0], [10.0, 10.0, 0.0], [0.0, 10.0, 2.0]];
        ShellGeometry::new(&nodes, None, &[1.0; 4], &[[0, 1, 2], [0, 2, 3]]).unwrap()
    }

    fn free_motions(supports: &Supports) -> usize {
        let shell = strip();
        let equations = Equations::new(shell.triangles(), supports).unwrap();
        rigid_motions(&shell, supports, &[], &equations).len()
    }

    #[test]
    fn a_plate_in_the_hand_has_six_and_a_hinge_leaves_one() {
        assert_eq!(free_motions(&Supports::free(4)), 6);
        assert_eq!(free_motions(&Supports::hinged(4, &[0])), 3);
        assert_eq!(free_motions(&Supports::hinged(4, &[0, 1])), 1);
        assert_eq!(free_motions(&Supports::hinged(4, &[0, 1, 2])), 0);
        assert_eq!(free_motions(&Supports::clamped(4, &[2])), 0);
    }

    #[test]
    fn a_plate_held_in_its_plane_keeps_three() {
        let supports = Supports { held: vec![[true, true, false, false, false, true]; 4] };
        let nodes = [[0.0, 0.0, 0.0], [10.0, 0.0, 0.0], [10.0, 10.0, 0.0], [0.0, 10.0, 0.0]];
        let shell = ShellGeometry::new(&nodes, None, &[1.0; 4], &[[0, 1, 2], [0, 2, 3]]).unwrap();
        let equations = Equations::new(shell.triangles(), &supports).unwrap();
        assert_eq!(rigid_motions(&shell, &supports, &[], &equations).len(), 3);
    }

    #[test]
    fn a_spring_under_one_point_leaves_five_and_a_turning_spring_one_fewer() {
        let shell = strip();
        let supports = Supports::free(4);
        let equations = Equations::new(shell.triangles(), &supports).unwrap();
        let mut ties = vec![Tie { place_m: Vector3::new(0.003, 0.004, 0.0), axis: Vector3::z(), turning: false }];
        assert_eq!(rigid_motions(&shell, &supports, &ties, &equations).len(), 5);
        ties.push(Tie { turning: true, ..ties[0] });
        assert_eq!(rigid_motions(&shell, &supports, &ties, &equations).len(), 4);
    }
}
