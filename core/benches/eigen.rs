//! Modes of a 2 500-node lattice with a shell's pattern: what a user waits for when a top is solved.
#![allow(missing_docs)]

#[path = "../src/eigen/tests/assembly.rs"]
mod assembly;
#[path = "../src/eigen/tests/frame.rs"]
mod frame;

use bombatura_core::eigen::{Factor, Pattern, Pencil, Request, Symbolic, count_below, elimination_order, lowest};
use criterion::{Criterion, criterion_group, criterion_main};

fn modes(criterion: &mut Criterion) {
    let frame = frame::frame(50);
    let pencil =
        Pencil { pattern: &frame.pencil.pattern, stiffness: &frame.pencil.stiffness, mass: &frame.pencil.mass };
    let symbolic = Symbolic::new(pencil.pattern).expect("the lattice's pattern is sound");
    let mut group = criterion.benchmark_group("lattice of 2 500 nodes");
    group.sample_size(10);
    group.bench_function("symbolic", |bench| bench.iter(|| Symbolic::new(pencil.pattern)));
    group.bench_function("factor", |bench| bench.iter(|| Factor::new(&pencil, &symbolic, -1e4).map(|_| ())));
    let factor = Factor::new(&pencil, &symbolic, -1e4).expect("the shifted lattice is positive definite");
    let right_sides = vec![1.0; 8 * symbolic.dof()];
    group.bench_function("8 right sides", |bench| bench.iter(|| factor.solve(&right_sides)));
    for (count, prove) in [(26, false), (26, true), (60, false), (150, true)] {
        let request = Request { rigid: Some(&frame.rigid), prove, ..Request::count(count) };
        let name = format!("{count} modes{}", if prove { ", proven" } else { "" });
        group.bench_function(name, |bench| bench.iter(|| lowest(&pencil, &symbolic, &request)));
    }
    let request = Request { rigid: Some(&frame.rigid), ..Request::count(26) };
    let pairs = lowest(&pencil, &symbolic, &request).expect("the lattice has 26 modes");
    let lambda = pairs.values[25] * 1.0001;
    group.bench_function("count", |bench| bench.iter(|| count_below(&pencil, &symbolic, lambda)));
    group.finish();
}

criterion_group!(benches, modes);
criterion_main!(benches);
