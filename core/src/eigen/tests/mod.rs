//! Eigenpairs and counts against closed forms and dense reference solvers.

mod assembly;
mod beams;
mod closed_forms;
mod dense;
mod frame;
mod mirrored;
mod promises;
mod refine;
mod refusals;

use super::{
    EigenError, Eigenpairs, Extent, Factor, Pattern, Pencil, Reflection, Request, Symbolic, count_below,
    elimination_order, lowest,
};
use assembly::{Assembled, Element, assemble};

impl Assembled {
    fn pencil(&self) -> Pencil<'_> {
        Pencil { pattern: &self.pattern, stiffness: &self.stiffness, mass: &self.mass }
    }

    fn solve(&self, request: &Request) -> Result<Eigenpairs, EigenError> {
        lowest(&self.pencil(), &Symbolic::new(&self.pattern)?, request)
    }

    fn count(&self, lambda: f64) -> Result<usize, EigenError> {
        count_below(&self.pencil(), &Symbolic::new(&self.pattern)?, lambda)
    }
}

/// Asserts that two ascending lists agree to a relative error.
fn assert_close(got: &[f64], expected: &[f64], relative: f64) {
    assert_eq!(got.len(), expected.len());
    for (index, (got, expected)) in got.iter().zip(expected).enumerate() {
        let error = (got - expected).abs() / expected.abs();
        assert!(error <= relative, "value {index}: {got} against {expected}, error {error:e}");
    }
}
