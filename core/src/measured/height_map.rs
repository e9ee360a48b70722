//! A smooth surface through measured heights.
//!
//! A bicubic tensor-product B-spline that minimises the mean square distance from the points plus a penalty on its bending,
//! a smoothing thin plate. Splines through all points would follow every slip of the gauge; a coarser spline without a
//! penalty has no answer where nothing was measured.

use super::{
    MeasuredError, Reading,
    band_matrix::{BandFactor, BandMatrix},
    outliers,
};
use crate::{outline::Outline, plan::Point, surface::OnSurface};

/// Cells along the top's length. A channel bends within 8 mm of a 355 mm top; a cubic spline of 4 mm cells follows its jump
/// of curvature, 0.06 /mm, to some 0.02 mm (de Boor 1978, chapter XII: h^2 times the jump over about 60).
const CELLS_ALONG: f64 = 90.0;
/// Penalty on the mean square bending, mm^4: a wave of length L is lowered by (2 pi / L)^4 of it, 0.5 % of a channel's 16 mm
/// wave and a third of one of 5 mm, a slip of the hand. At 1 mm^4 corners are rounded by 0.07 mm.
const SMOOTHING_MM4: f64 = 0.2;
/// Heights anywhere over a rectangle round the top.
#[derive(Clone, Debug, PartialEq)]
pub struct HeightMap {
    corner: Point,
    cell_mm: f64,
    cells: [usize; 2],
    /// (row, column), one row and column of splines three wider than the cells.
    coefficients: Vec<f64>,
}

/// A point that lies off the surface that the others agree on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outlier {
    /// Which point, from 0 in reading order.
    pub index: usize,
    /// The point, mm.
    pub reading: Reading,
    /// How far it stands above the surface, mm.
    pub off_mm: f64,
}

/// A fitted surface and how well it fits.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// The surface.
    pub map: HeightMap,
    /// Root mean square of the residuals, outliers left out, mm.
    pub rms_mm: f64,
    /// The largest residual, outliers left out.
    pub largest: Outlier,
    /// All outliers, in reading order. They don't pull at the surface.
    pub outliers: Vec<Outlier>,
}

impl HeightMap {
    /// Fits readings in the top's frame. Outliers are found by their residuals, among a few readings by what the others say there.
    ///
    /// Cost: some 300 steps a point and 0.1 s for the equations, for every round in which an outlier is found.
    ///
    /// # Errors
    /// [`MeasuredError::DoesNotFit`] when the readings don't lie on the outline.
    pub fn fit(readings: &[Reading], outline: &Outline) -> Result<Fit, MeasuredError> {
        check_on_outline(readings, outline)?;
        let area = outline.area_mm2();
        let off = |map: &HeightMap, index: usize| {
            let reading = readings[index];
            Outlier { index, reading, off_mm: reading[2] - map.at([reading[0], reading[1]]).height_mm }
        };
        let mut outlying: Vec<bool> = vec![false; readings.len()];
        let (mut map, mut kept) = (None, Vec::new());
        for round in 1..=outliers::ROUNDS {
            kept.clear();
            kept.extend((0..readings.len()).filter(|&index| !outlying[index]));
            let (fitted, factor) = HeightMap::through(readings, &kept, outline, area).ok_or_else(degenerate)?;
            let size = |index: usize| off(&fitted, index).off_mm.abs();
            let now = if kept.len() > outliers::FEW {
                outliers::among_many(&outlying, size)
            } else {
                let apart = fitted.off_the_others(&factor, readings, &outlying, area / kept.len() as f64);
                outliers::among_few(&outlying, |index| size(index) * apart[index])
            };
            map = Some(fitted);
            if now == outlying || round == outliers::ROUNDS {
                break;
            }
            outlying = now;
        }
        let map = map.ok_or_else(degenerate)?;
        let residuals = kept.iter().map(|&index| off(&map, index));
        let sum: f64 = residuals.clone().map(|r| r.off_mm * r.off_mm).sum();
        let largest = residuals
            .max_by(|a, b| a.off_mm.abs().total_cmp(&b.off_mm.abs()))
            .ok_or(MeasuredError::TooFew { count: 0, least: super::FEWEST_POINTS })?;
        let named = (0..readings.len()).filter(|&index| outlying[index]);
        let outliers = named.map(|index| off(&map, index)).collect();
        Ok(Fit { rms_mm: (sum / kept.len() as f64).sqrt(), largest, outliers, map })
    }

