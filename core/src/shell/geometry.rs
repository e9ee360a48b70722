//! The shell's mid-surface as the elements see it.

use nalgebra::Vector3;

use super::error::ShellError;
use super::normals::estimated_normals;
use super::patch::Patch;

const M_PER_MM: f64 = 1e-3;

/// A checked triangulated mid-surface in metres.
#[derive(Debug, Clone, PartialEq)]
pub struct ShellGeometry {
    pub(super) nodes_m: Vec<Vector3<f64>>,
    /// (triangle, corner): the surface's own normal at each corner of each triangle, on the side of the facet's normal.
    pub(super) corner_normals: Vec<[Vector3<f64>; 3]>,
    pub(super) thickness_m: Vec<f64>,
    /// (triangle, edge): what the surface is at the middle of each edge, where that is known.
    mid_edges: Option<Vec<MidEdges>>,
    /// (triangle, edge): whether the shell ends there and no couple holds it.
    free_edges: Vec<[bool; 3]>,
    pub(super) triangles: Vec<[u32; 3]>,
}

impl ShellGeometry {
    /// Smallest height over longest edge of a triangle: below it the in-plane axes are lost to rounding.
    pub const SLENDERNESS_LIMIT: f64 = 1e-6;

    /// Checks a mesh and takes it over.
    ///
    /// `nodes_mm` (node, xyz); `normals` (node, xyz), the smooth surface's own unit normals, where known, else they are
    /// estimated from the facets round each node (and left flat where these meet in a fold); `thickness_mm` (node);
    /// `triangles` (triangle, corner).
    ///
    /// # Errors
    /// The first list, node or triangle that can't be used.
    pub fn new(
        nodes_mm: &[[f64; 3]],
        normals: Option<&[[f64; 3]]>,
        thickness_mm: &[f64],
        triangles: &[[u32; 3]],
    ) -> Result<Self, ShellError> {
        check_nodes(nodes_mm, normals, thickness_mm)?;
        check_triangles(nodes_mm, triangles)?;
        let nodes_m: Vec<_> = nodes_mm.iter().map(|node| Vector3::from(*node) * M_PER_MM).collect();
        let facet_normals: Vec<_> = triangles
            .iter()
            .map(|&[a, b, c]| {
                let [a, b, c] = [a, b, c].map(|node| nodes_m[node as usize]);
                (b - a).cross(&(c - a))
            })
            .collect();
        let corner_normals = match normals {
            Some(normals) => given_normals(normals, &facet_normals, triangles),
            None => estimated_normals(&nodes_m, triangles),
        };
        Ok(Self {
            free_edges: vec![[false; 3]; triangles.len()],
            nodes_m,
            corner_normals,
            thickness_m: thickness_mm.iter().map(|t| t * M_PER_MM).collect(),
            mid_edges: None,
            triangles: triangles.to_vec(),
        })
    }

    /// The same with what the surface is over the edges' middles, where it is known better than by its nodes: `normals`
    /// (edge, xyz) unit, `thickness_mm` (edge), and `edges` (triangle, side), the edge from a corner to the next.
    ///
    /// # Panics
    /// When a triangle has no edges or an edge isn't in the lists.
    #[must_use]
    pub fn with_mid_edges(mut self, normals: &[[f64; 3]], thickness_mm: &[f64], edges: &[[u32; 3]]) -> Self {
        let at = |edges: &[u32; 3], facing: &Vector3<f64>| MidEdges {
            normals: edges.map(|edge| {
                let normal = Vector3::from(normals[edge as usize]);
                if normal.dot(facing) < 0.0 { -normal } else { normal }
            }),
            thickness_m: edges.map(|edge| thickness_mm[edge as usize] * M_PER_MM),
        };
        assert_eq!(edges.len(), self.triangles.len(), "every triangle has three edges");
        self.mid_edges = Some(edges.iter().zip(&self.corner_normals).map(|(edges, n)| at(edges, &n[0])).collect());
        self
    }

    /// The same with edges free to shed twist in a layer of their own (see `edge_layer`): (triangle, edge), whether the
    /// shell ends there and no couple holds it.
    ///
    /// # Panics
    /// When the list has not as many triangles as the shell.
    #[must_use]
    pub fn with_free_edges(mut self, free: Vec<[bool; 3]>) -> Self {
        assert_eq!(free.len(), self.triangles.len(), "every triangle has three edges");
        self.free_edges = free;
        self
    }

