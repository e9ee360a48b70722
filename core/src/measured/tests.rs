//! Known surfaces measured and brought back; bad files.

use super::*;
use crate::{arching::Arching, design::Design, outline::Outline, plan::Point, surface::Surface};

pub(super) fn demo() -> (Design, Outline, Surface) {
    let design = Design::demo();
    let outline = Outline::new(&design.outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    let surface = Surface::new(&arching, &outline);
    (design, outline, surface)
}

/// The demonstration on a lattice, the edge itself included as a scan would have it.
pub(super) fn lattice(outline: &Outline, surface: &Surface, step: f64) -> Vec<Reading> {
    let across = (104.0 / step) as i32;
    let mut readings: Vec<Reading> = (0..=(355.0 / step) as i32)
        .flat_map(|j| (-across..=across).map(move |i| [f64::from(i) * step, f64::from(j) * step]))
        .filter(|&p| outline.signed_distance_mm(p) > 0.0)
        .map(|p| [p[0], p[1], surface.height_mm(p)])
        .collect();
    readings.extend(outline.polyline(0.02).into_iter().map(|p| [p[0], p[1], surface.height_mm(p)]));
    readings
}

pub(super) fn csv(readings: &[Reading]) -> String {
    let mut text = String::from("x_mm,y_mm,z_mm\n");
    for [x, y, z] in readings {
        text += &format!("{x},{y},{z:.4}\n");
    }
    text
}

/// Largest difference of heights over points all over the top, 1 mm inside its edge and more.
pub(super) fn largest_off(outline: &Outline, known: impl Fn(Point) -> f64, got: impl Fn(Point) -> f64) -> f64 {
    (0..6000)
        .map(|i| [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0])
        .filter(|&p| outline.signed_distance_mm(p) > 1.0)
        .map(|p| (known(p) - got(p)).abs())
        .fold(0.0, f64::max)
}

#[test]
fn a_known_surface_comes_back_from_points_to_five_hundredths() {
    let (_, outline, surface) = demo();
    let readings = read_csv(&csv(&lattice(&outline, &surface, 2.0)), &outline, LengthUnit::Unsaid).unwrap();
    let fit = HeightMap::fit(&readings, &outline).unwrap();
    let off = largest_off(&outline, |p| surface.height_mm(p), |p| fit.map.at(p).height_mm);
    assert!(off < 0.05, "{off}");
    assert!(fit.rms_mm < 0.02 && fit.outliers.is_empty(), "{} {:?}", fit.rms_mm, fit.outliers.len());
}

/// A paraboloid z = 15 - (x^2 / 1000 + y'^2 / 5000): its bends are constant, and a thin plate's penalty alone moves it.
#[test]
fn slopes_and_bends_of_a_fit_are_those_of_the_surface_measured() {
    let (_, outline, _) = demo();
    let height = |p: Point| 15.0 - p[0] * p[0] / 1000.0 - (p[1] - 177.0).powi(2) / 5000.0;
    let readings: Vec<Reading> = (0..72)
        .flat_map(|j| (-20..=20).map(move |i| [5.0 * f64::from(i), 5.0 * f64::from(j)]))
        .filter(|&p| outline.signed_distance_mm(p) > 0.0)
        .map(|p| [p[0], p[1], height(p)])
        .collect();
    let fit = HeightMap::fit(&readings, &outline).unwrap();
    for p in [[0.0, 177.0], [30.0, 120.0], [-40.0, 80.0], [12.0, 250.0]] {
        let on = fit.map.at(p);
        assert!((on.height_mm - height(p)).abs() < 1e-3);
        assert!((on.slope[0] + p[0] / 500.0).abs() < 1e-3 && (on.slope[1] + (p[1] - 177.0) / 2500.0).abs() < 1e-3);
        assert!((on.bend[0] + 0.002).abs() < 1e-4 && on.bend[1].abs() < 1e-4 && (on.bend[2] + 0.0004).abs() < 1e-4);
    }
}

#[test]
fn slips_are_named_and_do_not_pull_and_noise_is_told() {
    let (_, outline, surface) = demo();
    let mut readings = lattice(&outline, &surface, 3.0);
    // Noise of even distribution within 0.05 mm has a deviation of 0.05 / sqrt(3).
    for (i, reading) in readings.iter_mut().enumerate() {
        reading[2] += 0.1 * ((i as f64 * 0.754_877_666).fract() - 0.5);
    }
    for (index, slip) in [(500, 1.0), (2000, -0.8), (3000, 10.0)] {
        readings[index][2] += slip;
    }
    let fit = HeightMap::fit(&readings, &outline).unwrap();
    assert_eq!(fit.outliers.iter().map(|outlier| outlier.index).collect::<Vec<_>>(), [500, 2000, 3000]);
    assert!((fit.outliers[2].off_mm - 10.0).abs() < 0.1);
    assert!((0.5..1.1).contains(&(fit.rms_mm / (0.05 / 3.0_f64.sqrt()))), "{}", fit.rms_mm);
    assert!(fit.largest.off_mm.abs() < 0.12);
    let off = largest_off(&outline, |p| surface.height_mm(p), |p| fit.map.at(p).height_mm);
    assert!(off < 0.08, "{off}");
}

#[test]
fn grids_and_readings_at_named_stations_say_the_same_as_points() {
    let (_, outline, _) = demo();
    let points = read_csv(&"-10,71,1\n0,71,2\n10,71,3\n".repeat(7), &outline, LengthUnit::Unsaid).unwrap();
    assert_eq!(&points[..3], [[-10.0, 71.0, 1.0], [0.0, 71.0, 2.0], [10.0, 71.0, 3.0]]);
    let rows: String = (-5..=5).map(|i| format!("{},1,2,3,4,5\n", 10 * i)).collect();
    let named = read_csv(
        &format!("x,lower_bout,lower corners,Waist,upper-corners,upper_bout\n{rows}"),
        &outline,
        LengthUnit::Unsaid,
    )
    .unwrap();
    assert_eq!((named.len(), named[0], named[4]), (55, [-50.0, 71.0, 1.0], [-50.0, 289.0, 5.0]));
    // The grid's first line is x, for it has negative values; decimal commas; an empty cell.
    let rows: String = (1..=12).map(|j| format!("{};0,5;;2,5;3,5\n", 20 * j)).collect();
    let grid = read_csv(&format!("y\\x;-10,5;0;10;20\n{rows}"), &outline, LengthUnit::Unsaid).unwrap();
    assert_eq!((grid.len(), grid[0], grid[1]), (36, [-10.5, 20.0, 0.5], [10.0, 20.0, 2.5]));
}

/// Triangles of the demonstration, turned and moved, in a binary and in an ASCII file.
pub(super) fn scan(outline: &Outline, surface: &Surface, turn: impl Fn(Reading) -> Reading) -> Vec<[Reading; 3]> {
    let step = 2.0;
    let point = |i: i32, j: i32| {
        let p = [f64::from(i) * step, f64::from(j) * step];
        (outline.signed_distance_mm(p) > 0.0).then(|| turn([p[0], p[1], surface.height_mm(p)]))
    };
    let mut triangles = Vec::new();
    for j in 0..178 {
        for i in -52..52 {
            if let (Some(a), Some(b), Some(c)) = (point(i, j), point(i + 1, j), point(i, j + 1)) {
                triangles.push([a, b, c]);
            }
        }
    }
    // The rim, which a lattice only comes near: slivers with the point on the edge.
    for p in outline.polyline(0.005) {
        let a = turn([p[0], p[1], surface.height_mm(p)]);
        triangles.push([a, a, a]);
    }
    triangles
}

pub(super) fn binary(triangles: &[[Reading; 3]]) -> Vec<u8> {
    let mut bytes = vec![b' '; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0_u8; 12]);
        bytes.extend(triangle.iter().flatten().flat_map(|&v| (v as f32).to_le_bytes()));
        bytes.extend([0_u8; 2]);
    }
    bytes
}

