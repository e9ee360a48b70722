//! The demonstration measured in every way and brought back as a design; files that must be asked about or refused.

use proptest::prelude::*;

use super::{
    tests::{binary, csv, demo, largest_off, lattice, scan, turned},
    *,
};
use crate::{arching::Arching, design::Design, design::Preset, outline::Outline, surface::Surface};

const UNSAID: LengthUnit = LengthUnit::Unsaid;

/// A design of another arching, whose own must not shine through.
fn stranger() -> Design {
    let mut design = Design::demo();
    let a = &mut design.arching;
    (a.apex_height_mm, a.edge_height_mm, a.channel_depth_mm) = (18.0, 4.4, 1.2);
    a.long_arch_fullness = 0.58;
    for arch in [&mut a.cross_arches.upper_bout, &mut a.cross_arches.waist, &mut a.cross_arches.lower_bout] {
        arch.fullness = 0.48;
    }
    design
}

fn surface_of(design: &Design) -> Surface {
    let outline = Outline::new(&design.outline).unwrap();
    Surface::new(&Arching::new(&design.arching, &outline).unwrap(), &outline)
}

/// A gauge's readings across the top at the five named stations, every `step` mm, to hundredths.
fn five_readings(step: i32, unit: LengthUnit) -> String {
    let (design, outline, surface) = demo();
    let m = &design.outline;
    let mut text = String::from("x;upper bout;upper corners;waist;lower corners;lower bout\n");
    let stations = [
        m.upper_station_mm,
        m.upper_corner.station_mm,
        m.waist_station_mm,
        m.lower_corner.station_mm,
        m.lower_station_mm,
    ];
    for x in (-104..=104).step_by(step as usize).map(f64::from) {
        text += &format!("{:.4}", x / unit.in_mm());
        for y in stations {
            let inside = outline.signed_distance_mm([x, y]) > 0.0;
            let height =
                if inside { format!("{:.4}", surface.height_mm([x, y]) / unit.in_mm()) } else { String::new() };
            text += &format!(";{height}");
        }
        text += "\n";
    }
    text
}

#[test]
fn five_cross_arches_read_with_a_gauge_become_the_design_they_were_read_from() {
    let (known, outline, surface) = demo();
    let table = five_readings(4, UNSAID);
    let import = import_heights(&stranger(), HeightsFile::Table(&table), UNSAID, &Correction::default()).unwrap();
    assert!(import.fit.outliers.is_empty() && import.scan.is_none());
    assert!(import.fit.rms_mm < 0.02 && import.drawn_rms_mm < 0.03, "{} {}", import.fit.rms_mm, import.drawn_rms_mm);
    let (got, wanted) = (&import.design.arching, &known.arching);
    // The outermost reading is up to 4 mm inside the edge, and the channel is 1 mm wide at its lowest.
    assert!((got.edge_height_mm - wanted.edge_height_mm).abs() < 0.1, "{}", got.edge_height_mm);
    assert!((got.channel_depth_mm - wanted.channel_depth_mm).abs() < 0.1, "{}", got.channel_depth_mm);
    // Five crests give the whole long arch back, which nobody measured between them.
    assert!((got.apex_height_mm - wanted.apex_height_mm).abs() < 0.02, "{}", got.apex_height_mm);
    assert!((got.long_arch_fullness - wanted.long_arch_fullness).abs() < 0.005, "{}", got.long_arch_fullness);
    let again = surface_of(&import.design);
    let m = &known.outline;
    for y in [m.lower_station_mm, m.lower_corner.station_mm, m.waist_station_mm, m.upper_station_mm] {
        for x in (-90..=90).map(f64::from).filter(|&x| outline.signed_distance_mm([x, y]) > 8.0) {
            let off = (again.height_mm([x, y]) - surface.height_mm([x, y])).abs();
            assert!(off < 0.1, "x = {x}, y = {y}: {off}");
        }
    }
}

/// A surface goes through every one of so few readings, the slip too; what the others say there finds it.
#[test]
fn a_slip_of_the_gauge_is_named_among_a_few_readings() {
    let (_, outline, surface) = demo();
    for step in [3, 4, 5] {
        let clean = read_csv(&five_readings(step, UNSAID), &outline, UNSAID).unwrap();
        assert!(HeightMap::fit(&clean, &outline).unwrap().outliers.is_empty(), "every {step} mm");
        for (near, slip) in [([15.0, 195.0], 1.2), ([-40.0, 71.0], -1.2), ([0.0, 289.0], 2.0)] {
            let mut readings = clean.clone();
            let away = |r: &Reading| (r[0] - near[0]).hypot(r[1] - near[1]);
            let order = |a: &(usize, &Reading), b: &(usize, &Reading)| away(a.1).total_cmp(&away(b.1));
            let index = clean.iter().enumerate().min_by(order).unwrap().0;
            readings[index][2] += slip;
            let fit = HeightMap::fit(&readings, &outline).unwrap();
            assert_eq!(
                fit.outliers.iter().map(|outlier| outlier.index).collect::<Vec<_>>(),
                [index],
                "{step} {near:?}"
            );
            assert!((fit.outliers[0].off_mm - slip).abs() < 0.1, "{step} {near:?}: {}", fit.outliers[0].off_mm);
            let [x, y, _] = readings[index];
            assert!((fit.map.at([x, y]).height_mm - surface.height_mm([x, y])).abs() < 0.1);
        }
    }
}

