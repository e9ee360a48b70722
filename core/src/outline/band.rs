//! A smooth measure of how near the edge a point is.

use super::Outline;
use crate::plan::{
    Piece, Point,
    vector::{bounds, dot, left_of, scale, sub, widened},
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

/// The field at one point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnBand {
    /// 1 on the outline, 0 at the band's width and further in.
    pub value: f64,
    /// Gradient, 1/mm.
    pub slope: Point,
    /// Second derivatives by x twice, x and y, y twice, 1/mm2; they jump where the band ends.
    pub bend: [f64; 3],
}

/// Distance to a side, the unit direction away from it, and how the distance bends across that direction.
struct ToSide {
    distance: f64,
    inward: Point,
    bend: f64,
}

impl EdgeBand {
    /// The band of an outline.
    pub fn new(outline: &Outline, width_mm: f64) -> EdgeBand {
        let boxed = |piece: &Piece| {
            // A polyline within 0.1 mm, widened by as much.
            let steps = piece.steps_within(0.1);
            let line = (0..=steps).map(|i| piece.point(i as f64 / steps as f64));
            let (low, high) = widened(bounds(line), width_mm + 0.1);
            Boxed { piece: *piece, low, high }
        };
        let sides = outline.sides().iter().map(|side| side.pieces.iter().map(boxed).collect()).collect();
        EdgeBand { width_mm, sides }
    }

    /// The field at a point inside the outline.
    pub fn at(&self, p: Point) -> OnBand {
        // 1 - field, its gradient and its second derivatives, multiplied up side by side.
        let (mut rest, mut slope, mut bend) = (1.0, [0.0; 2], [0.0; 3]);
        for side in &self.sides {
            let Some(ToSide { distance, inward: [nx, ny], bend: across }) = self.nearest_on(side, p) else {
                continue;
            };
            let t = 1.0 - distance / self.width_mm;
            let factor = 1.0 - t * t * (3.0 - 2.0 * t);
            // Of the factor by the distance.
            let first = 6.0 * t * (1.0 - t) / self.width_mm;
            let second = (12.0 * t - 6.0) / (self.width_mm * self.width_mm);
            let own_slope = [first * nx, first * ny];
            let own_bend = [
                second * nx * nx + first * across * ny * ny,
                (second - first * across) * nx * ny,
                second * ny * ny + first * across * nx * nx,
            ];
            bend = [
                bend[0] * factor + 2.0 * slope[0] * own_slope[0] + rest * own_bend[0],
                bend[1] * factor + slope[0] * own_slope[1] + slope[1] * own_slope[0] + rest * own_bend[1],
                bend[2] * factor + 2.0 * slope[1] * own_slope[1] + rest * own_bend[2],
            ];
            slope = [slope[0] * factor + rest * own_slope[0], slope[1] * factor + rest * own_slope[1]];
            rest *= factor;
        }
        OnBand { value: 1.0 - rest, slope: scale(slope, -1.0), bend: bend.map(|b| -b) }
    }

    /// A side nearer than the band's width.
    fn nearest_on(&self, side: &[Boxed], p: Point) -> Option<ToSide> {
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
        let tangent = piece.tangent(nearest.t);
        // On the edge itself the direction is the inward normal.
        let on_edge = best <= 1e-9;
        let inward = if on_edge { left_of(tangent) } else { scale(sub(p, nearest.point), 1.0 / best) };
        // Level lines of the distance to a curve of curvature c (left turns positive) have the curvature c / (1 - c d);
        // those of the distance to a side's end are circles round it.
        let beyond_end = !on_edge && dot(inward, tangent).abs() > 1e-6;
        let curvature = piece.curvature_per_mm(nearest.t);
        let bend = if beyond_end { 1.0 / best } else { -curvature / (1.0 - curvature * best) };
        Some(ToSide { distance: best, inward, bend })
    }
}
