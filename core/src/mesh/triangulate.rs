//! The constrained Delaunay triangulation of boundary and interior nodes.

use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

use super::{MeshError, fill::Polygons};
use crate::plan::Point;

/// Counter-clockwise triangles of the wood. `edges` are the boundary's chords; the first `boundary` points lie on it.
pub(super) fn triangles(
    points: &[Point],
    edges: &[[usize; 2]],
    boundary: usize,
    polygons: &Polygons,
) -> Result<Vec<[u32; 3]>, MeshError> {
    let vertices = points.iter().map(|p| Point2::new(p[0], p[1])).collect();
    let mut refused = Vec::new();
    let triangulation: ConstrainedDelaunayTriangulation<Point2<f64>> =
        ConstrainedDelaunayTriangulation::try_bulk_load_cdt(vertices, edges.to_vec(), |edge| refused.push(edge))
            .map_err(|error| MeshError::Triangulation(error.to_string()))?;
    if let Some(first) = refused.first() {
        return Err(MeshError::BoundariesCross { count: refused.len(), at: points[first[0]] });
    }
    if triangulation.num_vertices() != points.len() {
        return Err(MeshError::Triangulation("two nodes in one place".into()));
    }
    let mut triangles = Vec::with_capacity(2 * points.len());
    for face in triangulation.inner_faces() {
        let corners = face.vertices().map(|vertex| vertex.fix().index());
        // Only a triangle with all corners on the boundary can lie outside the wood.
        if corners.iter().all(|&corner| corner < boundary) {
            let middle = [0, 1].map(|k| corners.iter().map(|&corner| points[corner][k]).sum::<f64>() / 3.0);
            if !polygons.contain(middle) {
                continue;
            }
        }
        triangles.push(corners.map(|corner| corner as u32));
    }
    Ok(triangles)
}
