//! Nodes along the boundaries.

use super::{
    domain::{Chain, Domain},
    size_field::SizeField,
};
use crate::plan::Point;

/// Nodes on all rings.
pub(super) struct BoundaryNodes {
    pub(super) points: Vec<Point>,
    /// Direction of the boundary at each node.
    pub(super) tangents: Vec<Point>,
    /// Per ring, its nodes in order; without repetition of the first.
    pub(super) rings: Vec<Vec<u32>>,
}

impl BoundaryNodes {
    pub(super) fn new(domain: &Domain, field: &SizeField) -> BoundaryNodes {
        let mut nodes = BoundaryNodes { points: Vec::new(), tangents: Vec::new(), rings: Vec::new() };
        for ring in &domain.rings {
            let first = nodes.points.len() as u32;
            for chain in &ring.chains {
                // Closed smooth chains need three edges to enclose anything.
                let least = if ring.chains.len() == 1 { 8 } else { 1 };
                nodes.spread(chain, field, least);
            }
            nodes.rings.push((first..nodes.points.len() as u32).collect());
        }
        nodes
    }

    /// Spreads nodes over a chain, start included, end not, so that each edge is as long as the field says, scaled to
    /// fit a whole number of edges.
    fn spread(&mut self, chain: &Chain, field: &SizeField, least: usize) {
        // Steps far below the shortest edge, so that the count of edges is right to a few hundredths.
        let step = 0.25;
        let mut lengths = vec![0.0];
        let mut counts = vec![0.0];
        for station in chain.stations(step) {
            let (length, count) = (lengths[lengths.len() - 1], counts[counts.len() - 1]);
            lengths.push(length + station.length_mm);
            let wanted = field.at(station.point).min(field.longest_chord_mm(station.curvature_per_mm));
            counts.push(count + station.length_mm / wanted);
        }
        let total = counts[counts.len() - 1];
        let edges = (total.ceil() as usize).max(least);
        let mut at = 0;
        for i in 0..edges {
            let wanted = total * i as f64 / edges as f64;
            while counts[at + 1] < wanted {
                at += 1;
            }
            let share = (wanted - counts[at]) / (counts[at + 1] - counts[at]);
            self.place(chain, lengths[at] + share * (lengths[at + 1] - lengths[at]));
        }
    }

    fn place(&mut self, chain: &Chain, mut length: f64) {
        let last = chain.pieces.len() - 1;
        for (i, piece) in chain.pieces.iter().enumerate() {
            let own = piece.length_mm();
            if length <= own || i == last {
                let t = piece.parameter_at_mm(length);
                let p = piece.point(t);
                // The centreline's nodes must mirror onto themselves.
                let on_centreline = chain.is_centreline || p[0].abs() < 1e-9;
                self.points.push(if on_centreline { [0.0, p[1]] } else { p });
                self.tangents.push(piece.tangent(t));
                return;
            }
            length -= own;
        }
    }
}
