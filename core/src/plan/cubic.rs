//! A cubic Bézier piece.

use super::{
    Point,
    vector::{distance, dot, norm, sub},
};

/// A cubic Bézier curve by its four control points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cubic {
    /// The four control points, mm.
    pub control: [Point; 4],
}

impl Cubic {
    /// The cubic from `start` to `end` with unit end tangents and handle lengths in mm.
    pub fn hermite(start: Point, leaving: Point, end: Point, arriving: Point, handles_mm: [f64; 2]) -> Cubic {
        Cubic {
            control: [
                start,
                [start[0] + leaving[0] * handles_mm[0], start[1] + leaving[1] * handles_mm[0]],
                [end[0] - arriving[0] * handles_mm[1], end[1] - arriving[1] * handles_mm[1]],
                end,
            ],
        }
    }

    /// Point at the parameter t in 0..=1.
    pub fn point(&self, t: f64) -> Point {
        let s = 1.0 - t;
        let weights = [s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t];
        let mut p = [0.0; 2];
        for (weight, control) in weights.iter().zip(&self.control) {
            p[0] += weight * control[0];
            p[1] += weight * control[1];
        }
        p
    }

    /// First derivative by t, mm.
    pub fn derivative(&self, t: f64) -> Point {
        let c = &self.control;
        let s = 1.0 - t;
        let weights = [3.0 * s * s, 6.0 * s * t, 3.0 * t * t];
        let mut d = [0.0; 2];
        for (i, weight) in weights.iter().enumerate() {
            d[0] += weight * (c[i + 1][0] - c[i][0]);
            d[1] += weight * (c[i + 1][1] - c[i][1]);
        }
        d
    }

    /// Second derivative by t, mm.
    pub fn second_derivative(&self, t: f64) -> Point {
        let c = &self.control;
        let bend = |i: usize| sub(sub(c[i + 2], c[i + 1]), sub(c[i + 1], c[i]));
        let (a, b) = (bend(0), bend(1));
        [6.0 * (a[0] * (1.0 - t) + b[0] * t), 6.0 * (a[1] * (1.0 - t) + b[1] * t)]
    }

    /// Parameter of a point nearest to p: the best of a coarse scan, polished by Newton's method on
    /// (c(t) - p) . c'(t) = 0. Global for curves that turn by less than about half a turn, as all of ours do.
    pub fn nearest(&self, p: Point) -> f64 {
        const SCAN: usize = 16;
        let mut best = (f64::INFINITY, 0.0);
        for i in 0..=SCAN {
            let t = i as f64 / SCAN as f64;
            let d = distance(self.point(t), p);
            if d < best.0 {
                best = (d, t);
            }
        }
        let mut t: f64 = best.1;
        for _ in 0..8 {
            let off = sub(self.point(t), p);
            let d1 = self.derivative(t);
            let slope = dot(d1, d1) + dot(off, self.second_derivative(t));
            if slope <= 0.0 {
                break;
            }
            t = (t - dot(off, d1) / slope).clamp(0.0, 1.0);
        }
        if distance(self.point(t), p) <= best.0 { t } else { best.1 }
    }

    /// Length in mm by five-point Gauss quadrature on `PARTS` equal parts: for our gentle curves exact to about 1e-9 mm.
    pub fn length_mm(&self, until: f64) -> f64 {
        // Abramowitz & Stegun 1964, table 25.4, n = 5.
        const NODES: [(f64, f64); 3] = [
            (0.0, 0.568_888_888_888_888_9),
            (0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
            (0.906_179_845_938_664, 0.236_926_885_056_189_1),
        ];
        const PARTS: usize = 4;
        let half = 0.5 * until / PARTS as f64;
        let mut sum = 0.0;
        for part in 0..PARTS {
            let middle = (2 * part + 1) as f64 * half;
            for &(x, weight) in &NODES {
                sum += weight * half * norm(self.derivative(middle + x * half));
                if x > 0.0 {
                    sum += weight * half * norm(self.derivative(middle - x * half));
                }
            }
        }
        sum
    }

    /// The same curve walked the other way.
    pub fn reversed(&self) -> Cubic {
        let c = self.control;
        Cubic { control: [c[3], c[2], c[1], c[0]] }
    }

    /// A bound on how far the chord from start to end strays from the curve: |c''| / 8 (de Boor 1978, A practical guide
    /// to splines, linear interpolation error), with |c''| bounded by its values at both ends, between which it is linear.
    pub fn bulge_mm(&self) -> f64 {
        norm(self.second_derivative(0.0)).max(norm(self.second_derivative(1.0))) / 8.0
    }
}
