//! Modes refined from those of another pencil, against a search from nothing.

use super::frame::frame;
use crate::eigen::{EigenError, Onward, Pencil, Refined, Refinement, Request, Start, Symbolic, lowest, refine};

const WANTED: usize = 12;

/// The free frame, its modes with three more, and the same frame with masses that grow by `share` along the equations.
fn changed(share: f64, check: impl FnOnce(&Pencil, &Symbolic, Refinement)) {
    let frame = frame(20);
    let pattern = &frame.pencil.pattern;
    let pencil = Pencil { pattern, stiffness: &frame.pencil.stiffness, mass: &frame.pencil.mass };
    let symbolic = Symbolic::new(pattern).unwrap();
    let request = Request { rigid: Some(&frame.rigid), prove: false, ..Request::count(WANTED + 3) };
    let before = lowest(&pencil, &symbolic, &request).unwrap();
    // D M D with D diagonal stays positive.
    let grown = |equation: usize| 1.0 + share * equation as f64 / pattern.dof() as f64;
    let mut mass = frame.pencil.mass.clone();
    for column in 0..pattern.dof() {
        let entries = pattern.column_starts[column]..pattern.column_starts[column + 1];
        for (value, &row) in mass[entries.clone()].iter_mut().zip(&pattern.row_indices[entries]) {
            *value *= grown(column) * grown(row as usize);
        }
    }
    let refinement = Refinement {
        rigid: Some(&frame.rigid),
        start: Start::Vectors(&before.vectors),
        fresh: 1,
        shift: before.shift,
        wanted: WANTED,
        residual: 1e-4,
        most_passes: 20,
    };
    check(&Pencil { mass: &mass, ..pencil }, &symbolic, refinement);
}

#[test]
fn refined_modes_keep_every_promise_at_any_residual_asked_for() {
    changed(0.05, |pencil, symbolic, refinement| {
        let request = Request { rigid: refinement.rigid, ..Request::count(WANTED) };
        let exact = lowest(pencil, symbolic, &request).unwrap();
        let mut passes = Vec::new();
        for residual in [1e-1, 1e-2, 1e-3, 1e-4, 1e-5] {
            let found = refine(pencil, symbolic, &Refinement { residual, ..refinement }).unwrap().unwrap();
            passes.push(found.passes);
            for mode in 0..WANTED {
                let (value, exact) = (found.values[mode], exact.values[mode]);
                assert!(found.residuals[mode] <= residual);
                // Ritz values lie above; how far is the square of the residual over a gap of a tenth or more.
                assert!(value > exact * (1.0 - 1e-9), "mode {mode}: {value} {exact}");
                assert!(value < exact * (1.0 + 10.0 * residual * residual + 1e-9), "mode {mode}: {value} {exact}");
            }
        }
        assert!(passes.is_sorted() && passes[0] < passes[4], "{passes:?}");
    });
}

#[test]
fn residuals_are_those_of_the_equations() {
    changed(0.05, |pencil, symbolic, refinement| {
        let found = refine(pencil, symbolic, &Refinement { residual: 1e-1, ..refinement }).unwrap().unwrap();
        compare_residuals(pencil, symbolic, &found);
        assert!(found.residuals[WANTED - 1] > 1e-3, "more than rounding is compared");
    });
}

/// The residuals said with those of K x = λ M x, written out.
fn compare_residuals(pencil: &Pencil, symbolic: &Symbolic, found: &Refined) {
    let pattern = pencil.pattern;
    let product = |values: &[f64], x: &[f64]| {
        let mut y = vec![0.0; x.len()];
        for column in 0..pattern.dof() {
            let entries = pattern.column_starts[column]..pattern.column_starts[column + 1];
            for (value, &row) in values[entries.clone()].iter().zip(&pattern.row_indices[entries]) {
                let row = row as usize;
                y[row] += value * x[column];
                if row != column {
                    y[column] += value * x[row];
                }
            }
        }
        y
    };
    let norm = |x: &[f64]| x.iter().map(|x| x * x).sum::<f64>().sqrt();
    for (mode, x) in found.onward.vectors(symbolic, WANTED).chunks_exact(pattern.dof()).enumerate() {
        let inertia: Vec<f64> = product(pencil.mass, x).iter().map(|m| m * found.values[mode]).collect();
        let left: Vec<f64> = product(pencil.stiffness, x).iter().zip(&inertia).map(|(k, m)| k - m).collect();
        let (own, said) = (norm(&left) / norm(&inertia), found.residuals[mode]);
        // K here is 1e9 times λM on the finest waves, so that rounding x leaves 1e-7 or so.
        assert!((own - said).abs() < 1e-2 * said + 1e-5, "mode {mode}: {own} {said}");
    }
}

/// What `found` leaves for the next, without its factor.
fn without_factor(found: &Refined) -> Onward {
    found.onward.clone().without_factor()
}