    /// The surface that `triangle` stands for.
    pub(super) fn patch(&self, triangle: usize) -> Patch {
        let corners = self.triangles[triangle].map(|node| node as usize);
        let normals = self.corner_normals[triangle];
        let thickness = corners.map(|node| self.thickness_m[node]);
        let between = Patch::between(corners.map(|node| self.nodes_m[node]), normals, thickness);
        let free_edges = self.free_edges[triangle];
        match &self.mid_edges {
            Some(known) => {
                let MidEdges { normals, thickness_m } = known[triangle];
                Patch { edge_normals: normals, edge_thickness: thickness_m, free_edges, ..between }
            }
            None => Patch { free_edges, ..between },
        }
    }

    /// Number of nodes.
    #[must_use]
    pub fn node_count(&self) -> usize {
        self.nodes_m.len()
    }

    /// (node, xyz), metres.
    #[must_use]
    pub fn nodes_m(&self) -> &[Vector3<f64>] {
        &self.nodes_m
    }

    /// (node), metres.
    #[must_use]
    pub fn thickness_m(&self) -> &[f64] {
        &self.thickness_m
    }

    /// Unit normal of a facet, by the order of its corners.
    pub(crate) fn facet_normal(&self, triangle: usize) -> Vector3<f64> {
        let [a, b, c] = self.triangles[triangle].map(|node| self.nodes_m[node as usize]);
        (b - a).cross(&(c - a)).normalize()
    }

    /// The triangles (triangle, corner).
    #[must_use]
    pub fn triangles(&self) -> &[[u32; 3]] {
        &self.triangles
    }

    /// (node, xyz): unit normals, the means of the corners' by area, on the side of the triangles' normals.
    #[must_use]
    pub fn node_normals(&self) -> Vec<Vector3<f64>> {
        let mut sums = vec![Vector3::zeros(); self.node_count()];
        for ((corners, normals), area) in self.triangles.iter().zip(&self.corner_normals).zip(self.areas_m2()) {
            for (&node, normal) in corners.iter().zip(normals) {
                sums[node as usize] += normal * area;
            }
        }
        // Where facets fold back on each other there is no mean; none of them then says more than the other.
        sums.iter().map(|sum| sum.try_normalize(0.0).unwrap_or_default()).collect()
    }

    /// (node): the volume nearest to it, m³; a third of each triangle's area times the node's own thickness.
    #[must_use]
    pub fn node_volumes_m3(&self) -> Vec<f64> {
        self.node_areas_m2().iter().zip(&self.thickness_m).map(|(area, thickness)| area * thickness).collect()
    }

    /// (node): the area nearest to it, m²; a third of each triangle's.
    #[must_use]
    pub fn node_areas_m2(&self) -> Vec<f64> {
        let mut areas = vec![0.0; self.node_count()];
        for (corners, area) in self.triangles.iter().zip(self.areas_m2()) {
            corners.iter().for_each(|&node| areas[node as usize] += area / 3.0);
        }
        areas
    }

    /// The same mid-surface with thickness multiplied by `factor`.
    pub(crate) fn thickened(&self, factor: f64) -> Self {
        let mut thickened = self.clone();
        let mid_edges = thickened.mid_edges.iter_mut().flatten().flat_map(|at| &mut at.thickness_m);
        thickened.thickness_m.iter_mut().chain(mid_edges).for_each(|t| *t *= factor);
        thickened
    }

    /// (triangle): flat area, m².
    fn areas_m2(&self) -> impl Iterator<Item = f64> + '_ {
        self.triangles.iter().map(|nodes| {
            let [a, b, c] = nodes.map(|node| self.nodes_m[node as usize]);
            0.5 * (b - a).cross(&(c - a)).norm()
        })
    }
}

/// The surface at the middles of a triangle's edges.
#[derive(Debug, Clone, Copy, PartialEq)]
struct MidEdges {
    normals: [Vector3<f64>; 3],
    thickness_m: [f64; 3],
}

