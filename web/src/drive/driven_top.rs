//! The class that the driven top's worker owns.

use bombatura_core::design::Design;
use bombatura_core::mesh::MeshSize;
use bombatura_core::regions::RegionKind;
use bombatura_core::response::{Port, ResponseError};
use bombatura_core::top::{self, Stages};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::page_values::to_page;
use crate::problem::Problem;

/// The mesh that the page shows settled designs on: motions are laid on its picture.
pub(super) const SIZE: MeshSize = MeshSize::Standard;
/// Where the level is estimated, m from the top.
pub(super) const LISTENER_M: f64 = 1.0;

/// One design, its modes up to 6 kHz, and a bridge on it. Problems are thrown as plain objects
/// `{kind, message, path?, value?, limits?, remedy?}`.
///
/// A drive is one of "bow" (a newton along the bow at the bridge's top), "press" (a newton outwards there) and "tap" (a newton outwards at
/// a place in plan); amplitudes are peaks.
#[wasm_bindgen]
#[derive(Debug)]
pub struct DrivenTop {
    pub(super) stages: Stages,
    pub(super) top: top::DrivenTop,
    pub(super) volume: Port,
}

#[derive(Serialize)]
struct AboutReply {
    modes: usize,
    nodes: usize,
    complete_to_hz: f64,
    elastic_hz: Vec<f64>,
    free: bool,
}

#[wasm_bindgen]
impl DrivenTop {
    /// Solves the design of a JSON document for its modes up to 6 kHz, 150 at most; the picture of the standard mesh is made too.
    ///
    /// Cost: some two seconds.
    ///
    /// # Errors
    /// What is wrong with the document, or a top that can't be meshed, solved, or stood a bridge on.
    #[wasm_bindgen(constructor)]
    pub fn new(json: &str) -> Result<DrivenTop, Box<Problem>> {
        console_error_panic_hook::set_once();
        let mut stages = Stages::new(Design::parse(json)?);
        let top = stages.driven::<Box<Problem>>(SIZE, true)?;
        stages.picture(SIZE)?;
        let volume = Port::volume(&top.basis);
        Ok(DrivenTop { stages, top, volume })
    }

    /// What there is: `{ modes, nodes, complete_to_hz, elastic_hz, free }`.
    #[must_use]
    pub fn about(&self) -> JsValue {
        let elastic_hz = self.top.basis.elastic_hz().to_vec();
        to_page(&AboutReply {
            modes: elastic_hz.len(),
            nodes: self.top.basis.node_count(),
            complete_to_hz: self.top.basis.complete_to_hz().min(top::DrivenTop::HIGHEST_HZ),
            elastic_hz,
            free: self.top.basis.arrays().rigid > 0,
        })
    }
}

impl From<ResponseError> for Box<Problem> {
    fn from(error: ResponseError) -> Box<Problem> {
        Problem::said(error.kind(), error.to_string())
    }
}

impl DrivenTop {
    /// The key of each region, in the order of its top's regions.
    pub(super) fn keys(&self) -> Vec<&'static str> {
        self.top.regions.kinds().map(RegionKind::key).collect()
    }
}
