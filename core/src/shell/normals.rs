//! Normals of a smooth surface that is known by its facets only.

use nalgebra::{Matrix5, Vector3, Vector5};

use crate::ascending::distinct;

/// Facets that lean from the mean of those round a node by more than this meet in a fold there, not in a smooth surface seen
/// coarsely. Half of 45°: eight facets round a circle still count as smooth, the corner of a box does not.
const FOLD_COSINE: f64 = 0.92;

/// A quadratic surface through a node has five coefficients; with twice as many points about it the fit is sure, and at
/// the corner of a sheet three rings of neighbours bring them.
const ENOUGH: usize = 10;
const MOST_RINGS: usize = 3;
/// Below this many other nodes the coefficients mean nothing.
const FEWEST: usize = 6;

/// (triangle, corner): unit normals of the smooth surface through the facets, on each facet's side; the facet's own where
/// the facets meet in a fold.
///
/// First from the facets round each node, weighted by the sine of the corner over the product of its edges (Max 1999,
/// "Weights for computing vertex normals from facet normals", J. Graphics Tools 4: exact on a sphere). Those lean
/// inwards along an open edge, so a quadratic surface is then fitted to the nodes round each (Cazals & Pouget 2005,
/// "Estimating differential quantities using polynomial fitting of osculating jets", Comput. Aided Geom. Design 22).
pub(super) fn estimated_normals(nodes: &[Vector3<f64>], triangles: &[[u32; 3]]) -> Vec<[Vector3<f64>; 3]> {
    let facets: Vec<_> = triangles
        .iter()
        .map(|corners| {
            let [a, b, c] = corners.map(|node| nodes[node as usize]);
            (b - a).cross(&(c - a))
        })
        .collect();
    let around = triangles_around(nodes.len(), triangles);
    let first: Vec<_> =
        (0..nodes.len()).map(|node| smooth_normal(node, nodes, triangles, &facets, &around[node])).collect();
    let smooth: Vec<_> = first
        .iter()
        .enumerate()
        .map(|(node, normal)| normal.map(|normal| fitted_normal(node, &normal, nodes, triangles, &facets, &around)))
        .collect();
    triangles
        .iter()
        .zip(&facets)
        .map(|(corners, facet)| {
            corners.map(|node| match smooth[node as usize] {
                Some(normal) if normal.dot(facet) < 0.0 => -normal,
                Some(normal) => normal,
                None => facet.normalize(),
            })
        })
        .collect()
}

/// (node): the triangles it belongs to.
fn triangles_around(nodes: usize, triangles: &[[u32; 3]]) -> Vec<Vec<u32>> {
    let mut around = vec![Vec::new(); nodes];
    for (triangle, corners) in triangles.iter().enumerate() {
        for &node in corners {
            around[node as usize].push(triangle as u32);
        }
    }
    around
}

/// Max's mean of the facets round `node`; none when they meet in a fold.
fn smooth_normal(
    node: usize,
    nodes: &[Vector3<f64>],
    triangles: &[[u32; 3]],
    facets: &[Vector3<f64>],
    around: &[u32],
) -> Option<Vector3<f64>> {
    let reference = facets[around[0] as usize];
    let here = nodes[node];
    let mut sum = Vector3::zeros();
    for &triangle in around {
        let others = triangles[triangle as usize].iter().filter(|&&other| other as usize != node);
        let weight: f64 = others.map(|&other| (nodes[other as usize] - here).norm_squared()).product();
        let facet = facets[triangle as usize];
        // A neighbour may be wound the other way round.
        sum += facet * (facet.dot(&reference).signum() / weight);
    }
    let normal = sum.normalize();
    let smooth = around.iter().all(|&t| facets[t as usize].normalize().dot(&normal).abs() > FOLD_COSINE);
    smooth.then_some(normal)
}

