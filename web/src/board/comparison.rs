//! The modes of two designs beside each other.

use bombatura_core::modes::pairs_by_shape;
use bombatura_core::top::likeness;
use js_sys::Object;
use wasm_bindgen::prelude::*;

use super::DrawingBoard;
use crate::page_values::with_arrays;

#[wasm_bindgen]
impl DrawingBoard {
    /// Which modes of two designs have the same shape, both given by the workshop's signatures (mode, place):
    /// `{ likeness, partners }`, likeness (mode of a, mode of b) from −1 to 1, whose square is the modal assurance criterion; partners
    /// (mode of a) the mode of b, from 1, or 0 where it has none.
    #[must_use]
    pub fn compare_shapes(a: &[f32], b: &[f32], modes_of_b: usize) -> JsValue {
        let found = likeness(a, b);
        let partner = |mode: Option<usize>| mode.map_or(0.0, |mode| mode as f32 + 1.0);
        let partners: Vec<f32> = pairs_by_shape(&found, modes_of_b).into_iter().map(partner).collect();
        let found: Vec<f32> = found.into_iter().map(|likeness| likeness as f32).collect();
        with_arrays(Object::new().into(), [("likeness", &found), ("partners", &partners)])
    }
}
