//! What is waited for when a driven top is looked at: curves, a motion, the regions, on the standard mesh.
#![allow(missing_docs)]

use bombatura_core::design::{Design, Rim};
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::regions::Regions;
use bombatura_core::response::{BridgeFeet, Complex, ModalBasis, Port, Sweep, TapTone, radiation};
use bombatura_core::top::{BandFigures, RegionResponse, Stages};
use criterion::{Criterion, criterion_group, criterion_main};

fn parts(criterion: &mut Criterion) {
    let mut design = Design::demo();
    design.rim = Rim::Hinged;
    let mut stages = Stages::new(design);
    let (size, bridge) = (MeshSize::Standard, stages.bridge());
    let request = ModesRequest { most: 100, below_hz: Some(6000.0), prove: false };
    let modes = stages.drivable_modes(size, &bridge, &request).expect("the demonstration can be driven");
    let basis = ModalBasis::new(modes.arrays).expect("its arrays go together");
    let patches = bridge.patches(basis.surface(), stages.bridge_stands_at_m()).expect("its bridge stands on wood");
    let feet = BridgeFeet::on(&basis, &patches).expect("they are of the same top");
    let shape = stages.shape().expect("it can be drawn");
    let regions = Regions::new(&shape.outline, &shape.holes);
    let sweep = Sweep::by_ratio(100.0, 5000.0, 500).expect("these are frequencies");
    let rocking = bridge.weightless_forces([Complex::from(1.0), Complex::default()]);
    let motion = basis.resonators().motion(&feet.loaded(&rocking), 440.0);

    let mut group = criterion.benchmark_group(format!("{} modes, {} nodes", basis.count(), basis.node_count()));
    group.sample_size(20);
    group.bench_function("modes, residual vectors and damping", |bench| {
        bench.iter(|| stages.drivable_modes(size, &bridge, &request));
    });
    group.bench_function("mobility at 500 frequencies", |bench| {
        bench.iter(|| basis.resonators().mobilities(&feet.outward[0], &feet.outward[0], sweep.frequencies_hz()));
    });
    group.bench_function("bridge with mass at 500 frequencies", |bench| {
        let push = [Complex::from(1.0), Complex::default()];
        let force = |hz: &f64| bridge.forces(&feet, basis.resonators(), push, *hz);
        bench.iter(|| sweep.frequencies_hz().iter().map(force).collect::<Vec<_>>());
    });
    group.bench_function("motion field", |bench| bench.iter(|| motion.field(&basis)));
    let field = motion.field(&basis);
    stages.picture(size).expect("it can be drawn");
    group.bench_function("the same on the picture", |bench| bench.iter(|| stages.swinging(size, &field)));
    group.bench_function("level at one place", |bench| {
        bench.iter(|| radiation::level_db(&basis, &field, motion.hz(), 1.0));
    });
    group.bench_function("regions made ready", |bench| bench.iter(|| RegionResponse::new(&basis, &regions)));
    let response = RegionResponse::new(&basis, &regions);
    group.bench_function("energy shares at 500 frequencies", |bench| {
        let shares = |hz: &f64| response.energy_shares(&basis.resonators().motion(&feet.loaded(&rocking), *hz));
        bench.iter(|| sweep.frequencies_hz().iter().map(shares).collect::<Vec<_>>());
    });
    group.bench_function("figures", |bench| {
        bench.iter(|| BandFigures::new(&response, basis.resonators(), &bridge, &feet, 0.08));
    });
    group.bench_function("a second of tap tone", |bench| {
        let port = Port::outward(&basis, [0.03, 0.1]).expect("there is wood in the lower bout");
        let tone = TapTone::new(&basis, &port, &Port::volume(&basis), 1e-3).expect("a short contact");
        bench.iter(|| tone.samples(44_100.0, 1.0, 0.5));
    });
    group.finish();
}

criterion_group!(benches, parts);
criterion_main!(benches);
