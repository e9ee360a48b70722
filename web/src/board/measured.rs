//! Measured files read into a design: an offer that the page takes over or not.

use bombatura_core::design::Design;
use bombatura_core::measured::{
    Correction, HeightsFile, HeightsImport, ImportError, LengthUnit, MeasuredError, Outlier, OutlineCorrection,
    OutlineImport, import_heights, import_outline, points_of_csv, points_of_svg_path,
};
use bombatura_core::outline::Outline;
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

use crate::page_values::{to_page, with_arrays};
use crate::problem::Problem;

/// More points than this on a screen lie on each other.
const SHOWN: usize = 3000;
/// Named one by one; more are counted.
const NAMED: usize = 100;
/// How far a shown outline may stray, mm.
const SHOWN_MM: f64 = 0.1;

/// What the page says of a file and of how it lies.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Wishes {
    /// "mm" or "in" where the maker has said so.
    unit: String,
    end_for_end: bool,
    upside_down: bool,
    mirrored: bool,
    turn_deg: f64,
    shift_mm: [f64; 3],
    tolerance_mm: f64,
    /// For an outline from an SVG path: its transform to millimetres.
    mm_from_path: Option<[f64; 6]>,
}

impl Wishes {
    fn of(wishes: JsValue) -> Result<Wishes, Box<Problem>> {
        serde_wasm_bindgen::from_value(wishes).map_err(|error| Problem::said("wrong_wishes", error.to_string()))
    }

    fn unit(&self) -> LengthUnit {
        match self.unit.as_str() {
            "mm" => LengthUnit::Millimetre,
            "in" => LengthUnit::Inch,
            _ => LengthUnit::Unsaid,
        }
    }
}

/// A point that was read, and how far it is off.
#[derive(Serialize)]
struct PointReply {
    /// From 1, in the file's order.
    number: usize,
    at: [f64; 2],
    off_mm: f64,
}

impl From<&Outlier> for PointReply {
    fn from(outlier: &Outlier) -> PointReply {
        let [x, y, _] = outlier.reading;
        PointReply { number: outlier.index + 1, at: [x, y], off_mm: outlier.off_mm }
    }
}

#[derive(Serialize)]
struct FitReply {
    design: String,
    points: usize,
    rms_mm: f64,
    largest: PointReply,
    /// For an outline.
    holes_scaled: Option<f64>,
    own_bass: bool,
    /// For heights: outliers, the first hundred of them by name.
    outlier_count: usize,
    outliers: Vec<PointReply>,
    /// For heights: of the design's own surface.
    drawn_rms_mm: Option<f64>,
    drawn_largest: Option<PointReply>,
    scan: Option<ScanReply>,
}

#[derive(Serialize)]
struct ScanReply {
    missing_mm2: f64,
    missing_share: f64,
    turned_inwards: f64,
}

/// Reads an outline, a table of points or an SVG path with `mm_from_path`, into the design of a JSON document. Gives
/// `{ design, points, rms_mm, largest: { number, at, off_mm }, holes_scaled, own_bass, outline, shown }`: the outline as x, y
/// one after the other, and points to be shown as x, y and mm off.
///
/// # Errors
/// What is wrong with the file, or with what came of it.
#[wasm_bindgen]
pub fn read_outline(design: &str, file: &[u8], wishes: JsValue) -> Result<JsValue, Box<Problem>> {
    let (design, wishes) = (Design::from_json(design)?, Wishes::of(wishes)?);
    let text = text(file)?;
    let points = match wishes.mm_from_path {
        Some(mm_from_path) => points_of_svg_path(text, mm_from_path).map_err(ImportError::from)?,
        None => points_of_csv(text).map_err(ImportError::from)?,
    };
    let correction = OutlineCorrection { end_for_end: wishes.end_for_end, mirrored: wishes.mirrored };
    let OutlineImport { design, fitted, holes_scaled } =
        import_outline(&design, points, wishes.unit(), wishes.tolerance_mm, correction)?;
    let reply = FitReply {
        points: fitted.points.len(),
        rms_mm: fitted.rms_mm,
        largest: PointReply { number: fitted.largest_index + 1, at: fitted.largest_at, off_mm: fitted.largest_mm },
        holes_scaled: Some(holes_scaled),
        own_bass: fitted.measures.bass.is_some(),
        outlier_count: 0,
        outliers: Vec::new(),
        drawn_rms_mm: None,
        drawn_largest: None,
        scan: None,
        design: design.to_json(),
    };
    let outline = Outline::new(&design.outline)?;
    let shown: Vec<f32> = thinned(fitted.points.len())
        .flat_map(|index| {
            let [x, y] = fitted.points[index];
            [x, y, outline.boundary().nearest([x, y]).distance_mm]
        })
        .map(|value| value as f32)
        .collect();
    Ok(with_picture(&reply, &outline, &shown))
}