/// The same vectors from another start: forces of the pencil before.
#[test]
fn forces_lead_where_their_vectors_do() {
    changed(0.05, |pencil, symbolic, refinement| {
        let first = refine(pencil, symbolic, &refinement).unwrap().unwrap();
        let onward = without_factor(&first);
        let heavier: Vec<f64> = pencil.mass.iter().map(|mass| 1.01 * mass).collect();
        let pencil = Pencil { mass: &heavier, ..*pencil };
        let by_vectors =
            Refinement { start: Start::Vectors(&first.onward.vectors(symbolic, WANTED + 3)), ..refinement };
        let by_forces = Refinement { start: Start::Onward(&onward), ..refinement };
        let [one, other] = [by_vectors, by_forces].map(|way| refine(&pencil, symbolic, &way).unwrap().unwrap());
        for mode in 0..WANTED {
            let exact = first.values[mode] / 1.01;
            for value in [one.values[mode], other.values[mode]] {
                assert!((value / exact - 1.0).abs() < 1e-7, "mode {mode}: {value} {exact}");
            }
        }
        assert_eq!((one.passes, other.passes), (1, 1));
    });
}

/// Forces of a mass that is spread otherwise lead to the modes of this one, and residuals are true from the first step on.
#[test]
fn forces_of_another_mass_lead_there_too() {
    let frame = frame(20);
    changed(0.05, |pencil, symbolic, refinement| {
        let first = refine(pencil, symbolic, &refinement).unwrap().unwrap();
        let pencil = Pencil { mass: &frame.pencil.mass, ..*pencil };
        let request = Request { rigid: refinement.rigid, ..Request::count(WANTED) };
        let exact = lowest(&pencil, symbolic, &request).unwrap();
        let onward = without_factor(&first);
        let start = Start::Onward(&onward);
        let found = refine(&pencil, symbolic, &Refinement { start, ..refinement }).unwrap().unwrap();
        for (value, exact) in found.values.iter().zip(&exact.values) {
            assert!((value / exact - 1.0).abs() < 1e-7, "{value} {exact}");
        }
        let at_once = Refinement { start, residual: 1e3, ..refinement };
        compare_residuals(&pencil, symbolic, &refine(&pencil, symbolic, &at_once).unwrap().unwrap());
    });
}

/// The modes of the frame whose masses grew by `share`, refined from those of the frame before with the factor of that, and sought from nothing.
fn with_a_factor_of_before(share: f64, check: impl FnOnce(&Pencil, &Symbolic, &Refined, &[f64])) {
    let frame = frame(20);
    changed(share, |pencil, symbolic, refinement| {
        let before = Pencil { mass: &frame.pencil.mass, ..*pencil };
        let first = refine(&before, symbolic, &refinement).unwrap().unwrap();
        let onward = Refinement { start: Start::Onward(&first.onward), ..refinement };
        let request = Request { rigid: refinement.rigid, ..Request::count(WANTED) };
        let exact = lowest(pencil, symbolic, &request).unwrap();
        check(pencil, symbolic, &refine(pencil, symbolic, &onward).unwrap().unwrap(), &exact.values);
    });
}

#[test]
fn a_factor_of_before_leads_nearly_as_well() {
    for share in [0.0, 1e-3, 1e-2] {
        with_a_factor_of_before(share, |pencil, symbolic, found, exact| {
            assert_eq!(found.passes, 0, "{share}");
            for (mode, exact) in exact.iter().enumerate() {
                let off = found.values[mode] / exact - 1.0;
                // A Ritz value lies above, by the square of what its vector lacks, which is less than the change itself.
                assert!(off > -1e-9 && off < share * share + 1e-9, "{share}, mode {mode}: {off}");
            }
            compare_residuals(pencil, symbolic, found);
        });
    }
}

#[test]
fn a_factor_that_misleads_is_not_followed() {
    with_a_factor_of_before(1.0, |_, _, found, exact| {
        assert!(found.passes > 0 && !found.onward.has_factor());
        for (value, exact) in found.values.iter().zip(exact) {
            assert!((value / exact - 1.0).abs() < 1e-6, "{value} {exact}");
        }
    });
}

#[test]
fn what_cannot_be_refined_is_refused_or_left() {
    changed(3.0, |pencil, symbolic, refinement| {
        assert_eq!(refine(pencil, symbolic, &Refinement { most_passes: 1, ..refinement }), Ok(None));
        let Start::Vectors(start) = refinement.start else { panic!("vectors were given") };
        let twice = [&start[..symbolic.dof()]; 16].concat();
        let start = Start::Vectors(&twice);
        assert_eq!(refine(pencil, symbolic, &Refinement { start, fresh: 0, ..refinement }), Ok(None));
        let too_many = refine(pencil, symbolic, &Refinement { wanted: 40, ..refinement });
        assert!(matches!(too_many, Err(EigenError::Count { wanted: 40, available: 15 })));
        let indefinite = refine(pencil, symbolic, &Refinement { shift: 0.0, ..refinement });
        assert!(matches!(indefinite, Err(EigenError::Shift { .. })));
    });
}
