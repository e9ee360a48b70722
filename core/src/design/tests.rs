//! Bad input of every kind, and the round trip.

use proptest::prelude::*;
use serde_json::Value;

use super::fittings_tests::fit_out;
use super::*;

/// The demonstration document with one value replaced.
fn demo_with(pointer: &str, value: Value) -> String {
    let mut tree: Value = serde_json::from_str(&Design::demo().to_json()).unwrap();
    *tree.pointer_mut(pointer).unwrap() = value;
    tree.to_string()
}

fn refused(json: &str) -> DesignError {
    Design::from_json(json).unwrap_err()
}

#[test]
fn the_demonstration_design_is_sound_and_says_that_it_is_invented() {
    let demo = Design::demo();
    demo.check().unwrap();
    assert!(demo.note.contains("invented"));
    assert_eq!(Design::from_json(&demo.to_json()).unwrap(), demo);
}

#[test]
fn every_measure_of_the_table_stands_in_the_document_and_the_other_way_round() {
    let mut numbers = Vec::new();
    for hole in every_hole() {
        let mut demo = Design::demo();
        demo.sound_holes.bass = hole;
        fit_out(&mut demo);
        every_curve(&mut demo);
        every_zone(&mut demo);
        let tree: Value = serde_json::to_value(&demo).unwrap();
        collect_numbers(&tree, "", &mut numbers);
    }
    for path in &numbers {
        assert!(MEASURES.iter().any(|measure| stands_for(measure.path, path)), "{path} has no limits");
    }
    for measure in MEASURES {
        assert!(numbers.iter().any(|path| stands_for(measure.path, path)), "{} is in no document", measure.path);
        assert!(measure.least < measure.most);
    }
}

/// Gives a design a thickness of its own in every zone, measured and painted.
fn every_zone(design: &mut Design) {
    let graduation = &mut design.graduation;
    for zone in [
        &mut graduation.upper_bout_mm,
        &mut graduation.lower_bout_mm,
        &mut graduation.channel_mm,
        &mut graduation.around_holes_mm,
        &mut graduation.wings_mm,
    ] {
        *zone = Some(2.5);
    }
    graduation.measure(&[[0.0, 170.0, 3.1], [50.0, 60.0, 2.4]]);
    let place = PlanPlace { across_mm: -40.0, station_mm: 90.0 };
    graduation.painted = vec![PaintedThickness { place, thickness_mm: 2.2, reach_mm: 30.0 }];
}

#[test]
fn every_zone_comes_back_and_is_left_out_where_it_is_not_said() {
    let plain = Design::demo().to_json();
    assert!(!plain.contains("channel_mm\"") && !plain.contains("measured") && !plain.contains("painted"));
    let mut design = Design::demo();
    every_zone(&mut design);
    assert_eq!(Design::from_json(&design.to_json()), Ok(design.clone()));
    design.graduation.painted[0].thickness_mm = 0.1;
    assert_eq!(design.check().unwrap_err().path(), "graduation.painted.0.thickness_mm");
    design = Design::demo();
    design.graduation.measure(&vec![[0.0, 170.0, 3.0]; 1700]);
    assert_eq!(design.graduation.measured.len(), 425, "every fourth");
    design.check().unwrap();
    design.graduation.measured = vec![design.graduation.measured[0]; 501];
    assert_eq!(design.check().unwrap_err().kind(), "too_many_thicknesses");
}

