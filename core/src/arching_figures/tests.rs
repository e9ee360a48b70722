//! The figures against closed forms of the curves they are read from.

use super::*;
use crate::{
    arching::Arching,
    design::{Design, RoundHole, SoundHoleChoice},
    plan::vector::{along, dot, sub},
};

fn figures(design: &Design) -> (ArchingFigures, Surface, Vec<SoundHole>) {
    let outline = Outline::new(&design.outline).unwrap();
    let holes = SoundHole::both(&design.sound_holes, &outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    let surface = Surface::new(&arching, &outline);
    (ArchingFigures::new(&outline, &surface, &holes), surface, holes)
}

#[test]
fn apex_channel_and_fullness_come_back() {
    let design = Design::demo();
    let (found, _, _) = figures(&design);
    assert!((found.apex_mm.value - 15.5).abs() < 1e-6 && (found.apex_mm.at[1] - 177.5).abs() < 0.1);
    assert!((found.rise_above_edge_mm - 11.5).abs() < 1e-6 && (found.channel_depth_mm - 0.8).abs() < 1e-12);
    let arches = &design.arching.cross_arches;
    for (arch, fullness) in found.cross_arches.iter().zip([
        arches.lower_bout.fullness,
        arches.lower_corners.fullness,
        arches.waist.fullness,
        arches.upper_corners.fullness,
        arches.upper_bout.fullness,
    ]) {
        assert!((arch.fullness[0] - fullness).abs() < 1e-5 && (arch.fullness[1] - fullness).abs() < 1e-5);
        assert_eq!(arch.turns, [1, 1], "{}", arch.name);
        // The turn of a curtate cycloid of ratio k: cos phi = k (second derivative of its parametric form).
        let k: f64 = 4.0 * fullness - 2.0;
        let phi = k.acos();
        let place = 1.0 - (phi - k * phi.sin()) / std::f64::consts::PI;
        assert!((arch.inflection_mm[1] - place * arch.half_width_mm[1]).abs() < 1e-9);
    }
}

/// Across the waist the cycloid of ratio k, rise h and half width X is steepest where cos phi = k, with the slope
/// h pi / (2 X sqrt(1 - k^2)), and on its crest, where cos phi = -1, its curvature is h pi^2 / (2 X^2 (1 + k)^2), both
/// from its parametric form.
#[test]
fn steepest_slope_and_radii_are_at_least_those_of_the_waists_closed_forms() {
    let design = Design::demo();
    let (found, surface, _) = figures(&design);
    let y = design.outline.waist_station_mm;
    let k: f64 = 4.0 * design.arching.cross_arches.waist.fullness - 2.0;
    let half = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
    let rise = surface.height_mm([0.0, y]) - 3.2;
    let pi = std::f64::consts::PI;
    let slope = rise * pi / (2.0 * half * (1.0 - k * k).sqrt());
    let turn = surface.inflection_mm(y, true).unwrap();
    assert!((surface.at([turn, y]).slope[0] + slope).abs() < 1e-9);
    assert!(found.steepest_deg.value >= slope.atan().to_degrees() - 1e-9);
    // The waist is where the top is narrowest, so the steepest place is not far from it and not far above its slope.
    assert!(found.steepest_deg.value < 1.2 * slope.atan().to_degrees(), "{:?}", found.steepest_deg);
    let crest = rise * pi * pi / (2.0 * half * half * (1.0 + k).powi(2));
    assert!((surface.at([0.0, y]).bend[0] + crest).abs() < 1e-9);
    assert!(found.smallest_round_radius_mm.unwrap().value <= 1.0 / crest + 1e-6);
    // No point of a fine lattice is steeper or tighter than what was found.
    let boundary = surface.arching().boundary();
    let mut tightest: f64 = 0.0;
    for i in 1..500 {
        let y = 8.0 + 339.0 * f64::from(i) / 500.0;
        let half = boundary.half_width(y, true).unwrap().x_mm;
        for j in 0..200 {
            let on = surface.at([half * f64::from(j) / 200.0, y]);
            assert!(on.steepness_rad().to_degrees() < found.steepest_deg.value + 1e-3);
            tightest = tightest.max(on.curvatures().greatest_per_mm);
        }
    }
    let radius = found.smallest_hollow_radius_mm.unwrap().value;
    assert!(radius < 1.02 / tightest, "{radius} {}", 1.0 / tightest);
}

/// A fuller arch turns further out: in the demonstration's hole across the upper hook, in this one across the stem.
#[test]
fn the_turn_crosses_hook_or_stem_alike_on_both_sides() {
    let mut fuller = Design::demo();
    fuller.arching.cross_arches.waist.fullness = 0.62;
    fuller.arching.cross_arches.lower_corners.fullness = 0.6;
    for (design, on_stem) in [(Design::demo(), false), (fuller, true)] {
        let (found, surface, holes) = figures(&design);
        assert_eq!(found.holes.len(), 2);
        let mut along_stem = Vec::new();
        for (meeting, hole) in found.holes.iter().zip(&holes) {
            assert!(meeting.falls_within() && meeting.misses.is_none());
            assert_eq!(meeting.crossings.iter().any(|crossing| crossing.on_stem), on_stem, "{:?}", meeting.crossings);
            for crossing in &meeting.crossings {
                for p in [crossing.enters, crossing.leaves] {
                    assert!(hole.boundary().nearest(p).distance_mm < 1e-6, "on the hole's boundary");
                    let turn = surface.inflection_mm(p[1], hole.is_treble()).unwrap();
                    assert!((p[0].abs() - turn).abs() < 1e-9, "on the inflection line");
                }
                let middle = along(crossing.enters, sub(crossing.leaves, crossing.enters), 0.5);
                let stem = hole.stem().unwrap();
                let from_nicks = crossing.from_nicks_mm.unwrap();
                assert!(dot(sub(middle, along(stem.nicks, stem.upwards, from_nicks)), stem.upwards).abs() < 1e-9);
                // The eyes' middles stand 55 mm apart, the nicks about midway; the stem eases into the hooks beside them.
                assert!(!crossing.on_stem || from_nicks.abs() < 32.0, "{from_nicks}");
                along_stem.push(from_nicks);
            }
        }
        assert!((along_stem[0] - along_stem[along_stem.len() / 2]).abs() < 1e-6);
    }
}

/// A round hole of known place: the line passes it at the distance between the line's x and the circle.
#[test]
fn a_hole_that_the_turn_misses_says_on_which_side_and_by_how_much() {
    let mut design = Design::demo();
    let turn = {
        let (_, surface, _) = figures(&design);
        surface.inflection_mm(195.0, true).unwrap()
    };
    for (centre, side) in [(turn - 12.0, Passing::Outside), (turn + 8.0, Passing::Inside)] {
        design.sound_holes.bass = SoundHoleChoice::None;
        design.sound_holes.treble = SoundHoleChoice::Round(RoundHole {
            diameter_mm: 10.0,
            centre_to_centreline_mm: centre,
            centre_station_mm: 195.0,
        });
        let (found, _, _) = figures(&design);
        let (passing, wood) = found.holes[0].misses.unwrap();
        assert!(!found.holes[0].falls_within());
        assert_eq!(passing, side);
        // Near the waist the line runs nearly along y.
        assert!((wood - ((centre - turn).abs() - 5.0)).abs() < 0.2, "{wood}");
    }
    design.sound_holes.treble = SoundHoleChoice::Round(RoundHole {
        diameter_mm: 10.0,
        centre_to_centreline_mm: turn,
        centre_station_mm: 195.0,
    });
    let (found, _, _) = figures(&design);
    assert_eq!(found.holes[0].crossings.len(), 1);
    assert_eq!(found.holes[0].crossings[0].from_nicks_mm, None);
}
