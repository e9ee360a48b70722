//! The published values in `tests/reference`: one CSV file for each topic, every row with its source.

use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail, ensure};
use serde::Deserialize;

/// One row: a quantity that somebody published, or that an independent solution gave.
#[derive(Debug, Clone, Deserialize)]
pub struct Reference {
    /// Stable name, such as `P-FV12-C`.
    pub id: String,
    /// What it is, in words.
    pub quantity: String,
    /// The letter it goes by in its source.
    pub symbol: String,
    /// A number, several separated by `;`, a range or a few words.
    pub value: String,
    /// Its unit; `1` without dimension.
    pub unit: String,
    /// Sizes, material and supports it holds for.
    pub conditions: String,
    /// The document it comes from.
    pub source: String,
    /// `seen`, `memory` or `computed`, as the folder's README explains.
    pub source_kind: String,
    /// Doubts and checks.
    pub note: String,
}

impl Reference {
    /// The row's numbers in its own order and unit.
    ///
    /// # Errors
    /// When the value is a range, a formula or words.
    pub fn numbers(&self) -> Result<Vec<f64>> {
        let parse = |part: &str| {
            let number: f64 = part.trim().parse().with_context(|| format!("{}: `{part}` is no number", self.id))?;
            ensure!(number.is_finite(), "{}: `{part}` is not finite", self.id);
            Ok(number)
        };
        self.value.split(';').map(parse).collect()
    }

    /// The row's only number.
    ///
    /// # Errors
    /// When the value is anything but one number.
    pub fn number(&self) -> Result<f64> {
        match self.numbers()?[..] {
            [number] => Ok(number),
            _ => bail!("{} holds several numbers: {}", self.id, self.value),
        }
    }
}

/// All rows of one topic: `plates`, `shells`, `wood`, `violin`, `air` or `geometry`.
///
/// # Errors
/// When the file isn't there, a column is missing or an id comes twice.
pub fn topic(name: &str) -> Result<Vec<Reference>> {
    read(&folder().join(format!("{name}.csv")))
}

/// The row with this id.
///
/// # Errors
/// As [`topic`], or when no row has this id.
pub fn row(topic_name: &str, id: &str) -> Result<Reference> {
    let found = topic(topic_name)?.into_iter().find(|row| row.id == id);
    found.with_context(|| format!("no row {id} in tests/reference/{topic_name}.csv"))
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("reference")
}

fn read(path: &Path) -> Result<Vec<Reference>> {
    let mut reader = csv::Reader::from_path(path).with_context(|| format!("can't read {}", path.display()))?;
    let rows: Vec<Reference> =
        reader.deserialize().collect::<Result<_, _>>().with_context(|| format!("in {}", path.display()))?;
    let mut ids = std::collections::BTreeSet::new();
    for row in &rows {
        ensure!(ids.insert(&row.id), "{} comes twice in {}", row.id, path.display());
        ensure!(
            ["seen", "memory", "computed"].contains(&row.source_kind.as_str()),
            "{}: source_kind is `{}`; it may be seen, memory or computed",
            row.id,
            row.source_kind
        );
        ensure!(!row.source.is_empty(), "{} names no source", row.id);
    }
    Ok(rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_topic_reads_and_every_row_names_its_source() {
        for name in ["plates", "shells", "wood", "violin", "air", "geometry"] {
            assert!(!topic(name).unwrap().is_empty(), "{name}");
        }
    }

    #[test]
    fn quoted_fields_and_lists_are_read_whole() {
        let row = row("plates", "P-ORTHO-SS-A").unwrap();
        assert_eq!(row.numbers().unwrap().len(), 6);
        assert!(row.quantity.contains("(1,1);(2,1)"));
        assert!(row.number().unwrap_err().to_string().contains("several numbers"));
        assert!(super::row("plates", "P-ORTHO-SS").unwrap().numbers().is_err());
    }

    #[test]
    fn a_row_without_a_known_kind_or_with_a_repeated_id_is_refused() {
        let head = "id,quantity,symbol,value,unit,conditions,source,source_kind,note\n";
        let read_text = |rows: &str| {
            let file = tempfile::NamedTempFile::new().unwrap();
            std::fs::write(file.path(), format!("{head}{rows}")).unwrap();
            read(file.path())
        };
        assert!(read_text("A,q,s,1,1,c,book,seen,\n").is_ok());
        assert!(read_text("A,q,s,1,1,c,book,heard,\n").is_err());
        assert!(read_text("A,q,s,1,1,c,,seen,\n").is_err());
        assert!(read_text("A,q,s,1,1,c,book,seen,\nA,q,s,2,1,c,book,seen,\n").is_err());
        assert!(read_text("A,q,s,1\n").is_err());
    }
}
