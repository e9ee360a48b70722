//! The drawn holes against their measures.

use super::*;
use crate::{
    design::{Design, EyesAndStem, RoundHole},
    plan::{
        Piece,
        vector::{cross, dot},
    },
};

fn demo() -> (Outline, Vec<SoundHole>, EyesAndStem) {
    let design = Design::demo();
    let outline = Outline::new(&design.outline).unwrap();
    let holes = SoundHole::both(&design.sound_holes, &outline).unwrap();
    let SoundHoleChoice::EyesAndStem(measures) = design.sound_holes.treble else {
        panic!("the demonstration has f-holes");
    };
    (outline, holes, measures)
}

#[test]
fn measures_come_back_from_the_drawn_f_hole() {
    let (outline, holes, m) = demo();
    let treble = holes[1].boundary().polyline(1e-4);
    let innermost = treble.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
    // The eye's far side is also where the hook touches, a hair inside the eye's own level.
    assert!((innermost - m.upper_eye_to_centreline_mm).abs() < 0.05, "{innermost}");
    let to_edge = treble
        .iter()
        .filter(|p| (p[1] - m.lower_eye_station_mm).abs() < 0.5 * m.lower_eye_diameter_mm + 1.0)
        .map(|&p| outline.signed_distance_mm(p))
        .fold(f64::INFINITY, f64::min);
    assert!((to_edge - m.lower_eye_to_edge_mm).abs() < 0.05, "{to_edge}");
    // The inner nick's mouth stands on the stop line.
    let nick = outline.length_mm() - 195.0;
    let line = holes[1].boundary().pieces().iter().find_map(|piece| match piece {
        Piece::Line(line) => Some(*line),
        _ => None,
    });
    let mouth = line.unwrap().end;
    assert!((mouth[1] - nick).abs() < m.nick_depth_mm, "{mouth:?}");
}

#[test]
fn boundaries_are_closed_clockwise_and_smooth_but_for_the_nicks() {
    let (_, holes, m) = demo();
    for hole in &holes {
        let pieces = hole.boundary().pieces();
        let mut turns = 0;
        for i in 0..pieces.len() {
            let next = &pieces[(i + 1) % pieces.len()];
            let (end, start) = (pieces[i].end(), next.start());
            assert!((end[0] - start[0]).hypot(end[1] - start[1]) < 1e-9, "gap after piece {i}");
            let (a, b) = (pieces[i].tangent(1.0), next.tangent(0.0));
            if cross(a, b).atan2(dot(a, b)).abs() > 1e-6 {
                turns += 1;
            }
        }
        assert_eq!(turns, 6, "three at each nick");
        assert!(hole.area_mm2() > 0.0 && m.nick_depth_mm > 0.0);
    }
}

#[test]
fn bass_mirrors_treble_exactly() {
    let (_, holes, _) = demo();
    assert!(holes[0].mirrors(&holes[1]) && holes[1].mirrors(&holes[0]) && !holes[0].mirrors(&holes[0]));
    for p in holes[0].boundary().polyline(0.01) {
        assert!(holes[1].boundary().nearest([-p[0], p[1]]).distance_mm < 1e-9);
    }
    assert!((holes[0].area_mm2() - holes[1].area_mm2()).abs() < 1e-9);
}

#[test]
fn wings_and_eyes_are_where_makers_expect_them() {
    let (_, holes, m) = demo();
    let treble = &holes[1];
    let upper = [m.upper_eye_to_centreline_mm + 0.5 * m.upper_eye_diameter_mm, m.upper_eye_station_mm];
    assert!(treble.contains(upper));
    // The upper wing: wood right of the upper eye at its own level, then stem.
    let wing = [upper[0] + 0.5 * m.upper_eye_diameter_mm + 0.5 * m.upper_wing_width_mm, upper[1]];
    assert!(!treble.contains(wing), "no wood in the upper wing");
    let stem = (0..100).map(|i| [wing[0] + 0.1 * f64::from(i), wing[1]]).find(|&p| treble.contains(p));
    let width = stem.unwrap()[0] - upper[0] - 0.5 * m.upper_eye_diameter_mm;
    assert!((width - m.upper_wing_width_mm).abs() < 1.5, "the upper wing is {width} mm wide");
}

