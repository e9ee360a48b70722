//! The drawn outline against the measures it was drawn from.

use proptest::prelude::*;

use super::*;
use crate::{
    design::{BassSide, CornerMeasures, Design},
    plan::vector::{cross, dot},
};

fn demo() -> Outline {
    Outline::new(&Design::demo().outline).unwrap()
}

/// Extremes of a fine polyline (0.0001 mm) within an interval of y: largest and smallest x on the treble side.
fn extremes(outline: &Outline, low: f64, high: f64) -> (f64, f64) {
    let points = outline.polyline(1e-4);
    let xs = points.iter().filter(|p| p[0] > 0.0 && p[1] > low && p[1] < high).map(|p| p[0]);
    (xs.clone().fold(0.0, f64::max), xs.fold(f64::INFINITY, f64::min))
}

#[test]
fn measures_come_back_from_the_drawing_to_a_hundredth() {
    let outline = demo();
    let m = outline.measures();
    let points = outline.polyline(1e-4);
    let lowest = points.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
    let highest = points.iter().map(|p| p[1]).fold(0.0, f64::max);
    assert!(lowest.abs() < 0.01 && (highest - m.length_mm).abs() < 0.01);
    assert!((2.0 * extremes(&outline, 20.0, 100.0).0 - m.lower_width_mm).abs() < 0.01);
    assert!((2.0 * extremes(&outline, 260.0, 340.0).0 - m.upper_width_mm).abs() < 0.01);
    assert!((2.0 * extremes(&outline, 170.0, 215.0).1 - m.waist_width_mm).abs() < 0.01);
    for (y, width) in [
        (m.lower_station_mm, m.lower_width_mm),
        (m.upper_station_mm, m.upper_width_mm),
        (m.waist_station_mm, m.waist_width_mm),
    ] {
        assert!((2.0 * outline.half_width_mm(y).unwrap() - width).abs() < 0.01);
    }
    let [lower, upper] = outline.corner_tips_mm();
    assert!((lower[0] - m.lower_corner.reach_mm).abs() < 0.01 && (lower[1] - m.lower_corner.station_mm).abs() < 0.01);
    assert!((upper[0] - m.upper_corner.reach_mm).abs() < 0.01 && (upper[1] - m.upper_corner.station_mm).abs() < 0.01);
    let corners = outline.corner_points_mm();
    let tip = (corners[1][0] - corners[2][0]).hypot(corners[1][1] - corners[2][1]);
    assert!((tip - m.lower_corner.width_mm).abs() < 0.01);
}

#[test]
fn sides_are_smooth_and_only_the_eight_corner_points_turn() {
    let outline = demo();
    assert_eq!(outline.sides().len(), 8);
    for side in outline.sides() {
        for pair in side.pieces.windows(2) {
            let (end, start) = (pair[0].end(), pair[1].start());
            assert!((end[0] - start[0]).hypot(end[1] - start[1]) < 1e-9);
            let (a, b) = (pair[0].tangent(1.0), pair[1].tangent(0.0));
            assert!(cross(a, b).abs() < 1e-9 && dot(a, b) > 0.0);
        }
    }
    let pieces = outline.boundary().pieces();
    let turns = (0..pieces.len())
        .filter(|&i| {
            let (a, b) = (pieces[i].tangent(1.0), pieces[(i + 1) % pieces.len()].tangent(0.0));
            cross(a, b).abs() > 0.05
        })
        .count();
    assert_eq!(turns, 8);
}

#[test]
fn the_waist_is_cut_inwards_and_the_corners_stand_out() {
    let outline = demo();
    // Seen from inside, the waist's arcs turn the other way than the bouts'.
    assert!(outline.sides()[2].pieces.iter().all(|piece| piece.curvature_per_mm(0.5) < 0.0));
    assert!(outline.sides()[0].pieces[1..7].iter().all(|piece| piece.curvature_per_mm(0.5) > 0.0));
    let m = outline.measures();
    for (corner, towards_bout) in [(&m.lower_corner, -18.0), (&m.upper_corner, 18.0)] {
        let beside = outline.half_width_mm(corner.station_mm + towards_bout).unwrap();
        assert!(corner.reach_mm > beside + 2.0, "the corner does not stand out: {beside}");
    }
}

/// Area and perimeter against the polygon's (shoelace) formulas on a polyline within 1e-5 mm.
#[test]
fn area_and_perimeter_are_those_of_a_fine_polygon() {
    let outline = demo();
    let points = outline.polyline(1e-5);
    let (mut area, mut perimeter) = (0.0, 0.0);
    for (i, &a) in points.iter().enumerate() {
        let b = points[(i + 1) % points.len()];
        area += 0.5 * cross(a, b);
        perimeter += (b[0] - a[0]).hypot(b[1] - a[1]);
    }
    assert!((outline.area_mm2() - area).abs() < 0.05);
    assert!((outline.perimeter_mm() - perimeter).abs() < 0.01);
}

#[test]
fn distance_and_inside_agree() {
    let outline = demo();
    assert!(outline.contains([0.0, 180.0]) && !outline.contains([80.0, 190.0]) && !outline.contains([0.0, -1.0]));
    // On the centreline near the bottom the distance is y itself; level with the waist it is to the waist's arc.
    assert!((outline.signed_distance_mm([0.0, 5.0]) - 5.0).abs() < 1e-9);
    assert!((outline.signed_distance_mm([0.0, -5.0]) + 5.0).abs() < 1e-9);
    let m = outline.measures();
    assert!((outline.signed_distance_mm([0.5 * m.waist_width_mm - 3.0, m.waist_station_mm]) - 3.0).abs() < 1e-9);
}