/// One hole of each kind.
fn every_hole() -> Vec<SoundHoleChoice> {
    let (centre_to_centreline_mm, centre_station_mm, lean_deg, ends) = (45.0, 160.0, 10.0, EndCut::Sharp);
    let mut own_line = Design::demo();
    let m = eyes(&mut own_line);
    (m.stem_at_hooks_mm, m.stem_steeper_deg) = (Some(3.2), Some(6.0));
    (m.lower_wing_hollow_mm, m.lower_wing_hollow_reach) = (Some(0.8), Some(0.9));
    vec![
        Design::demo().sound_holes.bass,
        own_line.sound_holes.treble,
        SoundHoleChoice::Round(RoundHole { diameter_mm: 30.0, centre_to_centreline_mm, centre_station_mm }),
        SoundHoleChoice::Crescent(CrescentHole {
            length_mm: 60.0,
            width_mm: 10.0,
            bow_mm: -9.0,
            end_rounding_mm: 1.0,
            centre_to_centreline_mm,
            centre_station_mm,
            lean_deg,
            ends,
        }),
        SoundHoleChoice::Slot(SlotHole {
            length_mm: 60.0,
            width_mm: 8.0,
            centre_to_centreline_mm,
            centre_station_mm,
            lean_deg,
            ends,
        }),
        SoundHoleChoice::Traced(TracedHole {
            path: "M0 0 L10 0 C12 10 12 30 10 60 Z".into(),
            centre_to_centreline_mm,
            centre_station_mm,
            lean_deg,
        }),
    ]
}

/// Old files have no word about their ends and stay the same file; the new kinds come back as they were.
#[test]
fn every_kind_of_hole_comes_back_and_ends_are_round_unless_said() {
    assert!(!Design::demo().to_json().contains("ends"));
    for hole in every_hole() {
        let mut design = Design::demo();
        design.sound_holes.bass = hole;
        assert_eq!(Design::from_json(&design.to_json()), Ok(design));
    }
}

fn stands_for(starred: &str, path: &str) -> bool {
    let (starred, path): (Vec<_>, Vec<_>) = (starred.split('.').collect(), path.split('.').collect());
    starred.len() == path.len() && starred.iter().zip(&path).all(|(star, key)| *star == "*" || star == key)
}

/// Gives a design every optional part that an arching can have.
fn every_curve(design: &mut Design) {
    let points = [[0.25, 0.93], [0.5, 0.66], [0.75, 0.22]].map(|[place, height]| ArchPoint { place, height });
    let spline = || ArchCurve::Spline { points: points.into() };
    design.outline.bass = Some(BassSide {
        upper_half_width_mm: 83.5,
        waist_half_width_mm: 56.5,
        lower_half_width_mm: 103.5,
        upper_corner: CornerMeasures { station_mm: 232.0, ..design.outline.upper_corner.clone() },
        lower_corner: CornerMeasures { reach_mm: 93.0, ..design.outline.lower_corner.clone() },
    });
    let arching = &mut design.arching;
    arching.apex_station_mm = Some(180.0);
    arching.long_arch = LongArchCurve::Spline { lower: points.into(), upper: points.into() };
    arching.cross_arches.waist.curve = ArchCurve::ArcWithReverseArc {};
    let spline_both =
        CrossArch { fullness: 0.55, curve: spline(), bass: Some(BassArch { fullness: 0.5, curve: spline() }) };
    arching.cross_arches.upper_bout = spline_both.clone();
    arching.extra_arches = vec![ExtraArch { station_mm: 110.0, arch: spline_both }];
}

/// Strict, and old files still read: the demonstration's text has none of the optional parts.
#[test]
fn an_arching_with_every_optional_part_comes_back_and_strays_are_refused() {
    let plain = Design::demo().to_json();
    assert!(!plain.contains("family") && !plain.contains("extra_arches") && !plain.contains("apex_station_mm"));
    let mut design = Design::demo();
    every_curve(&mut design);
    let json = design.to_json();
    assert_eq!(Design::from_json(&json), Ok(design));
    let error = refused(&json.replacen("arc_with_reverse_arc\"", "arc_with_reverse_arc\", \"radius_mm\": 9", 1));
    assert_eq!(error.kind(), "wrong_shape", "{error}");
    let error = refused(&json.replacen("arc_with_reverse_arc", "catenary", 1));
    assert!(error.path().ends_with("waist.curve") || error.to_string().contains("catenary"), "{error}");
}

