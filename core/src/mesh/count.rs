//! Finding the open edge length that gives a wanted number of nodes.

use super::{
    MeshError, MeshSize,
    domain::Domain,
    fill::{self, Polygons},
    sample::BoundaryNodes,
    size_field::{Demands, SizeField},
};
use crate::plan::Point;

/// Nodes placed but not yet triangulated.
pub(super) struct Placed {
    pub(super) boundary: BoundaryNodes,
    pub(super) interior: Vec<Point>,
    pub(super) polygons: Polygons,
    pub(super) field: SizeField,
}

impl Placed {
    fn new(domain: &Domain, demands: &Demands, open_mm: f64) -> Placed {
        let field = demands.field(open_mm);
        let boundary = BoundaryNodes::new(domain, &field);
        let polygons = Polygons::new(&boundary);
        let interior = fill::interior(&boundary, &polygons, &field);
        Placed { boundary, interior, polygons, field }
    }

    /// Nodes of the whole top: those of a half count twice unless they lie on the centreline.
    fn nodes(&self, domain: &Domain) -> usize {
        let placed = self.boundary.points.len() + self.interior.len();
        if !domain.is_half {
            return placed;
        }
        let on_centreline = self.boundary.points.iter().filter(|p| p[0] == 0.0).count();
        2 * placed - on_centreline
    }
}

/// Places nodes for a size.
pub(super) fn place(domain: &Domain, outline_length_mm: f64, size: MeshSize) -> Result<Placed, MeshError> {
    let demands = Demands::new(domain, outline_length_mm);
    let [least, most] = size.node_range();
    let target = 0.5 * (least + most) as f64;
    // Edges per body length, from the demonstration top: a start only.
    let mut open_mm = demands.extent_mm() / size.edges_along();
    let (mut too_short, mut too_long) = (0.0, f64::INFINITY);
    let mut nodes = 0;
    // Each attempt narrows the bracket or lands; counts jump by a few per cent at most, the ranges are 10 % wide.
    for _ in 0..16 {
        let placed = Placed::new(domain, &demands, open_mm);
        nodes = placed.nodes(domain);
        if (least..=most).contains(&nodes) {
            return Ok(placed);
        }
        if nodes > most {
            too_short = open_mm;
        } else {
            too_long = open_mm;
        }
        let guess = open_mm * (nodes as f64 / target).powf(0.6);
        open_mm = if guess > too_short && guess < too_long {
            guess
        } else if too_long.is_finite() {
            0.5 * (too_short + too_long)
        } else {
            1.5 * too_short
        };
    }
    Err(MeshError::Count { size, nodes, least, most })
}
