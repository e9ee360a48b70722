//! One outside check: a figure of ours beside the same figure from elsewhere.

use serde::Serialize;

use crate::reference::Reference;

/// The figure from elsewhere, where it comes from, and how near ours has to be.
#[derive(Debug, Clone)]
pub struct Target {
    /// Stable name; that of the line in `tests/reference` with a suffix when a line holds several figures.
    pub id: String,
    /// The document it comes from.
    pub source: String,
    /// `seen`, `memory` or `computed`.
    pub source_kind: String,
    /// The figure.
    pub value: f64,
    /// The largest accepted distance, in per cent of `value`. Say beside the row why it is this large.
    pub tolerance_pct: f64,
}

impl Target {
    /// A figure of a reference line; `suffix` tells the figures of one line apart and is empty for a line with one.
    #[must_use]
    pub fn from_reference(reference: &Reference, suffix: &str, value: f64, tolerance_pct: f64) -> Target {
        let id = if suffix.is_empty() { reference.id.clone() } else { format!("{}:{suffix}", reference.id) };
        let (source, source_kind) = (reference.source.clone(), reference.source_kind.clone());
        Target { id, source, source_kind, value, tolerance_pct }
    }
}

/// A check that ran.
#[derive(Debug, Clone, Serialize)]
pub struct Row {
    /// Stable name.
    pub id: String,
    /// The document the target comes from.
    pub source: String,
    /// `seen`, `memory` or `computed`.
    pub source_kind: String,
    /// The figure from elsewhere.
    pub target: f64,
    /// Ours.
    pub got: f64,
    /// Ours minus the target, in per cent of the target.
    pub error_pct: f64,
    /// The largest accepted size of that.
    pub tolerance_pct: f64,
    /// Whether it is accepted.
    pub pass: bool,
    /// Nodes of the mesh that gave it; 0 where there is no mesh.
    pub nodes: usize,
    /// Nodes of the mesh that corrected it; 0 where none did.
    pub other_nodes: usize,
}

impl Row {
    /// Judges `got`. Anything that is not finite fails, as does a target of zero, of which no per cent can be taken.
    #[must_use]
    pub fn judge(target: &Target, got: f64, nodes: usize) -> Row {
        let error_pct = 100.0 * (got - target.value) / target.value.abs();
        // A comparison with NaN is false, so NaN fails.
        let pass = error_pct.abs() <= target.tolerance_pct;
        Row {
            id: target.id.clone(),
            source: target.source.clone(),
            source_kind: target.source_kind.clone(),
            target: target.value,
            got,
            error_pct,
            tolerance_pct: target.tolerance_pct,
            pass,
            nodes,
            other_nodes: 0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn verdict(target: f64, got: f64) -> Row {
        let target = Target {
            id: "T".into(),
            source: "book".into(),
            source_kind: "seen".into(),
            value: target,
            tolerance_pct: 1.0,
        };
        Row::judge(&target, got, 0)
    }

    #[test]
    fn the_error_has_a_sign_and_the_verdict_has_not() {
        assert!((verdict(200.0, 199.0).error_pct + 0.5).abs() < 1e-12);
        assert!((verdict(-200.0, -199.0).error_pct - 0.5).abs() < 1e-12);
        assert!(verdict(200.0, 201.9).pass && verdict(200.0, 198.1).pass);
        assert!(!verdict(200.0, 202.1).pass && !verdict(200.0, 197.9).pass);
    }

    #[test]
    fn what_is_not_a_number_fails() {
        for got in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(!verdict(200.0, got).pass);
        }
        assert!(!verdict(0.0, 0.0).pass);
    }
}
