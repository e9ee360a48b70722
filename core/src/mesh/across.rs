//! The middle of carved wood as a surface of its own.

use nalgebra::Vector3;

use super::{MidSurface, PlanMesh};

/// Which way the middle of the wood faces and how thick the wood is across it.
///
/// Thickness is laid off from the outer surface, so that where it changes the middle leans from that surface by half the change per
/// length: n + ½∇t, by up to 6° where the edge thins into the channel. Spruce on a slope softens with the slope's square, and what
/// counts is the slope of the middle, the mean of both faces': with the outer surface's normals a carved top is 0.1 to 0.7 % too
/// low, and nearly 0.1 % too heavy.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Across {
    /// (node, xyz), unit, outwards.
    pub normals: Vec<[f64; 3]>,
    /// (node), mm, along them.
    pub thickness_mm: Vec<f64>,
    /// (edge, xyz), unit, outwards: over the edge's middle in plan.
    pub edge_normals: Vec<[f64; 3]>,
    /// (edge), mm, along them.
    pub edge_thickness_mm: Vec<f64>,
}

impl Across {
    /// Of wood that lies evenly to both sides of the middle of `mid`.
    pub(super) fn even(mid: &MidSurface) -> Across {
        Across {
            normals: mid.normals.clone(),
            thickness_mm: mid.thickness_mm.clone(),
            edge_normals: mid.edge_normals.clone(),
            edge_thickness_mm: mid.edge_thickness_mm.clone(),
        }
    }

    /// Of wood that was laid off from the outer surface, on `mesh`.
    ///
    /// The thickness' slopes are those of the quadratic through corners and edges' middles of each triangle; at a node or an edge their
    /// mean by area.
    pub(super) fn carved(mesh: &PlanMesh, mid: &MidSurface) -> Across {
        let mut across = Across::even(mid);
        let mut at_nodes = vec![Slope::default(); mid.nodes_mm.len()];
        let mut at_edges = vec![Slope::default(); mid.edge_normals.len()];
        for (nodes, edges) in mesh.triangles.iter().zip(&mesh.edges.of_triangle) {
            let places = nodes.map(|node| mid.nodes_mm[node as usize].into());
            let t = nodes.map(|node| mid.thickness_mm[node as usize]);
            let t_edges = edges.map(|edge| mid.edge_thickness_mm[edge as usize]);
            let (area, gradients) = gradients(&places, &nodes.map(|node| mid.normals[node as usize].into()));
            let add = |to: &mut Slope, factors: [f64; 3]| {
                to.area += area;
                for (factor, gradient) in factors.iter().zip(&gradients) {
                    to.times_area += gradient * (area * factor);
                }
            };
            for k in 0..3 {
                let (i, j) = ((k + 1) % 3, (k + 2) % 3);
                // At corner k, and at the middle of the edge from k to i.
                let mut factors = [0.0; 3];
                (factors[k], factors[i], factors[j]) = (3.0 * t[k], 4.0 * t_edges[k] - t[i], 4.0 * t_edges[j] - t[j]);
                add(&mut at_nodes[nodes[k] as usize], factors);
                let own = 2.0 * t_edges[k];
                (factors[k], factors[i]) = (t[k] + own, t[i] + own);
                factors[j] = 2.0 * (t_edges[i] + t_edges[j]) - t[j];
                add(&mut at_edges[edges[k] as usize], factors);
            }
        }
        lean(&at_nodes, &mut across.normals, &mut across.thickness_mm);
        lean(&at_edges, &mut across.edge_normals, &mut across.edge_thickness_mm);
        across
    }
}

/// The thickness' slope where several triangles meet, summed up.
#[derive(Clone, Copy, Default)]
struct Slope {
    times_area: Vector3<f64>,
    area: f64,
}

