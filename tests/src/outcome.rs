//! What became of the checks that run outside cargo's own test runner, and their closing line.

use std::time::{Duration, Instant};

use anyhow::Result;

/// One check that ran.
#[derive(Debug)]
pub struct Outcome {
    /// What was checked.
    pub name: String,
    /// Why it failed, when it did.
    pub failure: Option<String>,
    /// How long it took.
    pub took: Duration,
}

impl Outcome {
    /// Takes down how `result`, begun at `begun`, came out, and prints it in one line, as cargo does.
    pub fn record(name: impl Into<String>, begun: Instant, result: Result<()>) -> Outcome {
        let outcome = Outcome {
            name: name.into(),
            failure: result.err().map(|error| format!("{error:#}")),
            took: begun.elapsed(),
        };
        let word = if outcome.failure.is_none() { "ok" } else { "FAILED" };
        println!("check {} ... {word} ({:.1} s)", outcome.name, outcome.took.as_secs_f64());
        outcome
    }

    /// Runs a check and takes down how it came out.
    pub fn of(name: impl Into<String>, check: impl FnOnce() -> Result<()>) -> Outcome {
        let begun = Instant::now();
        let result = check();
        Outcome::record(name, begun, result)
    }
}

/// The failures one after the other, then the line `N passed, N failed`.
#[must_use]
pub fn closing(outcomes: &[Outcome]) -> String {
    let mut text = String::new();
    let mut failed = 0;
    for outcome in outcomes {
        if let Some(failure) = &outcome.failure {
            failed += 1;
            text.push_str(&format!("\n---- {} ----\n{failure}\n", outcome.name));
        }
    }
    text.push_str(&format!("\n{} passed, {failed} failed\n", outcomes.len() - failed));
    text
}

/// Whether something was checked and nothing failed: a run without checks is no success.
#[must_use]
pub fn all_passed(outcomes: &[Outcome]) -> bool {
    !outcomes.is_empty() && outcomes.iter().all(|outcome| outcome.failure.is_none())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn failures_are_told_and_counted() {
        let outcomes =
            [Outcome::of("good", || Ok(())), Outcome::of("bad", || Err(anyhow::anyhow!("inner").context("outer")))];
        let text = closing(&outcomes);
        assert!(text.contains("---- bad ----\nouter: inner"), "{text}");
        assert!(text.ends_with("\n1 passed, 1 failed\n"), "{text}");
        assert!(!all_passed(&outcomes));
        assert!(all_passed(&outcomes[..1]));
    }

    #[test]
    fn nothing_checked_is_no_success() {
        assert!(!all_passed(&[]));
    }
}
