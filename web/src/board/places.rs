//! What the top is at places in plan.

use bombatura_core::regions::{Region, Regions};
use bombatura_core::top::{Quantity, Shape};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrawingBoard;
use crate::page_values::{to_page, with_arrays};
use crate::problem::Problem;

/// One place on the wood.
#[derive(Serialize)]
struct PlaceReply {
    height_mm: f64,
    thickness_mm: f64,
    slope_deg: f64,
    curvature_per_m: f64,
    region: &'static str,
}

#[derive(Serialize)]
struct RegionsAt {
    keys: Vec<&'static str>,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// (place): the quantity called `what` ("height" mm, "thickness" mm, "slope" degrees, "curvature" 1/m) at each of `places_mm`
    /// (place, xy) inside the outline.
    ///
    /// # Errors
    /// A quantity that there isn't.
    pub fn quantity(&self, what: &str, places_mm: &[f32]) -> Result<Vec<f32>, Box<Problem>> {
        let quantity = Quantity::ALL.into_iter().find(|quantity| quantity.key() == what).ok_or_else(|| {
            let known = Quantity::ALL.map(Quantity::key).join(", ");
            Problem::said("unknown_quantity", format!("There is no quantity called \"{what}\"; there are {known}."))
        })?;
        Ok(points(places_mm).map(|p| quantity.at(&self.shape, p) as f32).collect())
    }

    /// What the wood is at a place in plan: `{ height_mm, thickness_mm, slope_deg, curvature_per_m, region }`; nothing off it.
    #[must_use]
    pub fn place(&self, x_mm: f64, y_mm: f64) -> JsValue {
        let p = [x_mm, y_mm];
        let on_it = |region: &&Region| region.contains(p);
        self.regions_of_top().regions.iter().find(on_it).map_or(JsValue::UNDEFINED, |region| {
            let of = |quantity: Quantity| quantity.at(&self.shape, p);
            to_page(&PlaceReply {
                height_mm: of(Quantity::Height),
                thickness_mm: of(Quantity::Thickness),
                slope_deg: of(Quantity::Slope),
                curvature_per_m: of(Quantity::Curvature),
                region: region.kind.key(),
            })
        })
    }

    /// Which region each of `places_mm` (place, xy) on the wood belongs to: `{ keys, indices }`, (place) an index of the keys.
    #[must_use]
    pub fn regions_at(&self, places_mm: &[f32]) -> JsValue {
        let found = self.regions_of_top();
        let index = |p| {
            let kind = found.at(p).map(|region| region.kind);
            found.regions.iter().position(|region| Some(region.kind) == kind).unwrap_or(0) as f32
        };
        let indices: Vec<f32> = points(places_mm).map(index).collect();
        let keys = found.regions.iter().map(|region| region.kind.key()).collect();
        with_arrays(to_page(&RegionsAt { keys }), [("indices", &indices)])
    }
}

impl DrawingBoard {
    /// The regions, found once.
    pub(super) fn regions_of_top(&self) -> &Regions {
        let Shape { outline, holes, .. } = &self.shape;
        self.regions.get_or_init(|| Regions::new(outline, holes))
    }
}

fn points(places_mm: &[f32]) -> impl Iterator<Item = [f64; 2]> {
    places_mm.chunks_exact(2).map(|place| [f64::from(place[0]), f64::from(place[1])])
}