    fn through(
        readings: &[Reading],
        which: &[usize],
        outline: &Outline,
        area_mm2: f64,
    ) -> Option<(HeightMap, BandFactor)> {
        let (low, high) = outline.boundary().bounds_mm();
        let cell_mm = (high[1] - low[1]) / CELLS_ALONG;
        let cells = [0, 1].map(|k| ((high[k] - low[k]) / cell_mm).ceil() as usize + 2);
        let corner = [low[0] - cell_mm, low[1] - cell_mm];
        let mut map = HeightMap { corner, cell_mm, cells, coefficients: Vec::new() };
        let columns = cells[0] + 3;
        let size = columns * (cells[1] + 3);
        let mut matrix = BandMatrix::zero(size, 3 * columns + 3);
        let mut right = vec![0.0; size];
        let weight = area_mm2 / which.len() as f64;
        for &index in which {
            let [x, y, z] = readings[index];
            let ([first, second], [across, along]) = map.place([x, y]);
            let (bx, by) = (weights(across), weights(along));
            let basis = |k: usize| bx[0][k % 4] * by[0][k / 4];
            let equation = |k: usize| (second + k / 4) * columns + first + k % 4;
            for i in 0..16 {
                right[equation(i)] += weight * basis(i) * z;
                for j in 0..=i {
                    matrix.add(equation(i), equation(j), weight * basis(i) * basis(j));
                }
            }
        }
        let bending = bending_of_a_cell(cell_mm);
        for row in 0..cells[1] {
            for column in 0..cells[0] {
                let equation = |k: usize| (row + k / 4) * columns + column + k % 4;
                for (i, pairs) in bending.iter().enumerate() {
                    for (j, pair) in pairs.iter().enumerate().take(i + 1) {
                        matrix.add(equation(i), equation(j), SMOOTHING_MM4 * pair);
                    }
                }
            }
        }
        let factor = matrix.factor()?;
        factor.solve(&mut right);
        map.coefficients = right;
        Some((map, factor))
    }

    /// By how much its residual must be multiplied to tell how far a point is off the surface that all others make. With h the
    /// share of its own height in the surface above it that is 1 / (1 - h), and its deviation goes with 1 / sqrt(1 - h) (Wahba
    /// 1990, Spline models for observational data, section 4.2); in deviations of a point that the others foretell as firmly as
    /// most, 1 / sqrt((1 - h) (1 - h of those)). 1 for those that lie apart already.
    fn off_the_others(&self, factor: &BandFactor, readings: &[Reading], outlying: &[bool], weight: f64) -> Vec<f64> {
        if !outliers::foretell_each_other(readings, self.cell_mm) {
            return vec![0.0; readings.len()];
        }
        let own = |reading| 1.0 - weight * self.leverage(factor, reading);
        let free: Vec<f64> = readings.iter().map(|&reading| own(reading)).collect();
        let mut sorted = free.clone();
        let middle = sorted.len() / 2;
        let usual = *sorted.select_nth_unstable_by(middle, f64::total_cmp).1;
        let by = |(&free, &out): (&f64, &bool)| if out { 1.0 } else { 1.0 / (free * usual).max(f64::EPSILON).sqrt() };
        free.iter().zip(outlying).map(by).collect()
    }

    fn leverage(&self, factor: &BandFactor, [x, y, _]: Reading) -> f64 {
        let ([first, second], [across, along]) = self.place([x, y]);
        let (bx, by) = (weights(across), weights(along));
        let columns = self.cells[0] + 3;
        let mut basis = vec![0.0; self.coefficients.len()];
        for k in 0..16 {
            basis[(second + k / 4) * columns + first + k % 4] = bx[0][k % 4] * by[0][k / 4];
        }
        factor.inverse_form(&mut basis, second * columns + first)
    }

    /// Cell (column, row) of a point, and its place in it.
    fn place(&self, p: Point) -> ([usize; 2], [f64; 2]) {
        let mut cell = [0; 2];
        let mut within = [0.0; 2];
        for k in 0..2 {
            let t = (p[k] - self.corner[k]) / self.cell_mm;
            cell[k] = (t.max(0.0) as usize).min(self.cells[k] - 1);
            within[k] = t - cell[k] as f64;
        }
        (cell, within)
    }

