//! A smooth measure of how near the edge a point is.

use super::Outline;
use crate::plan::{
    Piece, Point,
    vector::{left_of, scale, sub},
};

/// A field that is 1 on the outline, falls smoothly to 0 at `width_mm` inside it, and is 0 further in.
///
/// Its gradient is continuous everywhere inside, round the corners too, where the plain distance has a crease along
/// the line of points equally far from two sides: each side has a field of its own and they are joined as
/// 1 - (1 - e1)(1 - e2)..., which is exact on every side and smooth between. It needs every convex arc of the outline
/// to be wider than the band; [`EdgeBand::new`] is only given such widths.
#[derive(Clone, Debug)]
pub struct EdgeBand {
    width_mm: f64,
    sides: Vec<Vec<Boxed>>,
}

/// A piece with the box outside of which it can't matter.
#[derive(Clone, Debug)]
struct Boxed {
    piece: Piece,
    low: Point,
    high: Point,
}

impl EdgeBand {
    /// The band of an outline.
    pub fn new(outline: &Outline, width_mm: f64) -> EdgeBand {
        let boxed = |piece: &Piece| {
            let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
            // A polyline within 0.1 mm, widened by as much.
            let steps = piece.steps_within(0.1);
            for i in 0..=steps {
                let p = piece.point(i as f64 / steps as f64);
                for k in 0..2 {
                    low[k] = low[k].min(p[k] - width_mm - 0.1);
                    high[k] = high[k].max(p[k] + width_mm + 0.1);
                }
            }
            Boxed { piece: *piece, low, high }
        };
        let sides = outline.sides().iter().map(|side| side.pieces.iter().map(boxed).collect()).collect();
        EdgeBand { width_mm, sides }
    }

    /// The field and its gradient (per mm) at a point inside the outline.
    pub fn at(&self, p: Point) -> (f64, Point) {
        let mut rest = 1.0;
        let mut rest_gradient = [0.0; 2];
        for side in &self.sides {
            let Some((distance, inward)) = self.nearest_on(side, p) else {
                continue;
            };
            let t = 1.0 - distance / self.width_mm;
            let e = t * t * (3.0 - 2.0 * t);
            let slope = -6.0 * t * (1.0 - t) / self.width_mm;
            // (rest (1 - e))' = rest' (1 - e) - rest e'
            for k in 0..2 {
                rest_gradient[k] = rest_gradient[k] * (1.0 - e) - rest * slope * inward[k];
            }
            rest *= 1.0 - e;
        }
        (1.0 - rest, scale(rest_gradient, -1.0))
    }

    /// Distance to a side nearer than the band's width, and the unit direction away from it.
    fn nearest_on(&self, side: &[Boxed], p: Point) -> Option<(f64, Point)> {
        let mut best = self.width_mm;
        let mut found = None;
        for Boxed { piece, low, high } in side {
            if p[0] < low[0] || p[0] > high[0] || p[1] < low[1] || p[1] > high[1] {
                continue;
            }
            let nearest = piece.nearest(p, 0);
            if nearest.distance_mm < best {
                best = nearest.distance_mm;
                found = Some((piece, nearest));
            }
        }
        let (piece, nearest) = found?;
        // On the edge itself the direction is the inward normal.
        let inward =
            if best > 1e-9 { scale(sub(p, nearest.point), 1.0 / best) } else { left_of(piece.tangent(nearest.t)) };
        Some((best, inward))
    }
}
