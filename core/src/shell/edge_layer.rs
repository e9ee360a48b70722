//! The layer along a free edge in which twist fades.
//!
//! At an edge that no couple holds the twisting moment vanishes. It does so within a layer: the lean along the edge departs
//! from the slope, and the shear this causes fades as e^(−n/δ) with the distance n, δ² = D/S, D being the twisting
//! stiffness and S the shear stiffness along the edge (Reissner 1945, J. Appl. Mech. 12, A69; Arnold & Falk 1990,
//! SIAM J. Math. Anal. 21, 281). For spruce 3 mm thick δ is 1 mm along the grain and, where rolling shear acts, 4.4 mm
//! across it. A lean of A at the edge changes the energy of a length of it by (D/2δ)A² − M A, M being the twisting moment
//! without the layer; the best A takes off (δ/2D)M². Elements as wide as the layer or wider can't follow it, keep
//! the twist, and are too stiff: at 8 mm by 0.6 % in the first mode of a flat 200 × 360 × 3 mm plate.
//!
//! Here an element at a free edge is relieved of the part of (δ/2D)M² that the mesh itself can't shed. That part is
//! told by the element's own stiffness against a lean at the edge: a chain of such elements, inwards from the edge, has the
//! stiffness Z against it (per length) and sheds M²/2Z. With elements much narrower than the layer, Z = D/δ and nothing is
//! left to relieve.
//!
//! Not a part of the element: a twist that couples along the edge hold, as in a patch test, has no layer. Whoever
//! assembles the shell says which edges are free.

use nalgebra::{SMatrix, SVector, Vector2, Vector3};

use super::bending::EdgeLean;
use super::facet::Facet;
use super::form::Form;
use super::patch::{Patch, next};
use super::section::Section;

/// Bending stiffness (bending dof, bending dof).
type BendingBlock = SMatrix<f64, 9, 9>;

/// Widest layer that an element is relieved of, over its width. Its own twisting stiffness is that of half its width (area over
/// the edge's length), so from 0.5 on nothing would be left and the stiffness no longer be positive.
const MOST: f64 = 0.4;

/// Centre of the element.
const CENTROID: [f64; 3] = [1.0 / 3.0; 3];

/// Takes off the `bending` stiffness of `patch` what the layers along its free edges shed.
pub(super) fn relieve(bending: &mut Form, facet: &Facet, patch: &Patch, section: &Section, lean: &EdgeLean) {
    let free = patch.free_edges.iter().filter(|free| **free).count();
    if free == 0 {
        return;
    }
    let whole = bending.whole();
    let curvature = lean.curvature(facet, &CENTROID);
    for edge in (0..3).filter(|&edge| patch.free_edges[edge]) {
        let along = facet.tangents[edge];
        let length = facet.lengths[edge];
        let width = 2.0 * facet.area / length;
        let resisting = section.plane_stress_pa * (patch.edge_thickness[edge].powi(3) / 12.0);
        // A twist with so much bending across the edge that no bending moment acts on it.
        let (c, s) = (along.x, along.y);
        let (twist, across) = (Vector3::new(-c * s, c * s, c * c - s * s), Vector3::new(s * s, c * c, -2.0 * c * s));
        let unheld = twist - across * (twist.dot(&(resisting * across)) / across.dot(&(resisting * across)));
        let twisting = unheld.dot(&(resisting * unheld));
        let moment = curvature * (resisting * unheld);

        let layer = (twisting * along.dot(&(section.shear_flexibility * along))).sqrt();
        let own = chain_stiffness(&whole, &along, edge) / length;
        // An element that resists no lean gives minus infinity: nothing to relieve.
        let missed = (layer - twisting / own).min(MOST * width / free as f64).max(0.0);
        bending.add(&moment, &moment, -missed * length / twisting);
    }
}

/// Stiffness against a lean along `edge` of a chain of elements like this one and its mirror image, times the edge's
/// length.
///
/// A row of the chain, from node to node, has the stiffness a at either node and −b between, with a + b = s/2 of a lean that is
/// the same at both; then Z² = a² − b².
fn chain_stiffness(whole: &BendingBlock, along: &Vector2<f64>, edge: usize) -> f64 {
    let (first, second) = (edge, next(edge));
    let opposite = next(second);
    let energy = |corners: &[usize]| {
        let mut leaning = SVector::<f64, 9>::zeros();
        for corner in corners {
            leaning[3 * corner + 2] = along.x;
            leaning[3 * corner + 1] = -along.y;
        }
        leaning.dot(&(whole * leaning))
    };
    let row = energy(&[first, second]) + energy(&[opposite]);
    let same = energy(&[first, second, opposite]);
    (same * (2.0 * row - same)).max(0.0).sqrt()
}
