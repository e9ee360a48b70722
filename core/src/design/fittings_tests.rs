//! Bar, post, masses and ribs in the document.

use super::*;
use crate::wood::Species;

const SPRUCE: StickWood = StickWood { species: Species::SitkaSpruce, measured: None };

/// Gives a design of the demonstration's size every fitting, of plausible measures.
pub(crate) fn fit_out(design: &mut Design) {
    design.bar = Some(BarMeasures {
        lower_end: PlanPlace { across_mm: -16.0, station_mm: 40.0 },
        upper_end: PlanPlace { across_mm: -12.0, station_mm: 310.0 },
        width_mm: 5.5,
        height_mm: 12.0,
        highest_station_mm: 160.0,
        end_height_mm: 3.0,
        wood: SPRUCE,
    });
    design.post = Some(PostMeasures {
        place: PlanPlace { across_mm: 18.0, station_mm: 155.0 },
        diameter_mm: 6.2,
        length_mm: 53.0,
        wood: SPRUCE,
    });
    design.masses = vec![AddedMass { place: PlanPlace { across_mm: 15.0, station_mm: 160.0 }, mass_g: 1.1 }];
    // Rib height, thickness and lining after a workshop average (makingtheviolin.com, "Measurements"); moduli of sugar maple,
    // 0.132 and 0.111 of 13.9 GPa (Wood Handbook, from memory).
    design.rim = Rim::Elastic(RibMeasures {
        height_mm: 30.0,
        thickness_mm: 1.1,
        lining_height_mm: 6.0,
        lining_thickness_mm: 1.8,
        across_gpa: 1.8,
        shear_gpa: 1.5,
        end_block_reach_mm: 24.0,
        corner_block_reach_mm: 20.0,
        block_factor: 20.0,
    });
}

fn fitted_out() -> Design {
    let mut design = Design::demo();
    fit_out(&mut design);
    design
}

#[test]
fn a_design_with_every_fitting_comes_back_from_its_document() {
    let design = fitted_out();
    assert_eq!(Design::from_json(&design.to_json()), Ok(design));
}

/// A file saved before there were fittings has none of their keys, and a design without them is saved as it was.
#[test]
fn a_design_without_fittings_has_none_of_their_keys() {
    let json = Design::demo().to_json();
    for key in ["bar", "post", "masses"] {
        assert!(!json.contains(&format!("\"{key}\"")), "{key}");
    }
    let demo = Design::from_json(&json).unwrap();
    assert!(demo.bar.is_none() && demo.post.is_none() && demo.masses.is_empty());
}

#[test]
fn fittings_with_values_out_of_range_are_named() {
    type Change = fn(&mut Design);
    let cases: [(&str, Change); 6] = [
        ("bar.width_mm", |d| d.bar.as_mut().unwrap().width_mm = -5.5),
        ("bar.height_mm", |d| d.bar.as_mut().unwrap().height_mm = -1.0),
        ("post.length_mm", |d| d.post.as_mut().unwrap().length_mm = 0.0),
        ("masses.0.mass_g", |d| d.masses[0].mass_g = -1.0),
        ("rim.elastic.thickness_mm", |d| ribs(d).thickness_mm = 0.0),
        ("rim.elastic.block_factor", |d| ribs(d).block_factor = 0.5),
    ];
    for (path, change) in cases {
        let mut design = fitted_out();
        change(&mut design);
        let error = design.check().unwrap_err();
        assert_eq!((error.kind(), error.path()), ("out_of_range", path));
    }
    let mut design = fitted_out();
    design.masses[0].mass_g = f64::NAN;
    assert_eq!(design.check().unwrap_err().kind(), "not_finite");
}

fn ribs(design: &mut Design) -> &mut RibMeasures {
    match &mut design.rim {
        Rim::Elastic(ribs) => ribs,
        other => panic!("the ribs give way here, unlike {other:?}"),
    }
}

#[test]
fn fittings_that_have_no_wood_or_no_sense_are_refused() {
    type Change = fn(&mut Design);
    let cases: [(&str, &str, Change); 9] = [
        // Across a sound hole, beyond the bottom edge, beyond the upper bout.
        ("fitting_off_the_wood", "bar", |d| d.sound_holes.bass = round_hole(15.0)),
        ("fitting_off_the_wood", "bar", |d| bar(d).lower_end.station_mm = 0.0),
        ("fitting_off_the_wood", "bar", |d| bar(d).upper_end.across_mm = -90.0),
        ("bar_too_short", "bar.upper_end.station_mm", |d| bar(d).upper_end.station_mm = 45.0),
        ("bar_highest_beyond_end", "bar.highest_station_mm", |d| bar(d).highest_station_mm = 330.0),
        ("bar_ends_too_high", "bar.end_height_mm", |d| bar(d).end_height_mm = 13.0),
        ("fitting_off_the_wood", "post.place", |d| d.sound_holes.treble = round_hole(25.0)),
        ("fitting_off_the_wood", "masses.0.place", |d| d.masses[0].place.station_mm = 360.0),
        ("linings_overlap", "rim.elastic.lining_height_mm", |d| ribs(d).lining_height_mm = 16.0),
    ];
    for (kind, path, change) in cases {
        let mut design = fitted_out();
        change(&mut design);
        let Err(error) = design.check() else { panic!("{kind} at {path} was let through") };
        assert_eq!((error.kind(), error.path()), (kind, path), "{error}");
        assert!(!error.limits().is_empty() && !error.remedy().is_empty() && !error.value().is_empty());
    }
}

fn round_hole(centre_to_centreline_mm: f64) -> SoundHoleChoice {
    SoundHoleChoice::Round(RoundHole { diameter_mm: 20.0, centre_to_centreline_mm, centre_station_mm: 155.0 })
}

fn bar(design: &mut Design) -> &mut BarMeasures {
    design.bar.as_mut().unwrap()
}

#[test]
fn unknown_keys_of_a_fitting_are_named() {
    let json = fitted_out().to_json().replacen("\"highest_station_mm\"", "\"peak_mm\"", 1);
    let error = Design::from_json(&json).unwrap_err();
    assert_eq!(error.kind(), "wrong_shape");
    assert!(error.to_string().contains("peak_mm"), "{error}");
}
