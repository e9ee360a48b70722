//! Lines of equal thickness.

use std::collections::BTreeMap;

use crate::{
    graduation::Graduation,
    mesh::PlanMesh,
    plan::{Point, vector::along, vector::sub},
};

/// Halvings of an edge: what is left of 10 mm is 1e-5 mm.
const HALVINGS: u32 = 20;

/// One connected line of one thickness.
#[derive(Clone, Debug, PartialEq)]
pub struct ThicknessContour {
    /// The thickness, mm.
    pub thickness_mm: f64,
    /// Points in order, mm.
    pub points: Vec<Point>,
    /// True when the last point joins the first.
    pub closed: bool,
}

/// The lines at every whole multiple of `step_mm`, thinnest first, on the wood that the mesh covers.
///
/// Each point of a line has its thickness to 1e-4 mm, on an edge of the mesh; a loop inside one triangle is missed.
/// Cost: twenty thicknesses for each point.
pub fn thickness_contours(mesh: &PlanMesh, graduation: &Graduation, step_mm: f64) -> Vec<ThicknessContour> {
    let thickness: Vec<f64> = mesh.points_mm.iter().map(|&p| graduation.thickness_mm(p)).collect();
    let (thinnest, thickest) =
        thickness.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), &t| (low.min(t), high.max(t)));
    let first = (thinnest / step_mm).ceil() as u32;
    let last = (thickest / step_mm).floor() as u32;
    let at = |p: Point| graduation.thickness_mm(p);
    (first..=last).flat_map(|i| lines(mesh, &thickness, f64::from(i) * step_mm, &at)).collect()
}

/// The line of one level through the triangles, chained from edge to edge.
fn lines(mesh: &PlanMesh, thickness: &[f64], level: f64, at: &dyn Fn(Point) -> f64) -> Vec<ThicknessContour> {
    let above = |node: u32| thickness[node as usize] >= level;
    // Per crossed edge, the crossed edges of the triangles beside it.
    let mut links: BTreeMap<u32, Vec<u32>> = BTreeMap::new();
    for edges in &mesh.edges.of_triangle {
        let crossed: Vec<u32> = edges
            .iter()
            .copied()
            .filter(|&edge| {
                let [a, b] = mesh.edges.ends[edge as usize];
                above(a) != above(b)
            })
            .collect();
        if let [a, b] = crossed[..] {
            links.entry(a).or_default().push(b);
            links.entry(b).or_default().push(a);
        }
    }
    let point = |edge: u32| {
        let [a, b] = mesh.edges.ends[edge as usize].map(|node| node as usize);
        let place = |share: f64| along(mesh.points_mm[a], sub(mesh.points_mm[b], mesh.points_mm[a]), share);
        let (mut from, mut to) = (0.0, 1.0);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (from + to);
            if (at(place(middle)) >= level) == (thickness[a] >= level) { from = middle } else { to = middle }
        }
        place(from)
    };
    // Lines that end on a boundary are walked from their ends, then what is left are rings.
    let ends: Vec<u32> = links.iter().filter(|(_, next)| next.len() == 1).map(|(&edge, _)| edge).collect();
    let all: Vec<u32> = links.keys().copied().collect();
    let mut contours = Vec::new();
    for (starts, closed) in [(ends, false), (all, true)] {
        for start in starts {
            let mut points = Vec::new();
            let mut at = Some(start);
            while let Some((edge, next)) = at.and_then(|edge| links.remove_entry(&edge)) {
                points.push(point(edge));
                at = next.into_iter().find(|other| links.contains_key(other));
            }
            if !points.is_empty() {
                contours.push(ThicknessContour { thickness_mm: level, points, closed });
            }
        }
    }
    contours
}
