//! What is fixed to the top, and the wood it is cut from.

use bombatura_core::design::{BarMeasures, PostMeasures, RibMeasures};
use bombatura_core::wood::{OrthotropicConstants, Species, SpeciesRecord};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrawingBoard;
use crate::page_values::to_page;
use crate::problem::Problem;

#[derive(Serialize)]
struct UsualFittings {
    bar: BarMeasures,
    post: PostMeasures,
    ribs: RibMeasures,
}

#[derive(Serialize)]
struct SpeciesReply {
    key: &'static str,
    name: &'static str,
    source: &'static str,
}

/// The wood of a design with every constant known.
#[derive(Serialize)]
struct WoodReply {
    density_kg_m3: f64,
    constants: OrthotropicConstants,
    /// Speeds of sound along and across the grain, m/s.
    speed_along_m_s: f64,
    speed_across_m_s: f64,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// Bar, post and ribs as usual on a top of this size, as they stand in a design: `{ bar, post, ribs }`.
    #[must_use]
    pub fn usual_fittings(&self) -> JsValue {
        let Self { design, .. } = self;
        to_page(&UsualFittings { bar: design.usual_bar(), post: design.usual_post(), ribs: design.usual_ribs() })
    }

    /// The species whose means are built in: `[{ key, name, source }]`.
    #[must_use]
    pub fn species() -> JsValue {
        let reply = |species: Species| {
            let SpeciesRecord { key, name, source, .. } = species.record();
            SpeciesReply { key, name, source }
        };
        to_page(&Species::ALL.map(reply))
    }

    /// The constants of the wood that the top is cut from: `{ density_kg_m3, constants, speed_along_m_s, speed_across_m_s }`, the
    /// constants `{ e_l_gpa, ..., nu_rt }`.
    ///
    /// # Errors
    /// Wood that can't be.
    pub fn wood(&self) -> Result<JsValue, Box<Problem>> {
        let wood = self.design.wood.wood().map_err(|error| Problem::said("impossible_wood", error.to_string()))?;
        // E = ρc² of a slender stick.
        let speed_m_s = |modulus_gpa: f64| (modulus_gpa * 1e9 / wood.density_kg_m3).sqrt();
        Ok(to_page(&WoodReply {
            density_kg_m3: wood.density_kg_m3,
            constants: wood.constants,
            speed_along_m_s: speed_m_s(wood.constants.e_l_gpa),
            speed_across_m_s: speed_m_s(wood.constants.e_r_gpa),
        }))
    }
}
