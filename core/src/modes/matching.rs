//! Which mode on one mesh is which on another, told from the shapes: two frequencies close together trade places when the
//! mesh changes.

use nalgebra::Vector3;

use super::{LEAST_ASSURANCE, Modes};
use crate::shell::{DOFS_PER_NODE, ShellGeometry};

/// (mode of `own`): the mode of `other` with the same shape, each used once at most.
///
/// Both meshes lie on the same surface. Shapes are compared by the modal assurance criterion (Allemang & Brown 1982, Proc. 1st
/// Int. Modal Analysis Conf.) of their displacements over the mass. Cost: product of the numbers of nodes.
#[must_use]
pub fn match_modes(own: (&ShellGeometry, &Modes), other: (&ShellGeometry, &Modes)) -> Vec<Option<usize>> {
    let weights = own.0.node_volumes_m3();
    let carry = Carry::new(own.0, other.0);
    let own_moves: Vec<Vec<_>> = (0..own.1.count()).map(|mode| displacements(own.1.shape(mode)).collect()).collect();
    let other_moves: Vec<_> = (0..other.1.count()).map(|mode| carry.displacements(other.1.shape(mode))).collect();
    let product = |a: &[Vector3<f64>], b: &[Vector3<f64>]| -> f64 {
        weights.iter().zip(a.iter().zip(b)).map(|(weight, (a, b))| weight * a.dot(b)).sum()
    };
    let likeness: Vec<f64> = own_moves
        .iter()
        .flat_map(|a| other_moves.iter().map(|b| product(a, b).powi(2) / (product(a, a) * product(b, b))))
        .collect();
    pair_off(&likeness, other_moves.len(), LEAST_ASSURANCE)
}

/// (own): the other most like it, by `likeness` (own, other) of `others`, the most alike first; each used once, and none
/// where what is left is not more than `least` alike.
#[must_use]
pub fn pair_off(likeness: &[f64], others: usize, least: f64) -> Vec<Option<usize>> {
    let mut partner = vec![None; likeness.len() / others.max(1)];
    let mut used = vec![false; others];
    loop {
        let free = likeness
            .iter()
            .enumerate()
            .filter(|(at, alike)| **alike > least && partner[at / others].is_none() && !used[at % others]);
        // The first of equals.
        let Some((at, _)) = free.reduce(|best, next| if next.1 > best.1 { next } else { best }) else {
            return partner;
        };
        partner[at / others] = Some(at % others);
        used[at % others] = true;
    }
}

/// Carries shapes from one mesh to the nodes of another: the nearest node's displacement and what its rotation adds on the
/// way, so that what is left out is of the second order in the distance.
struct Carry {
    /// (node of the target): nearest node, and the way from it.
    from: Vec<(usize, Vector3<f64>)>,
}

impl Carry {
    fn new(target: &ShellGeometry, source: &ShellGeometry) -> Self {
        let nearest = |place: &Vector3<f64>| {
            let distance = |node: &Vector3<f64>| (place - node).norm_squared();
            let all = source.nodes_m().iter().enumerate();
            let (index, node) = all.min_by(|a, b| distance(a.1).total_cmp(&distance(b.1))).unwrap_or((0, place));
            (index, place - node)
        };
        Self { from: target.nodes_m().iter().map(nearest).collect() }
    }

    fn displacements(&self, shape: &[f64]) -> Vec<Vector3<f64>> {
        let own: Vec<_> = displacements(shape).collect();
        self.from
            .iter()
            .map(|&(node, way)| {
                let turn = Vector3::from_column_slice(&shape[node * DOFS_PER_NODE + 3..][..3]);
                own[node] + turn.cross(&way)
            })
            .collect()
    }
}

/// (node): the displacement in a shape (node, dof).
pub(super) fn displacements(shape: &[f64]) -> impl Iterator<Item = Vector3<f64>> {
    shape.chunks_exact(DOFS_PER_NODE).map(|dofs| Vector3::from_column_slice(&dofs[..3]))
}