fn ascii(triangles: &[[Reading; 3]]) -> String {
    let mut text = String::from("solid top\n");
    for triangle in triangles {
        text += " facet normal 0 0 -1\n  outer loop\n";
        for [x, y, z] in triangle {
            text += &format!("   vertex {x:.5} {y:.5} {z:.5}\n");
        }
        text += "  endloop\n endfacet\n";
    }
    text + "endsolid top\n"
}

/// A turn by Euler angles (z, x, z), and a shift.
pub(super) fn turned(angles: [f64; 3], shift: Reading) -> impl Fn(Reading) -> Reading {
    let about_z = |a: f64, [x, y, z]: Reading| [a.cos() * x - a.sin() * y, a.sin() * x + a.cos() * y, z];
    let about_x = |a: f64, [x, y, z]: Reading| [x, a.cos() * y - a.sin() * z, a.sin() * y + a.cos() * z];
    move |p| {
        let p = about_z(angles[2], about_x(angles[1], about_z(angles[0], p)));
        [p[0] + shift[0], p[1] + shift[1], p[2] + shift[2]]
    }
}

#[test]
fn a_scan_in_any_orientation_is_laid_by_itself_and_comes_back_to_five_hundredths() {
    let (_, outline, surface) = demo();
    for (angles, as_text) in [([0.0; 3], false), ([0.4, 2.9, -1.2], false), ([3.0, 1.5, 0.7], true)] {
        let triangles = scan(&outline, &surface, turned(angles, [40.0, -900.0, 12.0]));
        let mut readings =
            if as_text { read_stl(ascii(&triangles).as_bytes()) } else { read_stl(&binary(&triangles)) }.unwrap();
        let found = Alignment::find(&readings, outline.length_mm(), 4.0, &Correction::default()).unwrap();
        found.apply(&mut readings);
        let fit = HeightMap::fit(&readings, &outline).unwrap();
        let off = largest_off(&outline, |p| surface.height_mm(p), |p| fit.map.at(p).height_mm);
        assert!(off < 0.05, "{angles:?}: {off}");
    }
}

