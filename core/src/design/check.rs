//! Whether a design's measures are possible, one by one and together.

use serde_json::Value;

use super::{Design, DesignError, MEASURES, Measure};
use crate::{arching::Arching, outline::Outline, sound_holes::SoundHole};

impl Design {
    /// Checks every number against its limits and the measures against each other.
    ///
    /// # Errors
    /// The first fault found. Cost: draws outline and holes once, below a millisecond.
    pub fn check(&self) -> Result<(), DesignError> {
        self.check_numbers()?;
        let outline = Outline::new(&self.outline)?;
        Arching::new(&self.arching, &outline)?;
        let holes = SoundHole::both(&self.sound_holes, &outline)?;
        if let Err(error) = self.wood.wood() {
            return Err(DesignError::impossible_wood("wood", self.wood.species, &error));
        }
        self.check_fittings(&outline, &holes)
    }

    fn check_numbers(&self) -> Result<(), DesignError> {
        // NaN and infinity, which JSON can't hold, turn up in this tree as null.
        let tree = serde_json::to_value(self)
            .map_err(|error| DesignError::WrongShape { path: "the document".into(), detail: error.to_string() })?;
        for measure in MEASURES {
            match measure.path.split_once('*') {
                None => check_number(&tree, measure, measure.path)?,
                Some((before, after)) => {
                    for key in keys_at(&tree, before.trim_end_matches('.')) {
                        check_number(&tree, measure, &format!("{before}{key}{after}"))?;
                    }
                }
            }
        }
        Ok(())
    }
}

/// What a `*` stands for: both sides, or each of a list.
fn keys_at(tree: &Value, path: &str) -> Vec<String> {
    match tree.pointer(&format!("/{}", path.replace('.', "/"))) {
        Some(Value::Array(list)) => (0..list.len()).map(|index| index.to_string()).collect(),
        Some(Value::Object(_)) => vec!["bass".into(), "treble".into()],
        _ => Vec::new(),
    }
}

/// A path that isn't there belongs to another kind of hole, or to a fitting that the top is without.
fn check_number(tree: &Value, measure: &Measure, path: &str) -> Result<(), DesignError> {
    let Some(found) = tree.pointer(&format!("/{}", path.replace('.', "/"))) else {
        return Ok(());
    };
    let range = [measure.least, measure.most];
    let (path, what, unit) = (path.to_owned(), measure.what.to_owned(), measure.unit.to_owned());
    match found.as_f64() {
        None => Err(DesignError::NotFinite { path, what, range, unit }),
        Some(value) if value < measure.least || value > measure.most => {
            Err(DesignError::OutOfRange { path, what, value, range, unit })
        }
        Some(_) => Ok(()),
    }
}
