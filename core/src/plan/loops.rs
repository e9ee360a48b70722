//! A closed boundary made of pieces.

use crate::ascending::ascending;

use super::{
    Nearest, Piece, Point,
    vector::{bounds, cross, sub, widened},
};

/// Pieces laid end to end, the last ending where the first starts.
///
/// Counter-clockwise loops enclose what lies inside; a sound hole is walked clockwise, so that the wood lies on the
/// left of every boundary of a top.
#[derive(Clone, Debug, PartialEq)]
pub struct Loop {
    pieces: Vec<Piece>,
    /// A fine polyline for inside tests, strays by at most `INSIDE_TOLERANCE_MM`.
    fine: Vec<Point>,
    low: Point,
    high: Point,
}

/// How far the polyline used for inside tests strays from the curve. Points nearer than this to the boundary are
/// decided by the exact nearest piece instead; smaller costs time in proportion to its square root.
const INSIDE_TOLERANCE_MM: f64 = 0.01;

impl Loop {
    /// A loop of pieces; the caller keeps them end to end.
    pub fn new(pieces: Vec<Piece>) -> Loop {
        let fine = flatten(&pieces, INSIDE_TOLERANCE_MM);
        let (low, high) = widened(bounds(fine.iter().copied()), INSIDE_TOLERANCE_MM);
        Loop { pieces, fine, low, high }
    }

    /// The pieces in walking order.
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// Lowest x and y, and highest x and y, mm (to 0.01 mm, outwards).
    pub fn bounds_mm(&self) -> (Point, Point) {
        (self.low, self.high)
    }

    /// Enclosed area, mm2, exact: negative when walked clockwise.
    pub fn area_mm2(&self) -> f64 {
        self.pieces.iter().map(Piece::area_share_mm2).sum()
    }

    /// Length of the boundary, mm.
    pub fn perimeter_mm(&self) -> f64 {
        self.pieces.iter().map(Piece::length_mm).sum()
    }

    /// The nearest point of the boundary, exact for lines and arcs. Cost: one evaluation a piece.
    pub fn nearest(&self, p: Point) -> Nearest {
        let mut best = self.pieces[0].nearest(p, 0);
        for (index, piece) in self.pieces.iter().enumerate().skip(1) {
            let candidate = piece.nearest(p, index);
            if candidate.distance_mm < best.distance_mm {
                best = candidate;
            }
        }
        best
    }

    /// True inside the closed curve, whichever way it is walked. Exact away from corners; a point within 0.01 mm of a
    /// corner may be judged either way.
    pub fn contains(&self, p: Point) -> bool {
        if p[0] < self.low[0] || p[0] > self.high[0] || p[1] < self.low[1] || p[1] > self.high[1] {
            return false;
        }
        let nearest = self.nearest(p);
        if nearest.distance_mm < 2.0 * INSIDE_TOLERANCE_MM && nearest.t > 0.0 && nearest.t < 1.0 {
            let tangent = self.pieces[nearest.piece].tangent(nearest.t);
            let left = cross(tangent, sub(p, nearest.point)) >= 0.0;
            return left == (self.area_mm2() > 0.0);
        }
        polygon_contains(&self.fine, p)
    }

    /// Distance to the boundary, mm: positive inside, negative outside.
    pub fn signed_distance_mm(&self, p: Point) -> f64 {
        let distance = self.nearest(p).distance_mm;
        if self.contains(p) { distance } else { -distance }
    }

    /// Points of a closed polyline (first point not repeated) that strays from the curve by at most `tolerance_mm`;
    /// the ends of all pieces, corners among them, are kept.
    pub fn polyline(&self, tolerance_mm: f64) -> Vec<Point> {
        flatten(&self.pieces, tolerance_mm)
    }

    /// The mirror image across the centreline, walked the same way round (clockwise stays clockwise).
    pub fn mirrored(&self) -> Loop {
        Loop::new(self.pieces.iter().rev().map(|piece| piece.mirrored().reversed()).collect())
    }

