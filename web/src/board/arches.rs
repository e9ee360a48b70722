//! What the page's measures and arches are made from: limits, designs to start from, families and turns.

use bombatura_core::arching::{ArchFigures, ArchName, Family};
use bombatura_core::design::{Design, MEASURES, Preset};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::{DrawingBoard, checked};
use crate::page_values::to_page;
use crate::problem::Problem;

#[derive(Serialize)]
struct MeasureReply {
    path: &'static str,
    what: &'static str,
    unit: &'static str,
    least: f64,
    most: f64,
}

#[derive(Serialize)]
struct PresetReply {
    word: &'static str,
    name: &'static str,
    design: String,
}

#[derive(Serialize)]
struct ArchReply {
    arch: String,
    family: &'static str,
    fullness: f64,
    station_mm: f64,
    half_span_mm: f64,
    rise_mm: f64,
    inflection_mm: f64,
}

impl From<ArchFigures> for ArchReply {
    fn from(arch: ArchFigures) -> ArchReply {
        let ArchFigures { fullness, station_mm, half_span_mm, rise_mm, inflection_mm, .. } = arch;
        let (arch, family) = (arch.name.word(), arch.family.word());
        ArchReply { arch, family, fullness, station_mm, half_span_mm, rise_mm, inflection_mm }
    }
}

#[wasm_bindgen]
impl DrawingBoard {
    /// Every measure of a design: `[{ path, what, unit, least, most }]`, `*` in a path standing for any one key.
    #[must_use]
    pub fn measures() -> JsValue {
        let rows = MEASURES.iter().map(|m| MeasureReply {
            path: m.path,
            what: m.what,
            unit: m.unit,
            least: m.least,
            most: m.most,
        });
        to_page(&rows.collect::<Vec<_>>())
    }

    /// Invented designs to start from: `[{ word, name, design }]`, the design as JSON.
    #[must_use]
    pub fn presets() -> JsValue {
        let rows = Preset::all().into_iter().map(|preset| PresetReply {
            word: preset.word,
            name: preset.name,
            design: preset.design().to_json(),
        });
        to_page(&rows.collect::<Vec<_>>())
    }

    /// Every arch of the design on the board, the long arch first:
    /// `[{ arch, family, fullness, station_mm, half_span_mm, rise_mm, inflection_mm }]`, lengths from the crest.
    #[must_use]
    pub fn arches(&self) -> JsValue {
        let arches = self.shape.surface.arching().arches(&self.shape.outline);
        to_page(&arches.into_iter().map(ArchReply::from).collect::<Vec<_>>())
    }

    /// The design on the board with the arch of this word turning `inflection_mm` from its crest, as JSON; the board keeps
    /// what it has.
    ///
    /// # Errors
    /// An arch that there isn't, a turn that it can't have.
    pub fn with_inflection(&self, arch: &str, inflection_mm: f64) -> Result<String, Box<Problem>> {
        let name = self.arch(arch)?;
        let shape = &self.shape;
        let arching = shape.surface.arching().with_inflection(&shape.outline, name, inflection_mm)?;
        Ok(checked(&Design { arching, ..self.design.clone() })?)
    }

    /// The design on the board with the arch of this word drawn by another family, as JSON; the board keeps what it has.
    ///
    /// # Errors
    /// An arch or a family that there isn't, or an arch that the family can't draw.
    pub fn with_family(&self, arch: &str, family: &str) -> Result<String, Box<Problem>> {
        let name = self.arch(arch)?;
        let family = Family::of_word(family).ok_or_else(|| unknown_arch(family))?;
        let shape = &self.shape;
        let arching = shape.surface.arching().with_family(&shape.outline, name, family);
        Ok(checked(&Design { arching, ..self.design.clone() })?)
    }

    fn arch(&self, word: &str) -> Result<ArchName, Box<Problem>> {
        ArchName::of_word(word, &self.design.arching).ok_or_else(|| unknown_arch(word))
    }
}

/// An arch or a family that the design on the board hasn't.
fn unknown_arch(word: &str) -> Box<Problem> {
    Box::new(Problem {
        kind: "unknown_arch".into(),
        message: format!("This design has no arch or family called \"{word}\"."),
        value: word.into(),
        ..Problem::default()
    })
}
