//! What can be wrong with a design.

use thiserror::Error;

use super::document::{FORMAT, LARGEST_DOCUMENT_BYTES, VERSION};
use crate::wood::{Species, WoodError};

/// Why a document or a design was refused. `Display` is one plain sentence with the place, the value, the limits and
/// the remedy; the parts can be had one by one for a page that lays them out itself.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum DesignError {
    /// More text than a design can be.
    #[error("the file holds {bytes} bytes; {}: {}", self.limits_text(), self.remedy())]
    TooLarge {
        /// Size of the document.
        bytes: usize,
    },
    /// The text ends too early.
    #[error("the file ends too early, at line {line}, column {column}: {}", self.remedy())]
    Truncated {
        /// Line of the end, from 1.
        line: usize,
        /// Column of the end, from 1.
        column: usize,
    },
    /// Not JSON.
    #[error("the file is not JSON at line {line}, column {column} ({detail}): {}", self.remedy())]
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What the reader stumbled over.
        detail: String,
    },
    /// Some other JSON document.
    #[error("\"format\" is {found}; {}: {}", self.limits_text(), self.remedy())]
    WrongFormat {
        /// What stands there.
        found: String,
    },
    /// A version this program doesn't know.
    #[error("\"version\" is {found}; {}: {}", self.limits_text(), self.remedy())]
    UnknownVersion {
        /// What stands there.
        found: String,
    },
    /// A key that is missing or unknown, or a value of the wrong kind.
    #[error("{path}: {detail}; {}", self.remedy())]
    WrongShape {
        /// Where.
        path: String,
        /// What is wrong there.
        detail: String,
    },
    /// NaN or infinite: only a design made by a program can hold one.
    #[error("{path} ({what}) is not a finite number; {}: {}", self.limits_text(), self.remedy())]
    NotFinite {
        /// Where.
        path: String,
        /// What it is.
        what: String,
        /// Smallest, largest allowed.
        range: [f64; 2],
        /// Unit.
        unit: String,
    },
    /// A number outside its limits.
    #[error("{path} ({what}) is {}; {}: {}", self.value(), self.limits_text(), self.remedy())]
    OutOfRange {
        /// Where.
        path: String,
        /// What it is.
        what: String,
        /// The value.
        value: f64,
        /// Smallest, largest allowed.
        range: [f64; 2],
        /// Unit.
        unit: String,
    },
    /// Measures that can't go together.
    #[error("{path}: {what} ({value}); {limits}: {remedy}")]
    Impossible {
        /// Stable word for the kind of fault.
        kind: &'static str,
        /// The measure to look at first.
        path: Box<str>,
        /// What is wrong.
        what: String,
        /// The value found.
        value: String,
        /// What it may be.
        limits: String,
        /// What to do.
        remedy: Box<str>,
    },
}

impl DesignError {
    pub(super) fn impossible_wood(path: &str, species: Species, error: &WoodError) -> Self {
        DesignError::Impossible {
            kind: "impossible_wood",
            path: path.into(),
            what: error.to_string(),
            value: format!("{species:?}"),
            limits: "constants that a solid can have".into(),
            remedy: "correct the measured values".into(),
        }
    }

    /// A stable snake_case word for the kind of fault.
    pub fn kind(&self) -> &'static str {
        match self {
            DesignError::TooLarge { .. } => "too_large",
            DesignError::Truncated { .. } => "truncated",
            DesignError::NotJson { .. } => "not_json",
            DesignError::WrongFormat { .. } => "wrong_format",
            DesignError::UnknownVersion { .. } => "unknown_version",
            DesignError::WrongShape { .. } => "wrong_shape",
            DesignError::NotFinite { .. } => "not_finite",
            DesignError::OutOfRange { .. } => "out_of_range",
            DesignError::Impossible { kind, .. } => kind,
        }
    }

    /// Where in the document, keys joined by dots; empty for the document as a whole.
    pub fn path(&self) -> &str {
        match self {
            DesignError::TooLarge { .. } | DesignError::Truncated { .. } | DesignError::NotJson { .. } => "",
            DesignError::WrongFormat { .. } => "format",
            DesignError::UnknownVersion { .. } => "version",
            DesignError::WrongShape { path, .. }
            | DesignError::NotFinite { path, .. }
            | DesignError::OutOfRange { path, .. } => path,
            DesignError::Impossible { path, .. } => path,
        }
    }

    /// The value found, with its unit.
    pub fn value(&self) -> String {
        match self {
            DesignError::TooLarge { bytes } => format!("{bytes} bytes"),
            DesignError::Truncated { line, column } | DesignError::NotJson { line, column, .. } => {
                format!("line {line}, column {column}")
            }
            DesignError::WrongFormat { found } | DesignError::UnknownVersion { found } => found.clone(),
            DesignError::WrongShape { detail, .. } => detail.clone(),
            DesignError::NotFinite { .. } => "not a finite number".into(),
            DesignError::OutOfRange { value, unit, .. } => with_unit(*value, unit),
            DesignError::Impossible { value, .. } => value.clone(),
        }
    }

    /// What it may be.
    pub fn limits(&self) -> String {
        self.limits_text()
    }

    fn limits_text(&self) -> String {
        match self {
            DesignError::TooLarge { .. } => format!("a design is at most {LARGEST_DOCUMENT_BYTES} bytes"),
            DesignError::Truncated { .. } | DesignError::NotJson { .. } => "a complete JSON document".into(),
            DesignError::WrongFormat { .. } => format!("it must be \"{FORMAT}\""),
            DesignError::UnknownVersion { .. } => format!("this program reads version {VERSION}"),
            DesignError::WrongShape { .. } => "exactly the keys of a version 1 design".into(),
            DesignError::NotFinite { range, unit, .. } | DesignError::OutOfRange { range, unit, .. } => {
                format!("it may be {} to {}", range[0], with_unit(range[1], unit))
            }
            DesignError::Impossible { limits, .. } => limits.clone(),
        }
    }

    /// What to do about it.
    pub fn remedy(&self) -> String {
        match self {
            DesignError::TooLarge { .. } => "choose a design file saved by this program".into(),
            DesignError::Truncated { .. } => "the copy is incomplete, save or copy the design again".into(),
            DesignError::NotJson { .. } => "choose a design file saved by this program, or mend the text there".into(),
            DesignError::WrongFormat { .. } => "choose a design file saved by this program".into(),
            DesignError::UnknownVersion { .. } => {
                "use the program that saved it, or save it again from there as version 1".into()
            }
            DesignError::WrongShape { .. } => {
                "correct the spelling or the value, or start from the demonstration design".into()
            }
            DesignError::NotFinite { .. } => "give a number within these limits".into(),
            DesignError::OutOfRange { unit, .. } if unit == "mm" => {
                "give a value within these limits, in millimetres".into()
            }
            DesignError::OutOfRange { .. } => "give a value within these limits".into(),
            DesignError::Impossible { remedy, .. } => remedy.to_string(),
        }
    }
}

fn with_unit(value: f64, unit: &str) -> String {
    match unit {
        "" => format!("{value}"),
        "deg" => format!("{value} degrees"),
        _ => format!("{value} {unit}"),
    }
}
