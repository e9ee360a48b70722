//! The report for people.

use std::fmt::Write;

use super::Study;

/// One paragraph for each study, and a count.
#[must_use]
pub fn table(studies: &[Study]) -> String {
    let mut text = String::new();
    // Writing into a string can't fail.
    for Study { id, saying, figures, agrees, remark } in studies {
        let verdict = if *agrees { "comes out" } else { "does not come out" };
        let _ = writeln!(text, "{id}: {saying}: {verdict}");
        for figure in figures {
            let _ = writeln!(text, "    {:<64} {:>10.3}", figure.name, figure.value);
        }
        if let Some(remark) = remark {
            let _ = writeln!(text, "    {remark}");
        }
    }
    let agreed = studies.iter().filter(|study| study.agrees).count();
    let _ = writeln!(text, "\n{agreed} of {} sayings come out", studies.len());
    text
}

#[cfg(test)]
mod tests {
    use super::super::Figure;
    use super::*;

    #[test]
    fn a_saying_that_does_not_come_out_is_said() {
        let figures = vec![Figure::new("a", 1.5)];
        let text = table(&[Study { id: "one", saying: "so it is", figures, agrees: false, remark: Some("why") }]);
        assert!(
            text.contains("one: so it is: does not come out") && text.contains("1.500") && text.contains("why"),
            "{text}"
        );
        assert!(text.ends_with("0 of 1 sayings come out\n"), "{text}");
    }
}
