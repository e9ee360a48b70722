//! What one step of a dragged handle costs, part by part, on the preview mesh and on the standard one.
#![allow(missing_docs)]

use bombatura_core::design::Design;
use bombatura_core::eigen::Factor;
use bombatura_core::fittings::Fittings;
use bombatura_core::mesh::{MeshSize, MidSurface, MovableMesh};
use bombatura_core::modes::ModesRequest;
use bombatura_core::top::{Carved, Held, MotionField, Picture, Plan, Shape};
use criterion::{Criterion, criterion_group, criterion_main};

fn parts(criterion: &mut Criterion) {
    let design = Design::demo();
    let shape = Shape::new(&design).expect("the demonstration design can be drawn");
    let wood = design.wood.wood().expect("its wood is possible");
    for (size, name) in [(MeshSize::Preview, "preview"), (MeshSize::Standard, "standard")] {
        let plan = Plan::new(&shape, Held::Nothing, size).expect("it can be meshed");
        let nodes = plan.mesh.points_mm.len();
        let mut group = criterion.benchmark_group(format!("{name}, {nodes} nodes"));
        group.sample_size(10);
        group.bench_function("shape", |bench| bench.iter(|| Shape::new(&design)));
        group.bench_function("mesh", |bench| bench.iter(|| Plan::new(&shape, Held::Nothing, size)));
        let mut moved = design.clone();
        moved.sound_holes.stop_mm += 0.3;
        let moved = Shape::new(&moved).expect("so can one with another stop");
        let movable = MovableMesh::new(plan.mesh.clone(), &shape.outline, &shape.holes);
        group.bench_function("mesh moved", |bench| {
            bench.iter(|| movable.moved(&moved.outline, &moved.holes).expect("it goes along"));
        });
        let mid = || MidSurface::new(&plan.mesh, &shape.surface, &shape.graduation);
        group.bench_function("mid-surface", |bench| bench.iter(mid));
        let carve = || Carved::new(&plan, &shape, &wood, &Fittings::default()).expect("it is a shell");
        group.bench_function("mid-surface and assembly", |bench| bench.iter(carve));
        let carved = carve();
        let model = carved.whole_model(&plan);
        let pencil = model.pencil(&plan.equations, &plan.symbolic);
        group.bench_function("factor", |bench| bench.iter(|| Factor::new(&pencil, &plan.symbolic, -1e5).map(|_| ())));
        let factor = Factor::new(&pencil, &plan.symbolic, -1e5).expect("a shell is positive definite");
        let right_sides = vec![1.0; 16 * plan.symbolic.dof()];
        group.bench_function("16 right sides", |bench| bench.iter(|| factor.solve(&right_sides)));
        let request = ModesRequest { most: 12, below_hz: None, prove: false };
        group.bench_function("12 modes from nothing", |bench| bench.iter(|| carved.modes(&plan, &request)));
        let modes = carved.modes(&plan, &request).expect("it has modes");
        group.bench_function("picture and motion", |bench| {
            bench.iter(|| {
                let picture = Picture::new(&plan.mesh, &carved.mid_surface);
                MotionField::new(&picture, &carved.mid_surface, modes.shape(4))
            });
        });
        group.finish();
    }
}

criterion_group!(benches, parts);
criterion_main!(benches);
