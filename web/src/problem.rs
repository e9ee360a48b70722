//! Errors as the page gets them: plain objects with text for people.

use bombatura_core::design::DesignError;
use bombatura_core::top::TopError;
use serde::Serialize;
use wasm_bindgen::JsValue;

/// What went wrong, where, and what to do; thrown to JavaScript as a plain object with these keys. Those that say
/// nothing are left out. Boxed in results: it is far larger than what they hold otherwise.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// A stable snake_case word.
    pub kind: String,
    /// One plain sentence with all of it.
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

impl Problem {
    /// One that has its whole say in a sentence.
    pub(crate) fn said(kind: &str, message: impl Into<String>) -> Box<Problem> {
        Box::new(Problem { kind: kind.into(), message: message.into(), ..Problem::default() })
    }
}

impl From<DesignError> for Box<Problem> {
    fn from(error: DesignError) -> Box<Problem> {
        Box::new(Problem {
            kind: error.kind().into(),
            message: error.to_string(),
            path: error.path().into(),
            value: error.value(),
            limits: error.limits(),
            remedy: error.remedy(),
        })
    }
}

impl From<TopError> for Box<Problem> {
    fn from(error: TopError) -> Box<Problem> {
        match error {
            TopError::Design(error) => error.into(),
            other => Problem::said(other.kind(), other.to_string()),
        }
    }
}

impl From<Box<Problem>> for JsValue {
    fn from(problem: Box<Problem>) -> JsValue {
        // Strings in a flat record: the writer has no failure for them. Should it have one, its text is the best there is.
        serde_wasm_bindgen::to_value(&problem).unwrap_or_else(Into::into)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bombatura_core::design::Design;

    #[test]
    fn a_refused_measure_says_which_what_and_how_much() {
        let mut design = Design::demo();
        design.arching.apex_height_mm = 999.0;
        let problem = Box::<Problem>::from(design.check().unwrap_err());
        assert_eq!(problem.kind, "out_of_range");
        assert_eq!(problem.path, "arching.apex_height_mm");
        assert!(problem.value.contains("999"), "{}", problem.value);
        for part in [&problem.path, &problem.value, &problem.limits, &problem.remedy] {
            assert!(!part.is_empty() && problem.message.contains(part.as_str()), "{part} in {}", problem.message);
        }
    }
}
