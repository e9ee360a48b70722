//! Which modes of two meshes have the same shape, told without either mesh: by what they do at the same places.
//!
//! Two workers solve one design, or two, on meshes of their own. What one tells the other is a few hundred numbers a mode.

use crate::mesh::{Locator, PlanMesh, Shares, interpolated};
use crate::modes::{Modes, pairs_by_shape, shape_correlations};
use crate::shell::DOFS_PER_NODE;

/// Places across and along: some 10 mm apart on a violin, several to the half wave of its thirtieth mode.
const LATTICE: [usize; 2] = [20, 36];

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
    pairs_by_shape(&likeness(own, other), other.len() / SIGNATURE)
}

/// (mode of `own`, mode of `other`): how like each other their shapes are, −1 to 1; squared, the modal assurance criterion. Both are
/// given by their [`signatures`].
///
/// The places are shares of the outline's length and width, so that tops of other outlines have places in common too.
#[must_use]
pub fn likeness(own: &[f32], other: &[f32]) -> Vec<f64> {
    shape_correlations(own, other, SIGNATURE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{Design, Preset};
    use crate::mesh::MeshSize;
    use crate::modes::{ModeName, ModesRequest};
    use crate::top::Stages;

    /// (mode): names and signatures.
    fn solved(design: Design) -> (Vec<Option<ModeName>>, Vec<f32>) {
        let mut stages = Stages::new(design);
        let request = ModesRequest { prove: false, ..ModesRequest::lowest(12) };
        let names = stages.modes(MeshSize::Preview, &request).unwrap().names.clone();
        (names, stages.signatures(MeshSize::Preview, false))
    }

    /// Places are shares of length and width, so that a top drawn to another scale, along and across by its own, is known by the same.
    #[test]
    fn a_top_drawn_to_another_scale_has_the_same_signatures() {
        let mut stages = Stages::new(Design::demo());
        let request = ModesRequest { prove: false, ..ModesRequest::lowest(3) };
        let modes = stages.modes(MeshSize::Preview, &request).unwrap().clone();
        let mut mesh = stages.carved(MeshSize::Preview).unwrap().0.mesh.clone();
        let own = signatures(&mesh, &modes);
        for point in &mut mesh.points_mm {
            *point = [0.6 * point[0], 1.5 * point[1] + 40.0];
        }
        let scaled = signatures(&mesh, &modes);
        assert!(own.iter().zip(&scaled).all(|(own, scaled)| (own - scaled).abs() < 1e-5));
        assert!(own.iter().any(|moved| moved.abs() > 0.05));
    }

    fn ring(names: &[Option<ModeName>]) -> Option<usize> {
        names.iter().position(|name| *name == Some(ModeName::Ring))
    }

    /// A flatter arch lowers the ring mode past two others, and three modes of another top have the same names however long and wide it
    /// is: names are told from the shapes by other means (`modes::names`), so that they can judge the pairs.
    #[test]
    fn modes_of_two_designs_are_paired_whatever_their_order_and_outline() {
        let (names, own) = solved(Design::demo());
        let mut flat = Design::demo();
        flat.arching.apex_height_mm = 10.0;
        let (flat_names, _) = solved(flat.clone());
        assert!(ring(&flat_names) < ring(&names), "{names:?} {flat_names:?}");
        let small = Preset::all()[0].design();
        for other in [flat, small] {
            let (other_names, other) = solved(other);
            let partners = kin(&own, &other);
            let named = names.iter().enumerate().filter(|(_, name)| name.is_some());
            assert_eq!(named.clone().count(), 3);
            for (mode, name) in named {
                let partner = partners[mode].unwrap();
                assert_eq!(other_names[partner], *name, "{partners:?}");
            }
        }
    }
}
