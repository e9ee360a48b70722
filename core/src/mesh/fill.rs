//! Nodes inside, laid layer by layer inwards from the boundaries.

use std::collections::VecDeque;

use super::{near::Near, sample::BoundaryNodes, size_field::SizeField};
use crate::plan::{
    Point,
    vector::{along, bounds, sub, turned, unit},
};

/// Nearest that two nodes may be placed, over the wanted edge length. Larger leaves holes that smoothing must close,
/// smaller crowds nodes where two fronts meet.
const CLEARANCE: f64 = 0.74;

/// Closed polygons of the boundary nodes.
pub(super) struct Polygons {
    rings: Vec<Vec<Point>>,
}

impl Polygons {
    pub(super) fn new(nodes: &BoundaryNodes) -> Polygons {
        let ring = |ring: &Vec<u32>| ring.iter().map(|&i| nodes.points[i as usize]).collect();
        Polygons { rings: nodes.rings.iter().map(ring).collect() }
    }

    /// Inside the first and outside the others (crossing number over all rings together).
    pub(super) fn contain(&self, p: Point) -> bool {
        let mut inside = false;
        for ring in &self.rings {
            let mut a = ring[ring.len() - 1];
            for &b in ring {
                if (a[1] > p[1]) != (b[1] > p[1]) && (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) > p[0] - a[0] {
                    inside = !inside;
                }
                a = b;
            }
        }
        inside
    }
}

/// Every node offers its six neighbours in a triangular lattice of its own edge length; those with room are kept and
/// offer theirs in turn, first come, first served, so that layers follow the boundaries.
pub(super) fn interior(nodes: &BoundaryNodes, polygons: &Polygons, field: &SizeField) -> Vec<Point> {
    let (low, high) = bounds(polygons.rings.iter().flatten().copied());
    let mut near = Near::new(low, high, 3.0);
    let mut queue = VecDeque::new();
    for (&p, &tangent) in nodes.points.iter().zip(&nodes.tangents) {
        near.add(p);
        queue.push_back((p, tangent));
    }
    let mut placed = Vec::new();
    while let Some((p, heading)) = queue.pop_front() {
        let own = field.at(p);
        for k in 0..6 {
            let direction = turned(heading, f64::from(k) * std::f64::consts::FRAC_PI_3);
            let first = along(p, direction, own);
            let candidate = along(p, direction, 0.5 * (own + field.at(first)));
            let length = field.at(candidate);
            if near.is_clear(candidate, CLEARANCE * length) && polygons.contain(candidate) {
                near.add(candidate);
                placed.push(candidate);
                queue.push_back((candidate, unit(sub(candidate, p))));
            }
        }
    }
    placed
}
