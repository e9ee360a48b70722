//! Curves against closed forms.

use std::f64::consts::{FRAC_PI_2, PI};

use proptest::prelude::*;

use super::{vector::*, *};

/// Circle: area pi r^2, circumference 2 pi r.
fn circle(centre: Point, radius_mm: f64) -> Loop {
    let quarter =
        |i: u8| Piece::Arc(Arc { centre, radius_mm, start_rad: f64::from(i) * FRAC_PI_2, sweep_rad: FRAC_PI_2 });
    Loop::new((0..4).map(quarter).collect())
}

#[test]
fn a_circle_has_its_area_circumference_and_distances() {
    let circle = circle([3.0, -2.0], 7.0);
    assert!((circle.area_mm2() - 49.0 * PI).abs() < 1e-10);
    assert!((circle.perimeter_mm() - 14.0 * PI).abs() < 1e-10);
    for (p, distance) in [([3.0, -2.5], 6.5), ([13.0, -2.0], -3.0), ([3.0 + 6.999, -2.0], 0.001)] {
        assert!((circle.signed_distance_mm(p) - distance).abs() < 1e-9, "{p:?}");
    }
}

/// Sagitta of an arc: s = r - sqrt(r^2 - c^2 / 4) for chord c.
#[test]
fn an_arc_from_point_and_tangent_has_the_sagitta_of_its_radius() {
    let arc = Arc::leaving([0.0, 0.0], unit([1.0, 0.5]), [10.0, 0.0]).unwrap();
    let sagitta = arc.radius_mm - (arc.radius_mm * arc.radius_mm - 25.0).sqrt();
    assert!((arc.point(0.5)[1] - sagitta).abs() < 1e-12 && (arc.point(0.5)[0] - 5.0).abs() < 1e-12);
    assert!(distance(arc.point(1.0), [10.0, 0.0]) < 1e-12);
}

/// A straight cubic, and one quarter of a circle's well-known approximation (error below 2.8e-4 r).
#[test]
fn a_cubics_length_and_area_are_those_of_the_curve_it_draws() {
    let straight = Piece::Cubic(Cubic { control: [[0.0, 0.0], [1.0, 0.5], [2.0, 1.0], [4.0, 2.0]] });
    assert!((straight.length_mm() - 20_f64.sqrt()).abs() < 1e-6);
    let k = 0.552_284_749_8;
    let quarter = Piece::Cubic(Cubic { control: [[1.0, 0.0], [1.0, k], [k, 1.0], [0.0, 1.0]] });
    assert!((quarter.length_mm() - FRAC_PI_2).abs() < 1e-3);
    assert!((quarter.area_share_mm2() - PI / 4.0).abs() < 1e-3);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn biarcs_keep_ends_and_tangents_and_join_smoothly(
        end in prop::array::uniform2(5.0..60.0f64), from in -1.0..1.0f64, to in -1.5..1.5f64, ratio in 0.5..2.0f64,
    ) {
        let chord = end[1].atan2(end[0]);
        let (leaving, arriving) = (direction(chord + from), direction(chord + to));
        let [a, b] = biarc([0.0, 0.0], leaving, end, arriving, ratio).unwrap();
        prop_assert!(distance(a.start(), [0.0, 0.0]) < 1e-9 && distance(b.end(), end) < 1e-7);
        prop_assert!(distance(a.end(), b.start()) < 1e-7);
        for (got, wanted) in [(a.tangent(0.0), leaving), (b.tangent(1.0), arriving), (a.tangent(1.0), b.tangent(0.0))] {
            prop_assert!(distance(got, wanted) < 1e-6, "{:?} {:?}", got, wanted);
        }
    }

    /// The promise itself, at several tolerances: no point of a curve is further from its polyline than asked.
    #[test]
    fn polylines_stay_within_their_tolerance(control in prop::array::uniform4(prop::array::uniform2(-20.0..20.0f64))) {
        let piece = Piece::Cubic(Cubic { control });
        for tolerance in [1.0, 0.1, 0.01] {
            let steps = piece.steps_within(tolerance);
            for i in 0..steps {
                let [t0, t1] = [i, i + 1].map(|i| i as f64 / steps as f64);
                let line = Line { start: piece.point(t0), end: piece.point(t1) };
                for k in 1..8 {
                    let p = piece.point(t0 + (t1 - t0) * f64::from(k) / 8.0);
                    prop_assert!(distance(line.point(line.nearest(p)), p) <= tolerance);
                }
            }
        }
    }

    #[test]
    fn mirrored_and_reversed_pieces_draw_the_same_curve(
        start in -3.0..3.0f64, sweep in -3.0..3.0f64, radius in 1.0..50.0f64, t in 0.0..1.0f64,
    ) {
        let piece = Piece::Arc(Arc { centre: [4.0, 7.0], radius_mm: radius, start_rad: start, sweep_rad: sweep });
        prop_assert!(distance(piece.reversed().point(1.0 - t), piece.point(t)) < 1e-9);
        prop_assert!(distance(piece.mirrored().point(t), mirrored(piece.point(t))) < 1e-9);
    }
}
