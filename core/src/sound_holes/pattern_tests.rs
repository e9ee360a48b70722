//! Holes of the other patterns against closed forms, and what is refused.

use std::f64::consts::PI;

use proptest::prelude::*;

use super::*;
use crate::{
    design::{CrescentHole, Design, EndCut, SlotHole, TracedHole},
    plan::vector::{cross, dot},
};

const STATION_MM: f64 = 160.0;

fn slot(length_mm: f64, width_mm: f64, lean_deg: f64, ends: EndCut) -> SoundHoleChoice {
    let (centre_to_centreline_mm, centre_station_mm) = (40.0, STATION_MM);
    SoundHoleChoice::Slot(SlotHole { length_mm, width_mm, centre_to_centreline_mm, centre_station_mm, lean_deg, ends })
}

fn crescent(length_mm: f64, width_mm: f64, bow_mm: f64, ends: EndCut) -> SoundHoleChoice {
    SoundHoleChoice::Crescent(CrescentHole {
        length_mm,
        width_mm,
        bow_mm,
        end_rounding_mm: 1.0,
        centre_to_centreline_mm: 38.0,
        centre_station_mm: STATION_MM,
        lean_deg: 5.0,
        ends,
    })
}

fn traced(path: &str) -> SoundHoleChoice {
    SoundHoleChoice::Traced(TracedHole {
        path: path.into(),
        centre_to_centreline_mm: 40.0,
        centre_station_mm: STATION_MM,
        lean_deg: 0.0,
    })
}

fn cut(hole: SoundHoleChoice) -> Result<SoundHole, DesignError> {
    let mut design = Design::demo();
    design.sound_holes.bass = SoundHoleChoice::None;
    design.sound_holes.treble = hole;
    design.check()?;
    let outline = Outline::new(&design.outline)?;
    let mut holes = SoundHole::both(&design.sound_holes, &outline)?;
    Ok(holes.remove(0))
}

/// Turns of more than a thousandth of a degree between one piece and the next.
fn corners(hole: &SoundHole) -> usize {
    let pieces = hole.boundary().pieces();
    (0..pieces.len())
        .filter(|&i| {
            let next = &pieces[(i + 1) % pieces.len()];
            let (end, start) = (pieces[i].end(), next.start());
            assert!((end[0] - start[0]).hypot(end[1] - start[1]) < 1e-9, "gap after piece {i}");
            let (a, b) = (pieces[i].tangent(1.0), next.tangent(0.0));
            cross(a, b).atan2(dot(a, b)).abs() > 1.7e-5
        })
        .count()
}

/// Area of a circle's segment whose chord is `chord` and whose rise is `rise` (elementary geometry).
fn segment_area(chord: f64, rise: f64) -> f64 {
    let radius = (0.25 * chord * chord + rise * rise) / (2.0 * rise);
    let half_angle = (0.5 * chord).atan2(radius - rise);
    radius * radius * (half_angle - half_angle.sin() * half_angle.cos())
}

