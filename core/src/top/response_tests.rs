//! The demonstration top driven by its bridge.

use super::{BandFigures, DrivableModes, RegionResponse, ResponseFigures, Stages, SwingingField};
use crate::design::{BarMeasures, Design, PlanPlace, Rim, SoundHoleChoice, StickWood};
use crate::mesh::MeshSize;
use crate::modes::ModesRequest;
use crate::regions::{RegionKind, Regions};
use crate::response::{Bridge, BridgeFeet, Complex, ComplexField, ModalBasis, Port, ResponseError};
use crate::top::TopError;
use crate::wood::Species;

struct Driven {
    basis: ModalBasis,
    bridge: Bridge,
    feet: BridgeFeet,
    regions: RegionResponse,
}

fn driven(change: impl FnOnce(&mut Design)) -> Driven {
    let mut design = Design::demo();
    design.rim = Rim::Hinged;
    change(&mut design);
    let mut stages = Stages::new(design);
    let bridge = stages.bridge();
    let request = ModesRequest { most: 100, below_hz: Some(6000.0), prove: false };
    let basis = ModalBasis::new(stages.drivable_modes(MeshSize::Preview, &bridge, &request).unwrap().arrays).unwrap();
    let patches = bridge.patches(basis.surface(), stages.bridge_stands_at_m()).unwrap();
    let feet = BridgeFeet::on(&basis, &patches).unwrap();
    let shape = stages.shape().unwrap();
    let regions = RegionResponse::new(&basis, &Regions::new(&shape.outline, &shape.holes));
    Driven { basis, bridge, feet, regions }
}

impl Driven {
    fn within(&self, scatter: f64) -> Result<BandFigures, ResponseError> {
        BandFigures::new(&self.regions, self.basis.resonators(), &self.bridge, &self.feet, scatter)
    }

    fn figures(&self) -> ResponseFigures {
        self.within(0.08).unwrap().figures()
    }
}

#[test]
fn what_the_regions_do_adds_up_to_what_the_top_does() {
    let Driven { basis, bridge, feet, regions } = driven(|_| ());
    let kinds: Vec<RegionKind> = regions.kinds().collect();
    assert!((regions.area_shares().sum::<f64>() - 1.0).abs() < 1e-12);
    for hz in [150.0, 640.0, 2100.0, 4700.0] {
        let moved_by = |at_top: [f64; 2]| {
            let forces = bridge.weightless_forces(at_top.map(Complex::from));
            basis.resonators().motion(&feet.loaded(&forces), hz)
        };
        // With equal sides a top that is rocked pumps nothing.
        assert!(regions.volume_shares(&moved_by([1.0, 0.0])).iter().all(|share| *share == 0.0));
        let motion = moved_by([1.0, 0.5]);
        assert!((regions.energy_shares(&motion).iter().sum::<f64>() - 1.0).abs() < 1e-12);
        let volumes = regions.volume_m3_s(&motion);
        let (pumped, whole): (Complex, _) = (volumes.iter().sum(), motion.velocity(&Port::volume(&basis)));
        let moved: f64 = volumes.iter().map(|volume| volume.norm()).sum();
        assert!((pumped - whole).norm() < 1e-9 * moved, "{hz}: {pumped} {whole}");
        assert!((regions.volume_shares(&motion).iter().sum::<f64>() - 1.0).abs() < 1e-9);
        let phases = regions.phases_deg(&motion).unwrap();
        let island = kinds.iter().position(|kind| *kind == RegionKind::Island).unwrap();
        assert!(phases[island].abs() < 1e-9 && phases.iter().all(|phase| phase.abs() <= 180.0));
        assert!((0..regions.kinds().count()).all(|place| regions.outward_square(place, &motion) > 0.0));
    }
}

/// A motion that swings in one phase is laid on the picture as a shape is; turned by a quarter, it is the other part.
#[test]
fn a_driven_motion_is_drawn_as_a_shape_is() {
    let mut stages = Stages::new(Design::demo());
    let size = MeshSize::Preview;
    let request = ModesRequest { most: 2, below_hz: None, prove: false };
    let bridge = stages.bridge();
    let basis = ModalBasis::new(stages.drivable_modes(size, &bridge, &request).unwrap().arrays).unwrap();
    stages.picture(size).unwrap();
    stages.modes(size, &request).unwrap();
    let shape = basis.shape(7).to_vec();
    let still = vec![0.0; shape.len()];
    let field = ComplexField { re: still, im: shape };
    let SwingingField { re, im, scale_mm_per_m } = stages.swinging(size, &field).unwrap();
    assert!(re.iter().all(|value| *value == 0.0));
    let drawn = stages.motion(size, 1, false).unwrap();
    assert!((scale_mm_per_m / drawn.scale_mm_per_m - 1.0).abs() < 1e-5);
    let sign = if im[2] * drawn.values[2] < 0.0 { -1.0 } else { 1.0 };
    assert!(im.iter().zip(&drawn.values).all(|(own, also)| (own * sign - also).abs() < 1e-4));
    assert_eq!(im.len(), drawn.values.len());
}

