//! The table for people, and the same as JSON for programs.

use std::fmt::Write;

use anyhow::Result;
use serde::Serialize;

use super::{Row, known};

/// The table, one line for each row, and a count.
#[must_use]
pub fn table(rows: &[Row]) -> String {
    let width = rows.iter().map(|row| row.id.len()).max().unwrap_or(0).max("check".len());
    let mut text = format!(
        "{:width$} {:>12} {:>12} {:>9} {:>7} {:>10}       source\n",
        "check", "target", "got", "error %", "± %", "nodes"
    );
    let known = known::misses();
    for row in rows {
        let Row { id, source, source_kind, target, got, error_pct, tolerance_pct, pass, nodes, other_nodes } = row;
        let nodes = if *other_nodes == 0 { nodes.to_string() } else { format!("{nodes}+{other_nodes}") };
        let verdict = match (*pass, known.contains(id)) {
            (true, _) => "ok   ",
            (false, true) => "known",
            (false, false) => "MISS ",
        };
        // Writing into a string can't fail.
        let _ = writeln!(
            text,
            "{id:width$} {:>12} {:>12} {error_pct:>9.3} {tolerance_pct:>7} {nodes:>10} {verdict}  {source} ({source_kind})",
            figure(*target),
            figure(*got)
        );
    }
    let missed = rows.iter().filter(|row| !row.pass).count();
    let expected = rows.iter().filter(|row| !row.pass && known.contains(&row.id)).count();
    let within = rows.len() - missed;
    let _ = writeln!(text, "\n{within} within tolerance, {missed} outside, {expected} of them known misses");
    text
}

/// Six significant digits, with an exponent only for very small or large figures.
fn figure(value: f64) -> String {
    let size = value.abs();
    if size != 0.0 && !(1e-3..1e6).contains(&size) {
        return format!("{value:.5e}");
    }
    let before_point = if size < 1.0 { 1 } else { size.log10().floor() as usize + 1 };
    format!("{value:.*}", 6usize.saturating_sub(before_point))
}

/// `{"rows": […]}`; figures that are not finite become `null`.
///
/// # Errors
/// Never for rows as they are; serde's signature.
pub fn json(rows: &[Row]) -> Result<String> {
    #[derive(Serialize)]
    struct Table<'a> {
        rows: &'a [Row],
    }
    Ok(serde_json::to_string_pretty(&Table { rows })?)
}

#[cfg(test)]
mod tests {
    use super::super::Target;
    use super::*;

    fn rows() -> Vec<Row> {
        let target = |id: &str| Target {
            id: id.into(),
            source: "book".into(),
            source_kind: "seen".into(),
            value: 0.3024,
            tolerance_pct: 1.0,
        };
        vec![Row::judge(&target("A"), 0.3025, 12), Row::judge(&target("B"), f64::NAN, 12)]
    }

    #[test]
    fn figures_keep_six_digits() {
        assert_eq!(figure(82.274), "82.2740");
        assert_eq!(figure(1234.5678), "1234.57");
        assert_eq!(figure(0.3024), "0.30240");
        assert_eq!(figure(1.82488e-5), "1.82488e-5");
        assert_eq!(figure(0.0), "0.00000");
    }

    #[test]
    fn people_see_what_missed() {
        let text = table(&rows());
        assert!(text.contains("MISS"), "{text}");
        assert!(text.ends_with("1 within tolerance, 1 outside, 0 of them known misses\n"), "{text}");
    }

    #[test]
    fn programs_get_every_documented_key() {
        let value: serde_json::Value = serde_json::from_str(&json(&rows()).unwrap()).unwrap();
        let first = value["rows"][0].as_object().unwrap();
        for key in ["id", "source", "source_kind", "target", "got", "error_pct", "tolerance_pct", "pass", "nodes"] {
            assert!(first.contains_key(key), "{key}");
        }
        assert_eq!(value["rows"][1]["got"], serde_json::Value::Null);
        assert_eq!(value["rows"][1]["pass"], false);
    }
}