#[test]
fn a_correction_turns_a_scan_end_for_end() {
    let (_, outline, surface) = demo();
    let mut readings: Vec<Reading> = scan(&outline, &surface, |p| p).into_iter().flatten().collect();
    let end_for_end = Correction { end_for_end: true, ..Correction::default() };
    Alignment::find(&readings, outline.length_mm(), 4.0, &end_for_end).unwrap().apply(&mut readings);
    let widest = readings.iter().max_by(|a, b| a[0].total_cmp(&b[0])).unwrap();
    assert!((widest[1] - (355.0 - 71.0)).abs() < 3.0, "{widest:?}");
}

#[test]
fn a_measured_top_becomes_a_design_near_the_one_it_was() {
    let (design, outline, surface) = demo();
    let readings = lattice(&outline, &surface, 2.0);
    let fit = HeightMap::fit(&readings, &outline).unwrap();
    let all_along = MeasuredStations { range_mm: [0.0, 355.0], rows_mm: Vec::new() };
    let mut measured = design.clone();
    measured.arching = arching_of(&fit.map, &outline, &design.arching, &all_along).unwrap();
    measured.check().unwrap();
    let a = &measured.arching;
    assert!((a.apex_height_mm - 15.5).abs() < 0.05 && (a.edge_height_mm - 4.0).abs() < 0.05);
    assert!((a.channel_depth_mm - 0.8).abs() < 0.05 && (a.channel_distance_mm - 8.0).abs() < 1.0, "{a:?}");
    let arching = Arching::new(a, &outline).unwrap();
    let again = Surface::new(&arching, &outline);
    let off = largest_off(&outline, |p| surface.height_mm(p), |p| again.height_mm(p));
    // Between the eleven stations the sections are passed over from one to the next, not measured.
    assert!(off < 0.2, "{off}");
}

#[test]
fn inches_are_asked_and_never_guessed() {
    assert_eq!(check_length(355.0), Ok(()));
    let error = check_length(14.0).unwrap_err();
    assert_eq!(error.kind(), "looks_like_inches");
    assert!(error.to_string().contains("14") && error.to_string().contains("356"), "{error}");
    assert_eq!(check_length(3550.0).unwrap_err().kind(), "not_a_body");
    assert_eq!(check_length(0.0).unwrap_err().kind(), "not_a_body");
    let (_, outline, surface) = demo();
    let mut readings: Vec<Reading> = lattice(&outline, &surface, 4.0);
    readings.iter_mut().flatten().for_each(|v| *v /= 25.4);
    let error = Alignment::find(&readings, outline.length_mm(), 4.0, &Correction::default()).unwrap_err();
    assert_eq!(error.kind(), "looks_like_inches");
    LengthUnit::Inch.to_mm(&mut readings);
    Alignment::find(&readings, outline.length_mm(), 4.0, &Correction::default()).unwrap();
}

