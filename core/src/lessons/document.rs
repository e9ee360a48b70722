//! A lesson as its file has it.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::changes::Changes;
use super::figure::{Figure, ModeWish};
use super::strict::read;
use super::{Claim, LessonError, Outcome};
use crate::design::{Design, strict::short};

/// What "format" says in every lesson.
pub const FORMAT: &str = "bombatura-lesson";
/// The version read.
pub const VERSION: u32 = 1;
/// A lesson is some 4 kB; this leaves room for many languages and refuses a scan or picture chosen by mistake before it is parsed.
pub const LARGEST_LESSON_BYTES: usize = 200_000;

/// Letters of a title and a choice, and of anything longer: more don't fit on a card that a room can read.
const SHORT_TEXT: usize = 120;
const LONG_TEXT: usize = 900;

/// One lesson: see the module.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lesson {
    /// Always [`FORMAT`].
    pub format: String,
    /// Always [`VERSION`].
    pub version: u32,
    /// What is changed of the demonstration before anything is shown.
    #[serde(default)]
    pub start: Changes,
    /// What to look at.
    pub look: Look,
    /// What is changed after the question.
    #[serde(default)]
    pub change: Changes,
    /// What to look at then, where that is something else.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub then_look: Option<Look>,
    /// The choice that is right, from 1.
    pub right: usize,
    /// What the figure does.
    pub claim: Claim,
    /// By language, "en" or "de".
    pub texts: BTreeMap<String, LessonText>,
}

/// What is looked at.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Look {
    /// A mode, or else
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mode: Option<ModeWish>,
    /// the motion when the bow drives the bridge at this frequency, Hz.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hz: Option<f64>,
    /// What the top is coloured by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<Colour>,
    /// From where.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub view: Option<View>,
}

/// What a top is coloured by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the page's own choices")]
pub enum Colour {
    Motion,
    Wood,
    Height,
    Thickness,
    Slope,
    Curvature,
    StrainEnergy,
}

/// From where a top is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the page's own choices")]
pub enum View {
    Outside,
    Inside,
    BassSide,
    AlongGrain,
}

/// What a lesson says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LessonText {
    /// Its name.
    pub title: String,
    /// What one sees.
    pub see: String,
    /// What is asked.
    pub question: String,
    /// Two to four answers.
    pub choices: Vec<String>,
    /// What is changed, once somebody has guessed.
    pub change: String,
    /// Why it comes out as it does.
    pub why: String,
}

impl Lesson {
    /// Reads a lesson and checks all that needs no solving: what it says, what it changes, and both designs.
    ///
    /// # Errors
    /// The first fault found.
    pub fn from_json(json: &str) -> Result<Lesson, LessonError> {
        let lesson = read(json)?;
        lesson.check_texts()?;
        lesson.check_look("look", &lesson.look)?;
        if let Some(look) = &lesson.then_look {
            lesson.check_look("then_look", look)?;
        }
        lesson.check_claim()?;
        lesson.designs()?;
        Ok(lesson)
    }

    /// The design before the change, and after it.
    ///
    /// # Errors
    /// [`LessonError::NoSuchPlace`] or [`LessonError::Design`].
    pub fn designs(&self) -> Result<[Design; 2], LessonError> {
        let before = self.start.of(&Design::demo(), "start")?;
        let after = self.change.of(&before, "change")?;
        Ok([before, after])
    }

    /// Works the claim out.
    ///
    /// # Errors
    /// As [`Claim::outcome`].
    pub fn outcome(&self) -> Result<Outcome, LessonError> {
        let [before, after] = self.designs()?;
        self.claim.outcome(&before, &after)
    }

    fn check_texts(&self) -> Result<(), LessonError> {
        if self.texts.is_empty() {
            return Err(outside("texts", "empty", "at least one language, \"en\" or \"de\""));
        }
        for (language, text) in &self.texts {
            let path = |key: &str| format!("texts.{language}.{key}");
            if language.len() != 2 || !language.bytes().all(|byte| byte.is_ascii_lowercase()) {
                return Err(outside("texts", language, "two small letters for a language, such as \"en\" or \"de\""));
            }
            let LessonText { title, see, question, choices, change, why } = text;
            let long = [("see", see), ("question", question), ("change", change), ("why", why)];
            check_length(&path("title"), title, SHORT_TEXT)?;
            long.iter().try_for_each(|(key, text)| check_length(&path(key), text, LONG_TEXT))?;
            if !(2..=4).contains(&choices.len()) {
                return Err(outside(&path("choices"), &choices.len().to_string(), "two to four answers"));
            }
            for (index, choice) in choices.iter().enumerate() {
                check_length(&path(&format!("choices.{index}")), choice, SHORT_TEXT)?;
            }
            if !(1..=choices.len()).contains(&self.right) {
                let limits = format!("1 to {}, the number of answers in every language", choices.len());
                return Err(outside("right", &self.right.to_string(), &limits));
            }
        }
        Ok(())
    }

    fn check_look(&self, path: &str, look: &Look) -> Result<(), LessonError> {
        if look.mode.is_some() && look.hz.is_some() {
            return Err(outside(path, "both a mode and a frequency", "one of \"mode\" and \"hz\""));
        }
        look.hz.map_or(Ok(()), |hz| check_hz(&format!("{path}.hz"), hz))
    }

    fn check_claim(&self) -> Result<(), LessonError> {
        let Claim { figure, mode, hz, region, push, then, by, .. } = &self.claim;
        let given =
            [("mode", mode.is_some()), ("hz", hz.is_some()), ("region", region.is_some()), ("push", push.is_some())];
        check_keys(*figure, &given, true)?;
        if let Some(then) = then {
            let given = [("mode", then.mode.is_some()), ("hz", then.hz.is_some()), ("region", then.region.is_some())];
            check_keys(*figure, &given, false)?;
        }
        for (path, hz) in [("claim.hz", *hz), ("claim.then.hz", then.as_ref().and_then(|then| then.hz))] {
            hz.map_or(Ok(()), |hz| check_hz(path, hz))?;
        }
        if !(by.is_finite() && *by > 0.0 && *by <= 1000.0) {
            return Err(outside("claim.by", &by.to_string(), "a number above 0, 1000 at most"));
        }
        Ok(())
    }
}

/// Whether what a figure is read by, is `given`: all of it where that is `needed`, and nothing else.
fn check_keys(figure: Figure, given: &[(&'static str, bool)], needed: bool) -> Result<(), LessonError> {
    for &(key, given) in given {
        let reads = figure.read_by().contains(&key);
        if reads && !given && needed {
            return Err(LessonError::Needs { figure: figure.word(), key });
        }
        if given && !reads {
            return Err(LessonError::Needless { figure: figure.word(), key });
        }
    }
    Ok(())
}

fn check_hz(path: &str, hz: f64) -> Result<(), LessonError> {
    if (100.0..=5000.0).contains(&hz) { Ok(()) } else { Err(outside(path, &format!("{hz} Hz"), "100 to 5000 Hz")) }
}

fn check_length(path: &str, text: &str, most: usize) -> Result<(), LessonError> {
    let length = text.chars().count();
    if text.trim().is_empty() {
        return Err(outside(path, "empty", &format!("1 to {most} letters")));
    }
    if length > most {
        return Err(outside(path, &format!("{length} letters long"), &format!("1 to {most} letters")));
    }
    Ok(())
}

fn outside(path: &str, value: &str, limits: &str) -> LessonError {
    LessonError::Outside { path: path.to_owned(), value: short(value), limits: limits.to_owned() }
}