/// The normal of a quadratic surface through `node` and near those round it, `axis` being its first
/// estimate; `axis` itself where these are too few to tell.
fn fitted_normal(
    node: usize,
    axis: &Vector3<f64>,
    nodes: &[Vector3<f64>],
    triangles: &[[u32; 3]],
    facets: &[Vector3<f64>],
    around: &[Vec<u32>],
) -> Vector3<f64> {
    // Only across facets of the same smooth surface.
    let ring = |centre: u32| {
        around[centre as usize]
            .iter()
            .filter(|&&t| facets[t as usize].normalize().dot(axis).abs() > FOLD_COSINE)
            .flat_map(|&t| triangles[t as usize])
    };
    let mut near = vec![node as u32];
    for _ in 0..MOST_RINGS {
        near = distinct(near.iter().copied().flat_map(ring).collect());
        if near.len() > ENOUGH {
            break;
        }
    }
    near.retain(|&other| other as usize != node);
    let side = axis.cross(&if axis.x.abs() < 0.5 { Vector3::x() } else { Vector3::y() }).normalize();
    let other_side = axis.cross(&side);
    let mut normal_equations = Matrix5::zeros();
    let mut right = Vector5::zeros();
    for &other in &near {
        let to = nodes[other as usize] - nodes[node];
        let (x, y, z) = (to.dot(&side), to.dot(&other_side), to.dot(axis));
        // Each point counts as its slope would.
        let weight = 1.0 / (x * x + y * y);
        let row = Vector5::new(x, y, x * x, x * y, y * y);
        normal_equations += row * row.transpose() * weight;
        right += row * (z * weight);
    }
    if near.len() < FEWEST {
        return *axis;
    }
    match normal_equations.cholesky() {
        Some(factor) => {
            let surface = factor.solve(&right);
            (axis - side * surface[0] - other_side * surface[1]).normalize()
        }
        None => *axis,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A patch of 9 × 9 nodes of the surface z = height(x, y), 1 mm apart.
    fn patch(height: impl Fn(f64, f64) -> f64) -> (Vec<Vector3<f64>>, Vec<[u32; 3]>) {
        let nodes =
            (0..81).map(|k| (f64::from(k % 9), f64::from(k / 9))).map(|(x, y)| Vector3::new(x, y, height(x, y)));
        let triangles = (0..64_u32).flat_map(|cell| {
            let a = cell / 8 * 9 + cell % 8;
            [[a, a + 1, a + 10], [a, a + 10, a + 9]]
        });
        (nodes.collect(), triangles.collect())
    }

    /// The normal of a graph from its gradient (calculus).
    #[test]
    fn a_quadratic_surface_has_its_own_normals_to_the_edge() {
        let (nodes, triangles) = patch(|x, y| 0.01 * x * x - 0.007 * y * y + 0.004 * x * y + 0.1 * x);
        let normals = estimated_normals(&nodes, &triangles);
        for (corners, normals) in triangles.iter().zip(&normals) {
            for (&node, normal) in corners.iter().zip(normals) {
                let p = nodes[node as usize];
                let gradient = (0.02 * p.x + 0.004 * p.y + 0.1, -0.014 * p.y + 0.004 * p.x);
                let exact = Vector3::new(-gradient.0, -gradient.1, 1.0).normalize();
                // The fit is exact along its own axis, which leans from z by the slope: cubic terms of that size are left.
                assert!((normal - exact).norm() < 3e-4, "node {node}: {:e}", (normal - exact).norm());
            }
        }
    }

    #[test]
    fn a_fold_stays_a_fold() {
        let nodes = [[0.0, 0.0, 0.0], [0.0, 10.0, 0.0], [10.0, 0.0, 0.0], [0.0, 0.0, 10.0]].map(Vector3::from);
        let normals = estimated_normals(&nodes, &[[0, 2, 1], [0, 1, 3]]);
        assert!((normals[0][0] - Vector3::z()).norm() < 1e-12);
        assert!((normals[1][0] - Vector3::x()).norm() < 1e-12);
    }
}