/// Reads heights, a table or with `scan` an STL file, into the design of a JSON document. Gives what [`read_outline`] does, and
/// `{ outlier_count, outliers, drawn_rms_mm, drawn_largest, scan?: { missing_mm2, missing_share, turned_inwards } }`.
///
/// # Errors
/// What is wrong with the file, or with what came of it.
#[wasm_bindgen]
pub fn read_heights(design: &str, file: &[u8], scan: bool, wishes: JsValue) -> Result<JsValue, Box<Problem>> {
    let (design, wishes) = (Design::from_json(design)?, Wishes::of(wishes)?);
    let Wishes { end_for_end, upside_down, mirrored, turn_deg, shift_mm, .. } = wishes;
    let correction = Correction { end_for_end, upside_down, mirrored, turn_deg, shift_mm };
    let heights = if scan { HeightsFile::Scan(file) } else { HeightsFile::Table(text(file)?) };
    let HeightsImport { design, readings, fit, drawn_rms_mm, drawn_largest, scan } =
        import_heights(&design, heights, wishes.unit(), &correction)?;
    let reply = FitReply {
        points: readings.len(),
        rms_mm: fit.rms_mm,
        largest: (&fit.largest).into(),
        holes_scaled: None,
        own_bass: false,
        outlier_count: fit.outliers.len(),
        outliers: fit.outliers.iter().take(NAMED).map(Into::into).collect(),
        drawn_rms_mm: Some(drawn_rms_mm),
        drawn_largest: Some((&drawn_largest).into()),
        scan: scan.map(|scan| ScanReply {
            missing_mm2: scan.gaps.area_mm2,
            missing_share: scan.gaps.share,
            turned_inwards: scan.turned_inwards,
        }),
        design: design.to_json(),
    };
    let outline = Outline::new(&design.outline)?;
    let shown: Vec<f32> = thinned(readings.len())
        .flat_map(|index| {
            let [x, y, z] = readings[index];
            [x, y, z - fit.map.at([x, y]).height_mm]
        })
        .map(|value| value as f32)
        .collect();
    Ok(with_picture(&reply, &outline, &shown))
}

impl From<ImportError> for Box<Problem> {
    fn from(error: ImportError) -> Box<Problem> {
        match error {
            ImportError::Design(error) => error.into(),
            ImportError::Measured(error) => Problem::said(error.kind(), error.to_string()),
        }
    }
}

/// Text of an import; a picture or another binary file is told here.
pub(super) fn text(file: &[u8]) -> Result<&str, ImportError> {
    std::str::from_utf8(file).map_err(|_| MeasuredError::NotATable { detail: "the file holds no text".into() }.into())
}

/// At most [`SHOWN`] of so many, evenly.
fn thinned(count: usize) -> impl Iterator<Item = usize> {
    (0..count).step_by(count.div_ceil(SHOWN).max(1))
}

fn with_picture(reply: &FitReply, outline: &Outline, shown: &[f32]) -> JsValue {
    let outline: Vec<f32> = outline.polyline(SHOWN_MM).into_iter().flatten().map(|value| value as f32).collect();
    with_arrays(to_page(reply), [("outline", &outline), ("shown", shown)])
}
