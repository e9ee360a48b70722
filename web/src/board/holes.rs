//! The sound holes: what they measure, and other ones in their place.

use bombatura_core::design::{EyesAndStem, SoundHoleChoice, TracedHole};
use bombatura_core::sound_holes::{Pattern, SoundHole};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrawingBoard;
use crate::page_values::to_page;
use crate::problem::Problem;

/// Where a hole's middle goes on a side that has none, over the lower bout's half width.
const MIDDLE_ACROSS: f64 = 0.45;

/// What a hole measures.
#[derive(Serialize)]
struct HoleReply {
    treble_side: bool,
    area_mm2: f64,
    perimeter_mm: f64,
    /// Of an f-hole.
    lean_deg: Option<f64>,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// What the holes measure, bass first: `{ treble_side, area_mm2, perimeter_mm, lean_deg? }`.
    #[must_use]
    pub fn holes(&self) -> JsValue {
        let reply = |hole: &SoundHole| HoleReply {
            treble_side: hole.is_treble(),
            area_mm2: hole.area_mm2(),
            perimeter_mm: hole.boundary().perimeter_mm(),
            lean_deg: hole.lean_deg(),
        };
        to_page(&self.shape.holes.iter().map(reply).collect::<Vec<_>>())
    }

    /// A hole of `pattern` ("round", "crescent" or "slot") that opens as much as the one on that side of the design on the
    /// board, as it stands in a design.
    ///
    /// # Errors
    /// A side without a hole, or a pattern that there isn't or that can't open so much.
    pub fn equal_hole(&self, treble_side: bool, pattern: &str) -> Result<JsValue, Box<Problem>> {
        let pattern = match pattern {
            "round" => Some(Pattern::Round),
            "crescent" => Some(Pattern::Crescent),
            "slot" => Some(Pattern::Slot),
            _ => None,
        };
        let hole = self.hole(treble_side).zip(pattern);
        let equal = hole.and_then(|(hole, pattern)| hole.of_equal_area(pattern));
        equal.map(|hole| to_page(&hole)).ok_or_else(|| {
            let message = "There is no such hole with the same opening.";
            no_such_hole("no_equal_hole", message, "Choose another pattern.")
        })
    }

    /// The f-hole of that side with its eyes moved across until it leans by `lean_deg`, as it stands in a design.
    ///
    /// # Errors
    /// A side without an f-hole, or a lean that none has.
    pub fn leaning_hole(&self, treble_side: bool, lean_deg: f64) -> Result<JsValue, Box<Problem>> {
        let leaning = self.f_hole(treble_side).and_then(|(hole, measures)| {
            hole.leaning(measures, &self.shape.outline, lean_deg).map(SoundHoleChoice::EyesAndStem)
        });
        leaning.map(|hole| to_page(&hole)).ok_or_else(|| {
            no_such_hole("no_such_lean", "No f-hole leans like that.", "Give a lean between -80 and 80 degrees.")
        })
    }

    /// A hole traced as an SVG path, its middle where that side's hole has it, as it stands in a design. `mm_from_path` are the
    /// six numbers of the transform to millimetres; the hole is seen as on the treble side.
    ///
    /// # Errors
    /// What is no path or no hole.
    pub fn traced_hole(&self, treble_side: bool, d: &str, mm_from_path: &[f64]) -> Result<JsValue, Box<Problem>> {
        let m = &self.design.outline;
        let middle = self.hole(treble_side).map_or_else(
            || [0.5 * MIDDLE_ACROSS * m.lower_width_mm, self.design.bridge_station_mm()],
            SoundHole::middle_mm,
        );
        let matrix = mm_from_path.try_into().map_err(|_| {
            Problem::said("wrong_transform", format!("A transform has six numbers, not {}.", mm_from_path.len()))
        })?;
        Ok(to_page(&SoundHoleChoice::Traced(TracedHole::of_svg_path(d, matrix, middle)?)))
    }

    fn hole(&self, treble_side: bool) -> Option<&SoundHole> {
        self.shape.holes.iter().find(|hole| hole.is_treble() == treble_side)
    }

    fn f_hole(&self, treble_side: bool) -> Option<(&SoundHole, &EyesAndStem)> {
        match self.design.sound_holes.on_side(treble_side) {
            SoundHoleChoice::EyesAndStem(measures) => Some((self.hole(treble_side)?, measures)),
            _ => None,
        }
    }
}

fn no_such_hole(kind: &str, message: &str, remedy: &str) -> Box<Problem> {
    Box::new(Problem { remedy: remedy.into(), ..*Problem::said(kind, message) })
}
