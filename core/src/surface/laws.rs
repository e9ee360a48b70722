//! What holds for every regular design.

use std::f64::consts::PI;

use proptest::prelude::*;

use super::{regular::regular_designs, *};
use crate::design::Design;

fn drawn(design: &Design) -> (Outline, Surface) {
    let outline = Outline::new(&design.outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    let surface = Surface::new(&arching, &outline);
    (outline, surface)
}

/// Stations from one end of the channel to the other.
fn stations(surface: &Surface, count: u32) -> impl Iterator<Item = f64> {
    let [low, high] = surface.arching().boundary().ends_mm();
    (1..count).map(move |i| low + (high - low) * f64::from(i) / f64::from(count))
}

/// A half turn of the curtate cycloid by its parametric definition (Lockwood 1961, A book of curves): place from the crest
/// and height, both 0..1.
fn cycloid(fullness: f64) -> impl Iterator<Item = [f64; 2]> {
    let k = 4.0 * fullness - 2.0;
    (1..60).map(move |i| {
        let phi = PI * f64::from(i) / 60.0;
        [1.0 - (phi - k * phi.sin()) / PI, 0.5 * (1.0 - phi.cos())]
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn long_arch_and_cross_arches_are_held_to_two_hundredths(design in regular_designs()) {
        let (outline, surface) = drawn(&design);
        let (m, a) = (outline.measures(), &design.arching);
        let channel = a.edge_height_mm - a.channel_depth_mm;
        let arches = &a.cross_arches;
        for (y, arch) in [
            (m.lower_station_mm, &arches.lower_bout),
            (m.lower_corner.station_mm, &arches.lower_corners),
            (m.waist_station_mm, &arches.waist),
            (m.upper_corner.station_mm, &arches.upper_corners),
            (m.upper_station_mm, &arches.upper_bout),
        ] {
            let half = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
            let rise = surface.height_mm([0.0, y]) - channel;
            for [place, height] in cycloid(arch.fullness) {
                for side in [-1.0, 1.0] {
                    let off = surface.height_mm([side * half * place, y]) - (channel + rise * height);
                    prop_assert!(off.abs() < 0.02, "y = {y}, place {place}: {off}");
                }
            }
        }
        let half = 0.5 * m.length_mm - a.channel_distance_mm;
        for [place, height] in cycloid(a.long_arch_fullness) {
            for side in [-1.0, 1.0] {
                let z = surface.height_mm([0.0, 0.5 * m.length_mm + side * half * place]);
                prop_assert!((z - channel - (a.apex_height_mm - channel) * height).abs() < 0.02);
            }
        }
    }

    #[test]
    fn every_cross_section_turns_once_a_side_where_the_inflection_line_says(design in regular_designs()) {
        let (_, surface) = drawn(&design);
        for y in stations(&surface, 50) {
            let half = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
            let bend = |x: f64| surface.at([x, y]).bend[0];
            // Up to a hair inside the boundary: beyond it begins the channel's outer side, which is hollow too.
            let bends: Vec<f64> = (0..400).map(|j| bend(half * f64::from(j) / 400.0)).collect();
            let turns: Vec<usize> = (1..400).filter(|&j| bends[j - 1] * bends[j] < 0.0).collect();
            prop_assert_eq!(turns.len(), 1, "y = {}", y);
            let turn = surface.inflection_mm(y, true).unwrap();
            prop_assert!((turn - half * turns[0] as f64 / 400.0).abs() < half / 400.0);
            prop_assert!(bend(0.0) < 0.0 && bend(turn * 0.999) < 0.0 && bend(turn * 1.001) > 0.0);
            prop_assert_eq!(surface.inflection_mm(y, false), Some(turn));
        }
    }

    /// The arch ends on the channel line or further in, never in the channel's outer side.
    #[test]
    fn the_boundary_stays_as_far_in_as_the_channel(design in regular_designs()) {
        let (outline, surface) = drawn(&design);
        for y in stations(&surface, 400) {
            let x = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
            let short = design.arching.channel_distance_mm - outline.signed_distance_mm([x, y]);
            // Kept at 128 places of each corner's bridge, between them to second order. A thousandth of a millimetre of a
            // channel 3 mm in lifts the surface by 3 (0.001 / 3)^2 = 3e-7 of the channel's depth.
            prop_assert!(short < 1e-3, "y = {}: {}", y, short);
        }
    }

    /// Across: down from the centreline to the channel without a step up. Along the centreline: up to one top and down again.
    #[test]
    fn no_section_ripples(design in regular_designs()) {
        let (_, surface) = drawn(&design);
        let boundary = surface.arching().boundary();
        for y in stations(&surface, 40) {
            let half = boundary.half_width(y, true).unwrap().x_mm;
            let heights: Vec<f64> = (0..=200).map(|j| surface.height_mm([half * f64::from(j) / 200.0, y])).collect();
            let up = heights.windows(2).map(|pair| pair[1] - pair[0]).fold(f64::NEG_INFINITY, f64::max);
            let at = heights.windows(2).position(|pair| pair[1] - pair[0] == up);
            prop_assert!(up <= 1e-12, "y = {}: {} at {:?}", y, up, at);
        }
        let heights: Vec<f64> = stations(&surface, 400).map(|y| surface.height_mm([0.0, y])).collect();
        prop_assert_eq!(heights.windows(3).filter(|w| w[1] > w[0] && w[1] >= w[2]).count(), 1);
    }

    /// Walking along straight lines, a quarter of the step must at least halve the slope's largest change; where it jumps, the jump
    /// stays. Half the step would not do: a bend narrower than the longer one is told by it as less than it is.
    #[test]
    fn normals_are_continuous_inside(design in regular_designs(), shift in 0.0..1.0f64) {
        let (outline, surface) = drawn(&design);
        let (length, width) = (design.outline.length_mm, design.outline.lower_width_mm);
        let lines: Vec<[Point; 2]> = (0..12)
            .flat_map(|i| {
                let share = (f64::from(i) + shift) / 12.0;
                let (x, y) = (width * (share - 0.5), length * share);
                [[[-0.5 * width, y], [0.5 * width, y]], [[x, 0.0], [x, length]]]
            })
            .collect();
        let largest_change = |steps: u32| {
            let mut largest: f64 = 0.0;
            for [a, b] in &lines {
                let mut before: Option<Point> = None;
                for i in 0..=steps {
                    let t = f64::from(i) / f64::from(steps);
                    let p = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
                    let slope = (outline.signed_distance_mm(p) > 0.05).then(|| surface.at(p).slope);
                    if let (Some(s), Some(q)) = (slope, before) {
                        largest = largest.max((s[0] - q[0]).hypot(s[1] - q[1]));
                    }
                    before = slope;
                }
            }
            largest
        };
        let (coarse, fine) = (largest_change(2000), largest_change(8000));
        prop_assert!(fine < 0.5 * coarse, "{} {}", coarse, fine);
    }

    #[test]
    fn bends_are_those_of_the_slopes_differences(design in regular_designs()) {
        let (outline, surface) = drawn(&design);
        let h = 1e-5;
        let (mut checked, mut missed) = (0, 0);
        for i in 0..600 {
            let share = |step: f64| (f64::from(i) * step).fract();
            let p = [(share(0.618_034) - 0.5) * design.outline.lower_width_mm, share(0.414_214) * design.outline.length_mm];
            if outline.signed_distance_mm(p) < 0.01 {
                continue;
            }
            checked += 1;
            let slope = |x: f64, y: f64| surface.at([x, y]).slope;
            let by_x: Vec<f64> =
                (0..2).map(|k| (slope(p[0] + h, p[1])[k] - slope(p[0] - h, p[1])[k]) / (2.0 * h)).collect();
            let by_y: Vec<f64> =
                (0..2).map(|k| (slope(p[0], p[1] + h)[k] - slope(p[0], p[1] - h)[k]) / (2.0 * h)).collect();
            let got = surface.at(p).bend;
            prop_assert!((by_x[1] - by_y[0]).abs() < 1e-4 || (by_x[1] - got[1]).abs() > 1e-4);
            missed += usize::from(
                [(got[0], by_x[0]), (got[1], by_x[1]), (got[2], by_y[1])].iter().any(|(g, w)| (g - w).abs() > 1e-4),
            );
        }
        // Only within h of a line where the bend jumps: a hit in 10 000 points or fewer.
        prop_assert!(checked > 300 && missed <= 1, "{} of {}", missed, checked);
    }
}

/// do Carmo 1976, section 3-3, ex. 2 and example 5: a ball has the curvature 1/R both ways; a cylinder 1/R and 0; a torus
/// 1/r along its tube's circle and cos v / (R + r cos v) round its axis, v from the outer equator.
mod curvature {
    use super::*;

    fn close(got: PrincipalCurvatures, least: f64, greatest: f64) {
        assert!((got.least_per_mm - least).abs() < 1e-9, "{got:?} {least}");
        assert!((got.greatest_per_mm - greatest).abs() < 1e-9, "{got:?} {greatest}");
    }

    fn on(height_mm: f64, slope: Point, bend: [f64; 3]) -> OnSurface {
        OnSurface { height_mm, slope, bend }
    }

    #[test]
    fn a_ball_a_cylinder_and_a_torus_have_theirs() {
        for [x, y] in [[0.0, 0.0], [10.0, -20.0], [35.0, 40.0]] {
            let r = 80.0_f64;
            let z = (r * r - x * x - y * y).sqrt();
            let z3 = z * z * z;
            let bend = [-(r * r - y * y) / z3, -x * y / z3, -(r * r - x * x) / z3];
            let ball = on(z, [-x / z, -y / z], bend);
            close(ball.curvatures(), -1.0 / r, -1.0 / r);
            // A cylinder along y.
            let z = (r * r - x * x).sqrt();
            close(on(z, [-x / z, 0.0], [-r * r / z.powi(3), 0.0, 0.0]).curvatures(), -1.0 / r, 0.0);
        }
        // A torus lying on its side, R = 60, r = 25: z = sqrt(r^2 - (rho - R)^2) over the plan radius rho.
        let (big, small) = (60.0_f64, 25.0_f64);
        for (rho, angle) in [(70.0, 0.3_f64), (80.0, 2.0), (45.0, -1.0)] {
            let off = rho - big;
            let z = (small * small - off * off).sqrt();
            let (first, second) = (-off / z, -small * small / z.powi(3));
            let (sin, cos) = angle.sin_cos();
            let across = first / rho;
            let bend = [
                second * cos * cos + across * sin * sin,
                (second - across) * sin * cos,
                second * sin * sin + across * cos * cos,
            ];
            let got = on(z, [first * cos, first * sin], bend).curvatures();
            // cos v = off / r.
            let (tube, round) = (-1.0 / small, -(off / small) / rho);
            close(got, tube.min(round), tube.max(round));
        }
    }
}
