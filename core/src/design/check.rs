//! Whether a design's measures are possible, one by one and together.

use serde_json::Value;

use super::{Design, DesignError, GraduationMeasures, MEASURES, Measure};
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
        self.check_within(&outline, &holes)
    }

    /// Checks what outline, arching and holes don't find out as they are drawn, the numbers left out.
    ///
    /// # Errors
    /// The first fault found.
    pub(crate) fn check_within(&self, outline: &Outline, holes: &[SoundHole]) -> Result<(), DesignError> {
        if let Err(error) = self.wood.wood() {
            return Err(DesignError::impossible_wood("wood", self.wood.species, &error));
        }
        self.check_fittings(outline, holes)?;
        self.check_measured_thicknesses()
    }

    fn check_measured_thicknesses(&self) -> Result<(), DesignError> {
        let (count, most) = (self.graduation.measured.len(), GraduationMeasures::MOST_MEASURED);
        if count <= most {
            return Ok(());
        }
        Err(DesignError::Impossible {
            kind: "too_many_thicknesses",
            path: "graduation.measured".into(),
            what: "there are too many measured thicknesses".into(),
            value: format!("{count} points"),
            limits: format!("at most {most} points"),
            remedy: "leave some out, evenly over the top".into(),
        })
    }

    /// Checks every number against its limits.
    ///
    /// # Errors
    /// The first fault found.
    pub(crate) fn check_numbers(&self) -> Result<(), DesignError> {
        let tree = serde_json::to_value(self)
            .map_err(|error| DesignError::WrongShape { path: "the document".into(), detail: error.to_string() })?;
        check_tree(&tree, Null::NoNumber)
    }
}

/// What `null` stands for in a tree.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Null {
    /// As good as left out: in a document.
    Nothing,
    /// NaN and infinity, which JSON can't hold: in what was written of a design.
    NoNumber,
}

/// Checks every number of a design's tree against its limits.
pub(super) fn check_tree(tree: &Value, null: Null) -> Result<(), DesignError> {
    MEASURES.iter().try_for_each(|measure| check_at(tree, null, measure, "", measure.path))
}

/// Checks a measure at every place that the rest of its path stands for, from the place found so far. A path that isn't
/// there belongs to another kind of hole or curve, or to a fitting that the top is without.
fn check_at(tree: &Value, null: Null, measure: &Measure, found: &str, rest: &str) -> Result<(), DesignError> {
    let (key, rest) = rest.split_once('.').map_or((rest, None), |(key, rest)| (key, Some(rest)));
    let keys = if key == "*" { keys_of(tree) } else { vec![key.to_owned()] };
    for key in keys {
        let below = match tree {
            Value::Array(list) => key.parse().ok().and_then(|index: usize| list.get(index)),
            _ => tree.get(&key),
        };
        let left_out = |below: &&Value| null == Null::Nothing && below.is_null();
        let Some(below) = below.filter(|below| !left_out(below)) else { continue };
        let path = if found.is_empty() { key } else { format!("{found}.{key}") };
        match rest {
            Some(rest) => check_at(below, null, measure, &path, rest)?,
            None => check_number(below, measure, path)?,
        }
    }
    Ok(())
}

/// What a `*` stands for, in the document's order.
fn keys_of(tree: &Value) -> Vec<String> {
    match tree {
        Value::Array(list) => (0..list.len()).map(|index| index.to_string()).collect(),
        Value::Object(map) => map.keys().cloned().collect(),
        _ => Vec::new(),
    }
}

fn check_number(number: &Value, measure: &Measure, path: String) -> Result<(), DesignError> {
    let range = [measure.least, measure.most];
    let (what, unit) = (measure.what.to_owned(), measure.unit.to_owned());
    match number.as_f64() {
        None => Err(DesignError::NotFinite { path, what, range, unit }),
        Some(value) if value < measure.least || value > measure.most => {
            Err(DesignError::OutOfRange { path, what, value, range, unit })
        }
        Some(_) => Ok(()),
    }
}