    /// Height, slope and bend at a point of the plan.
    pub fn at(&self, p: Point) -> OnSurface {
        let ([first, second], [across, along]) = self.place(p);
        let (bx, by) = (weights(across), weights(along));
        let columns = self.cells[0] + 3;
        let sum = |dx: usize, dy: usize| -> f64 {
            let scale = self.cell_mm.powi(-((dx + dy) as i32));
            (0..16)
                .map(|k| self.coefficients[(second + k / 4) * columns + first + k % 4] * bx[dx][k % 4] * by[dy][k / 4])
                .sum::<f64>()
                * scale
        };
        OnSurface { height_mm: sum(0, 0), slope: [sum(1, 0), sum(0, 1)], bend: [sum(2, 0), sum(1, 1), sum(0, 2)] }
    }
}

/// The four uniform cubic B-splines on a cell, at t in 0..1, with first and second derivatives by t (de Boor 1978, chapter
/// X).
fn weights(t: f64) -> [[f64; 4]; 3] {
    let s = 1.0 - t;
    [
        [s * s * s / 6.0, 2.0 / 3.0 - t * t * (1.0 - 0.5 * t), 2.0 / 3.0 - s * s * (1.0 - 0.5 * s), t * t * t / 6.0],
        [-0.5 * s * s, t * (1.5 * t - 2.0), -s * (1.5 * s - 2.0), 0.5 * t * t],
        [s, 3.0 * t - 2.0, 3.0 * s - 2.0, t],
    ]
}

/// Integrals over a cell of xx xx + 2 xy xy + yy yy of each pair of its sixteen splines, by Gauss's rule of four points, exact
/// for these polynomials of degree six.
fn bending_of_a_cell(cell_mm: f64) -> [[f64; 16]; 16] {
    // Abramowitz & Stegun 1964, table 25.4, n = 4, moved to 0..1.
    const GAUSS: [(f64, f64); 4] = [
        (0.069_431_844_202_974, 0.173_927_422_568_727),
        (0.330_009_478_207_572, 0.326_072_577_431_273),
        (0.669_990_521_792_428, 0.326_072_577_431_273),
        (0.930_568_155_797_026, 0.173_927_422_568_727),
    ];
    let mut integrals = [[0.0; 16]; 16];
    for (x, wx) in GAUSS {
        for (y, wy) in GAUSS {
            let (bx, by) = (weights(x), weights(y));
            let value = |k: usize, dx: usize, dy: usize| bx[dx][k % 4] * by[dy][k / 4];
            for (i, row) in integrals.iter_mut().enumerate() {
                for (j, integral) in row.iter_mut().enumerate() {
                    let pair = |dx: usize, dy: usize| value(i, dx, dy) * value(j, dx, dy);
                    // Four derivatives over the cell's area.
                    *integral += wx * wy * (pair(2, 0) + 2.0 * pair(1, 1) + pair(0, 2)) / (cell_mm * cell_mm);
                }
            }
        }
    }
    integrals
}

/// Readings may overhang the outline by this much, and this share of them by more: a scan's own edge is ragged.
const OVERHANG_MM: f64 = 2.0;
const OUTSIDE_SHARE: f64 = 0.02;

fn check_on_outline(readings: &[Reading], outline: &Outline) -> Result<(), MeasuredError> {
    // Some ten thousand of them tell as much as all.
    let step = readings.len().div_ceil(10_000);
    let looked_at = readings.iter().step_by(step);
    let outside = looked_at.clone().filter(|r| outline.signed_distance_mm([r[0], r[1]]) < -OVERHANG_MM).count();
    let share = outside as f64 / looked_at.count() as f64;
    if share <= OUTSIDE_SHARE {
        return Ok(());
    }
    Err(MeasuredError::DoesNotFit {
        what: "the readings don't lie on this outline".into(),
        value: format!("{:.0} % of them are more than {OVERHANG_MM} mm outside", 100.0 * share),
        limits: format!("at most {:.0} % may be", 100.0 * OUTSIDE_SHARE),
        remedy:
            "set the outline to this top's measures first; x is measured from the centreline, y from the bottom edge"
                .into(),
    })
}

fn degenerate() -> MeasuredError {
    MeasuredError::DoesNotFit {
        what: "the readings don't make a surface".into(),
        value: "they lie on one line".into(),
        limits: "they must spread over the top".into(),
        remedy: "take readings across and along".into(),
    }
}