    /// True when the loop crosses itself, judged on a polyline within 0.01 mm. Cost grows with the square of its points.
    pub fn crosses_itself(&self) -> bool {
        let n = self.fine.len();
        for i in 0..n {
            for j in i + 2..n {
                if i == 0 && j == n - 1 {
                    continue;
                }
                if segments_cross([self.fine[i], self.fine[i + 1]], [self.fine[j], self.fine[(j + 1) % n]]) {
                    return true;
                }
            }
        }
        false
    }
}

/// True when two closed polylines cross anywhere.
pub fn polylines_cross(a: &[Point], b: &[Point]) -> bool {
    let closed = |line: &[Point], i: usize| [line[i], line[(i + 1) % line.len()]];
    (0..a.len()).any(|i| (0..b.len()).any(|j| segments_cross(closed(a, i), closed(b, j))))
}

/// Where a straight line meets a closed polyline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PolylineCrossing {
    /// How far along the straight line, 0 at its start to 1 at its end.
    pub share: f64,
    /// The point, mm.
    pub point: Point,
    /// The polyline's side it lies on: from this point to the next.
    pub side: usize,
    /// How far along that side, 0..=1.
    pub on_side: f64,
}

/// Where the straight line from `start` to `end` crosses a closed polyline, in order along the line. A corner of the
/// polyline on the line is met once, or not at all where the line only touches it.
pub fn polyline_crossings(polyline: &[Point], start: Point, end: Point) -> Vec<PolylineCrossing> {
    let line = sub(end, start);
    let above = |p: Point| cross(line, sub(p, start)) >= 0.0;
    let mut crossings = Vec::new();
    for (side, &a) in polyline.iter().enumerate() {
        let b = polyline[(side + 1) % polyline.len()];
        if above(a) == above(b) {
            continue;
        }
        let (from, along) = (sub(a, start), sub(b, a));
        let denominator = cross(line, along);
        let (share, on_side) = (cross(from, along) / denominator, cross(from, line) / denominator);
        if (0.0..=1.0).contains(&share) {
            let point = [a[0] + on_side * along[0], a[1] + on_side * along[1]];
            crossings.push(PolylineCrossing { share, point, side, on_side });
        }
    }
    let shares: Vec<f64> = crossings.iter().map(|crossing: &PolylineCrossing| crossing.share).collect();
    ascending(&shares).into_iter().map(|place| crossings[place]).collect()
}

fn flatten(pieces: &[Piece], tolerance_mm: f64) -> Vec<Point> {
    let mut points = Vec::new();
    for piece in pieces {
        let steps = piece.steps_within(tolerance_mm);
        points.extend((0..steps).map(|i| piece.point(i as f64 / steps as f64)));
    }
    points
}

/// True when two straight lines cross; ends that touch don't count.
pub fn segments_cross(a: [Point; 2], b: [Point; 2]) -> bool {
    // Plain comparisons: the minimum of two numbers is a call of its own in wasm, and most pairs end here.
    let order = |[p, q]: [Point; 2], k: usize| if p[k] < q[k] { (p[k], q[k]) } else { (q[k], p[k]) };
    let apart = |k: usize| {
        let ((low, high), (other_low, other_high)) = (order(a, k), order(b, k));
        high < other_low || other_high < low
    };
    if apart(0) || apart(1) {
        return false;
    }
    let side = |s: [Point; 2], p: Point| cross(sub(s[1], s[0]), sub(p, s[0]));
    side(a, b[0]) * side(a, b[1]) < 0.0 && side(b, a[0]) * side(b, a[1]) < 0.0
}

/// True inside a closed polyline. Crossing-number test with the half-open rule on y, so that a vertex is met once.
pub fn polygon_contains(polygon: &[Point], p: Point) -> bool {
    let mut inside = false;
    let mut a = polygon[polygon.len() - 1];
    for &b in polygon {
        if (a[1] > p[1]) != (b[1] > p[1]) && (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) > p[0] - a[0] {
            inside = !inside;
        }
        a = b;
    }
    inside
}
