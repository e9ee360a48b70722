//! The graduation's part of a design and its JSON keys.
//!
//! Files of version 1 from before the further zones read as they were meant: a zone left out has no thickness of its own.

use serde::{Deserialize, Serialize};

use super::PlanPlace;

/// Thickness of the wood, measured along the normal of the outer surface.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct GraduationMeasures {
    pub centre_mm: f64,
    pub flank_mm: f64,
    pub edge_mm: f64,
    /// Left out: as the flanks.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub upper_bout_mm: Option<f64>,
    /// Left out: as the flanks.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lower_bout_mm: Option<f64>,
    /// Left out: on the way from edge to flank.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub channel_mm: Option<f64>,
    /// Left out: as the wood round about.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub around_holes_mm: Option<f64>,
    /// Left out: as the wood round about.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wings_mm: Option<f64>,
    /// Thicknesses measured on a top; where there are any, they stand for all zones.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub measured: Vec<MeasuredThickness>,
    /// Thicknesses painted over all else, the later over the earlier.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub painted: Vec<PaintedThickness>,
}

/// A thickness read from a top.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct MeasuredThickness {
    pub place: PlanPlace,
    pub thickness_mm: f64,
}

/// A thickness wished for at a place and, less and less, round about.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each measure is described once, in MEASURES")]
pub struct PaintedThickness {
    pub place: PlanPlace,
    pub thickness_mm: f64,
    pub reach_mm: f64,
}

impl GraduationMeasures {
    /// Most measured thicknesses: each is asked for at every place, and a calliper takes no more by hand.
    pub const MOST_MEASURED: usize = 500;

    /// The same with every thickness changed alike. The thickness anywhere is a mean of those given, so that it changes by
    /// just as much.
    #[must_use]
    pub fn thicker_by(&self, change_mm: f64) -> GraduationMeasures {
        let mut changed = self.clone();
        for thickness in [&mut changed.centre_mm, &mut changed.flank_mm, &mut changed.edge_mm] {
            *thickness += change_mm;
        }
        let zones = [
            &mut changed.upper_bout_mm,
            &mut changed.lower_bout_mm,
            &mut changed.channel_mm,
            &mut changed.around_holes_mm,
            &mut changed.wings_mm,
        ];
        zones.into_iter().flatten().for_each(|thickness| *thickness += change_mm);
        changed.measured.iter_mut().for_each(|point| point.thickness_mm += change_mm);
        changed.painted.iter_mut().for_each(|point| point.thickness_mm += change_mm);
        changed
    }

    /// Takes over measured thicknesses (x, y, thickness), mm, every so many of them when there are more than
    /// [`Self::MOST_MEASURED`].
    pub fn measure(&mut self, readings: &[[f64; 3]]) {
        let step = readings.len().div_ceil(Self::MOST_MEASURED).max(1);
        let taken = readings.iter().step_by(step).map(|&[across_mm, station_mm, thickness_mm]| MeasuredThickness {
            place: PlanPlace { across_mm, station_mm },
            thickness_mm,
        });
        self.measured = taken.collect();
    }
}
