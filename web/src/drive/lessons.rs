//! Lessons: read, checked and worked out.
//!
//! They are here and not in a module of their own: both need the solver, and whoever opens a lesson that is driven has this one already.

use bombatura_core::lessons::{Lesson, LessonError, Outcome, Reading};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrivenTop;
use crate::page_values::to_page;
use crate::problem::Problem;

#[derive(Serialize)]
struct LessonReply {
    before: String,
    after: String,
}

#[derive(Serialize)]
struct ReadingReply {
    value: f64,
    sure_within: f64,
}

#[derive(Serialize)]
struct OutcomeReply {
    before: ReadingReply,
    after: ReadingReply,
    change: f64,
    change_within: f64,
    same_board: bool,
    shown: bool,
    unit: &'static str,
    change_unit: &'static str,
}

impl From<Reading> for ReadingReply {
    fn from(Reading { value, sure_within, .. }: Reading) -> Self {
        Self { value, sure_within }
    }
}

#[wasm_bindgen]
impl DrivenTop {
    /// Checks a lesson's document and gives its two designs, as documents: `{ before, after }`. What it says and shows the page reads from
    /// the document itself.
    ///
    /// # Errors
    /// The first fault of the document, or of the designs that it makes.
    pub fn lesson(json: &str) -> Result<JsValue, Box<Problem>> {
        let [before, after] = Lesson::from_json(json)?.designs()?.map(|design| design.to_json());
        Ok(to_page(&LessonReply { before, after }))
    }

    /// Works a lesson's claim out: `{ before, after, change, change_within, same_board, shown, unit, change_unit }`, the first two `{ value, sure_within }`.
    ///
    /// Cost: seconds.
    ///
    /// # Errors
    /// As there, or a top that has no such figure.
    pub fn lesson_outcome(json: &str) -> Result<JsValue, Box<Problem>> {
        let lesson = Lesson::from_json(json)?;
        let Outcome { before, after, change, change_within, same_board, shown } = lesson.outcome()?;
        let figure = lesson.claim.figure;
        Ok(to_page(&OutcomeReply {
            before: before.into(),
            after: after.into(),
            change,
            change_within,
            same_board,
            shown,
            unit: figure.unit(),
            change_unit: figure.change_unit(),
        }))
    }
}

impl From<LessonError> for Box<Problem> {
    fn from(error: LessonError) -> Box<Problem> {
        match error {
            LessonError::Top(error) => (*error).into(),
            error => Box::new(Problem {
                kind: error.kind().into(),
                message: error.to_string(),
                path: error.path().into(),
                value: error.value(),
                limits: error.limits(),
                ..Problem::default()
            }),
        }
    }
}
