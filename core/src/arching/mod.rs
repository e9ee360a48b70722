//! The arching: long arch, cross arches, and the boundary they run out at.
//!
//! After this stage every curve that shapes the outer surface is fixed: the height of the channel line, the long arch
//! between the channel's two ends, the shape of the cross arch at every station, and the arching boundary X(y).
//! [`crate::surface`] joins them into one surface.

mod arc_with_reverse_arc;
mod arch_name;
mod arch_spline;
mod arches;
#[cfg(test)]
mod arches_tests;
mod between_stations;
mod boundary;
mod cross_arches;
mod curtate_cycloid;
#[cfg(test)]
mod family_tests;
mod half_arch;
mod long_arch;
mod monotone_cubic;
#[cfg(test)]
mod tests;

pub use arc_with_reverse_arc::ArcWithReverseArc;
pub use arch_name::{ArchName, Family, Station};
pub use arch_spline::ArchSpline;
pub use arches::ArchFigures;
pub use boundary::{ArchingBoundary, HalfWidth};
use cross_arches::CrossArches;
pub use cross_arches::OnCrossArch;
pub use curtate_cycloid::CurtateCycloid;
pub use half_arch::HalfArch;
use long_arch::LongArch;
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
    long_arch: LongArch,
    cross_arches: CrossArches,
}

impl Arching {
    /// Lays the curves down on an outline.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] when the arch doesn't stand above its channel, the channel lies below the rim's plane or
    /// too far in for the outline's curves, or a curve can't be drawn as its family asks.
    pub fn new(measures: &ArchingMeasures, outline: &Outline) -> Result<Arching, DesignError> {
        Arching::over(measures, outline, || ArchingBoundary::new(outline, measures.channel_distance_mm))
    }

    fn over(
        measures: &ArchingMeasures,
        outline: &Outline,
        boundary: impl FnOnce() -> Result<ArchingBoundary, DesignError>,
    ) -> Result<Arching, DesignError> {
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
        let boundary = boundary()?;
        let long_arch = LongArch::new(measures, boundary.ends_mm())?;
        let cross_arches =
            CrossArches::new(measures, outline.measures(), &boundary, |y_mm| long_arch.rise_mm(y_mm)[0])?;
        Ok(Arching { measures: measures.clone(), boundary, long_arch, cross_arches })
    }

    /// The same with other curves on the same outline: its boundary is the old one unless the channel has moved.
    ///
    /// # Errors
    /// As for [`Arching::new`].
    pub(crate) fn reshaped(&self, measures: &ArchingMeasures, outline: &Outline) -> Result<Arching, DesignError> {
        if measures.channel_distance_mm != self.measures.channel_distance_mm {
            return Arching::new(measures, outline);
        }
        Arching::over(measures, outline, || Ok(self.boundary.clone()))
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

    /// True when every cross arch is the same on both sides of a symmetric outline.
    pub fn sides_are_alike(&self) -> bool {
        let m = &self.measures;
        let arches = &m.cross_arches;
        let named =
            [&arches.upper_bout, &arches.upper_corners, &arches.waist, &arches.lower_corners, &arches.lower_bout];
        named.into_iter().chain(m.extra_arches.iter().map(|extra| &extra.arch)).all(|arch| arch.bass.is_none())
    }

    /// Station of the apex, mm.
    pub fn apex_station_mm(&self) -> f64 {
        self.long_arch.apex_mm()
    }

    /// How far station y is from the apex, over the length of its half: 0 at the apex, 1 at the channel.
    pub fn along_long_arch(&self, y_mm: f64) -> f64 {
        self.long_arch.place(y_mm).0
    }

    /// Rise of the long arch above the channel, mm, its slope and its second derivative by y. Zero with zero slope at and
    /// beyond the ends.
    pub fn long_rise_mm(&self, y_mm: f64) -> [f64; 3] {
        self.long_arch.rise_mm(y_mm)
    }

    /// The cross arch at station y at a place, 0 on the centreline to 1 at the boundary.
    pub fn cross_arch(&self, y_mm: f64, place: f64, treble_side: bool) -> OnCrossArch {
        self.cross_arches.at(y_mm, place, treble_side)
    }

    /// Where the cross arch at station y turns from convex to concave, 0 on the centreline to 1 at the boundary.
    pub fn inflection(&self, y_mm: f64, treble_side: bool) -> f64 {
        self.cross_arches.inflection(y_mm, treble_side)
    }
}
