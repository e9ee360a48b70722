//! Meshing the demonstration top: what a moved hole waits for.
#![allow(missing_docs)]

use bombatura_core::{
    design::Design,
    inside::RegionWood,
    mesh::{MeshSize, PlanMesh},
    regions::Regions,
    top::Shape,
};
use criterion::{Criterion, criterion_group, criterion_main};

fn mesh(criterion: &mut Criterion) {
    let shape = Shape::new(&Design::demo()).expect("the demonstration is sound");
    let mut group = criterion.benchmark_group("mesh");
    group.sample_size(20);
    for size in [MeshSize::Preview, MeshSize::Standard, MeshSize::Fine] {
        group.bench_function(format!("{size:?}").to_lowercase(), |bench| {
            bench.iter(|| PlanMesh::new(&shape.outline, &shape.holes, size).expect("it can be meshed"));
        });
    }
    group.bench_function("regions, weighed", |bench| {
        bench.iter(|| {
            let regions = Regions::new(&shape.outline, &shape.holes).regions;
            let weigh = |region| RegionWood::of(region, &shape.surface, &shape.graduation, 400.0).mass_g;
            regions.iter().map(weigh).sum::<f64>()
        });
    });
    group.finish();
}

criterion_group!(benches, mesh);
criterion_main!(benches);
