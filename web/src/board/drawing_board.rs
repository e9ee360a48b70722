//! The class that the drawing board's worker owns.

use std::cell::OnceCell;

use bombatura_core::arching_figures::ArchingFigures;
use bombatura_core::design::Design;
use bombatura_core::drawings::Drawings;
use bombatura_core::regions::Regions;
use bombatura_core::top::Shape;
use wasm_bindgen::prelude::*;

use crate::problem::Problem;

use super::replies::ArchingReply;
use crate::page_values::to_page;

/// One design, drawn. Problems are thrown as plain objects `{kind, message, path?, value?, limits?, remedy?}`.
#[wasm_bindgen]
#[derive(Debug)]
pub struct DrawingBoard {
    pub(super) design: Design,
    pub(super) shape: Shape,
    /// Found when they are first asked for.
    pub(super) regions: OnceCell<Regions>,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// A board with the design of a JSON document on it.
    ///
    /// # Errors
    /// What is wrong with the document or the measures in it.
    #[wasm_bindgen(constructor)]
    pub fn new(json: &str) -> Result<DrawingBoard, Box<Problem>> {
        console_error_panic_hook::set_once();
        // Drawing it checks it.
        let design = Design::parse(json)?;
        let shape = Shape::new(&design)?;
        Ok(DrawingBoard { design, shape, regions: OnceCell::new() })
    }

    /// The working drawings, true to scale in mm: `{ plan, long_arch, cross_arches }`, each
    /// `{ low, high, lines: [{ kind, path }], labels: [{ name, value_mm, at, minor }], handles }`, a handle
    /// `{ paths, what, unit, value, least, most, at, along }`.
    #[must_use]
    pub fn drawings(&self) -> JsValue {
        to_page(&Drawings::new(&self.design, &self.shape))
    }

    /// What the arching does: `{ apex_mm, rise_mm, channel_depth_mm, steepest, hollow_radius?, round_radius?, holes }`, the
    /// figures with a place as `{ value, at }`, in degrees and mm; a hole as `{ treble_side, crossings, misses? }`.
    #[must_use]
    pub fn arching(&self) -> JsValue {
        let Shape { outline, surface, holes, .. } = &self.shape;
        to_page(&ArchingReply::from(&ArchingFigures::new(outline, surface, holes)))
    }
}
