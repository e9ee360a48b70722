//! What is fixed to the top: bar, post, masses, and ribs that give way.

use serde::{Deserialize, Serialize};

use crate::plan::Point;
use crate::plan::vector::{along, left_of, sub, unit};
use crate::wood::{MeasuredWood, Species, Wood, WoodChoice, WoodError};

/// A place in plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct PlanPlace {
    pub across_mm: f64,
    pub station_mm: f64,
}

/// The wood of a bar or post, its grain along its length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StickWood {
    /// Whose ratios are used.
    pub species: Species,
    /// Measurements of the piece in hand; without them the species' means are taken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<MeasuredWood>,
}

impl StickWood {
    /// Its constants, rings standing upright.
    ///
    /// # Errors
    /// As [`WoodChoice::wood`].
    pub fn wood(&self) -> Result<Wood, WoodError> {
        WoodChoice { species: self.species, ring_angle_deg: 0.0, measured: self.measured }.wood()
    }
}

/// The bar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct BarMeasures {
    pub lower_end: PlanPlace,
    pub upper_end: PlanPlace,
    pub width_mm: f64,
    pub height_mm: f64,
    pub highest_station_mm: f64,
    pub end_height_mm: f64,
    pub wood: StickWood,
}

impl BarMeasures {
    /// The corners of its foot in plan, mm, counter-clockwise; the sides are straight.
    #[must_use]
    pub fn foot_mm(&self) -> [Point; 4] {
        let [lower, upper] = [&self.lower_end, &self.upper_end].map(|end| [end.across_mm, end.station_mm]);
        let to_left = left_of(unit(sub(upper, lower)));
        let half = 0.5 * self.width_mm;
        [
            along(lower, to_left, -half),
            along(upper, to_left, -half),
            along(upper, to_left, half),
            along(lower, to_left, half),
        ]
    }
}

/// The post.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct PostMeasures {
    pub place: PlanPlace,
    pub diameter_mm: f64,
    pub length_mm: f64,
    pub wood: StickWood,
}

/// A mass fixed to the top.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct AddedMass {
    pub place: PlanPlace,
    pub mass_g: f64,
}

/// Ribs, linings and blocks that carry the rim.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct RibMeasures {
    pub height_mm: f64,
    pub thickness_mm: f64,
    pub lining_height_mm: f64,
    pub lining_thickness_mm: f64,
    pub across_gpa: f64,
    pub shear_gpa: f64,
    pub end_block_reach_mm: f64,
    pub corner_block_reach_mm: f64,
    pub block_factor: f64,
}
