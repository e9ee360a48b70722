//! What can be wrong with a measured top.

use thiserror::Error;

/// Why a file of heights was refused, with the value, the limit and what to do.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MeasuredError {
    /// A cell that is no number.
    #[error("line {line}, column {column}: \"{found}\" is not a number: correct it, or leave the cell empty")]
    NotANumber {
        /// From 1.
        line: usize,
        /// From 1.
        column: usize,
        /// What stands there.
        found: String,
    },
    /// NaN or infinite.
    #[error("point {index} is not finite (NaN or infinite): take it out, or measure it again")]
    NotFinite {
        /// From 1.
        index: usize,
    },
    /// A table that is neither x,y,z nor a grid.
    #[error(
        "the table can't be read ({detail}); it may be columns x, y, z, or a grid with stations along one side, or \
         columns named upper_bout, upper_corners, waist, lower_corners, lower_bout: arrange it so"
    )]
    NotATable {
        /// What was met.
        detail: String,
    },
    /// Neither a table of points nor an SVG path.
    #[error(
        "the outline can't be read ({detail}); it may be a table with the columns x and y, or an SVG file with a path: \
         save it as one of these"
    )]
    NotAnOutline {
        /// What was met.
        detail: String,
    },
    /// Too few points for a surface.
    #[error("there are {count} points; at least {least} are needed: take readings at more places")]
    TooFew {
        /// Points found.
        count: usize,
        /// Needed.
        least: usize,
    },
    /// More points than memory holds.
    #[error("there are {count} points; at most {most} can be read: thin the scan, a point every millimetre is plenty")]
    TooMany {
        /// Points found.
        count: usize,
        /// Allowed.
        most: usize,
    },
    /// A length is plausible in inches and not in millimetres: the maker must say.
    #[error("{what} {extent:.2} {along}; in inches that is {in_mm:.0} mm: say whether these are inches or millimetres")]
    LooksLikeInches {
        /// What is measured.
        what: &'static str,
        /// As read.
        extent: f64,
        /// The same in mm, if inches they are.
        in_mm: f64,
        /// Which way.
        along: &'static str,
    },
    /// The length is no body's in any unit known.
    #[error(
        "the top is {length_mm:.1} mm long; a body is {} to {} mm: check the unit, and that length runs along y",
        range_mm[0], range_mm[1]
    )]
    NotABody {
        /// Length as read.
        length_mm: f64,
        /// Allowed.
        range_mm: [f64; 2],
    },
    /// Not STL, or cut off.
    #[error("the STL file can't be read ({detail}): save it again as binary or ASCII STL")]
    NotStl {
        /// What was met.
        detail: String,
    },
    /// Far too high for a top alone.
    #[error(
        "the scan is {height_mm:.0} mm high and {length_mm:.0} mm long, so it holds more than a top (a top is at most \
         {most_mm:.0} mm high at this length): cut everything but the top's outside from it"
    )]
    WholeInstrument {
        /// Extent across the top.
        height_mm: f64,
        /// Extent along it.
        length_mm: f64,
        /// Largest height of a top of this length.
        most_mm: f64,
    },
    /// The inside of the top, or ribs and back, below its outside.
    #[error(
        "the scan has two faces {apart_mm:.1} mm apart, one below the other; a top's outside has one (at most \
         {most_mm} mm are slope): cut everything but the top's outside from it"
    )]
    TwoFaces {
        /// Median distance.
        apart_mm: f64,
        /// What one surface spans at most.
        most_mm: f64,
    },
    /// Too much of the top has no point near.
    #[error(
        "{:.0} % of the top ({:.0} cm2) has no point within {reach_mm} mm; at most {:.0} % may be missing: scan what is \
         missing again",
        100.0 * share, 0.01 * area_mm2, 100.0 * most
    )]
    Gaps {
        /// Share of the area.
        share: f64,
        /// The area, mm2.
        area_mm2: f64,
        /// Allowed.
        most: f64,
        /// How near a point must be.
        reach_mm: f64,
    },
    /// The readings don't lie on this outline.
    #[error("{what} ({value}); {limits}: {remedy}")]
    DoesNotFit {
        /// What is wrong.
        what: String,
        /// The value.
        value: String,
        /// What it may be.
        limits: String,
        /// What to do.
        remedy: String,
    },
}

impl MeasuredError {
    /// A stable snake_case word for the kind of fault.
    pub fn kind(&self) -> &'static str {
        match self {
            MeasuredError::NotANumber { .. } => "not_a_number",
            MeasuredError::NotFinite { .. } => "not_finite",
            MeasuredError::NotATable { .. } => "not_a_table",
            MeasuredError::NotAnOutline { .. } => "not_an_outline",
            MeasuredError::TooFew { .. } => "too_few_points",
            MeasuredError::TooMany { .. } => "too_many_points",
            MeasuredError::LooksLikeInches { .. } => "looks_like_inches",
            MeasuredError::NotABody { .. } => "not_a_body",
            MeasuredError::NotStl { .. } => "not_stl",
            MeasuredError::WholeInstrument { .. } => "whole_instrument",
            MeasuredError::TwoFaces { .. } => "two_faces",
            MeasuredError::Gaps { .. } => "gaps",
            MeasuredError::DoesNotFit { .. } => "does_not_fit",
        }
    }
}
