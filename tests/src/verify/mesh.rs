//! Regular triangle meshes of the shapes that the literature uses.

use std::f64::consts::TAU;

/// A triangulated surface, mm, whose nodes still know their place in the parameter plane.
pub(super) struct Mesh {
    /// (node, xyz) mm.
    pub(super) nodes_mm: Vec<[f64; 3]>,
    /// (triangle, corner).
    pub(super) triangles: Vec<[u32; 3]>,
    /// (node) the two parameters it was made from.
    pub(super) parameters: Vec<[f64; 2]>,
}

/// Two parameters this near are one: far below a cell, far above rounding.
const SAME: f64 = 1e-9;

impl Mesh {
    /// A grid of `columns` × `rows` cells over the unit square, laid by `place`; diagonals alternate, so that the mesh
    /// prefers no direction.
    pub(super) fn grid(columns: usize, rows: usize, place: impl Fn(f64, f64) -> [f64; 3]) -> Mesh {
        let parameters: Vec<[f64; 2]> = (0..=rows)
            .flat_map(|j| (0..=columns).map(move |i| [i as f64 / columns as f64, j as f64 / rows as f64]))
            .collect();
        let node = |i: usize, j: usize| (j * (columns + 1) + i) as u32;
        Mesh::new(parameters, cells(columns, rows, node), place)
    }

    /// A grid closed on itself in its first direction, as on a tube or ring: `columns` cells round, `rows` along.
    pub(super) fn closed(columns: usize, rows: usize, place: impl Fn(f64, f64) -> [f64; 3]) -> Mesh {
        let parameters: Vec<[f64; 2]> = (0..=rows)
            .flat_map(|j| (0..columns).map(move |i| [i as f64 / columns as f64, j as f64 / rows as f64]))
            .collect();
        let node = |i: usize, j: usize| (j * columns + i % columns) as u32;
        Mesh::new(parameters, cells(columns, rows, node), place)
    }

    /// A disc of `rings` rings, six more nodes in each; parameters are radius (0 to 1) and share of the turn.
    pub(super) fn disc(rings: u32, place: impl Fn(f64, f64) -> [f64; 3]) -> Mesh {
        let mut parameters = vec![[0.0, 0.0]];
        let mut triangles = Vec::new();
        let first = |ring: u32| if ring == 0 { 0 } else { 1 + 3 * ring * (ring - 1) };
        for ring in 1..=rings {
            let count = 6 * ring;
            let radius = f64::from(ring) / f64::from(rings);
            parameters.extend((0..count).map(|k| [radius, f64::from(k) / f64::from(count)]));
            for sector in 0..6 {
                let outer = |k: u32| first(ring) + (sector * ring + k) % count;
                let inner = |k: u32| match ring {
                    1 => 0,
                    _ => first(ring - 1) + (sector * (ring - 1) + k) % (6 * (ring - 1)),
                };
                triangles.extend((0..ring).map(|k| [inner(k), outer(k), outer(k + 1)]));
                triangles.extend((1..ring).map(|k| [inner(k - 1), outer(k), inner(k)]));
            }
        }
        Mesh::new(parameters, triangles, place)
    }

    /// A triangle cut into `cuts`² triangles; parameters are the last two barycentric coordinates.
    pub(super) fn triangle(cuts: u32, place: impl Fn(f64, f64) -> [f64; 3]) -> Mesh {
        let n = f64::from(cuts);
        let parameters = (0..=cuts).flat_map(|j| (0..=cuts - j).map(move |i| [f64::from(i) / n, f64::from(j) / n]));
        let node = |i: u32, j: u32| j * (cuts + 1) - j * (j.max(1) - 1) / 2 + i;
        let mut triangles = Vec::new();
        for j in 0..cuts {
            for i in 0..cuts - j {
                triangles.push([node(i, j), node(i + 1, j), node(i, j + 1)]);
                if i + j + 1 < cuts {
                    triangles.push([node(i + 1, j), node(i + 1, j + 1), node(i, j + 1)]);
                }
            }
        }
        Mesh::new(parameters.collect(), triangles, place)
    }

    fn new(parameters: Vec<[f64; 2]>, triangles: Vec<[u32; 3]>, place: impl Fn(f64, f64) -> [f64; 3]) -> Mesh {
        let nodes_mm = parameters.iter().map(|&[a, b]| place(a, b)).collect();
        Mesh { nodes_mm, triangles, parameters }
    }

    /// The node with these parameters.
    pub(super) fn at(&self, a: f64, b: f64) -> usize {
        let near = |p: &[f64; 2]| (p[0] - a).abs() < SAME && (p[1] - b).abs() < SAME;
        self.parameters.iter().position(near).expect("the case names a node of its own mesh")
    }

    /// (node) share of the surface's area in mm² that a node stands for: a third of each triangle at it.
    pub(super) fn areas_mm2(&self) -> Vec<f64> {
        let mut areas = vec![0.0; self.nodes_mm.len()];
        for triangle in &self.triangles {
            let [a, b, c] = triangle.map(|node| self.nodes_mm[node as usize]);
            let (u, v) = ([0, 1, 2].map(|k| b[k] - a[k]), [0, 1, 2].map(|k| c[k] - a[k]));
            let normal = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
            let area = 0.5 * normal.iter().map(|n| n * n).sum::<f64>().sqrt();
            for &node in triangle {
                areas[node as usize] += area / 3.0;
            }
        }
        areas
    }
}

fn cells(columns: usize, rows: usize, node: impl Fn(usize, usize) -> u32) -> Vec<[u32; 3]> {
    (0..rows)
        .flat_map(|j| (0..columns).map(move |i| (i, j)))
        .flat_map(|(i, j)| {
            let (a, b, c, d) = (node(i, j), node(i + 1, j), node(i + 1, j + 1), node(i, j + 1));
            if (i + j) % 2 == 0 { [[a, b, c], [a, c, d]] } else { [[a, b, d], [b, c, d]] }
        })
        .collect()
}

/// Whether a parameter stands at this value.
pub(super) fn stands_at(parameter: f64, value: f64) -> bool {
    (parameter - value).abs() < SAME
}

/// A point on a circle: share of the turn to (cos, sin).
pub(super) fn on_circle(turn: f64) -> (f64, f64) {
    let (sin, cos) = (TAU * turn).sin_cos();
    (cos, sin)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Areas of square, disc and triangle, in closed form; the disc's polygon is that of its outer nodes.
    #[test]
    fn meshes_cover_their_shape_once() {
        let area = |mesh: &Mesh| mesh.areas_mm2().iter().sum::<f64>();
        assert!((area(&Mesh::grid(5, 4, |x, y| [x, y, 0.0])) - 1.0).abs() < 1e-12);
        assert!((area(&Mesh::triangle(7, |x, y| [x, y, 0.0])) - 0.5).abs() < 1e-12);
        let disc = Mesh::disc(4, |r, turn| [r * on_circle(turn).0, r * on_circle(turn).1, 0.0]);
        let polygon = 12.0 * (TAU / 24.0).sin();
        assert!((area(&disc) - polygon).abs() < 1e-12, "{} {polygon}", area(&disc));
        let tube = Mesh::closed(24, 3, |turn, z| [on_circle(turn).0, on_circle(turn).1, z]);
        assert!((area(&tube) - 48.0 * (TAU / 48.0).sin()).abs() < 1e-12);
    }
}
