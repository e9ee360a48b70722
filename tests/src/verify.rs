//! The table of outside checks: what the program gives against closed forms, published tables and other programs.
//!
//! One file for each subject; each gives its rows, and [`rows`] joins them. To add a check, add a row to a subject's
//! `rows`, with the id of its line in `tests/reference` where there is one.

mod bar;
mod bar_on_top;
mod concentration;
mod geometry;
mod known;
mod mesh;
mod plates;
mod print;
mod response;
mod row;
mod scaling;
mod shell;
mod shells;
mod solids;
mod spruce;
mod statics;
mod wood;

use std::collections::BTreeSet;

use anyhow::{Result, ensure};

pub use print::{json, table};
pub use row::{Row, Target};
pub(crate) use solids::one_layer_of_solids_s;

/// Every outside check, computed now.
///
/// # Errors
/// When a reference can't be read, a computation refuses its input or two checks have one name; a figure that misses is
/// a failing row instead.
pub fn rows() -> Result<Vec<Row>> {
    let mut rows = geometry::rows()?;
    rows.extend(plates::rows()?);
    rows.extend(spruce::rows()?);
    rows.extend(statics::rows()?);
    rows.extend(concentration::rows()?);
    rows.extend(shells::rows()?);
    rows.extend(response::rows()?);
    rows.extend(bar::rows()?);
    rows.extend(bar_on_top::rows()?);
    rows.extend(scaling::rows()?);
    rows.extend(wood::rows()?);
    rows.extend(solids::rows()?);
    let mut ids = BTreeSet::new();
    for row in &rows {
        ensure!(ids.insert(&row.id), "two checks are named {}", row.id);
    }
    Ok(rows)
}

/// Whether rows were computed and all of them pass: an empty table proves nothing.
#[must_use]
pub fn all_pass(rows: &[Row]) -> bool {
    !rows.is_empty() && rows.iter().all(|row| row.pass)
}

/// Names of rows that aren't as expected: misses that aren't known, and known misses that pass or are gone.
#[must_use]
pub fn surprises(rows: &[Row]) -> Vec<String> {
    known::surprises(rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_table_is_a_failure() {
        assert!(!all_pass(&[]));
        assert!(!surprises(&[]).is_empty());
    }
}
