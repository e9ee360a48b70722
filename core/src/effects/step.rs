//! The steps that a maker makes.

use serde_json::Value;

use crate::design::{Design, DesignError};

/// What a step works on; a person who looks for a way allows some of these.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepGroup {
    /// Outline.
    Outline,
    /// Outer surface.
    Arching,
    /// Sound holes.
    SoundHoles,
    /// Thickness.
    Graduation,
    /// Bar and post.
    Fittings,
    /// Ribs.
    Rim,
}

impl StepGroup {
    /// All, in the order in which a top is made.
    pub const ALL: [StepGroup; 6] =
        [Self::Outline, Self::Arching, Self::SoundHoles, Self::Graduation, Self::Fittings, Self::Rim];

    /// A stable word.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Outline => "outline",
            Self::Arching => "arching",
            Self::SoundHoles => "sound_holes",
            Self::Graduation => "graduation",
            Self::Fittings => "fittings",
            Self::Rim => "rim",
        }
    }
}

/// One control moved by as much as is usual at a time. Sound holes alike on both sides move together.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What it works on.
    pub group: StepGroup,
    /// The measure as the table of measures has it; `*` where it holds for both sides.
    pub measure: &'static str,
    /// Where it stands in the design document; more than one place where both sides move.
    pub paths: Vec<String>,
    /// What is added, in the measure's unit.
    pub change: f64,
    /// What the first of its places holds now.
    pub now: f64,
}

/// Measures and steps; common practice, no source.
const STEPS: &[(StepGroup, &str, f64)] = &[
    (StepGroup::Outline, "outline.upper_width_mm", 1.0),
    (StepGroup::Outline, "outline.waist_width_mm", 1.0),
    (StepGroup::Outline, "outline.lower_width_mm", 1.0),
    (StepGroup::Outline, "outline.upper_station_mm", 1.0),
    (StepGroup::Outline, "outline.waist_station_mm", 1.0),
    (StepGroup::Outline, "outline.lower_station_mm", 1.0),
    (StepGroup::Outline, "outline.upper_corner.reach_mm", 1.0),
    (StepGroup::Outline, "outline.upper_corner.station_mm", 1.0),
    (StepGroup::Outline, "outline.lower_corner.reach_mm", 1.0),
    (StepGroup::Outline, "outline.lower_corner.station_mm", 1.0),
    (StepGroup::Outline, "outline.upper_end_fullness", 0.01),
    (StepGroup::Outline, "outline.lower_end_fullness", 0.01),
    (StepGroup::Arching, "arching.apex_height_mm", 0.5),
    (StepGroup::Arching, "arching.apex_station_mm", 2.0),
    (StepGroup::Arching, "arching.edge_height_mm", 0.2),
    (StepGroup::Arching, "arching.long_arch_fullness", 0.01),
    (StepGroup::Arching, "arching.channel_depth_mm", 0.2),
    (StepGroup::Arching, "arching.channel_distance_mm", 1.0),
    (StepGroup::Arching, "arching.cross_arches.upper_bout.fullness", 0.01),
    (StepGroup::Arching, "arching.cross_arches.upper_corners.fullness", 0.01),
    (StepGroup::Arching, "arching.cross_arches.waist.fullness", 0.01),
    (StepGroup::Arching, "arching.cross_arches.lower_corners.fullness", 0.01),
    (StepGroup::Arching, "arching.cross_arches.lower_bout.fullness", 0.01),
    (StepGroup::SoundHoles, "sound_holes.stop_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.upper_eye_to_centreline_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.upper_eye_station_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.upper_eye_diameter_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.lower_eye_to_edge_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.lower_eye_station_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.lower_eye_diameter_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.stem_width_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.stem_at_hooks_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.throat_width_mm", 0.2),
    (StepGroup::SoundHoles, "sound_holes.*.upper_wing_width_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.lower_wing_width_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.lower_wing_hollow_mm", 0.2),
    (StepGroup::SoundHoles, "sound_holes.*.diameter_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.centre_to_centreline_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.centre_station_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.length_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.width_mm", 0.5),
    (StepGroup::SoundHoles, "sound_holes.*.bow_mm", 1.0),
    (StepGroup::SoundHoles, "sound_holes.*.lean_deg", 1.0),
    (StepGroup::Graduation, "graduation.centre_mm", 0.1),
    (StepGroup::Graduation, "graduation.flank_mm", 0.1),
    (StepGroup::Graduation, "graduation.edge_mm", 0.1),
    (StepGroup::Graduation, "graduation.upper_bout_mm", 0.1),
    (StepGroup::Graduation, "graduation.lower_bout_mm", 0.1),
    (StepGroup::Graduation, "graduation.channel_mm", 0.1),
    (StepGroup::Graduation, "graduation.around_holes_mm", 0.1),
    (StepGroup::Graduation, "graduation.wings_mm", 0.1),
    (StepGroup::Fittings, "bar.height_mm", 0.5),
    (StepGroup::Fittings, "bar.width_mm", 0.5),
    (StepGroup::Fittings, "bar.end_height_mm", 0.5),
    (StepGroup::Fittings, "bar.*.across_mm", 1.0),
    (StepGroup::Fittings, "post.place.across_mm", 1.0),
    (StepGroup::Fittings, "post.place.station_mm", 1.0),
    (StepGroup::Fittings, "post.diameter_mm", 0.5),
    (StepGroup::Rim, "rim.elastic.height_mm", 1.0),
    (StepGroup::Rim, "rim.elastic.thickness_mm", 0.1),
];

/// The steps that `design` has the measures for.
#[must_use]
pub fn steps_of(design: &Design) -> Vec<Step> {
    let document = document(design);
    let step = |&(group, measure, change): &(StepGroup, &'static str, f64)| {
        let paths: Vec<String> = ["bass", "treble", "lower_end", "upper_end"]
            .iter()
            .map(|name| measure.replace('*', name))
            .take(if measure.contains('*') { 4 } else { 1 })
            .filter(|path| number_at(&document, path).is_some())
            .collect();
        let now = number_at(&document, paths.first()?)?;
        Some(Step { group, measure, paths, change, now })
    };
    STEPS.iter().filter_map(step).collect()
}

impl Step {
    /// `design` after `share` of this step; negative the other way.
    ///
    /// # Errors
    /// [`DesignError`] where it no longer is a design; whether it can be drawn is for whoever draws it.
    pub fn applied(&self, design: &Design, share: f64) -> Result<Design, DesignError> {
        applied(&[(self, share)], design)
    }
}

/// `design` after shares of many steps.
pub(super) fn applied(shares: &[(&Step, f64)], design: &Design) -> Result<Design, DesignError> {
    let mut document = document(design);
    for (step, share) in shares {
        for path in &step.paths {
            if let Some(place) = document.pointer_mut(&pointer(path)) {
                *place = place.as_f64().map(|own| own + share * step.change).into();
            }
        }
    }
    Design::parse(&document.to_string())
}

fn document(design: &Design) -> Value {
    // A design has string keys and plain values only, for which there is no failure.
    serde_json::from_str(&design.to_json()).unwrap_or_default()
}

fn pointer(path: &str) -> String {
    format!("/{}", path.replace('.', "/"))
}

fn number_at(document: &Value, path: &str) -> Option<f64> {
    document.pointer(&pointer(path))?.as_f64()
}
