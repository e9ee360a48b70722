//! Other sound holes to compare with.

use bombatura_core::sound_holes::Pattern;
use wasm_bindgen::prelude::*;

use super::{DrawingBoard, to_page};
use crate::problem::Problem;

#[wasm_bindgen]
impl DrawingBoard {
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
        let hole = self.shape.holes.iter().find(|hole| hole.is_treble() == treble_side);
        let equal = hole.zip(pattern).and_then(|(hole, pattern)| hole.of_equal_area(pattern));
        equal.map(|hole| to_page(&hole)).ok_or_else(|| {
            Box::new(Problem {
                kind: "no_equal_hole".into(),
                message: "There is no such hole with the same opening.".into(),
                remedy: "Choose another pattern.".into(),
                ..Problem::default()
            })
        })
    }
}
