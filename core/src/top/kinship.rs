//! Which modes of two meshes of one top have the same shape, told without either mesh: by what they do at the same places.
//!
//! Two workers solve the same design on meshes of their own. What one tells the other is a few hundred numbers a mode.

use crate::mesh::{Locator, PlanMesh, Shares, interpolated};
use crate::modes::{Modes, pair_off};
use crate::shell::DOFS_PER_NODE;

/// Places across and along: some 10 mm apart on a violin, several to the half wave of its thirtieth mode.
const LATTICE: [usize; 2] = [20, 36];

/// As in [`match_modes`](crate::modes::match_modes).
const LEAST_LIKENESS: f64 = 0.5;

/// Numbers of one mode's signature: how it moves outwards at the lattice's places, zero off the wood; the sum of squares is one.
const SIGNATURE: usize = LATTICE[0] * LATTICE[1];

/// (mode, place): the signatures of `modes` on `mesh`. Cost: linear in triangles, and in modes.
#[must_use]
pub fn signatures(mesh: &PlanMesh, modes: &Modes) -> Vec<f32> {
    let locator = Locator::new(mesh);
    let (low, high) = mesh.bounds_mm();
    let at =
        |axis: usize, step: usize| low[axis] + (high[axis] - low[axis]) * (step as f64 + 0.5) / LATTICE[axis] as f64;
    let places = (0..SIGNATURE).map(|place| locator.at([at(0, place % LATTICE[0]), at(1, place / LATTICE[0])]));
    let places: Vec<_> = places.collect();
    (0..modes.count())
        .flat_map(|mode| {
            let shape = modes.shape(mode);
            let outward = |node: u32| shape[node as usize * DOFS_PER_NODE + 2];
            let at = |place: &Option<Shares>| place.as_ref().map_or(0.0, |place| interpolated(place, outward));
            let moved: Vec<f64> = places.iter().map(at).collect();
            let length = moved.iter().map(|u| u * u).sum::<f64>().sqrt().max(f64::MIN_POSITIVE);
            moved.into_iter().map(move |u| (u / length) as f32)
        })
        .collect()
}

/// (mode of `own`): the mode of `other` with the same shape, both given by their [`signatures`].
#[must_use]
pub fn kin(own: &[f32], other: &[f32]) -> Vec<Option<usize>> {
    let overlap = |a: &[f32], b: &[f32]| a.iter().zip(b).map(|(a, b)| f64::from(a * b)).sum::<f64>();
    let likeness: Vec<f64> = own
        .chunks_exact(SIGNATURE)
        .flat_map(|own| other.chunks_exact(SIGNATURE).map(move |other| overlap(own, other).powi(2)))
        .collect();
    pair_off(&likeness, other.len() / SIGNATURE, LEAST_LIKENESS)
}