#[test]
fn dense_points_and_a_scan_become_the_design_they_were_measured_on() {
    let (_, outline, surface) = demo();
    let table = csv(&lattice(&outline, &surface, 2.0));
    let triangles = binary(&scan(&outline, &surface, turned([0.4, 2.9, -1.2], [40.0, -900.0, 12.0])));
    let mut present = stranger();
    // A scan's rim is laid at the edge's height, which no scan of the outside alone can tell.
    present.arching.edge_height_mm = 4.0;
    for file in [HeightsFile::Table(&table), HeightsFile::Scan(&triangles)] {
        let import = import_heights(&present, file, UNSAID, &Correction::default()).unwrap();
        let again = surface_of(&import.design);
        let off = largest_off(&outline, |p| surface.height_mm(p), |p| again.height_mm(p));
        assert!(off < 0.2 && import.drawn_rms_mm < 0.05, "{file:?}: {off}, {}", import.drawn_rms_mm);
        assert!(import.drawn_largest.off_mm.abs() < 0.25);
        assert_eq!(import.scan.is_some(), matches!(file, HeightsFile::Scan(_)));
    }
}

#[test]
fn inches_in_a_table_are_asked_about_and_taken_when_said() {
    let table = five_readings(4, LengthUnit::Inch);
    let read = |unit| import_heights(&stranger(), HeightsFile::Table(&table), unit, &Correction::default());
    let error = read(UNSAID).unwrap_err();
    assert!(matches!(&error, ImportError::Measured(found) if found.kind() == "looks_like_inches"), "{error}");
    assert!(error.to_string().contains("across"), "{error}");
    let import = read(LengthUnit::Inch).unwrap();
    assert!((import.design.arching.apex_height_mm - 15.5).abs() < 0.1);
    // Said to be millimetres, they are taken so, and nothing rises above the edge.
    let error = read(LengthUnit::Millimetre).unwrap_err();
    assert!(matches!(&error, ImportError::Measured(found) if found.kind() == "does_not_fit"), "{error}");
    let (_, outline, _) = demo();
    let mut points = outline.polyline(0.05);
    points.iter_mut().flatten().for_each(|value| *value /= 25.4);
    let outline = |unit| import_outline(&Design::demo(), points.clone(), unit, 0.1, OutlineCorrection::default());
    for (unit, kind) in [(UNSAID, "looks_like_inches"), (LengthUnit::Millimetre, "not_a_body")] {
        assert!(matches!(outline(unit), Err(ImportError::Measured(found)) if found.kind() == kind));
    }
    assert!(outline(LengthUnit::Inch).unwrap().fitted.largest_mm < 0.02);
}

#[test]
fn a_table_is_put_right_as_its_maker_says() {
    let (_, outline, surface) = demo();
    let wrong: Vec<Reading> =
        lattice(&outline, &surface, 3.0).into_iter().map(|[x, y, z]| [-x, 355.0 - y, z + 2.0]).collect();
    let correction =
        Correction { end_for_end: true, mirrored: false, shift_mm: [0.0, 0.0, -2.0], ..Correction::default() };
    let import = import_heights(&stranger(), HeightsFile::Table(&csv(&wrong)), UNSAID, &correction).unwrap();
    let off = largest_off(&outline, |p| surface.height_mm(p), |p| import.fit.map.at(p).height_mm);
    assert!(off < 0.1, "{off}");
    let mut point = [[10.0, 100.0, 5.0]];
    Correction { mirrored: true, turn_deg: 90.0, ..Correction::default() }.apply(&mut point, 300.0);
    assert!((point[0][0] - 50.0).abs() < 1e-12 && (point[0][1] - 140.0).abs() < 1e-12, "{point:?}");
}

#[test]
fn a_scan_with_corrections_goes_where_it_is_told() {
    let (_, outline, surface) = demo();
    let readings: Vec<Reading> = scan(&outline, &surface, |p| p).into_iter().flatten().collect();
    let laid = |correction: &Correction| {
        let mut laid = readings.clone();
        Alignment::find(&readings, 355.0, 4.0, correction).unwrap().apply(&mut laid);
        laid
    };
    let plain = laid(&Correction::default());
    let shifted = laid(&Correction { shift_mm: [1.0, -2.0, 0.5], ..Correction::default() });
    let mirrored = laid(&Correction { mirrored: true, ..Correction::default() });
    let turned = laid(&Correction { turn_deg: 2.0, ..Correction::default() });
    let (sin, cos) = 2.0_f64.to_radians().sin_cos();
    for i in (0..plain.len()).step_by(997) {
        let [x, y, z] = plain[i];
        let near = |a: Reading, b: Reading| (0..3).all(|k| (a[k] - b[k]).abs() < 1e-9);
        assert!(near(shifted[i], [x + 1.0, y - 2.0, z + 0.5]));
        assert!(near(mirrored[i], [-x, y, z]));
        assert!(near(turned[i], [cos * x - sin * (y - 177.5), sin * x + cos * (y - 177.5) + 177.5, z]));
    }
}

