//! Turns and families by name, against the surface that they are drawn on.

use super::*;
use crate::{
    design::{ArchCurve, BassArch, CrossArch, Design},
    outline::Outline,
    surface::Surface,
};

fn laid(design: &Design) -> (Outline, Arching) {
    design.check().unwrap();
    let outline = Outline::new(&design.outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    (outline, arching)
}

/// The demonstration with a bass side of its own at the waist and one station more.
fn many_arches() -> Design {
    let mut design = Design::demo();
    let a = &mut design.arching;
    a.cross_arches.waist.bass = Some(BassArch { fullness: 0.52, curve: ArchCurve::default() });
    let arch = CrossArch { fullness: 0.55, curve: ArchCurve::ArcWithReverseArc {}, bass: None };
    a.extra_arches = vec![crate::design::ExtraArch { station_mm: 110.0, arch }];
    design
}

#[test]
fn every_arch_is_found_by_its_word_and_none_other() {
    let design = many_arches();
    let (outline, arching) = laid(&design);
    let words: Vec<String> = arching.arches(&outline).iter().map(|arch| arch.name.word()).collect();
    let wanted = "long_arch upper_bout upper_corners waist waist.bass lower_corners lower_bout extra.0";
    assert_eq!(words.join(" "), wanted);
    for word in &words {
        assert_eq!(ArchName::of_word(word, &design.arching).unwrap().word(), *word);
    }
    for stray in ["", "waists", "upper_bout.bass", "extra.1", "extra.0.bass"] {
        assert_eq!(ArchName::of_word(stray, &design.arching), None, "{stray}");
    }
}

/// The surface, which knows no fullness, turns where the maker said.
#[test]
fn an_arch_turns_where_it_is_told_to() {
    for family in [Family::CurtateCycloid, Family::ArcWithReverseArc] {
        let mut design = many_arches();
        let (outline, _) = laid(&design);
        for name in ArchName::all(&design.arching) {
            design.arching = Arching::new(&design.arching, &outline).unwrap().with_family(&outline, name, family);
        }
        let (_, drawn) = laid(&design);
        for arch in drawn.arches(&outline).into_iter().filter(|arch| arch.name != ArchName::Long) {
            let wanted = 0.63 * arch.half_span_mm;
            let told = drawn.with_inflection(&outline, arch.name, wanted).unwrap();
            let surface = Surface::new(&Arching::new(&told, &outline).unwrap(), &outline);
            let treble_side = !matches!(arch.name, ArchName::Cross { bass: true, .. });
            let found = surface.inflection_mm(arch.station_mm, treble_side).unwrap();
            assert!((found - wanted).abs() < 1e-6, "{}: {found} for {wanted}", arch.name.word());
        }
    }
    let (outline, arching) = laid(&Design::demo());
    let told = arching.with_inflection(&outline, ArchName::Long, 110.0).unwrap();
    let surface = Surface::new(&Arching::new(&told, &outline).unwrap(), &outline);
    let bend = |off: f64| surface.at([0.0, arching.apex_station_mm() - 110.0 + off]).bend[2];
    assert!(bend(-0.01) > 0.0 && bend(0.01) < 0.0);
}

#[test]
fn a_turn_beyond_the_channel_or_of_a_spline_is_refused() {
    let (outline, arching) = laid(&Design::demo());
    let waist = ArchName::of_word("waist", arching.measures()).unwrap();
    let error = arching.with_inflection(&outline, waist, 60.0).unwrap_err();
    assert_eq!((error.kind(), error.path()), ("turn_out_of_place", "arching.cross_arches.waist.fullness"));
    let spline = arching.with_family(&outline, waist, Family::Spline);
    let arching = Arching::new(&spline, &outline).unwrap();
    assert_eq!(arching.with_inflection(&outline, waist, 30.0).unwrap_err().kind(), "turn_out_of_place");
}

/// A spline keeps the curve, the others its fullness: the wood under the arch stays what it was.
#[test]
fn another_family_keeps_the_arch_as_near_as_it_can() {
    let (outline, arching) = laid(&many_arches());
    let before = Surface::new(&arching, &outline);
    for arch in arching.arches(&outline) {
        for family in [Family::CurtateCycloid, Family::ArcWithReverseArc, Family::Spline] {
            let measures = arching.with_family(&outline, arch.name, family);
            let changed = Arching::new(&measures, &outline).unwrap();
            let found = changed.arches(&outline).into_iter().find(|found| found.name == arch.name).unwrap();
            assert_eq!(found.family, family);
            assert!((found.fullness - arch.fullness).abs() < 2e-3, "{} {family:?}", arch.name.word());
            if family != Family::Spline {
                continue;
            }
            let after = Surface::new(&changed, &outline);
            let sign = if matches!(arch.name, ArchName::Cross { bass: true, .. }) { -1.0 } else { 1.0 };
            for i in 0..100 {
                let off = arch.half_span_mm * f64::from(i) / 100.0;
                let p = match arch.name {
                    ArchName::Long => [0.0, arch.station_mm - off],
                    ArchName::Cross { .. } => [sign * off, arch.station_mm],
                };
                let away = (after.height_mm(p) - before.height_mm(p)).abs();
                // Where two arcs meet the curvature jumps, which eight points can't follow exactly.
                assert!(away < 0.05, "{}: {away} mm at {off}", arch.name.word());
            }
        }
    }
}