#[test]
fn curves_that_cannot_be_drawn_are_refused_with_value_limits_and_remedy() {
    type Change = fn(&mut Design);
    let cases: [(&str, &str, Change); 7] = [
        ("apex_out_of_place", "arching.apex_station_mm", |d| d.arching.apex_station_mm = Some(60.0)),
        ("fullness_beyond_arcs", "arching.cross_arches.waist", |d| {
            d.arching.cross_arches.waist =
                CrossArch { fullness: 0.69, curve: ArchCurve::ArcWithReverseArc {}, bass: None };
        }),
        ("arch_too_steep", "arching.cross_arches.waist", |d| {
            d.arching.apex_height_mm = 45.0;
            d.outline.waist_width_mm = 90.0;
            d.arching.cross_arches.waist.curve = ArchCurve::ArcWithReverseArc {};
        }),
        ("wrong_number_of_points", "arching.cross_arches.waist.curve.points", |d| {
            let points = vec![ArchPoint { place: 0.5, height: 0.6 }; 2];
            d.arching.cross_arches.waist.curve = ArchCurve::Spline { points };
        }),
        ("points_out_of_order", "arching.cross_arches.waist.bass.curve.points.2.place", |d| {
            let points = [0.3, 0.6, 0.6].map(|place| ArchPoint { place, height: 0.5 }).into();
            d.arching.cross_arches.waist.bass = Some(BassArch { fullness: 0.5, curve: ArchCurve::Spline { points } });
        }),
        ("out_of_range", "arching.long_arch.upper.1.height", |d| {
            let points: Vec<_> = [0.3, 0.6, 0.8].map(|place| ArchPoint { place, height: 0.5 }).into();
            let mut upper = points.clone();
            upper[1].height = 3.0;
            d.arching.long_arch = LongArchCurve::Spline { lower: points, upper };
        }),
        ("station_out_of_place", "arching.extra_arches.0.station_mm", |d| {
            let arch = CrossArch { fullness: 0.5, curve: ArchCurve::default(), bass: None };
            d.arching.extra_arches = vec![ExtraArch { station_mm: 196.0, arch }];
        }),
    ];
    for (kind, path, change) in cases {
        let mut design = Design::demo();
        change(&mut design);
        let error = design.check().unwrap_err();
        assert_eq!((error.kind(), error.path()), (kind, path), "{error}");
        assert!(!error.limits().is_empty() && !error.remedy().is_empty() && !error.value().is_empty());
    }
}

fn collect_numbers(tree: &Value, path: &str, numbers: &mut Vec<String>) {
    match tree {
        Value::Number(_) if path != "version" => numbers.push(path.into()),
        Value::Object(map) => {
            for (key, value) in map {
                let path = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                collect_numbers(value, &path, numbers);
            }
        }
        Value::Array(list) => {
            for (index, value) in list.iter().enumerate() {
                collect_numbers(value, &format!("{path}.{index}"), numbers);
            }
        }
        _ => {}
    }
}

#[test]
fn ten_megabytes_are_refused_before_they_are_read_and_the_limit_is_said() {
    let error = refused(&" ".repeat(10_000_000));
    assert_eq!(error.kind(), "too_large");
    assert!(error.to_string().contains("10000000 bytes"), "{error}");
    assert!(error.to_string().contains("at most 1000000 bytes"), "{error}");
}

#[test]
fn a_document_cut_anywhere_is_called_truncated() {
    let json = Design::demo().to_json();
    for cut in [0, 1, json.len() / 3, json.len() / 2, json.len() - 1] {
        assert_eq!(refused(&json[..cut]).kind(), "truncated", "cut at {cut}");
    }
}

#[test]
fn other_files_are_told_from_designs() {
    assert_eq!(refused("{ \"a\": ").kind(), "truncated");
    assert_eq!(refused("x_mm,y_mm\n1,2\n").kind(), "not_json");
    assert_eq!(refused("[1, 2]").kind(), "wrong_format");
    assert_eq!(refused("{}").kind(), "wrong_format");
    assert_eq!(refused(&demo_with("/format", "something-else".into())).kind(), "wrong_format");
}

