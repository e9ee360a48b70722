//! The design: what a maker types, as one strict, versioned JSON document.
//!
//! After [`Design::from_json`] or [`Design::check`] every number is finite and inside the limits of [`MEASURES`], and
//! the measures agree with each other: the outline closes without crossing itself, the holes lie in the wood, the arch
//! stands above the channel, bar, post and masses stand on wood. This module alone knows the JSON form. Coordinates follow the top's frame: stations are
//! y, from the bottom edge.

mod arching;
mod check;
mod check_fittings;
mod document;
mod error;
mod fittings;
#[cfg(test)]
pub(crate) mod fittings_tests;
mod graduation;
mod measures;
mod parts;
mod place;
mod presets;
#[cfg(test)]
pub(crate) mod reshaped;
mod sound_hole_keys;
mod sound_holes;
pub(crate) mod strict;
mod tagged;
#[cfg(test)]
mod tests;
mod usual_fittings;

pub use arching::{ArchCurve, ArchPoint, ArchingMeasures, BassArch, CrossArch, CrossArches, ExtraArch, LongArchCurve};
pub use document::{FORMAT, LARGEST_DOCUMENT_BYTES, VERSION};
pub use error::DesignError;
pub use fittings::{AddedMass, BarMeasures, PlanPlace, PostMeasures, RibMeasures, StickWood};
pub use graduation::{GraduationMeasures, MeasuredThickness, PaintedThickness};
pub use measures::{MEASURES, Measure};
pub use parts::{BassSide, CornerMeasures, Design, OutlineMeasures, Rim};
pub use presets::Preset;
pub use sound_holes::{
    CrescentHole, EndCut, EyesAndStem, RoundHole, SlotHole, SoundHoleChoice, SoundHoles, TracedHole,
};

/// A length as a rule is read.
fn tenths(length_mm: f64) -> f64 {
    (length_mm * 10.0).round() / 10.0
}
