//! Elements that mirror each other at the plane x = 0, the middle of a top whose sides are alike.

use nalgebra::Vector3;

use super::element::{Element, ElementMatrix};
use super::equations::Equations;
use super::patch::Patch;
use crate::eigen::Reflection;

/// (corner, edge): which of the mirrored triangle's stands for it. Two corners change places, so that both facets face the same way.
const CORNERS: [usize; 3] = [0, 2, 1];
const EDGES: [usize; 3] = [2, 1, 0];

/// (displacement xyz, rotation xyz): what the mirror turns round. A rotation about the mirror's normal goes on as it was.
const SIGNS: [f64; 6] = [-1.0, 1.0, 1.0, 1.0, -1.0, -1.0];

/// Places and thickness (m) and normals as near as this are the same: sums round a node on either side differ by rounding, and what that
/// strains in an element moved as it is, 1e-12 of a motion, is the rounding of assembly.
const SAME: f64 = 1e-14;

fn mirrored(v: &Vector3<f64>) -> Vector3<f64> {
    Vector3::new(-v.x, v.y, v.z)
}

impl Patch {
    /// What it is on the other side.
    pub(super) fn mirrored(&self) -> Self {
        Self {
            nodes: CORNERS.map(|corner| mirrored(&self.nodes[corner])),
            normals: CORNERS.map(|corner| mirrored(&self.normals[corner])),
            edge_normals: EDGES.map(|edge| mirrored(&self.edge_normals[edge])),
            edge_thickness: EDGES.map(|edge| self.edge_thickness[edge]),
            free_edges: EDGES.map(|edge| self.free_edges[edge]),
        }
    }

    /// Whether an element on it is that on `other` but for rounding.
    pub(super) fn is_as_good_as(&self, other: &Self) -> bool {
        let same = |a: &[Vector3<f64>; 3], b: &[Vector3<f64>; 3]| a.iter().zip(b).all(|(a, b)| (a - b).amax() <= SAME);
        self.free_edges == other.free_edges
            && same(&self.nodes, &other.nodes)
            && same(&self.normals, &other.normals)
            && same(&self.edge_normals, &other.edge_normals)
            && self.edge_thickness.iter().zip(&other.edge_thickness).all(|(a, b)| (a - b).abs() <= SAME)
    }
}

impl Element {
    /// The element on the mirrored patch, of wood that is its own mirror image.
    pub(super) fn mirrored(&self) -> Self {
        let stands_for = |at: usize| 6 * CORNERS[at / 6] + at % 6;
        let stiffness = ElementMatrix::from_fn(|row, column| {
            SIGNS[row % 6] * SIGNS[column % 6] * self.stiffness[(stands_for(row), stands_for(column))]
        });
        Self { stiffness, normal: mirrored(&self.normal), area: self.area }
    }
}

impl Equations {
    /// How the mirror takes the equations onto each other; `image_of` (node): the node that it mirrors, none for one that has an image of its own or
    /// lies in the mirror. None where a node is held otherwise than its image.
    #[must_use]
    pub fn reflection(&self, image_of: &[Option<u32>]) -> Option<Reflection> {
        let mut reflection = Reflection { image_of: vec![0; self.count()], turns: vec![false; self.count()] };
        for (node, (equations, image_of)) in self.equation_of.iter().zip(image_of).enumerate() {
            let own = self.equation_of.get(image_of.map_or(node, |own| own as usize))?;
            for ((image, own), sign) in equations.iter().zip(own).zip(SIGNS) {
                if let (Some(image), Some(own)) = (image, own) {
                    reflection.image_of[*image as usize] = *own;
                    reflection.turns[*image as usize] = sign < 0.0;
                }
                if image.is_some() != own.is_some() {
                    return None;
                }
            }
        }
        Some(reflection)
    }
}

#[cfg(test)]
mod tests {
    use crate::design::Design;
    use crate::mesh::MeshSize;
    use crate::top::Stages;

    /// As the plan's second half is numbered.
    #[test]
    fn a_top_with_equal_sides_has_elements_that_mirror_each_other() {
        for size in [MeshSize::Preview, MeshSize::Standard] {
            let mut stages = Stages::new(Design::demo());
            let (_, carved) = stages.carved(size).unwrap();
            let half = carved.geometry.triangles().len() / 2;
            for triangle in 0..half {
                let [own, image] = [triangle, half + triangle].map(|triangle| carved.geometry.patch(triangle));
                assert!(own.mirrored().is_as_good_as(&image), "{size:?}, {triangle}: {own:?} {image:?}");
            }
        }
    }
}
