//! Measured tops: from readings, a point cloud or a scan to heights, and on to a design.
//!
//! A file is read ([`read_csv`], [`read_stl`]) as points in millimetres, laid into the top's frame ([`Alignment`]), and fitted by
//! a smoothing spline ([`HeightMap`]) that tells how far it stays from them; outliers are named, none is dropped in
//! silence. [`arching_of`] reads long arch and cross arches off the heights, so that a measured top becomes a design that
//! can be changed like any other.

mod align;
mod band_matrix;
mod csv;
mod error;
mod height_map;
mod outline;
mod stl;
#[cfg(test)]
mod tests;
mod to_design;

pub use align::{Alignment, Correction};
pub use csv::read_csv;
pub use error::MeasuredError;
pub use height_map::{Fit, HeightMap, Outlier};
pub use outline::{FittedOutline, outline_of, points_of_svg_path};
pub use stl::read_stl;
pub use to_design::arching_of;

/// A measured point (x, y, z), mm.
pub type Reading = [f64; 3];

/// More than this fills a browser's memory: a point takes 24 bytes beside its text.
pub const MOST_POINTS: usize = 8_000_000;
/// Fewer can't say how a surface runs.
pub const FEWEST_POINTS: usize = 20;
/// Bodies from the smallest fractional violin to a cello, mm, as the outline's limits have it.
const LENGTHS_MM: [f64; 2] = [150.0, 800.0];
const MM_PER_INCH: f64 = 25.4;

/// Asks whether readings of this length along the grain are in inches, and refuses lengths that are no body's.
///
/// # Errors
/// [`MeasuredError::LooksLikeInches`] when the length is a body's in inches, [`MeasuredError::NotABody`] otherwise.
pub fn check_length(length_mm: f64) -> Result<(), MeasuredError> {
    let [least, most] = LENGTHS_MM;
    if (least..=most).contains(&length_mm) {
        Ok(())
    } else if (least..=most).contains(&(length_mm * MM_PER_INCH)) {
        Err(MeasuredError::LooksLikeInches { length: length_mm, length_mm: length_mm * MM_PER_INCH })
    } else {
        Err(MeasuredError::NotABody { length_mm, range_mm: LENGTHS_MM })
    }
}

/// Readings in inches as millimetres, once the maker has said that they are.
pub fn from_inches(readings: &mut [Reading]) {
    readings.iter_mut().flatten().for_each(|value| *value *= MM_PER_INCH);
}

/// Refuses too few, too many and what isn't finite.
fn check_count(count: usize) -> Result<(), MeasuredError> {
    if count < FEWEST_POINTS {
        Err(MeasuredError::TooFew { count, least: FEWEST_POINTS })
    } else if count > MOST_POINTS {
        Err(MeasuredError::TooMany { count, most: MOST_POINTS })
    } else {
        Ok(())
    }
}