#[test]
fn an_unknown_version_is_named_with_the_one_that_is_read() {
    let error = refused(&demo_with("/version", 2.into()));
    assert_eq!((error.kind(), error.path()), ("unknown_version", "version"));
    assert!(error.to_string().contains('2') && error.to_string().contains("version 1"), "{error}");
}

#[test]
fn unknown_missing_repeated_and_misfitting_keys_are_named() {
    let json = Design::demo().to_json();
    let error = refused(&json.replacen("\"length_mm\"", "\"length_inch\"", 1));
    assert_eq!(error.kind(), "wrong_shape");
    assert!(error.path().starts_with("outline") && error.to_string().contains("length_inch"), "{error}");
    let error = refused(&json.replacen("\"overhang_mm\": 2.2", "\"length_mm\": 355.0", 1));
    assert_eq!(error.kind(), "wrong_shape", "{error}");
    let error = refused(&demo_with("/outline/length_mm", "355".into()));
    assert_eq!((error.kind(), error.path()), ("wrong_shape", "outline.length_mm"));
    let error = refused(&demo_with("/rim", "nailed".into()));
    assert_eq!((error.kind(), error.path()), ("wrong_shape", "rim"));
    let error = refused(&json.replacen("\"nick_depth_mm\"", "\"nick_deep\"", 1));
    assert!(error.to_string().contains("nick_deep"), "{error}");
    for (from, to, said) in [
        ("\"nick_depth_mm\"", "\"nick_depth_mm\": 1.0, \"stem_width_mm\"", "duplicate field `stem_width_mm`"),
        (
            "\"nick_depth_mm\": ",
            "\"nick_depth_mm\": \"deep\", \"stem_at_hooks_mm\": ",
            "`nick_depth_mm` must be a number",
        ),
        ("\"kind\": \"eyes_and_stem\"", "\"kind\": \"heart\"", "unknown variant `heart`"),
        ("\"kind\": \"eyes_and_stem\"", "\"kind\": \"none\"", "unknown field `upper_eye_diameter_mm`"),
        ("\"kind\": \"eyes_and_stem\",", "", "missing field `kind`"),
        ("\"kind\": \"eyes_and_stem\"", "\"kind\": \"eyes_and_stem\", \"ends\": \"blunt\"", "unknown variant `blunt`"),
        ("\"kind\": \"eyes_and_stem\"", "\"kind\": \"eyes_and_stem\", \"ends\": 3", "`ends` must be a text"),
    ] {
        let error = refused(&json.replacen(from, to, 1));
        assert_eq!(error.kind(), "wrong_shape", "{from}");
        assert!(error.path().starts_with("sound_holes.bass") && error.to_string().contains(said), "{error}");
    }
    assert_eq!(refused(&json.replacen("355.0", "1e999", 1)).kind(), "not_json");
    let nothing = |key| json.replacen("\"nick_depth_mm\"", &format!("\"{key}\": null, \"nick_depth_mm\""), 1);
    assert_eq!(Design::from_json(&nothing("stem_at_hooks_mm")), Ok(Design::demo()), "null is as good as left out");
    assert!(refused(&nothing("ends")).to_string().contains("`ends` must be a text"));
}

#[test]
fn values_outside_their_limits_are_named_with_limits_unit_and_remedy() {
    // In order: negative, nothing, inches, and zero thickness.
    let cases = [
        ("outline.length_mm", -355.0),
        ("outline.waist_width_mm", 0.0),
        ("outline.length_mm", 14.0),
        ("graduation.centre_mm", 0.0),
        ("graduation.flank_mm", 0.0),
        ("sound_holes.treble.stem_width_mm", 0.4),
    ];
    for (path, value) in cases {
        let error = refused(&demo_with(&format!("/{}", path.replace('.', "/")), value.into()));
        assert_eq!((error.kind(), error.path()), ("out_of_range", path));
        for part in [path, &error.value(), &error.limits(), &error.remedy()] {
            assert!(error.to_string().contains(part), "{part} is not in: {error}");
        }
        assert!(error.value().contains("mm"));
    }
}

