//! Reading a document strictly: every fault is told by its place.

use serde::de::DeserializeOwned;
use serde_json::{Value, error::Category};

use super::LessonError;
use super::document::{FORMAT, LARGEST_LESSON_BYTES, VERSION};
use crate::design::path_at;

/// The longest piece of a reader's message, which may quote a whole value.
const LONGEST: usize = 160;

/// Reads a lesson's text up to keys and kinds of value.
///
/// # Errors
/// The first fault, in this order: size, JSON, format, version, keys and kinds.
pub(super) fn read<T: DeserializeOwned>(json: &str) -> Result<T, LessonError> {
    if json.len() > LARGEST_LESSON_BYTES {
        return Err(LessonError::TooLarge { bytes: json.len() });
    }
    let whole: Value = serde_json::from_str(json).map_err(|error| LessonError::NotJson {
        line: error.line(),
        column: error.column(),
        detail: if error.classify() == Category::Eof { "it ends too early".into() } else { without_position(&error) },
    })?;
    let found = |key: &str| whole.get(key).map_or_else(|| "not there".into(), |value| short(&value.to_string()));
    if whole.get("format") != Some(&Value::from(FORMAT)) {
        return Err(LessonError::WrongFormat { found: found("format") });
    }
    if whole.get("version") != Some(&Value::from(VERSION)) {
        return Err(LessonError::UnknownVersion { found: found("version") });
    }
    // From the text, where a repeated key is still an error.
    serde_json::from_str(json).map_err(|error| LessonError::WrongShape {
        path: match path_at(json, error.line(), error.column()) {
            path if path.is_empty() => "the lesson".into(),
            path => path,
        },
        detail: without_position(&error),
    })
}

fn without_position(error: &serde_json::Error) -> String {
    let message = error.to_string();
    short(message.split(" at line ").next().unwrap_or(&message))
}

/// Keeps a message readable when a value quoted in it is long.
pub(super) fn short(text: &str) -> String {
    if text.chars().count() <= LONGEST {
        return text.to_owned();
    }
    text.chars().take(LONGEST).chain("…".chars()).collect()
}
