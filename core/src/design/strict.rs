//! What a strict reader of a JSON document says of a fault.

use serde_json::Value;

use super::place::path_at;

/// The longest piece of a message, which may quote a whole value.
const LONGEST: usize = 160;

/// Where in `json` a reader stumbled, keys joined by dots; `whole` for the document itself.
pub(crate) fn path_of(json: &str, error: &serde_json::Error, whole: &str) -> String {
    match path_at(json, error.line(), error.column()) {
        path if path.is_empty() => whole.to_owned(),
        path => path,
    }
}

/// What it stumbled over. serde_json ends its messages with the position, which is said elsewhere.
pub(crate) fn detail_of(error: &serde_json::Error) -> String {
    let message = error.to_string();
    short(message.split(" at line ").next().unwrap_or(&message))
}

/// What stands where something else was expected.
pub(crate) fn found(value: Option<&Value>) -> String {
    value.map_or_else(|| "not there".into(), |value| short(&value.to_string()))
}

/// Keeps a message readable when a value quoted in it is long.
pub(crate) fn short(text: &str) -> String {
    if text.chars().count() <= LONGEST {
        return text.to_owned();
    }
    text.chars().take(LONGEST).chain("…".chars()).collect()
}
