//! The surface that moves: nodes, what each stands for, and the triangles between them.

use nalgebra::Vector3;

use super::ResponseError;
use super::error::check;
use crate::mesh::{Locator, Shares};
use crate::shell::ShellGeometry;

/// Nodes and triangles of a shell's mid-surface, which has no part over another in plan (xy).
#[derive(Debug, Clone, PartialEq)]
pub struct ShellSurface {
    /// (node, xyz) m.
    pub places_m: Vec<[f64; 3]>,
    /// (node, xyz) unit, outwards.
    pub normals: Vec<[f64; 3]>,
    /// (node) m²: a third of the triangles round it.
    pub areas_m2: Vec<f64>,
    /// (node) lumped, kg: what moves there, fixed things included.
    pub masses_kg: Vec<f64>,
    /// (triangle, corner) nodes.
    pub triangles: Vec<[u32; 3]>,
}

/// What a load on a place that is borne by a patch is spread over: nodes and their shares, which add up to one; a node may come twice.
pub type Patch = Vec<(u32, f64)>;

impl ShellSurface {
    /// Of `geometry`, with `masses_kg` (node).
    #[must_use]
    pub fn new(geometry: &ShellGeometry, masses_kg: Vec<f64>) -> Self {
        let flat = |vectors: &[Vector3<f64>]| vectors.iter().map(|&vector| vector.into()).collect();
        Self {
            places_m: flat(geometry.nodes_m()),
            normals: flat(&geometry.node_normals()),
            areas_m2: geometry.node_areas_m2(),
            masses_kg,
            triangles: geometry.triangles().to_vec(),
        }
    }

    /// The triangle under a place in plan, with its corners' shares; none off the wood. Cost: a look at every triangle.
    #[must_use]
    pub fn at(&self, place_m: [f64; 2]) -> Option<Shares> {
        let points = self.in_plan();
        Locator::over(&points, &self.triangles).at(place_m)
    }

    /// What bears a load spread evenly over a rectangle in plan, `size_m` across and along, whose middle is at `middle_m`.
    ///
    /// A force on the node nearest to the middle of a violin bridge's foot is up to half a millimetre off, which is worth 3 % of what the feet
    /// move against each other.
    ///
    /// None where the rectangle reaches over an edge.
    #[must_use]
    pub fn under_rectangle(&self, middle_m: [f64; 2], size_m: [f64; 2]) -> Option<Patch> {
        // Some millimetre apart on a violin's foot: several on each triangle.
        const PLACES: [u32; 2] = [13, 5];
        let points = self.in_plan();
        let locator = Locator::over(&points, &self.triangles);
        let at = |axis: usize, step: u32| {
            middle_m[axis] + size_m[axis] * (f64::from(step) / f64::from(PLACES[axis] - 1) - 0.5)
        };
        let mut patch = Patch::new();
        for place in (0..PLACES[0]).flat_map(|i| (0..PLACES[1]).map(move |j| [at(0, i), at(1, j)])) {
            let (nodes, shares) = locator.at(place)?;
            patch.extend(nodes.into_iter().zip(shares.map(|share| share / f64::from(PLACES[0] * PLACES[1]))));
        }
        Some(patch)
    }

    fn in_plan(&self) -> Vec<[f64; 2]> {
        self.places_m.iter().map(|&[x, y, _]| [x, y]).collect()
    }

    /// Refuses arrays that don't go together, and numbers that can't be.
    pub(super) fn check(&self) -> Result<(), ResponseError> {
        let nodes = self.places_m.len();
        if nodes == 0 {
            return Err(ResponseError::Length { what: "the places of nodes", got: 0, wanted: 3 });
        }
        check("the places of nodes", self.places_m.as_flattened(), 3 * nodes, f64::NEG_INFINITY)?;
        check("the normals of nodes", self.normals.as_flattened(), 3 * nodes, f64::NEG_INFINITY)?;
        check("the areas of nodes", &self.areas_m2, nodes, 0.0)?;
        check("the masses of nodes", &self.masses_kg, nodes, 0.0)?;
        match self.triangles.as_flattened().iter().find(|node| **node as usize >= nodes) {
            Some(&node) => Err(ResponseError::NoSuchNode { node: node as usize, last: nodes.saturating_sub(1) }),
            None => Ok(()),
        }
    }
}