/// A top that is its own mirror image moves no foot more than the other; a bar under the bass foot holds that side back.
#[test]
fn a_bar_holds_the_bass_side_back() {
    let bare = driven(|_| ()).figures();
    // Nodes of a symmetric design are mirrored, triangles across the centreline are not: half a per cent of a velocity.
    assert!(bare.bass_over_treble_db.value.abs() < 0.1, "{:?}", bare.bass_over_treble_db);
    let with_bar = driven(|design| {
        design.bar = Some(BarMeasures {
            lower_end: PlanPlace { across_mm: -17.0, station_mm: 45.0 },
            upper_end: PlanPlace { across_mm: -14.0, station_mm: 310.0 },
            width_mm: 5.5,
            height_mm: 12.0,
            end_height_mm: 3.0,
            highest_station_mm: 165.0,
            wood: StickWood { species: Species::SitkaSpruce, measured: None },
        });
    })
    .figures();
    assert!(with_bar.bass_over_treble_db.value < -1.0, "{:?}", with_bar.bass_over_treble_db);
}

/// Half of the difference of two figures is what their scatter says: all frequencies higher by a twelfth.
#[test]
fn figures_say_how_sure_they_are() {
    let top = driven(|_| ());
    let figures = top.figures();
    let (island, wings) = (figures.island_mobility_db.unwrap(), figures.wing_activity.unwrap());
    assert!(island.value.is_finite() && island.sure_within > 0.0 && island.sure_within < 6.0, "{island:?}");
    assert!(wings.value > 0.0 && wings.sure_within > 0.0, "{wings:?}");
    let surer = top.within(0.0).unwrap().figures();
    assert!(surer.island_mobility_db.unwrap().sure_within < island.sure_within);
    assert!(top.within(f64::NAN).is_err());
    let whole = driven(|design| {
        design.sound_holes.bass = SoundHoleChoice::None;
        design.sound_holes.treble = SoundHoleChoice::None;
    });
    assert_eq!((whole.figures().island_mobility_db, whole.figures().wing_activity), (None, None));
}

#[test]
fn a_response_leaves_the_modes_on_the_page_alone() {
    let mut stages = Stages::new(Design::demo());
    let size = MeshSize::Preview;
    let modes = ModesRequest { most: 3, below_hz: None, prove: false };
    let own = stages.modes(size, &modes).unwrap().clone();
    let bridge = stages.bridge();
    let wider = ModesRequest { most: 8, ..modes };
    let DrivableModes { arrays, wood_scatter } = stages.drivable_modes(size, &bridge, &wider).unwrap();
    assert_eq!((arrays.rigid, arrays.frequencies_hz.len() - arrays.residual), (6, 14));
    let pairs = arrays.frequencies_hz[6..9].iter().zip(&own.frequencies_hz);
    // Two searches of different reach: exact to their residuals' square.
    assert!(pairs.clone().all(|(own, also)| (own / also - 1.0).abs() < 1e-8), "{:?}", pairs.collect::<Vec<_>>());
    let damping = stages.damping(size, &modes).unwrap();
    assert!(damping.iter().zip(&arrays.loss_factors[6..]).all(|(own, also)| (own.loss_factor - also).abs() < 1e-9));
    let runs = stages.runs();
    stages.modes(size, &modes).unwrap();
    assert_eq!(stages.runs(), runs);
    // All that moves is weighed, and the place of every node is known.
    let mass_g = stages.carved(size).unwrap().1.mass_g();
    assert!((1e3 * arrays.surface.masses_kg.iter().sum::<f64>() / mass_g - 1.0).abs() < 1e-9);

    let scatter = stages.design().wood.scatter();
    let told = stages.sensitivities(size, &wider).unwrap();
    let mean_pct = told.iter().map(|own| own.wood_pct(&scatter)).sum::<f64>() / 8.0;
    assert!((100.0 * wood_scatter / mean_pct - 1.0).abs() < 1e-8, "{wood_scatter} {mean_pct} %");

    let wide = Bridge { feet_apart_m: 0.5, ..bridge };
    assert!(matches!(stages.drivable_modes(size, &wide, &modes), Err(TopError::Fitting(_))));
}