/// A circle's area and circumference.
#[test]
fn a_round_hole_is_a_circle() {
    let mut design = Design::demo();
    design.sound_holes.bass = SoundHoleChoice::None;
    design.sound_holes.treble = SoundHoleChoice::Round(RoundHole {
        diameter_mm: 30.0,
        centre_to_centreline_mm: 35.0,
        centre_station_mm: 150.0,
    });
    let outline = Outline::new(&design.outline).unwrap();
    let holes = SoundHole::both(&design.sound_holes, &outline).unwrap();
    assert_eq!(holes.len(), 1);
    assert!((holes[0].area_mm2() - 225.0 * std::f64::consts::PI).abs() < 1e-9);
    assert!((holes[0].boundary().perimeter_mm() - 30.0 * std::f64::consts::PI).abs() < 1e-9);
    assert!(holes[0].contains([35.0, 150.0]) && !holes[0].contains([-35.0, 150.0]));
}

/// Left out, they are as the doc of each says; the stem's axis turns by just as much as asked.
#[test]
fn the_stem_follows_its_own_line_and_width() {
    let (_, holes, _) = demo();
    let drawn = |change: fn(&mut EyesAndStem)| {
        let mut design = Design::demo();
        let SoundHoleChoice::EyesAndStem(m) = &mut design.sound_holes.treble else { panic!("an f-hole") };
        change(m);
        let outline = Outline::new(&design.outline).unwrap();
        SoundHole::both(&design.sound_holes, &outline).unwrap().swap_remove(1)
    };
    let same = drawn(|m| (m.stem_at_hooks_mm, m.stem_steeper_deg) = (Some(0.8 * m.stem_width_mm), Some(9.0)));
    assert!((same.area_mm2() - holes[1].area_mm2()).abs() < 1e-9);
    let up = |hole: &SoundHole| hole.stem().unwrap().upwards;
    let angle = |hole: &SoundHole| up(hole)[0].atan2(up(hole)[1]).to_degrees();
    let straight = drawn(|m| m.stem_steeper_deg = Some(0.0));
    assert!((angle(&same) - angle(&straight) - 9.0).abs() < 1e-9, "{} {}", angle(&same), angle(&straight));
    let slim = drawn(|m| m.stem_at_hooks_mm = Some(2.4));
    assert!(slim.area_mm2() < holes[1].area_mm2() - 30.0, "a stem narrower by 1.4 mm over some 25 mm twice");
    let refused = |width_mm: f64| {
        let mut design = Design::demo();
        let SoundHoleChoice::EyesAndStem(m) = &mut design.sound_holes.treble else { panic!("an f-hole") };
        m.stem_at_hooks_mm = Some(width_mm);
        design.check().unwrap_err().to_string()
    };
    assert!(refused(6.0).contains("stem_at_hooks_mm") && refused(1.8).contains("throat_width_mm"));
}

#[test]
fn a_hole_leans_as_asked_about_its_nicks() {
    let design = Design::demo();
    let (outline, holes, m) = demo();
    for (hole, sign) in holes.iter().zip([-1.0, 1.0]) {
        let [upper, lower] = hole.eyes().unwrap();
        let lean = (-sign * (upper.centre[0] - lower.centre[0])).atan2(upper.centre[1] - lower.centre[1]).to_degrees();
        assert!((hole.lean_deg().unwrap() - lean).abs() < 1e-12 && lean > 10.0);
        let [before, after] = [lean, lean - 3.0].map(|lean_deg| hole.leaning(&m, &outline, lean_deg).unwrap());
        assert!((before.upper_eye_to_centreline_mm - m.upper_eye_to_centreline_mm).abs() < 1e-9);
        assert!((before.lower_eye_to_edge_mm - m.lower_eye_to_edge_mm).abs() < 1e-9);
        let mut leaning = design.clone();
        let side = if sign > 0.0 { &mut leaning.sound_holes.treble } else { &mut leaning.sound_holes.bass };
        *side = SoundHoleChoice::EyesAndStem(after);
        let turned = SoundHole::both(&leaning.sound_holes, &outline).unwrap().swap_remove(usize::from(sign > 0.0));
        assert!((turned.lean_deg().unwrap() - lean + 3.0).abs() < 1e-9);
        assert_eq!(turned.eyes().unwrap().map(|eye| eye.centre[1]), [upper.centre[1], lower.centre[1]]);
    }
    assert_eq!(holes[0].leaning(&m, &outline, 85.0), None);
}
