//! Every wrong input gets its own error.

use std::sync::Arc;

use super::closed_forms::laplacian;
use super::*;

fn refusal(assembled: &Assembled, request: &Request) -> EigenError {
    assembled.solve(request).unwrap_err()
}

#[test]
fn an_indefinite_shift_names_the_equation() {
    // A diagonal pencil: the pivot that fails is the entry itself, wherever the ordering puts it.
    for bad in [0, 17, 63, 99] {
        let elements: Vec<Element> = (0..100)
            .map(|d| Element {
                equations: vec![d],
                stiffness: vec![if d == bad { -1.0 } else { 5.0 }],
                mass: vec![1.0],
            })
            .collect();
        let diagonal = assemble((0..100).collect(), &elements);
        let symbolic = Symbolic::new(&diagonal.pattern).unwrap();
        let error = Factor::new(&diagonal.pencil(), &symbolic, 0.0).err();
        assert_eq!(error, Some(EigenError::NotPositiveDefinite { equation: bad, sigma: 0.0 }));
    }
    let grid = laplacian(6);
    let symbolic = Symbolic::new(&grid.pattern).unwrap();
    // The Laplacian's lowest eigenvalue on this grid is 0.396.
    assert!(Factor::new(&grid.pencil(), &symbolic, 0.35).is_ok());
    assert!(matches!(
        Factor::new(&grid.pencil(), &symbolic, 0.45).err(),
        Some(EigenError::NotPositiveDefinite { sigma: 0.45, .. })
    ));
}

#[test]
fn a_negative_mass_is_refused() {
    let mut grid = laplacian(4);
    grid.mass[0] = -1.0;
    assert_eq!(refusal(&grid, &Request::count(1)), EigenError::MassNotPositive { value: -1.0 });
    grid.mass.fill(0.0);
    assert_eq!(refusal(&grid, &Request::count(1)), EigenError::MassNotPositive { value: 0.0 });
}

#[test]
fn massless_equations_leave_fewer_finite_eigenvalues() {
    let mut grid = laplacian(4);
    for column in 0..13 {
        grid.mass[grid.pattern.column_starts[column]] = 0.0;
    }
    assert_eq!(grid.solve(&Request::count(3)).unwrap().counted_below, 3);
    assert_eq!(refusal(&grid, &Request::count(4)), EigenError::Exhausted { found: 3, wanted: 4 });
}

#[test]
fn what_is_not_finite_is_refused() {
    let mut grid = laplacian(4);
    grid.stiffness[3] = f64::NAN;
    assert!(matches!(refusal(&grid, &Request::count(1)), EigenError::NotFinite { index: 3, .. }));
    let grid = laplacian(4);
    assert!(matches!(grid.count(f64::INFINITY), Err(EigenError::NotFinite { .. })));
}

#[test]
fn what_can_not_be_asked_is_refused() {
    let grid = laplacian(4);
    assert_eq!(refusal(&grid, &Request::count(0)), EigenError::Count { wanted: 0, available: 16 });
    assert_eq!(refusal(&grid, &Request::count(17)), EigenError::Count { wanted: 17, available: 16 });
    assert_eq!(refusal(&grid, &Request { block: 0, ..Request::count(1) }), EigenError::Block { block: 0, limit: 64 });
    let shift = Request { shift: Some(-2.0), ..Request::count(1) };
    assert_eq!(refusal(&grid, &shift), EigenError::Shift { shift: 2.0 });
}

#[test]
fn rigid_modes_that_are_none_are_refused() {
    let grid = laplacian(4);
    let bent = vec![1.0; 16];
    let request = Request { rigid: Some(&bent), ..Request::count(1) };
    assert!(matches!(refusal(&grid, &request), EigenError::RigidNotNull { mode: 0, .. }));
    let frame = frame::frame(3);
    let twice = [&frame.rigid[..], &frame.rigid[..54]].concat();
    let request = Request { rigid: Some(&twice), ..Request::count(1) };
    assert_eq!(refusal(&frame.pencil, &request), EigenError::RigidDependent { given: 7, independent: 6 });
    let request = Request { rigid: Some(&frame.rigid[..60]), ..Request::count(1) };
    assert!(matches!(refusal(&frame.pencil, &request), EigenError::Length { .. }));
}

#[test]
fn a_broken_pattern_is_refused() {
    let empty = Pattern { column_starts: vec![0], row_indices: Arc::default(), node_of_equation: vec![] };
    assert!(matches!(Symbolic::new(&empty), Err(EigenError::Empty)));
    let sound = laplacian(3).pattern;
    let broken = |change: &dyn Fn(&mut Pattern)| {
        let mut pattern = sound.clone();
        change(&mut pattern);
        Symbolic::new(&pattern).err()
    };
    let row = |p: &mut Pattern, entry: usize, row: u32| Arc::make_mut(&mut p.row_indices)[entry] = row;
    assert!(matches!(broken(&|p| row(p, 0, 1)), Some(EigenError::Malformed { equation: 0, .. })));
    assert!(matches!(broken(&|p| row(p, 1, 99)), Some(EigenError::Malformed { equation: 0, .. })));
    assert!(matches!(broken(&|p| p.column_starts[4] = 99), Some(EigenError::Malformed { .. })));
    assert!(matches!(broken(&|p| p.node_of_equation.truncate(2)), Some(EigenError::Length { .. })));
}

#[test]
fn a_symbolic_of_another_pattern_is_refused() {
    let (three, four) = (laplacian(3), laplacian(4));
    let symbolic = Symbolic::new(&three.pattern).unwrap();
    assert!(matches!(lowest(&four.pencil(), &symbolic, &Request::count(1)), Err(EigenError::ForeignSymbolic)));
}

#[test]
fn a_count_on_an_eigenvalue_is_refused() {
    // The lattice wave of the grid at equal wave numbers (three masses a side): 4 sin²(π/8) twice.
    let on = 8.0 * (std::f64::consts::PI / 8.0).sin().powi(2);
    assert!(matches!(laplacian(3).count(on), Err(EigenError::CountUncertain { .. })));
    assert_eq!(laplacian(3).count(on * 1.001).unwrap(), 1);
    assert_eq!(laplacian(3).count(on * 0.999).unwrap(), 0);
}
