//! Quadratic wedges through the wood, over a mesh in plan.

use std::collections::BTreeMap;

use anyhow::Result;
use bombatura_core::mesh::{MeshSize, PlanMesh, Sample};
use bombatura_core::sound_holes::SoundHole;
use bombatura_core::top::Held;

use super::case::Case;

/// Nodes and elements; all numbers count from zero.
pub(super) struct Wedges {
    /// (node, xyz), mm.
    pub(super) nodes_mm: Vec<[f64; 3]>,
    /// (element, node) in the order of CalculiX's C3D15: corners below and above, then mid-edges below, above, upright.
    pub(super) elements: Vec<[usize; 15]>,
    /// Nodes in the middle of the wood over the plan mesh's nodes, in their order.
    pub(super) middle: Vec<usize>,
    /// (node, xy), mm: the plan mesh's nodes.
    pub(super) points_mm: Vec<[f64; 2]>,
    /// Where the rim is hinged.
    pub(super) hinges: Vec<Hinge>,
}

/// Where a hinge holds the rim: the nodes through the wood from inside to outside, and the wood's normal.
///
/// A shell's hinge holds the mean displacement through the thickness and lets the normal turn. So here no node moves along
/// the normal, and the means across it are held. Holding just the middle line would let solids give way about it, the
/// more the finer they are: a line force sinks into a solid without limit.
pub(super) struct Hinge {
    pub(super) nodes: Vec<usize>,
    pub(super) normal: [f64; 3],
}

impl Wedges {
    /// `layers` of them through the thickness: even or odd, a level of nodes lies in the middle of the wood.
    pub(super) fn new(case: &Case, size: MeshSize, layers: usize) -> Result<Wedges> {
        // Levels of nodes: faces of the layers and, between them, the middles of upright edges. `layers` is also the number of the
        // level in the middle of the wood.
        let levels = 2 * layers + 1;
        let mesh = PlanMesh::new(&case.shape.outline, &case.shape.holes, size)?;
        let corners = mesh.points_mm.len();
        let edges = Edges::of(&mesh);
        let mut points = mesh.points_mm.clone();
        points.extend(edges.middles(case, &mesh));
        let mut wedges = Wedges {
            nodes_mm: Vec::new(),
            elements: Vec::new(),
            middle: Vec::new(),
            points_mm: mesh.points_mm.clone(),
            hinges: Vec::new(),
        };
        // (level, plan node): number of the node; upright mid-edges stand on corners only.
        let mut number = vec![Vec::new(); levels];
        for (level, numbers) in number.iter_mut().enumerate() {
            let height = level as f64 / (levels - 1) as f64 - 0.5;
            let on_face = level % 2 == 0;
            for &p in &points[..if on_face { points.len() } else { corners }] {
                let Sample { middle_mm, normal, thickness_mm } = case.sample(p);
                numbers.push(wedges.nodes_mm.len());
                wedges.nodes_mm.push([0, 1, 2].map(|k| middle_mm[k] + height * thickness_mm * normal[k]));
            }
        }
        for layer in 0..layers {
            let [low, between, high] = [0, 1, 2].map(|step| &number[2 * layer + step]);
            for triangle in &mesh.triangles {
                let corner = triangle.map(|node| node as usize);
                let side = [0, 1, 2].map(|k| corners + edges.numbers[&ends(triangle[k], triangle[(k + 1) % 3])]);
                let rows = [(low, corner), (high, corner), (low, side), (high, side), (between, corner)];
                let nodes = rows.map(|(level, plan)| plan.map(|node| level[node]));
                wedges.elements.push(std::array::from_fn(|k| nodes[k / 3][k % 3]));
            }
        }
        wedges.middle = number[layers][..corners].to_vec();
        if case.held == Held::Hinged {
            let rim = &mesh.rim_nodes;
            for (i, &node) in rim.iter().enumerate() {
                let next = rim[(i + 1) % rim.len()];
                let side = corners + edges.numbers[&ends(node, next)];
                for at in [node as usize, side] {
                    // Middles of upright edges stand on corners only.
                    let nodes = number.iter().filter_map(|level| level.get(at).copied()).collect();
                    wedges.hinges.push(Hinge { nodes, normal: case.sample(points[at]).normal });
                }
            }
        }
        Ok(wedges)
    }
}

