//! Laws that the regions of every top obey.

use proptest::prelude::*;

use super::*;
use crate::{
    design::{Design, RoundHole, SoundHoleChoice, reshaped::reshaped},
    mesh::{MeshSize, PlanMesh},
    top::Shape,
};

fn regions(design: &Design) -> (Shape, Regions) {
    design.check().unwrap();
    let shape = Shape::new(design).unwrap();
    let regions = Regions::new(&shape.outline, &shape.holes);
    (shape, regions)
}

fn round(diameter_mm: f64, centre_to_centreline_mm: f64, centre_station_mm: f64) -> SoundHoleChoice {
    SoundHoleChoice::Round(RoundHole { diameter_mm, centre_to_centreline_mm, centre_station_mm })
}

fn kinds(regions: &Regions) -> Vec<&'static str> {
    regions.regions.iter().map(|region| region.kind.key()).collect()
}

/// Outline less holes, in closed form; the regions' polygons stray by 0.01 mm.
fn assert_areas_add_up(shape: &Shape, regions: &Regions) {
    let wood = shape.outline.area_mm2() - shape.holes.iter().map(SoundHole::area_mm2).sum::<f64>();
    let sum: f64 = regions.regions.iter().map(|region| region.area_mm2).sum();
    assert!((sum / wood - 1.0).abs() < 1e-4, "{sum} of {wood} mm2");
}

#[test]
fn the_demonstration_has_every_region_once() {
    let (_, regions) = regions(&Design::demo());
    let wanted = "island upper_wing_bass upper_wing_treble lower_wing_bass lower_wing_treble upper_narrows \
        lower_narrows_bass lower_narrows_treble flank_bass flank_treble upper_bout lower_bout";
    assert_eq!(kinds(&regions), wanted.split_whitespace().collect::<Vec<_>>());
    assert_eq!(regions.throats.len(), 4);
    assert!(regions.regions.iter().all(|region| region.area_mm2 > 0.0));
}

/// The measures that the holes were drawn from.
#[test]
fn narrowest_widths_are_the_makers_measures() {
    let design = Design::demo();
    let SoundHoleChoice::EyesAndStem(m) = &design.sound_holes.treble else { panic!("the demonstration has f-holes") };
    let (_, regions) = regions(&design);
    let width = |kind| regions.get(kind).unwrap().narrowest.unwrap().width_mm;
    let eyes = width(RegionKind::UpperNarrows);
    // The hook touches the eye a few degrees from level, so that the eyes are a hair nearer than their far sides.
    assert!((eyes - 2.0 * m.upper_eye_to_centreline_mm).abs() < 0.1, "{eyes} mm between the upper eyes");
    for side in [Side::Bass, Side::Treble] {
        let edge = width(RegionKind::LowerNarrows(side));
        assert!((edge - m.lower_eye_to_edge_mm).abs() < 0.05, "{edge} mm to the edge");
        for wing in [RegionKind::UpperWing(side), RegionKind::LowerWing(side)] {
            assert!(width(wing) > 0.5 * m.upper_wing_width_mm);
        }
    }
    for throat in &regions.throats {
        // The slot narrows from the stem to the throat's measure on the hook's far side; the wing's point stands before it.
        assert!((m.throat_width_mm..m.stem_width_mm).contains(&throat.across.width_mm), "{throat:?}");
    }
    for kind in [RegionKind::UpperBout, RegionKind::LowerBout] {
        assert_eq!(regions.get(kind).unwrap().narrowest, None);
    }
}

#[test]
fn points_are_where_makers_would_say() {
    let (shape, regions) = regions(&Design::demo());
    let kind = |p: Point| regions.at(p).unwrap().kind;
    assert_eq!(kind([0.0, 160.0]), RegionKind::Island);
    assert_eq!(kind([0.0, 300.0]), RegionKind::UpperBout);
    assert_eq!(kind([0.0, 40.0]), RegionKind::LowerBout);
    assert_eq!(kind([0.0, 189.0]), RegionKind::UpperNarrows);
    assert_eq!(kind([50.0, 185.0]), RegionKind::Flank(Side::Treble));
    let [upper, lower] = shape.holes[1].eyes().unwrap();
    let beside = |eye: crate::sound_holes::Eye, mm: f64| [eye.centre[0] + mm, eye.centre[1]];
    assert_eq!(kind(beside(upper, 6.0)), RegionKind::UpperWing(Side::Treble));
    assert_eq!(kind(beside(lower, -8.0)), RegionKind::LowerWing(Side::Treble));
    assert_eq!(kind(beside(lower, 9.0)), RegionKind::LowerNarrows(Side::Treble));
    // Every node of a mesh has a region, those on boundaries too.
    let mesh = PlanMesh::new(&shape.outline, &shape.holes, MeshSize::Preview).unwrap();
    assert!(mesh.points_mm.iter().all(|&p| regions.at(p).is_some()));
}

#[test]
fn other_holes_and_none_have_their_regions_too() {
    let f_hole = Design::demo().sound_holes.bass;
    for (bass, treble, wanted) in [
        (SoundHoleChoice::None, SoundHoleChoice::None, "upper_bout middle_bout lower_bout"),
        (SoundHoleChoice::None, round(25.0, 35.0, 160.0), "flank_treble upper_bout middle_bout lower_bout"),
        (SoundHoleChoice::None, round(30.0, 0.0, 240.0), "flank_treble upper_bout middle_bout lower_bout"),
        (round(20.0, 40.0, 150.0), round(30.0, 35.0, 170.0), "island flank_bass flank_treble upper_bout lower_bout"),
        (
            f_hole,
            round(25.0, 35.0, 160.0),
            "island upper_wing_bass lower_wing_bass lower_narrows_bass flank_bass flank_treble upper_bout lower_bout",
        ),
    ] {
        let mut design = Design::demo();
        design.sound_holes.bass = bass;
        design.sound_holes.treble = treble;
        let (shape, regions) = regions(&design);
        assert_eq!(kinds(&regions), wanted.split_whitespace().collect::<Vec<_>>());
        assert_areas_add_up(&shape, &regions);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn areas_add_up_and_symmetric_tops_have_mirrored_regions(
        edge in 8.0..16.0f64, centre in 17.0..23.0f64, stem in 3.5..5.5f64, eye in 5.5..7.5f64, wing in 6.0..9.0f64,
        waist in 104.0..118.0f64, alike: bool,
    ) {
        let design = reshaped(waist, [edge, centre, stem, eye, wing], alike);
        let (shape, regions) = regions(&design);
        assert_areas_add_up(&shape, &regions);
        prop_assert_eq!(regions.regions.len(), 12);
        for region in regions.regions.iter().filter(|_| alike) {
            let image = regions.get(region.kind.mirrored()).unwrap();
            prop_assert!((image.area_mm2 / region.area_mm2 - 1.0).abs() < 1e-9);
            let widths = [region, image].map(|region| region.narrowest.map(|narrowest| narrowest.width_mm));
            prop_assert!(widths[0].zip(widths[1]).is_none_or(|(a, b)| (a - b).abs() < 1e-9));
        }
    }
}
