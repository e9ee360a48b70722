//! Finding placed nodes near a point.

use crate::plan::Point;

/// Nodes sorted into square bins.
pub(super) struct Near {
    low: Point,
    bin: f64,
    columns: usize,
    rows: usize,
    bins: Vec<Vec<Point>>,
}

impl Near {
    /// Bins of side `bin_mm` over a box.
    pub(super) fn new(low: Point, high: Point, bin_mm: f64) -> Near {
        let columns = ((high[0] - low[0]) / bin_mm) as usize + 1;
        let rows = ((high[1] - low[1]) / bin_mm) as usize + 1;
        Near { low, bin: bin_mm, columns, rows, bins: vec![Vec::new(); columns * rows] }
    }

    pub(super) fn add(&mut self, p: Point) {
        let (i, j) = (self.column(p[0]), self.row(p[1]));
        self.bins[j * self.columns + i].push(p);
    }

    /// True when no node lies within `radius_mm` of p.
    pub(super) fn is_clear(&self, p: Point, radius_mm: f64) -> bool {
        let (left, right) = (self.column(p[0] - radius_mm), self.column(p[0] + radius_mm));
        let (low, high) = (self.row(p[1] - radius_mm), self.row(p[1] + radius_mm));
        let square = radius_mm * radius_mm;
        (low..=high).all(|j| {
            self.bins[j * self.columns + left..=j * self.columns + right]
                .iter()
                .flatten()
                .all(|q| (q[0] - p[0]).powi(2) + (q[1] - p[1]).powi(2) >= square)
        })
    }

    fn column(&self, x: f64) -> usize {
        (((x - self.low[0]) / self.bin).max(0.0) as usize).min(self.columns - 1)
    }

    fn row(&self, y: f64) -> usize {
        (((y - self.low[1]) / self.bin).max(0.0) as usize).min(self.rows - 1)
    }
}
