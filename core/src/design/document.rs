//! Reading and writing the JSON document.

use serde_json::{Value, error::Category};

use super::check::{Null, check_tree};
use super::{Design, DesignError, strict};

/// What "format" says in every design document.
pub const FORMAT: &str = "bombatura-design";
/// The version written and read.
pub const VERSION: u32 = 1;
/// A design is some 3 kB; this leaves room for long notes and refuses a scan or picture chosen by mistake before it is parsed.
pub const LARGEST_DOCUMENT_BYTES: usize = 1_000_000;

impl Design {
    /// Reads a design and checks it whole.
    ///
    /// # Errors
    /// The first fault found, in this order: size, JSON syntax, format, version, keys and kinds of value, limits,
    /// measures that can't go together.
    pub fn from_json(json: &str) -> Result<Design, DesignError> {
        let design = Self::parse(json)?;
        design.check()?;
        Ok(design)
    }

    /// The same up to the limits of each number: for whoever finds out what can't go together as it is drawn.
    ///
    /// # Errors
    /// As there.
    pub fn parse(json: &str) -> Result<Design, DesignError> {
        if json.len() > LARGEST_DOCUMENT_BYTES {
            return Err(DesignError::TooLarge { bytes: json.len() });
        }
        let whole: Value = serde_json::from_str(json).map_err(|error| syntax_fault(&error))?;
        // The two keys that say what the rest may be.
        let (format, version) = (whole.get("format"), whole.get("version"));
        if format != Some(&Value::from(FORMAT)) {
            return Err(DesignError::WrongFormat { found: strict::found(format) });
        }
        if version != Some(&Value::from(VERSION)) {
            return Err(DesignError::UnknownVersion { found: strict::found(version) });
        }
        let design = read(json)?;
        // This tree is there already, and writing one of the design is dear.
        check_tree(&whole, Null::Nothing)?;
        Ok(design)
    }

    /// The design as a JSON document that [`Design::from_json`] reads back to the same value, if its numbers have no more
    /// than 15 digits; of longer ones the last may change by one.
    pub fn to_json(&self) -> String {
        // A design has string keys and plain values only, for which the writer has no failure.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// The document of [`Design::demo`].
    pub const DEMO_JSON: &str = include_str!("demo.json");

    /// The invented full-size violin top that the program starts with.
    pub fn demo() -> Design {
        match read(Self::DEMO_JSON) {
            Ok(design) => design,
            Err(error) => unreachable!("the demonstration design is part of the program and is tested: {error}"),
        }
    }
}

/// Keys and kinds of value, not yet their limits. From the text, where a repeated key is still an error.
///
/// The only reader of a design: serde makes its code anew for every source that one is read from.
fn read(json: &str) -> Result<Design, DesignError> {
    serde_json::from_str(json).map_err(|error| DesignError::WrongShape {
        path: strict::path_of(json, &error, "the document"),
        detail: strict::detail_of(&error),
    })
}

fn syntax_fault(error: &serde_json::Error) -> DesignError {
    let (line, column) = (error.line(), error.column());
    match error.classify() {
        Category::Eof => DesignError::Truncated { line, column },
        _ => DesignError::NotJson { line, column, detail: strict::detail_of(error) },
    }
}
