//! The surface against the curves it must hold.

use proptest::prelude::*;

use super::*;
use crate::design::{ArchingMeasures, Design};

fn surface_of(arching: &ArchingMeasures) -> (Outline, Surface) {
    let outline = Outline::new(&Design::demo().outline).unwrap();
    let arching = Arching::new(arching, &outline).unwrap();
    let surface = Surface::new(&arching, &outline);
    (outline, surface)
}

/// Points all over the inside, on a lattice of irrational steps.
fn inside(outline: &Outline, count: u32) -> Vec<Point> {
    (0..count)
        .map(|i| [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0])
        .filter(|&p| outline.signed_distance_mm(p) > 0.01)
        .collect()
}

#[test]
fn it_holds_apex_channel_and_edge() {
    let design = Design::demo();
    let (outline, surface) = surface_of(&design.arching);
    assert!((surface.height_mm([0.0, 177.5]) - 15.5).abs() < 1e-9);
    assert!((surface.height_mm([0.0, 8.0]) - 3.2).abs() < 1e-9);
    assert!((surface.height_mm([0.0, 347.0]) - 3.2).abs() < 1e-9);
    for p in outline.polyline(0.1) {
        assert!((surface.height_mm(p) - 4.0).abs() < 0.02, "{p:?}");
    }
    for p in inside(&outline, 3000) {
        let z = surface.height_mm(p);
        assert!((3.2 - 1e-9..=15.5 + 1e-9).contains(&z), "{p:?}: {z}");
    }
}

/// Every cross arch is the parametric cycloid of its fullness between centreline and boundary (see the arching's tests
/// for the definition), scaled to the long arch's height.
#[test]
fn it_holds_long_arch_and_cross_arches() {
    let design = Design::demo();
    let (_, surface) = surface_of(&design.arching);
    let m = &design.outline;
    let arches = &design.arching.cross_arches;
    let pi = std::f64::consts::PI;
    let long_k = 4.0 * design.arching.long_arch_fullness - 2.0;
    for (y, arch) in [
        (m.lower_station_mm, &arches.lower_bout),
        (m.lower_corner.station_mm, &arches.lower_corners),
        (m.waist_station_mm, &arches.waist),
        (m.upper_corner.station_mm, &arches.upper_corners),
        (m.upper_station_mm, &arches.upper_bout),
    ] {
        let k = 4.0 * arch.fullness - 2.0;
        let boundary = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
        let top = surface.height_mm([0.0, y]);
        for i in 1..100 {
            let phi = pi * f64::from(i) / 100.0;
            let x = boundary * (1.0 - (phi - k * phi.sin()) / pi);
            let z = 3.2 + (top - 3.2) * 0.5 * (1.0 - phi.cos());
            assert!((surface.height_mm([x, y]) - z).abs() < 0.02);
            assert!((surface.height_mm([-x, y]) - z).abs() < 0.02);
        }
    }
    for i in 1..100 {
        let phi = pi * f64::from(i) / 100.0;
        let y = 8.0 + 169.5 * (phi - long_k * phi.sin()) / pi;
        let z = 3.2 + 12.3 * 0.5 * (1.0 - phi.cos());
        assert!((surface.height_mm([0.0, y]) - z).abs() < 0.02);
        assert!((surface.height_mm([0.0, 355.0 - y]) - z).abs() < 0.02);
    }
}

#[test]
fn normals_are_those_of_the_heights_differences() {
    let (outline, surface) = surface_of(&Design::demo().arching);
    let h = 1e-5;
    for p in inside(&outline, 4000) {
        let dx = (surface.height_mm([p[0] + h, p[1]]) - surface.height_mm([p[0] - h, p[1]])) / (2.0 * h);
        let dy = (surface.height_mm([p[0], p[1] + h]) - surface.height_mm([p[0], p[1] - h])) / (2.0 * h);
        let length = (1.0 + dx * dx + dy * dy).sqrt();
        let normal = surface.normal(p);
        for (got, wanted) in normal.iter().zip([-dx / length, -dy / length, 1.0 / length]) {
            assert!((got - wanted).abs() < 2e-5, "{p:?}: {normal:?} {dx} {dy}");
        }
    }
}

/// Walking along straight lines, half the step must halve the normal's largest change; where the normal jumps, the jump
/// stays.
#[test]
fn normals_are_continuous_everywhere_inside() {
    let (outline, surface) = surface_of(&Design::demo().arching);
    let across = (1..24).map(|i| [[-103.0, 14.3 * f64::from(i)], [103.0, 14.3 * f64::from(i)]]);
    let along = (-7..8).map(|i| [[13.1 * f64::from(i), 0.0], [13.1 * f64::from(i), 355.0]]);
    let lines: Vec<[Point; 2]> = across.chain(along).collect();
    let largest_change = |step: f64| {
        let mut largest: f64 = 0.0;
        for [a, b] in &lines {
            let length = (b[0] - a[0]).hypot(b[1] - a[1]);
            let steps = (length / step) as u32;
            let mut before: Option<Point> = None;
            for i in 0..=steps {
                let t = f64::from(i) * step / length;
                let p = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
                if outline.signed_distance_mm(p) < 0.05 {
                    before = None;
                    continue;
                }
                let slope = surface.at(p).slope;
                if let Some(q) = before {
                    largest = largest.max((slope[0] - q[0]).hypot(slope[1] - q[1]));
                }
                before = Some(slope);
            }
        }
        largest
    };
    let (coarse, fine) = (largest_change(0.05), largest_change(0.025));
    assert!(fine < 0.6 * coarse, "{coarse} {fine}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn every_cross_section_of_a_regular_design_turns_exactly_once_a_side(
        apex in 12.0..18.0f64, depth in 0.3..1.5f64, distance in 6.0..10.0f64, long in 0.55..0.68f64,
        arches in prop::array::uniform5(0.48..0.62f64),
    ) {
        let mut arching = Design::demo().arching;
        arching.apex_height_mm = apex;
        arching.channel_depth_mm = depth;
        arching.channel_distance_mm = distance;
        arching.long_arch_fullness = long;
        let cross = &mut arching.cross_arches;
        for (arch, fullness) in [
            &mut cross.upper_bout, &mut cross.upper_corners, &mut cross.waist, &mut cross.lower_corners, &mut cross.lower_bout,
        ].into_iter().zip(arches) {
            arch.fullness = fullness;
        }
        let (_, surface) = surface_of(&arching);
        for i in 1..34 {
            let y = 10.0 * f64::from(i) + 7.0;
            let boundary = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
            let slope = |j: u32| surface.at([boundary * f64::from(j) / 400.0, y]).slope[0];
            let bends: Vec<f64> = (0..396).map(|j| slope(j + 1) - slope(j)).collect();
            let turns = bends.windows(2).filter(|w| w[0] * w[1] < 0.0).count();
            prop_assert_eq!(turns, 1, "y = {}", y);
        }
    }
}
