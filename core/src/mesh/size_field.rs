//! How long the mesh's edges should be, everywhere.

use super::{
    boundary_tolerance_mm,
    domain::{Domain, RIM},
    narrow::Walls,
};
use crate::plan::Point;

/// Elements wanted across wings and narrows; a little above three, since edges grow away from both boundaries.
const ACROSS: f64 = 3.4;
/// Shortest edge that a wing's width alone asks for, over the body's length: towards its point every wing narrows to
/// nothing, and three elements across it are wanted in its body only.
const AT_WING_POINT: f64 = 0.0045;
/// How fast edges may grow with distance, mm per mm: for open lengths up to `SLOW_UP_TO` body lengths, and from `FAST_FROM` on.
/// Faster saves nodes between holes and flanks, slower gives rounder triangles. A preview has no nodes to spare.
const GROWTH: [f64; 2] = [0.32, 0.52];
const SLOW_UP_TO: f64 = 0.016;
const FAST_FROM: f64 = 0.028;
/// Edge length along the outline over that in the open: the channel bends within a few millimetres of it.
const ALONG_RIM: f64 = 0.8;
/// Open edge length, over the body's, from which on local lengths shrink with it: the standard mesh's. A mesh that is finer is so everywhere in
/// one ratio, which is what extrapolating from two of them takes for granted: with holes that follow by the power 0.6 only, twelve
/// corrected modes of the demonstration on a hinged rim were 0.45 % (rms) too high, and are 0.2 so.
const LOCAL_FROM: f64 = 1.0 / 60.0;

/// Edge length over the plane: open length, shortened round everything that needs it.
pub(super) struct SizeField {
    low: Point,
    cell: f64,
    growth: f64,
    columns: usize,
    rows: usize,
    /// (row, column) edge length, mm.
    lengths: Vec<f64>,
    tolerance_mm: f64,
}

/// A boundary station's own demand.
struct Demand {
    point: Point,
    /// What curvature and width of the wood allow at any open length.
    local: f64,
    is_rim: bool,
}

/// The demands of a domain's boundaries, found once and used for any open length.
pub(super) struct Demands {
    demands: Vec<Demand>,
    low: Point,
    high: Point,
    /// How far a boundary's chord may stray.
    tolerance_mm: f64,
}

impl Demands {
    pub(super) fn new(domain: &Domain, outline_length_mm: f64) -> Demands {
        let walls = Walls::new(domain);
        let tolerance_mm = boundary_tolerance_mm(outline_length_mm);
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        let mut demands = Vec::new();
        for (ring, chain) in domain.chains().filter(|(_, chain)| !chain.is_centreline) {
            let is_rim = ring == RIM;
            // A station each millimetre: the narrowest wood a design may have is 2 mm wide.
            for station in chain.stations(1.0) {
                for k in 0..2 {
                    low[k] = low[k].min(station.point[k]);
                    high[k] = high[k].max(station.point[k]);
                }
                let by_curve = longest_chord_mm(station.curvature_per_mm, tolerance_mm);
                let across = walls.width_mm(&station, ring, 60.0);
                let mut by_width = across.width_mm / ACROSS;
                if across.within_hole {
                    by_width = by_width.max(AT_WING_POINT * outline_length_mm);
                }
                demands.push(Demand { point: station.point, local: by_curve.min(by_width), is_rim });
            }
            // Short chains (tips, nicks) want edges no longer than themselves at their ends.
            let length = chain.length_mm();
            if let (Some(first), Some(last)) = (chain.pieces.first(), chain.pieces.last()) {
                for point in [first.start(), last.end()] {
                    demands.push(Demand { point, local: length, is_rim });
                }
            }
        }
        Demands { demands, low, high, tolerance_mm }
    }

    /// Largest dimension, mm.
    pub(super) fn extent_mm(&self) -> f64 {
        (self.high[0] - self.low[0]).max(self.high[1] - self.low[1])
    }

