//! The parts of a design and their JSON keys.

use serde::{Deserialize, Serialize};

use super::{AddedMass, ArchingMeasures, BarMeasures, GraduationMeasures, PostMeasures, RibMeasures, SoundHoles};
use crate::wood::WoodChoice;

/// A whole top as its maker describes it. Limits of all numbers: [`super::MEASURES`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Design {
    /// Always [`super::FORMAT`].
    pub format: String,
    /// Always [`super::VERSION`].
    pub version: u32,
    /// What the maker calls it.
    pub name: String,
    /// Free words.
    pub note: String,
    /// The shape in plan.
    pub outline: OutlineMeasures,
    /// The outer surface.
    pub arching: ArchingMeasures,
    /// The two sound holes and the stop.
    pub sound_holes: SoundHoles,
    /// Thickness.
    pub graduation: GraduationMeasures,
    /// What it is cut from.
    pub wood: WoodChoice,
    /// How the rim is held.
    pub rim: Rim,
    /// The bar; a top without one leaves it out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bar: Option<BarMeasures>,
    /// The post; a top without one leaves it out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub post: Option<PostMeasures>,
    /// Masses fixed to the top.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub masses: Vec<AddedMass>,
}

/// The outline's workshop measures. Both sides are alike unless the bass side has its own; the widths are then twice the
/// treble side's half widths.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct OutlineMeasures {
    pub length_mm: f64,
    pub upper_width_mm: f64,
    pub upper_station_mm: f64,
    pub waist_width_mm: f64,
    pub waist_station_mm: f64,
    pub lower_width_mm: f64,
    pub lower_station_mm: f64,
    pub upper_corner: CornerMeasures,
    pub lower_corner: CornerMeasures,
    pub upper_end_fullness: f64,
    pub lower_end_fullness: f64,
    pub overhang_mm: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bass: Option<BassSide>,
}

/// What of the outline differs on the bass side, from the centreline.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct BassSide {
    pub upper_half_width_mm: f64,
    pub waist_half_width_mm: f64,
    pub lower_half_width_mm: f64,
    pub upper_corner: CornerMeasures,
    pub lower_corner: CornerMeasures,
}

/// Where a corner's tip stands and how wide it is cut.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct CornerMeasures {
    pub station_mm: f64,
    pub reach_mm: f64,
    pub width_mm: f64,
    pub lean_deg: f64,
}

impl OutlineMeasures {
    /// The five stations that makers name, from the bottom edge up: name and place, mm.
    #[must_use]
    pub fn named_stations_mm(&self) -> [(&'static str, f64); 5] {
        [
            ("lower_bout", self.lower_station_mm),
            ("lower_corners", self.lower_corner.station_mm),
            ("waist", self.waist_station_mm),
            ("upper_corners", self.upper_corner.station_mm),
            ("upper_bout", self.upper_station_mm),
        ]
    }
}

/// How the rim is held.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Rim {
    /// Nothing touches it, as when it is tapped in the hand.
    Free,
    /// Held against moving, free to turn.
    Hinged,
    /// Held against moving and turning.
    Clamped,
    /// On ribs that give way.
    Elastic(RibMeasures),
}
