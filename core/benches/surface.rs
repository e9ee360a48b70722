//! The outer surface of the demonstration top: what a drawing, a mesh or a moving handle waits for.
#![allow(missing_docs)]

use std::hint::black_box;

use bombatura_core::{
    arching::Arching, arching_figures::ArchingFigures, design::Design, outline::Outline, sound_holes::SoundHole,
    surface::Surface,
};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};

fn surface(criterion: &mut Criterion) {
    let design = Design::demo();
    let outline = Outline::new(&design.outline).expect("the demonstration is sound");
    let arching = Arching::new(&design.arching, &outline).expect("the demonstration is sound");
    let holes = SoundHole::both(&design.sound_holes, &outline).expect("the demonstration is sound");
    let surface = Surface::new(&arching, &outline);
    // All over the top, on a lattice of irrational steps.
    let points: Vec<[f64; 2]> = (0..20_000)
        .map(|i| [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0])
        .filter(|&p| outline.contains(p))
        .take(10_000)
        .collect();
    let mut group = criterion.benchmark_group("surface, 10 000 points");
    group.sample_size(20).throughput(Throughput::Elements(points.len() as u64));
    group.bench_function("height and normal", |bench| {
        bench.iter(|| points.iter().map(|&p| black_box(surface.at(p)).normal()[2]).sum::<f64>());
    });
    group.bench_function("principal curvatures", |bench| {
        bench.iter(|| points.iter().map(|&p| black_box(surface.at(p)).curvatures().least_per_mm).sum::<f64>());
    });
    group.bench_function("inflection line", |bench| {
        bench.iter(|| points.iter().filter_map(|&p| surface.inflection_mm(p[1], true)).sum::<f64>());
    });
    group.finish();
    let mut whole = criterion.benchmark_group("the whole top");
    whole.sample_size(20);
    whole.bench_function("contours every millimetre", |bench| {
        bench.iter(|| (1..16).map(|mm| surface.contour(f64::from(mm), true).len()).sum::<usize>());
    });
    whole.bench_function("figures of the arching", |bench| {
        bench.iter(|| ArchingFigures::new(&outline, &surface, &holes).steepest_deg.value);
    });
    whole.finish();
}

criterion_group!(benches, surface);
criterion_main!(benches);