#[test]
fn numbers_that_are_not_finite_are_refused() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let mut design = Design::demo();
        design.arching.apex_height_mm = value;
        let error = design.check().unwrap_err();
        assert_eq!((error.kind(), error.path()), ("not_finite", "arching.apex_height_mm"));
    }
}

/// Changes that leave every number within its own limits but can't go together.
#[test]
fn measures_that_cannot_go_together_are_refused() {
    type Change = fn(&mut Design);
    let cases: [(&str, Change); 9] = [
        ("crossing_stations", |d| d.outline.waist_station_mm = 240.0),
        ("corner_out_of_place", |d| d.outline.lower_corner.reach_mm = 50.0),
        ("outline_crosses_itself", |d| {
            d.outline.lower_corner.station_mm = 194.0;
            d.outline.upper_corner.station_mm = 196.0;
            d.outline.lower_corner.width_mm = 16.0;
            d.outline.upper_corner.width_mm = 16.0;
        }),
        ("arch_below_channel", |d| {
            d.arching.apex_height_mm = 4.0;
            d.arching.edge_height_mm = 9.0;
        }),
        ("channel_too_far_in", |d| {
            d.arching.channel_distance_mm = 25.0;
            d.outline.upper_end_fullness = 0.4;
            d.outline.upper_station_mm = 310.0;
        }),
        ("hole_outside_outline", |d| eyes(d).upper_eye_to_centreline_mm = 55.0),
        ("holes_overlap", |d| {
            for hole in [&mut d.sound_holes.bass, &mut d.sound_holes.treble] {
                *hole = SoundHoleChoice::Round(RoundHole {
                    diameter_mm: 40.0,
                    centre_to_centreline_mm: 15.0,
                    centre_station_mm: 160.0,
                });
            }
        }),
        ("hole_not_drawable", |d| eyes(d).upper_eye_station_mm = 150.0),
        ("hole_not_drawable", |d| d.sound_holes.stop_mm = 260.0),
    ];
    for (kind, change) in cases {
        let mut design = Design::demo();
        change(&mut design);
        let error = design.check().unwrap_err();
        assert_eq!(error.kind(), kind, "{error}");
        assert!(!error.limits().is_empty() && !error.remedy().is_empty() && !error.value().is_empty());
    }
}

fn eyes(design: &mut Design) -> &mut EyesAndStem {
    match &mut design.sound_holes.treble {
        SoundHoleChoice::EyesAndStem(measures) => measures,
        other => panic!("the demonstration has f-holes, not {other:?}"),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn any_sound_design_comes_back_from_its_document(
        apex in 10.0..18.0f64, centre in 2.0..4.0f64, fullness in 0.45..0.65f64, eye in 10.0..14.0f64, ring in -90.0..90.0f64,
    ) {
        // Fifteen digits: what is promised of numbers (a nanometre has eleven).
        let digits = |value: f64| (value * 1e12).round() / 1e12;
        let mut design = Design::demo();
        design.arching.apex_height_mm = digits(apex);
        design.graduation.centre_mm = digits(centre);
        design.arching.cross_arches.waist.fullness = digits(fullness);
        eyes(&mut design).lower_eye_to_edge_mm = digits(eye);
        design.wood.ring_angle_deg = digits(ring);
        prop_assert_eq!(Design::from_json(&design.to_json()), Ok(design));
    }

    #[test]
    fn no_text_makes_the_reader_panic(text in "\\PC{0,200}") {
        prop_assert!(Design::from_json(&text).is_err());
    }
}
