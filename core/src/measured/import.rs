//! A file read into a design, with all that a maker must know before taking it over.
//!
//! Nothing here changes the design at hand: what comes back is another one, to be looked at first.

use std::collections::BTreeMap;

use thiserror::Error;

use super::{
    Alignment, Correction, Fit, FittedOutline, Gaps, HeightMap, LengthUnit, MeasuredError, MeasuredStations, Outlier,
    OutlineCorrection, Reading, arching_of, coverage::check_one_face, gaps, outline_of, read_csv, read_stl,
    turned_inwards,
};
use crate::{
    arching::Arching,
    design::{Design, DesignError},
    outline::Outline,
    plan::Point,
    surface::Surface,
};

/// The design's own surface is compared with so many readings at most; more take seconds and tell the same.
const COMPARED: usize = 100_000;
/// Readings at no more stations than this, further apart than this, are rows of a gauge.
const MOST_ROWS: usize = 20;
const CLOSE_MM: f64 = 12.0;

/// Why a file didn't become a design.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ImportError {
    /// The file.
    #[error(transparent)]
    Measured(#[from] MeasuredError),
    /// What was read doesn't go together with the rest of the design, or can't be drawn.
    #[error(transparent)]
    Design(#[from] DesignError),
}

/// A design with a measured outline.
#[derive(Clone, Debug, PartialEq)]
pub struct OutlineImport {
    /// With the outline's measures; everything else as it was but for the holes, see below.
    pub design: Design,
    /// How well they draw what was measured.
    pub fitted: FittedOutline,
    /// By how much the sound holes were scaled to stand in the new outline; 1 where they fit as they were.
    pub holes_scaled: f64,
}

/// Fits an outline and lays the rest of the design on it. Sound holes that don't fit any more are scaled with the length.
///
/// # Errors
/// [`ImportError`] for points that are no outline, and for one on which the rest of the design can't be laid.
pub fn import_outline(
    design: &Design,
    mut points: Vec<Point>,
    unit: LengthUnit,
    tolerance_mm: f64,
    correction: OutlineCorrection,
) -> Result<OutlineImport, ImportError> {
    unit.points_to_mm(&mut points);
    let fitted =
        outline_of(&points, &design.outline, tolerance_mm, correction).map_err(|error| unit.answered(error))?;
    let mut imported = Design { outline: fitted.measures.clone(), ..design.clone() };
    let mut holes_scaled = 1.0;
    if imported.check().is_err() {
        holes_scaled = fitted.measures.length_mm / design.outline.length_mm;
        imported.sound_holes.scale(holes_scaled);
    }
    imported.check()?;
    Ok(OutlineImport { design: imported, fitted, holes_scaled })
}

/// A file of heights.
#[derive(Clone, Copy, Debug)]
pub enum HeightsFile<'file> {
    /// A table in the top's frame.
    Table(&'file str),
    /// An STL scan, lying anyhow.
    Scan(&'file [u8]),
}

/// A design with a measured arching.
#[derive(Clone, Debug, PartialEq)]
pub struct HeightsImport {
    /// With the arching read off the heights; everything else as it was.
    pub design: Design,
    /// In the top's frame, in the file's order.
    pub readings: Vec<Reading>,
    /// A smooth surface through them.
    pub fit: Fit,
    /// How far the design's own surface, which its curves draw, stays from the readings that are no outliers: root mean square
    /// and the largest, mm.
    pub drawn_rms_mm: f64,
    /// See there.
    pub drawn_largest: Outlier,
    /// What there is to say of a scan.
    pub scan: Option<ScanFigures>,
}

/// How a scan was laid and what it holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScanFigures {
    /// How it was laid.
    pub alignment: Alignment,
    /// What is missing.
    pub gaps: Gaps,
    /// Share of its triangles that are turned inwards.
    pub turned_inwards: f64,
}

/// Reads an arching off measured heights. The outline must be this top's own.
///
/// # Errors
/// [`ImportError`] for a file that can't be read, that looks like inches, that doesn't lie on the outline, holds more or less
/// than a top's outside, or whose arching can't be drawn.
pub fn import_heights(
    design: &Design,
    file: HeightsFile,
    unit: LengthUnit,
    correction: &Correction,
) -> Result<HeightsImport, ImportError> {
    let outline = Outline::new(&design.outline)?;
    let (readings, scan) = match file {
        HeightsFile::Table(text) => {
            let mut readings = read_csv(text, &outline, unit)?;
            correction.apply(&mut readings, outline.length_mm());
            (readings, None)
        }
        HeightsFile::Scan(bytes) => {
            let mut readings = read_stl(bytes)?;
            unit.to_mm(&mut readings);
            let edge = design.arching.edge_height_mm;
            let alignment = Alignment::find(&readings, outline.length_mm(), edge, correction)
                .map_err(|error| unit.answered(error))?;
            alignment.apply(&mut readings);
            check_one_face(&readings, &outline)?;
            let gaps = gaps(&readings, &outline)?;
            let turned_inwards = turned_inwards(&readings);
            (readings, Some(ScanFigures { alignment, gaps, turned_inwards }))
        }
    };
    let fit = HeightMap::fit(&readings, &outline)?;
    let arching = arching_of(&fit.map, &outline, &design.arching, &stations(&readings))?;
    let imported = Design { arching, ..design.clone() };
    imported.check()?;
    let surface = Surface::new(&Arching::new(&imported.arching, &outline)?, &outline);
    let (drawn_rms_mm, drawn_largest) = compared(&surface, &outline, &readings, &fit.outliers);
    Ok(HeightsImport { design: imported, readings, fit, drawn_rms_mm, drawn_largest, scan })
}

/// Where along the top the readings are.
fn stations(readings: &[Reading]) -> MeasuredStations {
    let along = readings.iter().map(|reading| reading[1]);
    let low = along.clone().fold(f64::INFINITY, f64::min);
    let high = along.clone().fold(f64::NEG_INFINITY, f64::max);
    // By whole millimetres: the sum of the stations there, and how many.
    let mut found: BTreeMap<i64, (f64, f64)> = BTreeMap::new();
    for y in along {
        let row = found.entry(y.round() as i64).or_default();
        *row = (row.0 + y, row.1 + 1.0);
    }
    let apart = (high - low) / found.len().max(1) as f64;
    let few = found.len() <= MOST_ROWS && apart > CLOSE_MM;
    let rows_mm = if few { found.into_values().map(|(sum, count)| sum / count).collect() } else { Vec::new() };
    MeasuredStations { range_mm: [low, high], rows_mm }
}

fn compared(surface: &Surface, outline: &Outline, readings: &[Reading], outliers: &[Outlier]) -> (f64, Outlier) {
    let mut largest = Outlier { index: 0, reading: [0.0; 3], off_mm: 0.0 };
    let (mut sum, mut count) = (0.0, 0.0);
    for (index, &reading) in readings.iter().enumerate().step_by(readings.len().div_ceil(COMPARED).max(1)) {
        let p = [reading[0], reading[1]];
        let outlying = outliers.binary_search_by_key(&index, |outlier| outlier.index).is_ok();
        if outlying || !outline.contains(p) {
            continue;
        }
        let off_mm = reading[2] - surface.height_mm(p);
        sum += off_mm * off_mm;
        count += 1.0;
        if off_mm.abs() > largest.off_mm.abs() {
            largest = Outlier { index, reading, off_mm };
        }
    }
    (f64::sqrt(sum / f64::max(count, 1.0)), largest)
}
