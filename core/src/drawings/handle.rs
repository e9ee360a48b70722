//! What of a drawing can be moved, and which number of the design it moves.

use serde::Serialize;
use serde_json::Value;

use crate::{
    design::{Design, Measure},
    plan::Point,
};

/// A place on a drawing that moves with one number of the design.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Handle {
    /// Where the number stands in the design, keys joined by dots; two where both sides are alike and move together.
    pub paths: Vec<String>,
    /// What it is, in a maker's words.
    pub what: &'static str,
    /// Unit of the number; empty for a pure number.
    pub unit: &'static str,
    /// The number now.
    pub value: f64,
    /// Smallest allowed value.
    pub least: f64,
    /// Largest allowed value.
    pub most: f64,
    /// Where it stands, mm.
    pub at: Point,
    /// How far it moves on the sheet when the number grows by one, mm: exact for the measures that it marks, a tangent
    /// for the fullness of a curve.
    pub along: Point,
}

/// Makes handles for one design.
pub(super) struct Handles {
    design: Value,
}

impl Handles {
    pub(super) fn new(design: &Design) -> Handles {
        // A checked design always has a JSON form; without one there are no handles to be had.
        Handles { design: serde_json::to_value(design).unwrap_or_default() }
    }

    /// A handle for the measure that stands in MEASURES under `measure`. `None` where this design has no such number, or
    /// where it moves nothing there.
    pub(super) fn at(&self, measure: &str, at: Point, along: Point) -> Option<Handle> {
        self.sided(measure, &[""], at, along)
    }

    /// The same for a measure of the sound holes on the given sides.
    pub(super) fn sided(&self, measure: &str, sides: &[&str], at: Point, along: Point) -> Option<Handle> {
        let row = Measure::of_path(measure)?;
        let paths: Vec<String> = sides.iter().map(|side| measure.replace('*', side)).collect();
        let pointer = format!("/{}", paths.first()?.replace('.', "/"));
        let value = self.design.pointer(&pointer)?.as_f64()?;
        let moves = along[0].hypot(along[1]);
        (moves.is_finite() && moves > 1e-6).then_some(Handle {
            paths,
            what: row.what,
            unit: row.unit,
            value,
            least: row.least,
            most: row.most,
            at,
            along,
        })
    }
}
