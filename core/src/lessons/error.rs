//! Why a lesson was refused, or has no outcome.

use thiserror::Error;

use super::document::{FORMAT, LARGEST_LESSON_BYTES, VERSION};
use crate::design::DesignError;
use crate::response::ResponseError;
use crate::statics::StaticsError;
use crate::top::TopError;

/// A lesson that can't be read, drawn or worked out: the place, the value, what it may be, what to do.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum LessonError {
    /// More text than a lesson can be.
    #[error("the file holds {bytes} bytes; a lesson is at most {LARGEST_LESSON_BYTES} bytes: choose a lesson's file")]
    TooLarge {
        /// Size of the document.
        bytes: usize,
    },
    /// Not JSON, or cut off.
    #[error("the file is not JSON at line {line}, column {column} ({detail}): mend the text there")]
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What the reader stumbled over.
        detail: String,
    },
    /// Some other JSON document.
    #[error("\"format\" is {found}; it must be \"{FORMAT}\": choose a lesson's file")]
    WrongFormat {
        /// What stands there.
        found: String,
    },
    /// A version this program doesn't know.
    #[error("\"version\" is {found}; this program reads version {VERSION}: write the lesson as version {VERSION}")]
    UnknownVersion {
        /// What stands there.
        found: String,
    },
    /// A key that is missing or unknown, or a value of the wrong kind.
    #[error("{path}: {detail}; correct the spelling or the value, as the guide for lessons says")]
    WrongShape {
        /// Where.
        path: String,
        /// What is wrong there.
        detail: String,
    },
    /// A value of the lesson outside its limits.
    #[error("{path} is {value}; {limits}: give a value within these limits")]
    Outside {
        /// Where.
        path: String,
        /// What stands there.
        value: String,
        /// What it may be.
        limits: String,
    },
    /// A change of something that the design doesn't have.
    #[error("{path}: the design has nothing at \"{key}\"; name a value as the design's file does, keys joined by dots")]
    NoSuchPlace {
        /// Where in the lesson.
        path: String,
        /// The key that leads nowhere.
        key: String,
    },
    /// A design that the lesson's changes make impossible.
    #[error("{path}: {error}")]
    Design {
        /// Which changes: "start" or "change".
        path: &'static str,
        /// What is wrong with the design.
        error: Box<DesignError>,
    },
    /// A figure without what it is read by.
    #[error("claim: the figure \"{figure}\" needs \"{key}\"; add it")]
    Needs {
        /// The figure.
        figure: &'static str,
        /// What it needs.
        key: &'static str,
    },
    /// A figure with what it isn't read by.
    #[error("claim: the figure \"{figure}\" is not read by \"{key}\"; take it out")]
    Needless {
        /// The figure.
        figure: &'static str,
        /// What is too much.
        key: &'static str,
    },
    /// A top without that mode, or none of its shape after the change.
    #[error(
        "claim.mode is {mode}, and {which} has no mode of that name or shape; choose another mode, or a smaller change"
    )]
    NoMode {
        /// The mode asked for.
        mode: String,
        /// Which top.
        which: &'static str,
    },
    /// A top without that region.
    #[error("claim.region is \"{region}\", and a top of this lesson has none; it has {there}: choose one of them")]
    NoRegion {
        /// The region asked for.
        region: String,
        /// Those there are.
        there: String,
    },
    /// A push on a top that nothing holds.
    #[error(
        "claim: a slow push needs a rim that is held, and this top is free; set \"rim\" to \"hinged\" in \"start\""
    )]
    Floats,
    /// The bridge has no wood under its feet.
    #[error("claim: the bridge's feet stand off the wood; change \"sound_holes.stop_mm\"")]
    NoBridge,
    /// A stage of the top failed.
    #[error(transparent)]
    Top(Box<TopError>),
    /// The response can't be had.
    #[error(transparent)]
    Response(#[from] ResponseError),
    /// The push can't be answered.
    #[error(transparent)]
    Statics(#[from] StaticsError),
}

impl From<TopError> for LessonError {
    fn from(error: TopError) -> Self {
        Self::Top(Box::new(error))
    }
}

impl LessonError {
    /// A stable snake_case word for the kind of fault.
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self {
            Self::TooLarge { .. } => "lesson_too_large",
            Self::NotJson { .. } => "lesson_not_json",
            Self::WrongFormat { .. } => "lesson_wrong_format",
            Self::UnknownVersion { .. } => "lesson_unknown_version",
            Self::WrongShape { .. } => "lesson_wrong_shape",
            Self::Outside { .. } => "lesson_outside",
            Self::NoSuchPlace { .. } => "lesson_no_such_place",
            Self::Design { .. } => "lesson_design",
            Self::Needs { .. } => "lesson_needs",
            Self::Needless { .. } => "lesson_needless",
            Self::NoMode { .. } => "lesson_no_mode",
            Self::NoRegion { .. } => "lesson_no_region",
            Self::Floats => "lesson_floats",
            Self::NoBridge => "lesson_no_bridge",
            Self::Top(error) => error.kind(),
            Self::Response(error) => error.kind(),
            Self::Statics(_) => "lesson_statics",
        }
    }

    /// Where in the lesson, keys joined by dots; empty for the lesson as a whole.
    #[must_use]
    pub fn path(&self) -> &str {
        match self {
            Self::WrongShape { path, .. } | Self::Outside { path, .. } | Self::NoSuchPlace { path, .. } => path,
            Self::WrongFormat { .. } => "format",
            Self::UnknownVersion { .. } => "version",
            Self::Design { path, .. } => path,
            Self::Needs { .. } | Self::Needless { .. } => "claim",
            Self::NoMode { .. } => "claim.mode",
            Self::NoRegion { .. } => "claim.region",
            _ => "",
        }
    }

    /// The value at fault, or what is wrong with it.
    #[must_use]
    pub fn value(&self) -> String {
        match self {
            Self::TooLarge { bytes } => format!("{bytes} bytes"),
            Self::NotJson { line, column, .. } => format!("line {line}, column {column}"),
            Self::WrongFormat { found } | Self::UnknownVersion { found } => found.clone(),
            Self::WrongShape { detail, .. } => detail.clone(),
            Self::Outside { value, .. } => value.clone(),
            Self::NoSuchPlace { key, .. } => key.clone(),
            Self::Design { error, .. } => error.to_string(),
            Self::Needs { key, .. } | Self::Needless { key, .. } => (*key).to_owned(),
            Self::NoMode { mode, .. } => mode.clone(),
            Self::NoRegion { region, .. } => region.clone(),
            _ => String::new(),
        }
    }

    /// What it may be.
    #[must_use]
    pub fn limits(&self) -> String {
        match self {
            Self::TooLarge { .. } => format!("{LARGEST_LESSON_BYTES} bytes"),
            Self::WrongFormat { .. } => format!("\"{FORMAT}\""),
            Self::UnknownVersion { .. } => VERSION.to_string(),
            Self::Outside { limits, .. } => limits.clone(),
            Self::NoRegion { there, .. } => there.clone(),
            Self::Needs { figure, .. } | Self::Needless { figure, .. } => (*figure).to_owned(),
            _ => String::new(),
        }
    }
}
