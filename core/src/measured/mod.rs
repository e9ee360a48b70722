//! Measured tops: from readings, a point cloud or a scan to heights, and on to a design.
//!
//! A file is read ([`read_csv`], [`read_stl`]) as points in millimetres, laid into the top's frame ([`Alignment`]), and fitted by
//! a smoothing spline ([`HeightMap`]) that tells how far it stays from them; outliers are named, none is dropped in
//! silence. [`arching_of`] reads long arch and cross arches off the heights, so that a measured top becomes a design that
//! can be changed like any other.

mod align;
mod band_matrix;
mod coverage;
mod csv;
mod error;
mod height_map;
mod import;
#[cfg(test)]
mod import_tests;
mod long_arch_fit;
mod outliers;
mod outline_fit;
mod outline_frame;
mod outline_points;
#[cfg(test)]
mod outline_tests;
mod stl;
#[cfg(test)]
mod tests;
mod to_design;
mod unit;

pub use align::{Alignment, Correction};
pub use coverage::{Gaps, gaps, turned_inwards};
pub use csv::read_csv;
pub use error::MeasuredError;
pub use height_map::{Fit, HeightMap, Outlier};
pub use import::{HeightsFile, HeightsImport, ImportError, OutlineImport, import_heights, import_outline};
pub use outline_fit::{FittedOutline, outline_of};
pub use outline_frame::OutlineCorrection;
pub use outline_points::{points_of_csv, points_of_svg_path};
pub use stl::read_stl;
pub use to_design::{MeasuredStations, arching_of};
pub use unit::{LengthUnit, check_length};

/// A measured point (x, y, z), mm.
pub type Reading = [f64; 3];

/// More than this fills a browser's memory: a point takes 24 bytes beside its text.
pub const MOST_POINTS: usize = 8_000_000;
/// Fewer can't say how a surface runs.
pub const FEWEST_POINTS: usize = 20;

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
