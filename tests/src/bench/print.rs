//! The table of benches for people, and the same as JSON.

use std::fmt::Write;

use anyhow::Result;
use serde::Serialize;

/// One figure.
#[derive(Debug, Clone, Serialize)]
pub struct Row {
    /// Stable name, with its unit.
    pub id: &'static str,
    /// The figure.
    pub value: f64,
    /// Its unit.
    pub unit: &'static str,
    /// How it was measured.
    pub note: String,
}

/// All figures of one run.
#[derive(Debug, Clone, Serialize)]
pub struct Bench {
    /// The processor.
    pub machine: String,
    /// The day, as ISO 8601 writes it.
    pub date: String,
    /// The figures.
    pub rows: Vec<Row>,
}

impl Bench {
    /// The table for people.
    #[must_use]
    pub fn table(&self) -> String {
        let mut text = format!("{}, {}\n\n", self.machine, self.date);
        for Row { id, value, unit, note } in &self.rows {
            let value = match *unit {
                "bytes" => format!("{value:.0}"),
                "ratio" => format!("{value:.3}"),
                _ => format!("{value:.1}"),
            };
            // Writing into a string can't fail.
            let _ = writeln!(text, "{id:34} {value:>10} {unit:5}  {note}");
        }
        text
    }

    /// `{"machine", "date", "rows": [{"id", "value", "unit", "note"}]}`.
    ///
    /// # Errors
    /// Never for rows as they are; serde's signature.
    pub fn json(&self) -> Result<String> {
        Ok(serde_json::to_string_pretty(self)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_forms_hold_every_figure() {
        let row = Row { id: "page_first_top_ms", value: 812.44, unit: "ms", note: "median of 5".into() };
        let bench = Bench { machine: "a processor".into(), date: "2026-01-02".into(), rows: vec![row] };
        assert!(bench.table().contains("812.4 ms"), "{}", bench.table());
        let value: serde_json::Value = serde_json::from_str(&bench.json().unwrap()).unwrap();
        assert_eq!(value["rows"][0]["id"], "page_first_top_ms");
        assert_eq!(value["machine"], "a processor");
        assert_eq!(value["date"], "2026-01-02");
    }
}