#[test]
fn the_edge_band_has_the_gradient_of_its_differences_and_is_one_on_the_edge() {
    let outline = demo();
    let band = EdgeBand::new(&outline, 8.0);
    for p in outline.polyline(0.05) {
        assert!((band.at(p).value - 1.0).abs() < 1e-9);
    }
    let h = 1e-5;
    let (mut inside_band, mut bends) = (0, 0);
    for i in 0..4000 {
        // A lattice of irrational steps over the top.
        let p = [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0];
        if outline.signed_distance_mm(p) < 1e-3 {
            continue;
        }
        let on = band.at(p);
        inside_band += usize::from(on.value > 0.0);
        let by_x = |f: fn(OnBand) -> f64| (f(band.at([p[0] + h, p[1]])) - f(band.at([p[0] - h, p[1]]))) / (2.0 * h);
        let by_y = |f: fn(OnBand) -> f64| (f(band.at([p[0], p[1] + h])) - f(band.at([p[0], p[1] - h]))) / (2.0 * h);
        let (dx, dy) = (by_x(|on| on.value), by_y(|on| on.value));
        assert!((on.slope[0] - dx).abs() < 1e-5 && (on.slope[1] - dy).abs() < 1e-5, "{p:?}");
        let differences = [by_x(|on| on.slope[0]), by_x(|on| on.slope[1]), by_y(|on| on.slope[1])];
        for (got, wanted) in on.bend.iter().zip(differences) {
            bends += usize::from((got - wanted).abs() > 1e-4);
        }
    }
    assert!(inside_band > 200);
    // Only a point within h of a jump may differ: some lines of 1 300 mm on 57 000 mm2, 4 000 points, 1e-5 mm.
    assert!(bends <= 3, "{bends}");
}

#[test]
fn a_bass_side_of_its_own_has_its_measures_and_joins_smoothly_at_the_ends() {
    let mut m = Design::demo().outline;
    let corner = CornerMeasures { station_mm: 150.0, reach_mm: 90.0, width_mm: 6.0, lean_deg: 15.0 };
    m.bass = Some(BassSide {
        upper_half_width_mm: 83.0,
        waist_half_width_mm: 57.0,
        lower_half_width_mm: 101.5,
        upper_corner: CornerMeasures { station_mm: 233.0, ..m.upper_corner.clone() },
        lower_corner: corner,
    });
    let outline = Outline::new(&m).unwrap();
    assert!(!outline.is_symmetric());
    let points = outline.polyline(1e-4);
    let widest = |low: f64, high: f64, side: f64| {
        points.iter().filter(|p| p[1] > low && p[1] < high).map(|p| side * p[0]).fold(0.0, f64::max)
    };
    assert!((widest(20.0, 100.0, -1.0) - 101.5).abs() < 0.01 && (widest(20.0, 100.0, 1.0) - 103.0).abs() < 0.01);
    assert!((widest(260.0, 340.0, -1.0) - 83.0).abs() < 0.01 && (widest(260.0, 340.0, 1.0) - 84.0).abs() < 0.01);
    assert!((outline.width_mm(71.0).unwrap() - 204.5).abs() < 0.01);
    assert!((outline.width_mm(195.0).unwrap() - 113.0).abs() < 0.01);
    // The bass lower corner's tip: midway between its two cut points.
    let corners = outline.corner_points_mm();
    let near = |p: Point| corners.iter().map(|c| (c[0] - p[0]).hypot(c[1] - p[1])).fold(f64::INFINITY, f64::min);
    assert!((near([-90.0, 150.0]) - 3.0).abs() < 0.01);
    for side in outline.sides() {
        for pair in side.pieces.windows(2) {
            assert!(cross(pair[0].tangent(1.0), pair[1].tangent(0.0)).abs() < 1e-9);
        }
    }
    m.bass.as_mut().unwrap().lower_corner.reach_mm = 50.0;
    let error = Outline::new(&m).unwrap_err();
    assert_eq!((error.kind(), error.path()), ("corner_out_of_place", "outline.bass"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn regular_measures_always_come_back(
        scale in 0.55..2.0f64, lower in 198.0..212.0f64, upper in 160.0..174.0f64, waist in 104.0..118.0f64,
        corner in 148.0..158.0f64, lean in 5.0..35.0f64, full in 0.7..0.92f64,
    ) {
        let mut m = Design::demo().outline;
        m.lower_width_mm = lower;
        m.upper_width_mm = upper;
        m.waist_width_mm = waist;
        m.lower_corner.station_mm = corner;
        m.lower_corner.lean_deg = lean;
        m.lower_end_fullness = full;
        for measure in [
            &mut m.length_mm, &mut m.lower_width_mm, &mut m.upper_width_mm, &mut m.waist_width_mm,
            &mut m.lower_station_mm, &mut m.upper_station_mm, &mut m.waist_station_mm,
            &mut m.lower_corner.station_mm, &mut m.lower_corner.reach_mm, &mut m.upper_corner.station_mm,
            &mut m.upper_corner.reach_mm,
        ] {
            *measure *= scale;
        }
        let outline = Outline::new(&m).unwrap();
        prop_assert!(outline.area_mm2() > 0.0 && outline.is_symmetric());
        let (widest, _) = extremes(&outline, 0.0, m.lower_corner.station_mm - 20.0 * scale);
        prop_assert!((2.0 * widest - m.lower_width_mm).abs() < 0.01);
        let (_, narrowest) = extremes(&outline, m.waist_station_mm - 20.0 * scale, m.waist_station_mm + 15.0 * scale);
        prop_assert!((2.0 * narrowest - m.waist_width_mm).abs() < 0.01);
    }
}
