//! Lessons: a design, a question, a change, and a figure that has to bear the lesson out.
//!
//! A lesson is a JSON document that a teacher can write (`www/lessons/README.md`). It holds no result: what a figure is before and
//! after the change is computed from the two designs here, for the page, for a teacher's file and for the test of our own lessons
//! alike, so that none can promise what the model doesn't show.
//!
//! A figure comes with how sure it is. A change between two designs of one board is surer than either figure, since what boards differ by moves
//! both alike; [`Outcome::change_within`] is worked out from the differences.

mod changes;
mod claim;
mod document;
mod driven;
mod error;
mod figure;
mod pushed;
mod reading;
mod shaken;
mod strict;
#[cfg(test)]
mod tests;

pub use changes::Changes;
pub use claim::{Claim, Goes, Outcome, Then};
pub use document::{Colour, FORMAT, LARGEST_LESSON_BYTES, Lesson, LessonText, Look, VERSION, View};
pub use error::LessonError;
pub use figure::{Figure, ModeWish, Push};
pub use reading::Reading;
