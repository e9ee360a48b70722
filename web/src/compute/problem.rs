//! Errors as the page gets them: plain objects with text for people.

use serde::Serialize;
use wasm_bindgen::JsValue;

/// What went wrong, where, and what to do; thrown to JavaScript as a plain object with these keys.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// A stable snake_case word.
    pub kind: &'static str,
    /// One plain sentence.
    pub message: String,
    /// Which value of the design, keys joined by dots.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub path: String,
    /// What that value was.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub value: String,
    /// What it may be.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub limits: String,
    /// What to do.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub remedy: String,
}