/// Twice the area of a triangle seen along the mean of its corners' `normals`, and there the gradients of its barycentric coordinates.
fn gradients([a, b, c]: &[Vector3<f64>; 3], normals: &[Vector3<f64>; 3]) -> (f64, [Vector3<f64>; 3]) {
    let sum: Vector3<f64> = normals.iter().sum();
    let level = |side: Vector3<f64>| side - sum * (side.dot(&sum) / sum.norm_squared());
    let (ab, ca, bc) = (level(b - a), level(a - c), level(c - b));
    let facing = ca.cross(&ab);
    let square = facing.norm_squared();
    (square.sqrt(), [bc, ca, ab].map(|opposite| facing.cross(&opposite) / square))
}

/// Turns normals by half the thickness' slope, and takes thickness along them.
fn lean(slopes: &[Slope], normals: &mut [[f64; 3]], thickness_mm: &mut [f64]) {
    for ((slope, normal), thickness) in slopes.iter().zip(normals).zip(thickness_mm) {
        let outer = Vector3::from(*normal);
        let half = slope.times_area * (0.5 / slope.area);
        let leaning = outer + half - outer * half.dot(&outer);
        let length = leaning.norm();
        *normal = (leaning / length).into();
        *thickness /= length;
    }
}

#[cfg(test)]
mod tests {
    use super::super::{MeshSize, Sample};
    use super::*;
    use crate::design::Design;
    use crate::plan::Point;
    use crate::top::Shape;

    const STEP_MM: f64 = 1e-3;

    fn demo() -> (Shape, PlanMesh) {
        let shape = Shape::new(&Design::demo()).unwrap();
        let mesh = PlanMesh::new(&shape.outline, &shape.holes, MeshSize::Standard).unwrap();
        (shape, mesh)
    }

    /// Normal of the surface `middle` over `p`, by differences.
    fn differenced(middle: impl Fn(Point) -> [f64; 3], [x, y]: Point) -> Vector3<f64> {
        let change = |there: Point, here: Point| Vector3::from(middle(there)) - Vector3::from(middle(here));
        let across = change([x + STEP_MM, y], [x - STEP_MM, y]);
        let along = change([x, y + STEP_MM], [x, y - STEP_MM]);
        across.cross(&along).normalize()
    }

    fn apart(a: &[f64; 3], b: &Vector3<f64>) -> f64 {
        (Vector3::from(*a) - b).norm()
    }

    /// A level board thinned like a wedge has a plane middle (geometry), and its thickness across that is t cos of the lean.
    #[test]
    fn the_middle_of_a_wedge_leans_by_half_its_angle() {
        let (_, mesh) = demo();
        let sample = |[x, y]: Point| {
            let thickness_mm = 30.0 + 0.2 * x - 0.05 * y;
            Sample { middle_mm: [x, y, -0.5 * thickness_mm], normal: [0.0, 0.0, 1.0], thickness_mm }
        };
        let mid = MidSurface::laid(&mesh, None, sample);
        let across = Across::carved(&mesh, &mid);
        let exact = Vector3::new(0.1, -0.025, 1.0).normalize();
        for normal in across.normals.iter().chain(&across.edge_normals) {
            assert!(apart(normal, &exact) < 1e-9, "{normal:?}");
        }
        for ((across, laid), normal) in
            across.edge_thickness_mm.iter().zip(&mid.edge_thickness_mm).zip(&across.edge_normals)
        {
            assert!((across / laid - normal[2]).abs() < 1e-12);
        }
    }

    /// Against differences of the carved middle itself (calculus); the mesh knows the thickness at corners and mid-edges only.
    #[test]
    fn the_demonstrations_middle_is_known_better_than_by_its_outer_surface() {
        let (shape, mesh) = demo();
        let sample = |p| Sample::carved(&shape.surface, &shape.graduation, p);
        let mid = MidSurface::new(&mesh, &shape.surface, &shape.graduation);
        let square = |normals: &[[f64; 3]]| -> f64 {
            let of =
                |(normal, &p): (&[f64; 3], &Point)| apart(normal, &differenced(|p| sample(p).middle_mm, p)).powi(2);
            normals.iter().zip(&mesh.points_mm).map(of).sum()
        };
        let (own, outer) = (square(&mid.across.normals), square(&mid.normals));
        assert!(own < 0.05 * outer, "{}", (own / outer).sqrt());
    }
}
