//! Which mode on one mesh is which on another, told from the shapes: two frequencies close together trade places when the
//! mesh changes.

use nalgebra::Vector3;

use super::{LEAST_ASSURANCE, Modes};
use crate::ascending::ascending;
use crate::eigen::inner_products;
use crate::shell::{DOFS_PER_NODE, ShellGeometry};

/// (mode of `own`): the mode of `other` with the same shape, each used once at most.
///
/// Both meshes lie on the same surface. Shapes are compared by the modal assurance criterion (Allemang & Brown 1982, Proc. 1st
/// Int. Modal Analysis Conf.) of their displacements over the mass.
#[must_use]
pub fn match_modes(own: (&ShellGeometry, &Modes), other: (&ShellGeometry, &Modes)) -> Vec<Option<usize>> {
    let roots = roots_of_masses(own.0);
    let carry = Carry::new(own.0, other.0);
    let (mut own_moves, mut other_moves) = (Vec::new(), Vec::new());
    for mode in 0..own.1.count() {
        push_unit_moves(&mut own_moves, &displacements(own.1.shape(mode)).collect::<Vec<_>>(), &roots);
    }
    for mode in 0..other.1.count() {
        push_unit_moves(&mut other_moves, &carry.displacements(other.1.shape(mode)), &roots);
    }
    // (own, other)
    let overlaps = inner_products(&other_moves, &own_moves, 3 * roots.len());
    let likeness: Vec<f64> = overlaps.iter().map(|overlap| overlap * overlap).collect();
    pair_off(&likeness, other.1.count(), LEAST_ASSURANCE)
}

/// (node): the root of its mass, but for the density.
pub(super) fn roots_of_masses(geometry: &ShellGeometry) -> Vec<f64> {
    geometry.node_volumes_m3().iter().map(|volume| volume.sqrt()).collect()
}

/// Appends a shape's displacements (node), by `roots` of the masses and together of length one: (node, xyz).
pub(super) fn push_unit_moves(moves: &mut Vec<f64>, displacements: &[Vector3<f64>], roots: &[f64]) {
    let first = moves.len();
    for (moved, root) in displacements.iter().zip(roots) {
        moves.extend_from_slice((moved * *root).as_slice());
    }
    let own = &mut moves[first..];
    let length = own.iter().map(|moved| moved * moved).sum::<f64>().sqrt();
    own.iter_mut().for_each(|moved| *moved /= length);
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
        let nodes = source.nodes_m();
        let along: Vec<f64> = nodes.iter().map(|node| node.y).collect();
        let order = ascending(&along);
        let nearest = |place: &Vector3<f64>| {
            let mut best = (f64::INFINITY, 0);
            // From the place outwards, until the way along y alone is longer than the shortest.
            let mut is_near = |&node: &usize| {
                let way = place - nodes[node];
                if way.norm_squared() < best.0 {
                    best = (way.norm_squared(), node);
                }
                way.y * way.y <= best.0
            };
            let (below, above) = order.split_at(order.partition_point(|&node| along[node] < place.y));
            above.iter().take_while(|node| is_near(node)).for_each(drop);
            below.iter().rev().take_while(|node| is_near(node)).for_each(drop);
            (best.1, place - nodes[best.1])
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