    /// The size field for an open edge length.
    pub(super) fn field(&self, open_mm: f64) -> SizeField {
        let extent = self.extent_mm();
        let cell = extent / 240.0;
        let low = [self.low[0] - 2.0 * cell, self.low[1] - 2.0 * cell];
        let columns = ((self.high[0] - low[0]) / cell).ceil() as usize + 3;
        let rows = ((self.high[1] - low[1]) / cell).ceil() as usize + 3;
        let haste = ((open_mm / extent - SLOW_UP_TO) / (FAST_FROM - SLOW_UP_TO)).clamp(0.0, 1.0);
        let growth = GROWTH[0] + haste * (GROWTH[1] - GROWTH[0]);
        let lengths = vec![open_mm; columns * rows];
        let mut field = SizeField { low, cell, growth, columns, rows, lengths, tolerance_mm: self.tolerance_mm };
        let shrink = (open_mm / (LOCAL_FROM * extent)).min(1.0);
        for demand in &self.demands {
            let cap = if demand.is_rim { ALONG_RIM * open_mm } else { open_mm };
            field.shorten(demand.point, (demand.local * shrink).min(cap));
        }
        field.spread();
        field
    }
}

impl SizeField {
    /// Edge length at a point, mm.
    pub(super) fn at(&self, p: Point) -> f64 {
        let fx = ((p[0] - self.low[0]) / self.cell).clamp(0.0, (self.columns - 2) as f64);
        let fy = ((p[1] - self.low[1]) / self.cell).clamp(0.0, (self.rows - 2) as f64);
        let (i, j) = (fx as usize, fy as usize);
        let (u, v) = ((fx - i as f64).min(1.0), (fy - j as f64).min(1.0));
        let k = j * self.columns + i;
        let row = |k: usize| self.lengths[k] * (1.0 - u) + self.lengths[k + 1] * u;
        row(k) * (1.0 - v) + row(k + self.columns) * v
    }

    /// Longest chord of a boundary so curved.
    pub(super) fn longest_chord_mm(&self, curvature_per_mm: f64) -> f64 {
        longest_chord_mm(curvature_per_mm, self.tolerance_mm)
    }

    fn shorten(&mut self, p: Point, length: f64) {
        let i = ((p[0] - self.low[0]) / self.cell) as usize;
        let j = ((p[1] - self.low[1]) / self.cell) as usize;
        for (i, j) in [(i, j), (i + 1, j), (i, j + 1), (i + 1, j + 1)] {
            let corner = [self.low[0] + i as f64 * self.cell, self.low[1] + j as f64 * self.cell];
            let distance = (corner[0] - p[0]).hypot(corner[1] - p[1]);
            let here = &mut self.lengths[j * self.columns + i];
            *here = here.min(length + self.growth * (distance - 0.5 * self.cell).max(0.0));
        }
    }

    /// Limits growth from node to node: two sweeps over the grid, forwards and backwards, carry every short length as far
    /// as it reaches (chamfer distances, 8 % off at worst, which only blurs the growth).
    fn spread(&mut self) {
        let (columns, rows) = (self.columns as isize, self.rows as isize);
        let straight = self.growth * self.cell;
        let steps = [(-1, 0, straight), (0, -1, straight), (-1, -1, straight * 1.414), (1, -1, straight * 1.414)];
        let mut relax = |i: isize, j: isize, sign: isize| {
            let k = (j * columns + i) as usize;
            let mut best = self.lengths[k];
            for (di, dj, growth) in steps {
                let (ni, nj) = (i + sign * di, j + sign * dj);
                if (0..columns).contains(&ni) && (0..rows).contains(&nj) {
                    best = best.min(self.lengths[(nj * columns + ni) as usize] + growth);
                }
            }
            self.lengths[k] = best;
        };
        for _ in 0..2 {
            for j in 0..rows {
                for i in 0..columns {
                    relax(i, j, 1);
                }
            }
            for j in (0..rows).rev() {
                for i in (0..columns).rev() {
                    relax(i, j, -1);
                }
            }
        }
    }
}

/// Longest chord that stays within the boundary's tolerance: sagitta h^2 kappa / 8, with a little to spare.
fn longest_chord_mm(curvature_per_mm: f64, tolerance_mm: f64) -> f64 {
    (7.8 * tolerance_mm / curvature_per_mm).sqrt()
}