/// The edges of a plan mesh, numbered.
struct Edges {
    numbers: BTreeMap<[u32; 2], usize>,
}

impl Edges {
    fn of(mesh: &PlanMesh) -> Edges {
        let mut numbers = BTreeMap::new();
        for triangle in &mesh.triangles {
            for k in 0..3 {
                let next = numbers.len();
                numbers.entry(ends(triangle[k], triangle[(k + 1) % 3])).or_insert(next);
            }
        }
        Edges { numbers }
    }

    /// (edge, xy), mm: the middle in plan, moved onto the curve where the edge is a chord of outline or hole.
    fn middles(&self, case: &Case, mesh: &PlanMesh) -> Vec<[f64; 2]> {
        let mut middles = vec![[0.0; 2]; self.numbers.len()];
        for (&[a, b], &number) in &self.numbers {
            let [a, b] = [a, b].map(|node| mesh.points_mm[node as usize]);
            middles[number] = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
        }
        let curves = std::iter::once(case.shape.outline.boundary());
        let curves = curves.chain(case.shape.holes.iter().map(SoundHole::boundary));
        for (curve, nodes) in curves.zip(std::iter::once(&mesh.rim_nodes).chain(&mesh.hole_loops)) {
            for (i, &node) in nodes.iter().enumerate() {
                let middle = &mut middles[self.numbers[&ends(node, nodes[(i + 1) % nodes.len()])]];
                *middle = curve.nearest(*middle).point;
            }
        }
        middles
    }
}

/// An edge's name, the same from both sides.
fn ends(a: u32, b: u32) -> [u32; 2] {
    [a.min(b), a.max(b)]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn demo() -> Case {
        Case::all().unwrap().remove(1)
    }

    #[test]
    fn every_wedge_is_upright_and_its_mid_edge_nodes_lie_between_their_ends() {
        let wedges = Wedges::new(&demo(), MeshSize::Preview, 2).unwrap();
        const BETWEEN: [[usize; 2]; 9] = [[0, 1], [1, 2], [2, 0], [3, 4], [4, 5], [5, 3], [0, 3], [1, 4], [2, 5]];
        for nodes in &wedges.elements {
            let p = nodes.map(|node| wedges.nodes_mm[node]);
            let to = |i: usize| [0, 1, 2].map(|k| p[i][k] - p[0][k]);
            let [a, b, c] = [to(1), to(2), to(3)];
            let volume = a[0] * (b[1] * c[2] - b[2] * c[1])
                + a[1] * (b[2] * c[0] - b[0] * c[2])
                + a[2] * (b[0] * c[1] - b[1] * c[0]);
            assert!(volume > 0.0, "{nodes:?} is turned over");
            for (mid, [i, j]) in BETWEEN.into_iter().enumerate() {
                let length = (0..3).map(|k| (p[i][k] - p[j][k]).powi(2)).sum::<f64>().sqrt();
                let stray = (0..3).map(|k| (p[6 + mid][k] - 0.5 * (p[i][k] + p[j][k])).powi(2)).sum::<f64>().sqrt();
                assert!(stray < 0.15 * length, "{nodes:?}: {stray} of {length}");
            }
        }
    }

    #[test]
    fn a_hinged_rim_has_a_hinge_at_both_ends_and_the_middle_of_each_chord() {
        let case = demo();
        let wedges = Wedges::new(&case, MeshSize::Preview, 2).unwrap();
        let mesh = PlanMesh::new(&case.shape.outline, &case.shape.holes, MeshSize::Preview).unwrap();
        assert_eq!(wedges.hinges.len(), 2 * mesh.rim_nodes.len());
        assert!(wedges.hinges.iter().all(|hinge| [5, 3].contains(&hinge.nodes.len())));
        assert_eq!(wedges.middle.len(), mesh.points_mm.len());
    }
}