#[test]
fn what_a_scan_lacks_and_what_it_has_too_much_of_is_said() {
    let (_, outline, surface) = demo();
    let whole = scan(&outline, &surface, |p| p);
    let read = |triangles: &[[Reading; 3]]| {
        import_heights(&Design::demo(), HeightsFile::Scan(&binary(triangles)), UNSAID, &Correction::default())
    };
    assert_eq!(read(&whole).unwrap().scan.unwrap().gaps.area_mm2, 0.0);
    // A hole of 60 x 50 mm: 3 000 mm2, seen in cells of 100 mm2.
    let off = |[x, y, _]: Reading| (-30.0..=30.0).contains(&x) && (60.0..=110.0).contains(&y);
    let holed: Vec<[Reading; 3]> = whole.iter().copied().filter(|t| !t.iter().any(|&p| off(p))).collect();
    let scan = read(&holed).unwrap().scan.unwrap();
    assert!((scan.gaps.area_mm2 - 3000.0).abs() < 700.0, "{}", scan.gaps.area_mm2);
    let turned: Vec<[Reading; 3]> = whole.iter().map(|&[a, b, c]| [a, c, b]).collect();
    assert!(read(&whole).unwrap().scan.unwrap().turned_inwards < 0.01);
    let import = read(&turned).unwrap();
    assert!(import.scan.unwrap().turned_inwards > 0.99 && import.drawn_rms_mm < 0.05);
    // Both faces of a top 3 mm thick.
    let below = |t: &[Reading; 3]| t.map(|[x, y, z]| [x, y, z - 3.0]);
    let both: Vec<[Reading; 3]> = whole.iter().copied().chain(whole.iter().map(below)).collect();
    let error = read(&both).unwrap_err();
    assert!(matches!(&error, ImportError::Measured(found) if found.kind() == "two_faces"), "{error}");
    // Another size of top.
    let cello = Preset::of_word("cello").unwrap().design();
    let error = import_heights(&cello, HeightsFile::Scan(&binary(&whole)), UNSAID, &Correction::default()).unwrap_err();
    assert!(matches!(&error, ImportError::Measured(found) if found.kind() == "gaps"), "{error}");
}

#[test]
fn an_outline_of_another_size_takes_the_sound_holes_along() {
    let viola = Preset::of_word("viola").unwrap().design();
    let points = Outline::new(&viola.outline).unwrap().polyline(0.02);
    let import = import_outline(&Design::demo(), points, UNSAID, 0.1, OutlineCorrection::default()).unwrap();
    import.design.check().unwrap();
    assert!((import.holes_scaled - 408.0 / 355.0).abs() < 1e-3, "{}", import.holes_scaled);
    assert!((import.design.sound_holes.stop_mm - 195.0 * 408.0 / 355.0).abs() < 0.1);
    assert_eq!(import.design.arching, Design::demo().arching);
    let points = Outline::new(&Design::demo().outline).unwrap().polyline(0.02);
    let import = import_outline(&Design::demo(), points, UNSAID, 0.1, OutlineCorrection::default()).unwrap();
    assert_eq!((import.holes_scaled, &import.design.sound_holes), (1.0, &Design::demo().sound_holes));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// Any heights end in a design that can be drawn, or in an error.
    #[test]
    fn no_heights_make_the_import_panic(
        heights in prop::collection::vec([-90.0..90.0f64, 0.0..355.0f64, -5.0..40.0f64], 20..80),
    ) {
        if let Ok(import) = import_heights(&stranger(), HeightsFile::Table(&csv(&heights)), UNSAID, &Correction::default()) {
            prop_assert!(import.design.check().is_ok() && import.drawn_rms_mm.is_finite());
        }
    }

    #[test]
    fn no_file_makes_the_readers_panic(text in "\\PC{0,200}", bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let correction = Correction::default();
        prop_assert!(import_heights(&stranger(), HeightsFile::Table(&text), UNSAID, &correction).is_err());
        prop_assert!(import_heights(&stranger(), HeightsFile::Scan(&bytes), UNSAID, &correction).is_err());
    }

    /// Scans of thin air: points in a box of a top's size, and a flat sheet.
    #[test]
    fn no_scan_makes_the_import_panic(
        corners in prop::collection::vec([-100.0..100.0f64, 0.0..355.0f64, 0.0..16.0f64], 30..200), flat in any::<bool>(),
    ) {
        let corner = |&[x, y, z]: &Reading| [x, y, if flat { 0.0 } else { z }];
        let triangles: Vec<[Reading; 3]> = corners.chunks_exact(3).map(|c| [corner(&c[0]), corner(&c[1]), corner(&c[2])]).collect();
        let file = binary(&triangles);
        if let Ok(import) = import_heights(&stranger(), HeightsFile::Scan(&file), UNSAID, &Correction::default()) {
            prop_assert!(import.design.check().is_ok());
        }
    }
}