fn check_nodes(nodes_mm: &[[f64; 3]], normals: Option<&[[f64; 3]]>, thickness_mm: &[f64]) -> Result<(), ShellError> {
    let nodes = nodes_mm.len();
    if thickness_mm.len() != nodes {
        return Err(ShellError::Lengths { what: "the thickness list", got: thickness_mm.len(), nodes });
    }
    if let Some(normals) = normals
        && normals.len() != nodes
    {
        return Err(ShellError::Lengths { what: "the list of normals", got: normals.len(), nodes });
    }
    for (node, (place, &thickness)) in nodes_mm.iter().zip(thickness_mm).enumerate() {
        if let Some(&value) = place.iter().find(|value| !value.is_finite()) {
            return Err(ShellError::BadNodeValue { what: "a coordinate", node, value, limit: "" });
        }
        if !(thickness.is_finite() && thickness > 0.0) {
            let limit = " above zero";
            return Err(ShellError::BadNodeValue { what: "the thickness", node, value: thickness, limit });
        }
    }
    for (node, normal) in normals.unwrap_or_default().iter().enumerate() {
        let length = Vector3::from(*normal).norm();
        // Unit to single precision: enough to tell a direction from a mistake.
        if length.is_nan() || (length - 1.0).abs() > 1e-6 {
            let limit = " equal to one";
            return Err(ShellError::BadNodeValue { what: "the normal's length", node, value: length, limit });
        }
    }
    Ok(())
}

fn check_triangles(nodes_mm: &[[f64; 3]], triangles: &[[u32; 3]]) -> Result<(), ShellError> {
    let mut used = vec![false; nodes_mm.len()];
    for (triangle, &nodes) in triangles.iter().enumerate() {
        for node in nodes {
            let Some(used) = used.get_mut(node as usize) else {
                return Err(ShellError::NoSuchNode { triangle, node, last: nodes_mm.len().saturating_sub(1) });
            };
            *used = true;
        }
        let [a, b, c] = nodes.map(|node| Vector3::from(nodes_mm[node as usize]));
        let longest = (b - a).norm_squared().max((c - b).norm_squared()).max((a - c).norm_squared());
        let slenderness = (b - a).cross(&(c - a)).norm() / longest;
        // Not a number where all three corners coincide.
        if slenderness.is_nan() || slenderness <= ShellGeometry::SLENDERNESS_LIMIT {
            return Err(ShellError::Sliver { triangle, nodes, slenderness, limit: ShellGeometry::SLENDERNESS_LIMIT });
        }
    }
    match used.iter().position(|used| !used) {
        Some(node) => Err(ShellError::LooseNode { node }),
        None => Ok(()),
    }
}

fn given_normals(
    normals: &[[f64; 3]],
    facet_normals: &[Vector3<f64>],
    triangles: &[[u32; 3]],
) -> Vec<[Vector3<f64>; 3]> {
    triangles
        .iter()
        .zip(facet_normals)
        .map(|(nodes, facet)| {
            nodes.map(|node| {
                let normal = Vector3::from(normals[node as usize]);
                if normal.dot(facet) < 0.0 { -normal } else { normal }
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const SQUARE: [[f64; 3]; 4] = [[0.0, 0.0, 0.0], [10.0, 0.0, 0.0], [10.0, 10.0, 0.0], [0.0, 10.0, 0.0]];

    fn problem(nodes: &[[f64; 3]], thickness: &[f64], triangles: &[[u32; 3]]) -> ShellError {
        ShellGeometry::new(nodes, None, thickness, triangles).unwrap_err()
    }

    #[test]
    fn what_cannot_be_a_shell_is_named() {
        let thick = [3.0; 4];
        let whole = [[0, 1, 2], [0, 2, 3]];
        assert!(matches!(problem(&SQUARE, &thick[..3], &whole), ShellError::Lengths { got: 3, nodes: 4, .. }));
        assert!(matches!(problem(&SQUARE, &[3.0, 0.0, 3.0, 3.0], &whole), ShellError::BadNodeValue { node: 1, .. }));
        assert!(matches!(
            problem(&SQUARE, &[3.0, f64::NAN, 3.0, 3.0], &whole),
            ShellError::BadNodeValue { node: 1, .. }
        ));
        assert!(matches!(problem(&SQUARE, &thick, &[[0, 1, 7]]), ShellError::NoSuchNode { node: 7, last: 3, .. }));
        assert!(matches!(problem(&SQUARE, &thick, &[[0, 1, 1]]), ShellError::Sliver { triangle: 0, .. }));
        assert!(matches!(problem(&SQUARE, &thick, &[[0, 1, 2]]), ShellError::LooseNode { node: 3 }));
        let mut bad = SQUARE;
        bad[2][1] = f64::INFINITY;
        assert!(matches!(problem(&bad, &thick, &whole), ShellError::BadNodeValue { node: 2, .. }));
    }
}
