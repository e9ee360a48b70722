//! The curves of the arching against their definitions.

use std::f64::consts::PI;

use super::{curtate_cycloid::OnCycloid, *};

/// Lockwood 1961, A book of curves: x = r phi - d sin phi, z = r - d cos phi, here with r = 1/pi so that half a turn
/// spans 1, from the channel (phi = 0) to the crest, and z scaled to a rise of 1.
#[test]
fn the_family_is_the_curtate_cycloid_of_its_parametric_definition() {
    for ratio in [-0.4, 0.0, 0.2, 0.5, 0.8] {
        let curve = CurtateCycloid::from_ratio(ratio);
        for i in 0..=400 {
            let phi = PI * f64::from(i) / 400.0;
            let x = (phi - ratio * phi.sin()) / PI;
            let z = 0.5 * (1.0 - phi.cos());
            let got = curve.at(1.0 - x);
            assert!((got.height - z).abs() < 1e-12, "k = {ratio}, phi = {phi}: {} {z}", got.height);
        }
    }
}

#[test]
fn fullness_is_the_mean_height() {
    for fullness in [0.42, 0.5, 0.6, 0.7] {
        let curve = CurtateCycloid::from_fullness(fullness);
        let n = 20_000;
        let mean = (0..n).map(|i| curve.at((f64::from(i) + 0.5) / f64::from(n)).height).sum::<f64>() / f64::from(n);
        assert!((mean - fullness).abs() < 1e-7);
    }
}

#[test]
fn each_arch_turns_once_from_convex_to_concave_where_it_says() {
    for ratio in [-0.4, 0.0, 0.3, 0.6, 0.8] {
        let curve = CurtateCycloid::from_ratio(ratio);
        let slopes: Vec<f64> = (0..=2000).map(|i| curve.at(f64::from(i) / 2000.0).slope[0]).collect();
        let turns: Vec<usize> =
            (1..2000).filter(|&i| (slopes[i] - slopes[i - 1]) * (slopes[i + 1] - slopes[i]) < 0.0).collect();
        assert_eq!(turns.len(), 1, "k = {ratio}");
        assert!((turns[0] as f64 / 2000.0 - curve.inflection()).abs() < 1e-3);
        assert!(slopes[0].abs() < 1e-12 && slopes[2000].abs() < 1e-12);
    }
}

#[test]
fn derivatives_of_the_family_are_those_of_its_differences() {
    let h = 1e-5;
    for ratio in [-0.3, 0.1, 0.5, 0.75] {
        for place in [0.05, 0.3, 0.5, 0.8, 0.97] {
            let got = CurtateCycloid::from_ratio(ratio).at(place);
            let at = |ratio: f64, place: f64| CurtateCycloid::from_ratio(ratio).at(place);
            let by_place = |f: fn(OnCycloid) -> f64| (f(at(ratio, place + h)) - f(at(ratio, place - h))) / (2.0 * h);
            let by_ratio = |f: fn(OnCycloid) -> f64| (f(at(ratio + h, place)) - f(at(ratio - h, place))) / (2.0 * h);
            assert!((got.slope[0] - by_place(|on| on.height)).abs() < 1e-6);
            assert!((got.slope[1] - by_ratio(|on| on.height)).abs() < 1e-6);
            for (got, wanted) in got.bend.iter().zip([
                by_place(|on| on.slope[0]),
                by_ratio(|on| on.slope[0]),
                by_ratio(|on| on.slope[1]),
            ]) {
                assert!((got - wanted).abs() < 1e-5 * (1.0 + wanted.abs()), "k = {ratio}, u = {place}: {got} {wanted}");
            }
        }
    }
}

#[test]
fn a_curve_asked_for_by_its_inflection_has_it_there() {
    for place in [0.25, 0.4, 0.5, 0.6, 0.7, 0.8] {
        let curve = CurtateCycloid::from_inflection(place);
        assert!((curve.inflection() - place).abs() < 1e-12);
        assert!((CurtateCycloid::from_fullness(curve.fullness()).ratio() - curve.ratio()).abs() < 1e-12);
    }
}

/// The data of Fritsch & Carlson 1980, table 1 (RPN 14): the interpolant must be monotone where the data are.
#[test]
fn interpolation_between_stations_never_overshoots() {
    let data = [
        [7.99, 0.0],
        [8.09, 2.76429e-5],
        [8.19, 4.37498e-2],
        [8.7, 0.169183],
        [9.2, 0.469428],
        [10.0, 0.943740],
        [12.0, 0.998636],
        [15.0, 0.999919],
        [20.0, 0.999994],
    ];
    let curve = MonotoneCubic::new(data.to_vec());
    for [x, y] in data {
        assert!((curve.at(x)[0] - y).abs() < 1e-15);
    }
    let mut before = 0.0;
    for i in 0..=5000 {
        let [value, slope, _] = curve.at(7.99 + 12.01 * f64::from(i) / 5000.0);
        assert!(value >= before - 1e-12 && slope >= -1e-12);
        before = value;
    }
}

mod boundary {
    use super::*;
    use crate::design::Design;

    fn demo() -> (Outline, Arching) {
        let design = Design::demo();
        let outline = Outline::new(&design.outline).unwrap();
        let arching = Arching::new(&design.arching, &outline).unwrap();
        (outline, arching)
    }

    #[test]
    fn the_boundary_keeps_the_channels_distance_where_no_corner_is_near() {
        let (outline, arching) = demo();
        let distance = arching.measures().channel_distance_mm;
        for y in [9.0, 12.0, 20.0, 40.0, 71.0, 90.0, 195.0, 200.0, 289.0, 320.0, 340.0, 346.5] {
            let x = arching.boundary().half_width(y, true).unwrap().x_mm;
            assert!((outline.signed_distance_mm([x, y]) - distance).abs() < 1e-6, "y = {y}");
        }
    }

    #[test]
    fn past_the_corners_it_stays_at_least_as_far_in() {
        let (outline, arching) = demo();
        let distance = arching.measures().channel_distance_mm;
        for i in 1..339 {
            let y = distance + f64::from(i);
            let x = arching.boundary().half_width(y, true).unwrap().x_mm;
            assert!(outline.signed_distance_mm([x, y]) > distance - 1e-6, "y = {y}");
        }
    }

    #[test]
    fn it_runs_without_steps_or_kinks() {
        let (_, arching) = demo();
        let at = |y: f64| arching.boundary().half_width(y, true).unwrap();
        let h = 1e-6;
        for i in 0..3300 {
            let y = 12.0 + 0.1 * f64::from(i) + 0.033;
            let difference = (at(y + h).x_mm - at(y - h).x_mm) / (2.0 * h);
            assert!((at(y).relative_slope * at(y).x_mm - difference).abs() < 1e-3, "y = {y}");
            let slope = |y: f64| at(y).relative_slope * at(y).x_mm;
            let bend = (slope(y + h) - slope(y - h)) / (2.0 * h);
            let got = at(y).relative_bend * at(y).x_mm;
            assert!((got - bend).abs() < 1e-3 * (1.0 + bend.abs()), "y = {y}: {got} {bend}");
        }
    }
}
