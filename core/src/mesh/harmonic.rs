//! Carrying the boundary's displacement inwards.

use super::PlanMesh;
use crate::plan::{
    Point,
    vector::{self, along, scale},
};

/// Share of the first residual's energy at which to stop: nodes are then some ten-thousandth of the boundary's displacement off.
const ENOUGH: f64 = 1e-8;
/// Rounds after which to stop all the same: several times what a fine mesh takes.
const MOST_ROUNDS: usize = 400;

/// Springs along the edges of a mesh, which hold every node inside in the weighted mean of its neighbours' displacements. A spring is as
/// stiff as its edge is short, so that long edges far off give way before short ones between hole and edge do.
#[derive(Clone, Debug)]
pub(super) struct Harmonic {
    /// Edges with an end inside, and their stiffness.
    springs: Vec<([u32; 2], f64)>,
    /// (node) one over the sum of its springs; zero on the boundary, which keeps what it is given.
    give: Vec<f64>,
}

impl Harmonic {
    pub(super) fn of(mesh: &PlanMesh) -> Harmonic {
        let mut inside = vec![true; mesh.points_mm.len()];
        mesh.loops().flatten().for_each(|&node| inside[node as usize] = false);
        let mut give = vec![0.0; mesh.points_mm.len()];
        let mut springs = Vec::new();
        for (&ends, length) in mesh.edges.ends.iter().zip(mesh.edge_lengths_mm()) {
            if ends.iter().any(|&node| inside[node as usize]) {
                let stiffness = 1.0 / length;
                springs.push((ends, stiffness));
                ends.iter().for_each(|&node| give[node as usize] += stiffness);
            }
        }
        give.iter_mut().zip(&inside).for_each(|(give, inside)| *give = if *inside { 1.0 / *give } else { 0.0 });
        Harmonic { springs, give }
    }

    /// Fills in the displacements inside (node, xy); those on the boundary are given. Conjugate gradients, each node's own
    /// stiffness for preconditioner: Hestenes & Stiefel 1952, J. Res. Nat. Bur. Stand. 49, 409-436.
    pub(super) fn fill(&self, moved: &mut [Point]) {
        let mut residual: Vec<Point> = self.pull(moved).into_iter().map(|[x, y]| [-x, -y]).collect();
        let mut search = self.softened(&residual);
        let mut energy = dot(&residual, &search);
        let enough = ENOUGH * energy;
        for _ in 0..MOST_ROUNDS {
            if energy <= enough {
                return;
            }
            let pull = self.pull(&search);
            let step = energy / dot(&search, &pull);
            add(moved, step, &search);
            add(&mut residual, -step, &pull);
            let soft = self.softened(&residual);
            let next = dot(&residual, &soft);
            let again = next / energy;
            energy = next;
            for (search, soft) in search.iter_mut().zip(&soft) {
                *search = along(*soft, *search, again);
            }
        }
    }

    /// What the springs hold each node inside with against its displacement.
    fn pull(&self, moved: &[Point]) -> Vec<Point> {
        let mut pull = vec![[0.0; 2]; moved.len()];
        for &([a, b], stiffness) in &self.springs {
            let [a, b] = [a as usize, b as usize];
            for k in 0..2 {
                let force = stiffness * (moved[a][k] - moved[b][k]);
                pull[a][k] += force;
                pull[b][k] -= force;
            }
        }
        pull.iter_mut().zip(&self.give).filter(|(_, give)| **give == 0.0).for_each(|(pull, _)| *pull = [0.0; 2]);
        pull
    }

    fn softened(&self, forces: &[Point]) -> Vec<Point> {
        forces.iter().zip(&self.give).map(|(&force, &give)| scale(force, give)).collect()
    }
}

fn dot(a: &[Point], b: &[Point]) -> f64 {
    a.iter().zip(b).map(|(a, b)| vector::dot(*a, *b)).sum()
}

/// Adds `share` of `b` to `a`.
fn add(a: &mut [Point], share: f64, b: &[Point]) {
    a.iter_mut().zip(b).for_each(|(a, b)| *a = along(*a, *b, share));
}
