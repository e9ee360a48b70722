//! Known outlines measured and brought back; bad ones refused.

use proptest::prelude::*;

use super::*;
use crate::{
    design::{BassSide, Design, OutlineMeasures, Preset},
    outline::Outline,
    plan::Point,
};

const AS_LAID: OutlineCorrection = OutlineCorrection { end_for_end: false, mirrored: false };

fn another() -> OutlineMeasures {
    let mut m = Design::demo().outline;
    (m.length_mm, m.lower_width_mm, m.upper_width_mm, m.waist_width_mm) = (352.0, 203.0, 165.0, 110.0);
    (m.lower_corner.station_mm, m.lower_corner.lean_deg, m.lower_end_fullness) = (150.0, 17.0, 0.81);
    m
}

/// Turned by an angle and shifted, walked the other way from an odd point.
fn scattered(measures: &OutlineMeasures, angle_deg: f64) -> Vec<Point> {
    let drawn = Outline::new(measures).unwrap().polyline(0.01);
    let count = drawn.len();
    let (sin, cos) = f64::to_radians(angle_deg).sin_cos();
    let walked = (0..count).map(|i| drawn[(7 * count / 10 + count - i) % count]);
    walked.map(|[x, y]| [900.0 + cos * x - sin * y, 20.0 + sin * x + cos * y]).collect()
}

fn lengths(m: &OutlineMeasures) -> Vec<f64> {
    let mut all = vec![m.length_mm, m.lower_width_mm, m.upper_width_mm, m.waist_width_mm];
    all.extend([m.lower_station_mm, m.upper_station_mm, m.waist_station_mm]);
    for corner in [&m.lower_corner, &m.upper_corner] {
        all.extend([corner.station_mm, corner.reach_mm, corner.width_mm]);
    }
    all
}

#[test]
fn a_known_outline_comes_back_to_a_hundredth_however_its_points_lie() {
    let known = another();
    for angle in [0.0, 90.0, 187.0, -33.0] {
        let fitted = outline_of(&scattered(&known, angle), &Design::demo().outline, 0.1, AS_LAID).unwrap();
        assert!(fitted.largest_mm < 0.01 && fitted.measures.bass.is_none(), "{angle}: {}", fitted.largest_mm);
        for (got, wanted) in lengths(&fitted.measures).into_iter().zip(lengths(&known)) {
            assert!((got - wanted).abs() < 0.01, "{angle}: {got} {wanted}");
        }
    }
}

#[test]
fn every_size_is_found_from_the_violin() {
    for preset in Preset::all() {
        let known = preset.design().outline;
        let fitted = outline_of(&scattered(&known, 12.0), &Design::demo().outline, 0.1, AS_LAID).unwrap();
        assert!(fitted.largest_mm < 0.01, "{}: {}", preset.word, fitted.largest_mm);
    }
}

/// The tolerance decides: what is alike within it stays alike, what is not gets a bass side of its own.
#[test]
fn sides_that_differ_by_more_than_the_tolerance_get_their_own_measures() {
    let mut known = another();
    known.bass = Some(BassSide {
        upper_half_width_mm: 82.0,
        waist_half_width_mm: 55.6,
        lower_half_width_mm: 100.7,
        upper_corner: known.upper_corner.clone(),
        lower_corner: known.lower_corner.clone(),
    });
    let points = scattered(&known, 5.0);
    let fitted = outline_of(&points, &Design::demo().outline, 0.05, AS_LAID).unwrap();
    let bass = fitted.measures.bass.as_ref().unwrap();
    assert!(fitted.largest_mm < 0.05, "{}", fitted.largest_mm);
    for (got, wanted) in [(bass.lower_half_width_mm, 100.7), (bass.upper_half_width_mm, 82.0)] {
        assert!((got - wanted).abs() < 0.05, "{got} {wanted}");
    }
    assert!(outline_of(&points, &Design::demo().outline, 2.0, AS_LAID).unwrap().measures.bass.is_none());
    // Seen from the inside the sides are exchanged.
    let mirrored = OutlineCorrection { mirrored: true, ..AS_LAID };
    let fitted = outline_of(&points, &Design::demo().outline, 0.05, mirrored).unwrap();
    assert!((0.5 * fitted.measures.lower_width_mm - 100.7).abs() < 0.05);
}

/// Noise within 0.2 mm has a deviation of 0.2 / sqrt(3) both ways, of which the normal part is what the fit sees.
#[test]
fn noise_is_told_and_does_not_move_the_measures_by_more_than_itself() {
    let known = another();
    let mut points = scattered(&known, 40.0);
    for (i, p) in points.iter_mut().enumerate() {
        let noise = |seed: f64| 0.4 * ((i as f64 * seed).fract() - 0.5);
        *p = [p[0] + noise(0.754_877_666), p[1] + noise(0.569_840_291)];
    }
    let largest = points.len() / 3;
    points[largest][0] += 3.0;
    let fitted = outline_of(&points, &Design::demo().outline, 5.0, AS_LAID).unwrap();
    assert!((0.09..0.2).contains(&fitted.rms_mm), "{}", fitted.rms_mm);
    assert_eq!(fitted.largest_index, largest);
    for (got, wanted) in lengths(&fitted.measures).into_iter().zip(lengths(&known)).take(4) {
        assert!((got - wanted).abs() < 0.2, "{got} {wanted}");
    }
}

#[test]
fn bad_outlines_are_refused() {
    let present = Design::demo().outline;
    let refused = |points: &[Point]| outline_of(points, &present, 0.1, AS_LAID).unwrap_err();
    let points = Outline::new(&present).unwrap().polyline(0.05);
    assert_eq!(refused(&points[..3]).kind(), "too_few_points");
    let mut nan = points.clone();
    nan[4][0] = f64::NAN;
    assert_eq!(refused(&nan), MeasuredError::NotFinite { index: 5 });
    let mut inches = points.clone();
    inches.iter_mut().flatten().for_each(|v| *v /= 25.4);
    assert_eq!(refused(&inches).kind(), "looks_like_inches");
    LengthUnit::Inch.points_to_mm(&mut inches);
    assert!(outline_of(&inches, &present, 0.1, AS_LAID).unwrap().largest_mm < 0.01);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Points that are no outline give a fit that says how far it is off, or an error: never a panic, never a number that isn't one.
    #[test]
    fn no_points_make_the_fit_panic(
        points in prop::collection::vec([-300.0..300.0f64, -300.0..300.0f64], 20..60), tolerance in 0.01..5.0f64,
    ) {
        if let Ok(fitted) = outline_of(&points, &Design::demo().outline, tolerance, AS_LAID) {
            prop_assert!(fitted.rms_mm.is_finite() && fitted.largest_mm >= fitted.rms_mm);
            prop_assert_eq!(fitted.points.len(), points.len());
        }
    }

    #[test]
    fn no_text_makes_the_readers_panic(text in "\\PC{0,200}", path in "[MLHVCSQTAZmlz0-9 ,.-]{0,80}") {
        let _ = points_of_csv(&text);
        let _ = points_of_svg_path(&text, [1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);
        let _ = points_of_svg_path(&path, [1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);
    }
}
