//! What makers say of holes, wings and bar, computed and reported as it comes out.
//!
//! The sayings are common practice, no source. Each study changes one thing of the demonstration top, on its standard mesh,
//! and says in figures what follows; whether that agrees with the saying is part of the report, never of its success.

mod bench_top;
mod by_edge;
mod by_force;
mod by_mode;
mod print;

use anyhow::Result;

pub use print::table;

/// A number that a study gives.
#[derive(Debug, Clone)]
pub struct Figure {
    /// What it is, with its unit.
    pub name: String,
    /// Its value.
    pub value: f64,
}

/// One saying and what became of it.
#[derive(Debug, Clone)]
pub struct Study {
    /// A short name.
    pub id: &'static str,
    /// What makers say.
    pub saying: &'static str,
    /// What the program gives.
    pub figures: Vec<Figure>,
    /// Whether the figures say the same.
    pub agrees: bool,
    /// What lies behind figures that say otherwise, as far as it was found.
    pub remark: Option<&'static str>,
}

impl Figure {
    fn new(name: impl Into<String>, value: f64) -> Figure {
        Figure { name: name.into(), value }
    }
}

/// Every study, computed now.
///
/// # Errors
/// When a design of a study can't be drawn or solved.
pub fn all() -> Result<Vec<Study>> {
    let mut studies = by_force::studies()?;
    studies.extend(by_edge::studies()?);
    studies.extend(by_mode::studies()?);
    Ok(studies)
}
