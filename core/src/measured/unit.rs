//! Millimetres or inches: asked where it looks like inches, never guessed.

use super::{MeasuredError, Reading};
use crate::plan::Point;

/// Bodies from the smallest fractional violin to a cello, mm, as the outline's limits have it.
const LENGTHS_MM: [f64; 2] = [150.0, 800.0];
const MM_PER_INCH: f64 = 25.4;
/// Readings across a top span at least this share of its width, those of one side alone less than half; more than a little
/// beyond the edge is another top.
const SPANS: [f64; 2] = [0.3, 1.1];

/// The unit of a file's lengths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LengthUnit {
    /// Millimetres, for all that is known: a file that looks like inches is asked about.
    #[default]
    Unsaid,
    /// Millimetres, as the maker has said.
    Millimetre,
    /// Inches, as the maker has said.
    Inch,
}

impl LengthUnit {
    /// What a length of this unit is multiplied by.
    #[must_use]
    pub fn in_mm(self) -> f64 {
        match self {
            LengthUnit::Unsaid | LengthUnit::Millimetre => 1.0,
            LengthUnit::Inch => MM_PER_INCH,
        }
    }

    /// The answer to the question that `error` asks, if this is one: said to be millimetres, the length is no body's.
    pub(super) fn answered(self, error: MeasuredError) -> MeasuredError {
        match error {
            MeasuredError::LooksLikeInches { extent, .. } if self != LengthUnit::Unsaid => {
                MeasuredError::NotABody { length_mm: extent, range_mm: LENGTHS_MM }
            }
            other => other,
        }
    }

    /// Readings of this unit as millimetres.
    pub fn to_mm(self, readings: &mut [Reading]) {
        readings.iter_mut().flatten().for_each(|value| *value *= self.in_mm());
    }

    /// The same for points in plan.
    pub fn points_to_mm(self, points: &mut [Point]) {
        points.iter_mut().flatten().for_each(|value| *value *= self.in_mm());
    }
}

/// Asks whether readings of this length along the grain are in inches, and refuses lengths that are no body's.
///
/// # Errors
/// [`MeasuredError::LooksLikeInches`] when the length is a body's in inches, [`MeasuredError::NotABody`] otherwise.
pub fn check_length(length_mm: f64) -> Result<(), MeasuredError> {
    let [least, most] = LENGTHS_MM;
    if (least..=most).contains(&length_mm) {
        Ok(())
    } else if (least..=most).contains(&(length_mm * MM_PER_INCH)) {
        let in_mm = length_mm * MM_PER_INCH;
        Err(MeasuredError::LooksLikeInches { what: "the top is", extent: length_mm, in_mm, along: "long" })
    } else {
        Err(MeasuredError::NotABody { length_mm, range_mm: LENGTHS_MM })
    }
}

/// Asks whether readings on a top of a known width are in inches. Readings need not cover the length, but they run across.
///
/// # Errors
/// [`MeasuredError::LooksLikeInches`] when they would span that top in inches and hardly any of it in millimetres.
pub(super) fn check_span(readings: &[Reading], width_mm: f64) -> Result<(), MeasuredError> {
    let across = readings.iter().map(|reading| reading[0]);
    let span = across.clone().fold(f64::NEG_INFINITY, f64::max) - across.fold(f64::INFINITY, f64::min);
    let in_mm = span * MM_PER_INCH;
    let spans = |span: f64| span >= SPANS[0] * width_mm && span <= SPANS[1] * width_mm;
    if !spans(span) && spans(in_mm) {
        return Err(MeasuredError::LooksLikeInches { what: "the readings span", extent: span, in_mm, along: "across" });
    }
    Ok(())
}