proptest! {
    /// Two half discs and a rectangle between them, or a rectangle alone.
    #[test]
    fn slots_have_the_area_and_perimeter_of_the_closed_form(
        length in 20.0..60.0f64, width in 0.5..12.0f64, lean in -15.0..15.0f64,
    ) {
        let round = cut(slot(length, width, lean, EndCut::Round)).unwrap();
        prop_assert!((round.area_mm2() - (length - width) * width - 0.25 * PI * width * width).abs() < 1e-9);
        prop_assert!((round.boundary().perimeter_mm() - 2.0 * (length - width) - PI * width).abs() < 1e-9);
        prop_assert_eq!(corners(&round), 0);
        let sharp = cut(slot(length, width, lean, EndCut::Sharp)).unwrap();
        prop_assert!((sharp.area_mm2() - length * width).abs() < 1e-9);
        prop_assert!((sharp.boundary().perimeter_mm() - 2.0 * (length + width)).abs() < 1e-9);
        prop_assert_eq!(corners(&sharp), 4);
    }

    /// A crescent is a segment less another on the same chord; rounding takes something off its horns, on both sides alike.
    #[test]
    fn crescents_are_the_difference_of_two_segments(length in 30.0..60.0f64, width in 3.0..10.0f64, share in 0.3..1.2f64, inwards: bool) {
        let bow = (0.5 * width + share * 8.0) * if inwards { -1.0 } else { 1.0 };
        let sharp = cut(crescent(length, width, bow, EndCut::Sharp)).unwrap();
        let wanted = segment_area(length, bow.abs() + 0.5 * width) - segment_area(length, bow.abs() - 0.5 * width);
        prop_assert!((sharp.area_mm2() / wanted - 1.0).abs() < 1e-9, "{} {}", sharp.area_mm2(), wanted);
        prop_assert_eq!(corners(&sharp), 2);
        let round = cut(crescent(length, width, bow, EndCut::Round)).unwrap();
        prop_assert_eq!(corners(&round), 0);
        prop_assert!(round.area_mm2() < sharp.area_mm2() && round.area_mm2() > 0.6 * sharp.area_mm2());
        let middle = |hole: &SoundHole| {
            let (low, high) = hole.boundary().bounds_mm();
            [0.5 * (low[0] + high[0]), 0.5 * (low[1] + high[1])]
        };
        prop_assert!(round.contains([38.0, STATION_MM]), "{:?}", middle(&round));
    }

    #[test]
    fn other_patterns_of_the_demonstration_have_its_area(eye in 6.0..8.0f64, stem in 3.5..5.5f64) {
        let mut design = Design::demo();
        let SoundHoleChoice::EyesAndStem(m) = &mut design.sound_holes.treble else { panic!("f-holes") };
        (m.upper_eye_diameter_mm, m.stem_width_mm) = (eye, stem);
        let outline = Outline::new(&design.outline).unwrap();
        let holes = SoundHole::both(&design.sound_holes, &outline).unwrap();
        for pattern in [Pattern::Round, Pattern::Crescent, Pattern::Slot] {
            let other = cut(holes[1].of_equal_area(pattern).unwrap()).unwrap();
            prop_assert!((other.area_mm2() / holes[1].area_mm2() - 1.0).abs() < 1e-9, "{:?}", pattern);
        }
    }
}

/// A hole that lies across the top opens more than anything as short as it is: a disc as long is 79 mm2.
#[test]
fn a_pattern_that_cannot_have_the_area_is_none() {
    let hole = cut(slot(30.0, 10.0, 90.0, EndCut::Round)).unwrap();
    assert!((hole.area_mm2() - (200.0 + 25.0 * PI)).abs() < 1e-9, "{}", hole.area_mm2());
    assert_eq!(hole.of_equal_area(Pattern::Slot), None);
    assert_eq!(hole.of_equal_area(Pattern::Crescent), None);
    let SoundHoleChoice::Round(round) = hole.of_equal_area(Pattern::Round).unwrap() else { panic!("a round hole") };
    assert!((0.25 * PI * round.diameter_mm.powi(2) - hole.area_mm2()).abs() < 1e-9);
}

const AS_DRAWN: [f64; 6] = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];

/// Drawn in any of SVG's ways and read in.
fn read_in(d: &str, mm_from_path: [f64; 6]) -> SoundHoleChoice {
    SoundHoleChoice::Traced(TracedHole::of_svg_path(d, mm_from_path, [40.0, 160.0]).unwrap())
}

/// Whichever way it runs, wherever it lies on its sheet: a rectangle's area, and a disc's to SVG's own arcs turned into
/// cubics (within 0.03 % of the radius).
#[test]
fn a_traced_hole_lies_where_it_is_put_at_its_true_size() {
    for hole in [
        traced("M100 20L106,20 106 70 L100 70Z"),
        traced("M1e2 2E1 L100 70 L 106 70L106 20"),
        read_in("M100 20 h6 v50 h-6 z", AS_DRAWN),
        read_in("m 10,2 l 0,5 l .6,0 l 0,-5", [10.0, 0.0, 0.0, 10.0, 7.0, -3.0]),
        read_in("M100 20 v50 h-6 v-50 z", [-1.0, 0.0, 0.0, 1.0, 0.0, 0.0]),
    ] {
        let hole = cut(hole.clone()).unwrap_or_else(|error| panic!("{hole:?}: {error}"));
        assert!((hole.area_mm2() - 300.0).abs() < 1e-9);
        assert!(hole.contains([40.0, 160.0]) && hole.contains([42.9, 184.9]) && !hole.contains([43.1, 160.0]));
        assert_eq!(corners(&hole), 4);
    }
    let disc = cut(read_in("M0 0 a10 10 0 0 0 20 0 a10 10 0 0 0 -20 0 z", AS_DRAWN)).unwrap();
    assert!((disc.area_mm2() / (100.0 * PI) - 1.0).abs() < 1e-3, "{}", disc.area_mm2());
    // An upright line on the sheet points to the neck end: the wide end of this drop lies below, as drawn.
    let drop = cut(traced("M0 0 C20 40 -20 40 0 0 Z")).unwrap();
    let width = |y: f64| (0..400).filter(|&i| drop.contains([30.0 + 0.05 * f64::from(i), y])).count();
    assert!(width(152.0) > width(168.0));
    // A parabola over a chord of 12 mm whose control point is 30 mm off: two thirds of 12 times 15 (Archimedes).
    let bow = cut(traced("M0 0 Q6 30 12 0 Z")).unwrap();
    assert!((bow.area_mm2() - 120.0).abs() < 1e-9, "{}", bow.area_mm2());
}

