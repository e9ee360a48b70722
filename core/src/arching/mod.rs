//! The arching: long arch, cross arches, and the boundary they run out at.
//!
//! After this stage every curve that shapes the outer surface is fixed: the height of the channel line, the long arch
//! between the channel's two ends, the shape of the cross arch at every station, and the arching boundary X(y).
//! [`crate::surface`] joins them into one surface.

mod boundary;
mod cross_arches;
mod curtate_cycloid;
mod monotone_cubic;
#[cfg(test)]
mod tests;

pub use boundary::{ArchingBoundary, HalfWidth};
use cross_arches::CrossArches;
pub use cross_arches::OnCrossArch;
pub use curtate_cycloid::CurtateCycloid;
pub use monotone_cubic::MonotoneCubic;

use crate::{
    design::{ArchingMeasures, DesignError},
    outline::Outline,
};

/// All curves of the arching.
#[derive(Clone, Debug)]
pub struct Arching {
    measures: ArchingMeasures,
    boundary: ArchingBoundary,
    long_arch: CurtateCycloid,
    cross_arches: CrossArches,
}

impl Arching {
    /// Lays the curves down on an outline.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] when the arch doesn't stand above its channel, the channel lies below the rim's plane,
    /// or the channel is too far in for the outline's curves.
    pub fn new(measures: &ArchingMeasures, outline: &Outline) -> Result<Arching, DesignError> {
        let channel = measures.edge_height_mm - measures.channel_depth_mm;
        if measures.apex_height_mm <= measures.edge_height_mm {
            return Err(DesignError::Impossible {
                kind: "arch_below_channel",
                path: "arching.apex_height_mm".into(),
                what: "the arch does not rise above its edge and channel".into(),
                value: format!("{} mm", measures.apex_height_mm),
                limits: format!(
                    "it must be above the edge's height, {} mm (the channel lies at {channel} mm)",
                    measures.edge_height_mm
                ),
                remedy: "raise the apex or lower the edge".into(),
            });
        }
        if channel <= 0.0 {
            return Err(DesignError::Impossible {
                kind: "channel_below_rim",
                path: "arching.channel_depth_mm".into(),
                what: "the channel is deeper than the edge is high".into(),
                value: format!("{} mm", measures.channel_depth_mm),
                limits: format!("it must be less than the edge's height, {} mm", measures.edge_height_mm),
                remedy: "make the channel shallower or the edge higher".into(),
            });
        }
        let boundary = ArchingBoundary::new(outline, measures.channel_distance_mm)?;
        Ok(Arching {
            measures: measures.clone(),
            boundary,
            long_arch: CurtateCycloid::from_fullness(measures.long_arch_fullness),
            cross_arches: CrossArches::new(measures, outline.measures()),
        })
    }

    /// The measures it was laid down from.
    pub fn measures(&self) -> &ArchingMeasures {
        &self.measures
    }

    /// Where the arch ends and channel and platform begin.
    pub fn boundary(&self) -> &ArchingBoundary {
        &self.boundary
    }

    /// Height of the channel line, mm.
    pub fn channel_height_mm(&self) -> f64 {
        self.measures.edge_height_mm - self.measures.channel_depth_mm
    }

    /// How far station y is from the middle of the long arch, over half its length: 0 at the apex, 1 at the channel.
    pub fn along_long_arch(&self, y_mm: f64) -> f64 {
        let [low, high] = self.boundary.ends_mm();
        (2.0 * y_mm - low - high).abs() / (high - low)
    }

    /// Rise of the long arch above the channel, mm, its slope and its second derivative by y. Zero with zero slope at and
    /// beyond the ends.
    pub fn long_rise_mm(&self, y_mm: f64) -> [f64; 3] {
        let [low, high] = self.boundary.ends_mm();
        let rise = self.measures.apex_height_mm - self.channel_height_mm();
        let half = 0.5 * (high - low);
        let off = y_mm - 0.5 * (low + high);
        if off.abs() >= half {
            return [0.0; 3];
        }
        let p = self.long_arch.at(off.abs() / half);
        [rise * p.height, rise * p.slope[0] * off.signum() / half, rise * p.bend[0] / (half * half)]
    }

    /// The cross arch at station y at a place, 0 on the centreline to 1 at the boundary.
    pub fn cross_arch(&self, y_mm: f64, place: f64) -> OnCrossArch {
        self.cross_arches.at(y_mm, place)
    }

    /// Where the cross arch at station y turns from convex to concave, 0 on the centreline to 1 at the boundary.
    pub fn inflection(&self, y_mm: f64) -> f64 {
        self.cross_arches.inflection(y_mm)
    }
}
