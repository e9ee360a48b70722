//! A straight piece.

use super::{
    Point,
    vector::{along, dot, sub},
};

/// A straight piece from `start` to `end`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// First point, mm.
    pub start: Point,
    /// Last point, mm.
    pub end: Point,
}

impl Line {
    /// Point at the parameter t in 0..=1.
    pub fn point(&self, t: f64) -> Point {
        along(self.start, sub(self.end, self.start), t)
    }

    /// Parameter of the point nearest to p.
    pub fn nearest(&self, p: Point) -> f64 {
        let d = sub(self.end, self.start);
        let length_squared = dot(d, d);
        if length_squared > 0.0 { (dot(sub(p, self.start), d) / length_squared).clamp(0.0, 1.0) } else { 0.0 }
    }
}