#[test]
fn a_drawing_that_is_no_hole_is_refused_and_says_why() {
    for (d, said) in
        [("no path", "no SVG path"), ("M0 0 h5 v20 z M10 0 h5 v20 z", "one line"), ("M0 0h.05v.05z", "small")]
    {
        let error = TracedHole::of_svg_path(d, AS_DRAWN, [40.0, 160.0]).unwrap_err();
        assert!(error.to_string().contains(said), "{error}");
    }
}

#[test]
fn sharp_wings_of_an_f_hole_end_in_points() {
    let mut design = Design::demo();
    let SoundHoleChoice::EyesAndStem(m) = &mut design.sound_holes.treble else { panic!("f-holes") };
    m.ends = EndCut::Sharp;
    let sharp = cut(design.sound_holes.treble).unwrap();
    let round = cut(design.sound_holes.bass).unwrap();
    assert_eq!((corners(&sharp), corners(&round)), (8, 6), "two wings more than the nicks");
    assert!(sharp.area_mm2() < round.area_mm2(), "rounding takes wood from the wings");
}

/// Each message names the measure, and says what it may be.
#[test]
fn holes_that_cannot_be_cut_are_refused_by_their_measure() {
    let f_hole = |change: fn(&mut crate::design::EyesAndStem)| {
        let mut design = Design::demo();
        let SoundHoleChoice::EyesAndStem(m) = &mut design.sound_holes.treble else { panic!("f-holes") };
        change(m);
        design.sound_holes.treble
    };
    for (hole, path, limits) in [
        (slot(40.0, 0.4, 0.0, EndCut::Round), "width_mm", "0.5"),
        (slot(8.0, 9.0, 0.0, EndCut::Round), "length_mm", "9 mm"),
        (crescent(40.0, 8.0, 3.0, EndCut::Round), "bow_mm", "4 mm"),
        (crescent(40.0, 1.0, 12.0, EndCut::Round), "end_rounding_mm", "1 mm"),
        (f_hole(|m| m.upper_eye_diameter_mm = 4.0), "upper_eye_diameter_mm", "4.8 mm"),
        (f_hole(|m| m.lower_eye_diameter_mm = 4.7), "lower_eye_diameter_mm", "4.8 mm"),
        (f_hole(|m| m.lower_eye_to_edge_mm = 4.0), "lower_eye_to_edge_mm", "5"),
        (slot(220.0, 5.0, -40.0, EndCut::Sharp), "", "2 mm"),
        (traced("M0 0 L10 40 L0 40 L10 0 Z"), "path", "closed line"),
        (traced("no path"), "path", "closed line"),
        (traced("M0 0L5 0 5 20Z M10 0L15 0 15 20 Z"), "path", "closed line"),
        (traced("M0 0 L0.05 0 0.05 0.05 Z"), "path", "0.8 mm2"),
        (traced("M0 0 L1e999 0 L0 20 Z"), "path", "closed line"),
        (traced(&format!("M0 0 {} Z", "L0.1 0.1 L0.2 -0.05 ".repeat(300))), "path", "400"),
        (traced(""), "path", "closed line"),
        (traced("L0 0 L5 0 L5 9"), "path", "closed line"),
        (traced("M0 0 L5"), "path", "closed line"),
        (traced("M0 0 L5 0 h9"), "path", "closed line"),
        (traced("M0 0 L5 0 Lé 9"), "path", "closed line"),
    ] {
        let error = cut(hole.clone()).expect_err(&format!("{hole:?}"));
        let wanted = format!("sound_holes.treble.{path}");
        assert_eq!(error.path(), wanted.trim_end_matches('.'), "{error}");
        assert!(error.limits().contains(limits), "{error}");
        assert!(!error.remedy().is_empty() && !error.value().is_empty());
    }
}
