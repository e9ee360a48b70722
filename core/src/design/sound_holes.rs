//! The sound holes' part of a design and its JSON keys.
//!
//! Files of version 1 from before the ends could be cut sharp read as they were meant: what is left out is round.

use serde::{Deserialize, Serialize};

use super::{Measure, tenths};

/// How the knife leaves the ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EndCut {
    /// Rounded.
    #[default]
    Round,
    /// Left as the sides meet: what rounding is worth shows against it.
    Sharp,
}

impl EndCut {
    fn is_default(&self) -> bool {
        *self == EndCut::default()
    }
}

/// The stop and the hole on each side.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SoundHoles {
    /// From the neck-end edge down to the line joining the inner nicks.
    pub stop_mm: f64,
    /// The hole on the bass side, x < 0.
    pub bass: SoundHoleChoice,
    /// The hole on the treble side, x > 0.
    pub treble: SoundHoleChoice,
}

/// What is cut on one side.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum SoundHoleChoice {
    /// The f-hole.
    EyesAndStem(EyesAndStem),
    /// A round hole, for comparison.
    Round(RoundHole),
    /// A crescent, for comparison.
    Crescent(CrescentHole),
    /// A straight slot, for comparison.
    Slot(SlotHole),
    /// A hole traced from elsewhere.
    Traced(TracedHole),
    /// Nothing cut.
    None,
}

/// An f-hole: two eyes joined by a stem that swings round into each of them.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct EyesAndStem {
    pub upper_eye_diameter_mm: f64,
    pub upper_eye_to_centreline_mm: f64,
    pub upper_eye_station_mm: f64,
    pub lower_eye_diameter_mm: f64,
    pub lower_eye_to_edge_mm: f64,
    pub lower_eye_station_mm: f64,
    pub stem_width_mm: f64,
    pub throat_width_mm: f64,
    pub upper_wing_width_mm: f64,
    pub lower_wing_width_mm: f64,
    pub wing_rounding_mm: f64,
    pub nick_depth_mm: f64,
    /// Left out: 0.8 of the width at the nicks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stem_at_hooks_mm: Option<f64>,
    /// Left out: 9 degrees, with which the stem's sides bend one way from the nicks to each hook.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stem_steeper_deg: Option<f64>,
    /// Left out: the wing is as the arching has it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_wing_hollow_mm: Option<f64>,
    /// Left out: 0.8.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_wing_hollow_reach: Option<f64>,
    /// How the wings' points are cut.
    #[serde(skip_serializing_if = "EndCut::is_default")]
    pub ends: EndCut,
}

/// A round hole.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct RoundHole {
    pub diameter_mm: f64,
    pub centre_to_centreline_mm: f64,
    pub centre_station_mm: f64,
}

/// A crescent between two compass arcs, upright but for its lean. Its length is that of the sharp horns; rounding shortens it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct CrescentHole {
    pub length_mm: f64,
    pub width_mm: f64,
    pub bow_mm: f64,
    pub end_rounding_mm: f64,
    pub centre_to_centreline_mm: f64,
    pub centre_station_mm: f64,
    pub lean_deg: f64,
    /// How the horns are cut; sharp horns have no use for the rounding.
    #[serde(skip_serializing_if = "EndCut::is_default")]
    pub ends: EndCut,
}

/// A straight slot, upright but for its lean.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct SlotHole {
    pub length_mm: f64,
    pub width_mm: f64,
    pub centre_to_centreline_mm: f64,
    pub centre_station_mm: f64,
    pub lean_deg: f64,
    /// Half round, or square when sharp.
    #[serde(skip_serializing_if = "EndCut::is_default")]
    pub ends: EndCut,
}

/// A hole traced from elsewhere, at its true size.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct TracedHole {
    /// One closed line in SVG's notation, with the absolute commands M, L, Q, C and Z, as it lies on the treble side, neck end up; one
    /// unit is one mm, y points down. Where it lies on its sheet doesn't matter.
    pub path: String,
    pub centre_to_centreline_mm: f64,
    pub centre_station_mm: f64,
    pub lean_deg: f64,
}

impl SoundHoles {
    /// What is cut on one side.
    #[must_use]
    pub fn on_side(&self, treble_side: bool) -> &SoundHoleChoice {
        if treble_side { &self.treble } else { &self.bass }
    }

    /// Scales f-holes and stop to another length of the body.
    pub(crate) fn scale(&mut self, by: f64) {
        self.stop_mm = tenths(self.stop_mm * by);
        for hole in [&mut self.bass, &mut self.treble] {
            if let SoundHoleChoice::EyesAndStem(hole) = hole {
                scale_hole(hole, by);
            }
        }
    }
}

/// Every length of an f-hole; a wing is never rounded more than a design allows.
fn scale_hole(hole: &mut EyesAndStem, by: f64) {
    for measure in [
        &mut hole.upper_eye_diameter_mm,
        &mut hole.upper_eye_to_centreline_mm,
        &mut hole.upper_eye_station_mm,
        &mut hole.lower_eye_diameter_mm,
        &mut hole.lower_eye_to_edge_mm,
        &mut hole.lower_eye_station_mm,
        &mut hole.stem_width_mm,
        &mut hole.throat_width_mm,
        &mut hole.upper_wing_width_mm,
        &mut hole.lower_wing_width_mm,
        &mut hole.wing_rounding_mm,
        &mut hole.nick_depth_mm,
    ] {
        *measure = tenths(*measure * by);
    }
    for measure in [&mut hole.stem_at_hooks_mm, &mut hole.lower_wing_hollow_mm].into_iter().flatten() {
        *measure = tenths(*measure * by);
    }
    let rounding = Measure::of_path("sound_holes.*.wing_rounding_mm");
    hole.wing_rounding_mm = hole.wing_rounding_mm.min(rounding.map_or(f64::INFINITY, |measure| measure.most));
}
