//! Whether the model shows what the lessons say, ours and anybody's.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
use bombatura_core::lessons::{Goes, Lesson, Outcome as Found};
use bombatura_serve::Workspace;

use crate::outcome::Outcome;

/// A lesson and what became of its claim.
#[derive(Debug)]
pub struct Shown {
    /// The file's name without its ending.
    pub name: String,
    /// As read.
    pub lesson: Lesson,
    /// As the model has it.
    pub outcome: Found,
}

/// Each of our own lessons' claims, by the model itself: the same code as on the page.
///
/// # Errors
/// When the list of lessons and their folder disagree.
pub fn outcomes(workspace: &Workspace) -> Result<Vec<Outcome>> {
    let check = |file: &PathBuf| {
        let name = file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        Outcome::of(format!("lesson {name}"), || {
            let shown = show(file)?;
            println!("{}", shown.line());
            shown.check()
        })
    };
    Ok(files(workspace)?.iter().map(check).collect())
}

/// Our own lessons, in the order of their list.
///
/// # Errors
/// When the list and the folder disagree: a lesson that is in no list is read by nobody.
fn files(workspace: &Workspace) -> Result<Vec<PathBuf>> {
    let folder = workspace.page().join("lessons");
    let list = fs::read_to_string(folder.join("list.json")).context("reading the list of lessons")?;
    let listed: Vec<String> = serde_json::from_str(&list).context("the list of lessons")?;
    let mut there: Vec<String> = fs::read_dir(&folder)?
        .filter_map(|entry| Some(entry.ok()?.file_name().to_str()?.strip_suffix(".json")?.to_owned()))
        .filter(|name| name != "list")
        .collect();
    there.sort();
    let mut sorted = listed.clone();
    sorted.sort();
    ensure!(sorted == there, "the list has {sorted:?}, the folder {there:?}");
    Ok(listed.iter().map(|name| folder.join(format!("{name}.json"))).collect())
}

/// Reads one lesson and works its claim out.
///
/// # Errors
/// What is wrong with it.
pub fn show(file: &Path) -> Result<Shown> {
    let name = file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let text = fs::read_to_string(file).with_context(|| format!("reading {}", file.display()))?;
    let lesson = Lesson::from_json(&text).with_context(|| name.clone())?;
    let outcome = lesson.outcome().with_context(|| name.clone())?;
    Ok(Shown { name, lesson, outcome })
}

impl Shown {
    /// One line for people.
    #[must_use]
    pub fn line(&self) -> String {
        let Self { name, lesson, outcome } = self;
        let Found { before, after, change, change_within, shown, .. } = outcome;
        let claim = &lesson.claim;
        let goes = match claim.goes {
            Goes::Rises => "rises by at least",
            Goes::Falls => "falls by at least",
            Goes::Stays => "stays within",
        };
        format!(
            "{name:<24} {figure:<16} {:9.3} ± {:<8.3} -> {:9.3} ± {:<8.3} {unit:<4} {change:+8.3} ± {change_within:<7.3} {change_unit:<7} {goes} {}: {}",
            before.value,
            before.sure_within,
            after.value,
            after.sure_within,
            claim.by,
            if *shown { "shown" } else { "NOT SHOWN" },
            figure = claim.figure.word(),
            unit = claim.figure.unit(),
            change_unit = claim.figure.change_unit(),
        )
    }

    /// That the model shows the claim, surely, and would not show it turned round.
    ///
    /// # Errors
    /// What it shows instead.
    pub fn check(&self) -> Result<()> {
        let Found { change, change_within, shown, .. } = self.outcome;
        ensure!(shown, "the model doesn't show it: {}", self.line());
        // What a lesson calls a change must be one; what it calls none must be surely small.
        match self.lesson.claim.goes {
            Goes::Rises | Goes::Falls => ensure!(change.abs() > 2.0 * change_within, "unsure: {}", self.line()),
            Goes::Stays => ensure!(change.abs() + change_within <= self.lesson.claim.by, "unsure: {}", self.line()),
        }
        for language in ["en", "de"] {
            ensure!(self.lesson.texts.contains_key(language), "{} says nothing in {language}", self.name);
        }
        Ok(())
    }
}
