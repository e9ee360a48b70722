//! Reading a lesson strictly: every fault is told by its place.

use serde_json::{Value, error::Category};

use super::document::{FORMAT, LARGEST_LESSON_BYTES, VERSION};
use super::{Lesson, LessonError};
use crate::design::strict::{detail_of, found, path_of};

/// Reads a lesson's text up to keys and kinds of value.
///
/// # Errors
/// The first fault, in this order: size, JSON, format, version, keys and kinds.
pub(super) fn read(json: &str) -> Result<Lesson, LessonError> {
    if json.len() > LARGEST_LESSON_BYTES {
        return Err(LessonError::TooLarge { bytes: json.len() });
    }
    let whole: Value = serde_json::from_str(json).map_err(|error| LessonError::NotJson {
        line: error.line(),
        column: error.column(),
        detail: if error.classify() == Category::Eof { "it ends too early".into() } else { detail_of(&error) },
    })?;
    let (format, version) = (whole.get("format"), whole.get("version"));
    if format != Some(&Value::from(FORMAT)) {
        return Err(LessonError::WrongFormat { found: found(format) });
    }
    if version != Some(&Value::from(VERSION)) {
        return Err(LessonError::UnknownVersion { found: found(version) });
    }
    // From the text, where a repeated key is still an error.
    serde_json::from_str(json).map_err(|error| LessonError::WrongShape {
        path: path_of(json, &error, "the lesson"),
        detail: detail_of(&error),
    })
}