#[test]
fn bad_tables_say_where_and_what() {
    let (_, outline, _) = demo();
    let refused = |text: &str| read_csv(text, &outline, LengthUnit::Unsaid).unwrap_err();
    assert_eq!(refused("").kind(), "not_a_table");
    assert_eq!(refused("0,0\n1,1\n").kind(), "not_a_table");
    assert_eq!(refused("0,0,1\n5,5,1\n9,9,1\n").kind(), "too_few_points");
    let rows = "0,10,1\n".repeat(30);
    assert_eq!(refused(&format!("{rows}0,20,abc\n")).to_string().split(':').next(), Some("line 31, column 3"));
    assert_eq!(refused(&format!("{rows}0,20,NaN\n")), MeasuredError::NotFinite { index: 31 });
    assert_eq!(refused(&format!("{rows}0,20,inf\n")).kind(), "not_finite");
    assert_eq!(refused("x,a,b,c,d\n1,2,3,4,5\n").kind(), "not_a_number");
}

/// Five million points: text of some 100 MB and points of 120 MB, far below 1 GB together; read, fitted and told.
#[test]
fn five_million_points_are_read_within_memory() {
    let (_, outline, surface) = demo();
    let some = lattice(&outline, &surface, 4.0);
    let one = csv(&some);
    let body = one.split_once('\n').unwrap().1;
    let times = 5_000_000 / some.len() + 1;
    let text = body.repeat(times);
    let readings = read_csv(&text, &outline, LengthUnit::Unsaid).unwrap();
    assert!(readings.len() >= 5_000_000);
    assert!(text.len() + readings.capacity() * size_of::<Reading>() < 500_000_000);
    let fit = HeightMap::fit(&readings, &outline).unwrap();
    assert!(fit.rms_mm < 0.05);
    let too_many = vec![b' '; 84 + 50 * 3_000_000];
    let mut bytes = too_many;
    bytes[80..84].copy_from_slice(&3_000_000_u32.to_le_bytes());
    assert_eq!(read_stl(&bytes), Err(MeasuredError::TooMany { count: 9_000_000, most: MOST_POINTS }));
}

#[test]
fn bad_scans_say_what_is_wrong() {
    let (_, outline, surface) = demo();
    let triangles = scan(&outline, &surface, |p| p);
    let bytes = binary(&triangles);
    assert_eq!(read_stl(&bytes[..bytes.len() - 7]).unwrap_err().kind(), "not_stl");
    assert_eq!(read_stl(b"").unwrap_err().kind(), "not_stl");
    let text = ascii(&triangles);
    assert_eq!(read_stl(&text.as_bytes()[..text.len() / 2]).unwrap_err().kind(), "not_stl");
    assert_eq!(read_stl(text.replacen("vertex ", "vertex x", 1).as_bytes()).unwrap_err().kind(), "not_a_number");
    let mut nan = triangles.clone();
    nan[7][1][2] = f64::NAN;
    assert_eq!(read_stl(&binary(&nan)), Err(MeasuredError::NotFinite { index: 23 }));
    let find = |readings: &[Reading]| Alignment::find(readings, outline.length_mm(), 4.0, &Correction::default());
    let top: Vec<Reading> = triangles.iter().flatten().copied().collect();
    // A back 45 mm below: the whole body.
    let body: Vec<Reading> = top.iter().flat_map(|&[x, y, z]| [[x, y, z], [x, y, -30.0 - z]]).collect();
    assert_eq!(find(&body).unwrap_err().kind(), "whole_instrument");
    let torn: Vec<Reading> = top.iter().copied().filter(|p| p[1] < 130.0 || p[1] > 210.0).collect();
    let mut laid = torn.clone();
    find(&torn).unwrap().apply(&mut laid);
    assert_eq!(gaps(&laid, &outline).unwrap_err().kind(), "gaps");
    // Normals turned inwards, as the ASCII file has them all, do no harm; nor do triangles walked the other way.
    let flipped: Vec<Reading> = triangles.iter().flat_map(|&[a, b, c]| [a, c, b]).collect();
    let (one, other) = (find(&top).unwrap(), find(&flipped).unwrap());
    assert!((0..3).all(|k| (one.shift_mm[k] - other.shift_mm[k]).abs() < 1e-6));
    // Another top's outline.
    let far: Vec<Reading> = top.iter().map(|&[x, y, z]| [x + 60.0, y, z]).collect();
    let error = HeightMap::fit(&far, &outline).unwrap_err();
    assert_eq!(error.kind(), "does_not_fit", "{error}");
}
