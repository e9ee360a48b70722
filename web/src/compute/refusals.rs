//! What the workshop refuses, as problems.

use crate::problem::Problem;

/// A mesh size that there isn't.
pub(super) fn unknown_size(word: &str) -> Box<Problem> {
    Box::new(Problem {
        kind: "unknown_mesh_size".into(),
        message: format!("There is no mesh called \"{word}\"; there are preview, standard and fine."),
        value: word.into(),
        limits: "preview, standard or fine".into(),
        ..Problem::default()
    })
}

/// A mode that the last solve didn't find.
pub(super) fn unknown_mode(mode: usize, solved: bool) -> Box<Problem> {
    let solved = if solved { "the last solve has fewer" } else { "nothing has been solved yet" };
    Box::new(Problem {
        kind: "unknown_mode".into(),
        message: format!("There is no mode {mode}; {solved}."),
        value: mode.to_string(),
        remedy: "Solve for more modes, or choose a lower one.".into(),
        ..Problem::default()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_size_names_those_there_are() {
        let problem = unknown_size("huge");
        for word in ["huge", "preview", "standard", "fine"] {
            assert!(problem.message.contains(word));
        }
    }
}
