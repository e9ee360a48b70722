//! What every curve family keeps, and what is each one's own.

use proptest::prelude::*;

use super::{arc_with_reverse_arc::OnWay, *};
use crate::{
    design::{ArchCurve, ArchPoint, BassArch, CrossArch, Design, ExtraArch, LongArchCurve},
    surface::Surface,
};

/// One of each family, alike in fullness.
fn families() -> Vec<HalfArch> {
    let measured = [[0.2, 0.93], [0.4, 0.75], [0.6, 0.46], [0.8, 0.14]];
    vec![
        HalfArch::Cycloid(CurtateCycloid::from_fullness(0.53)),
        HalfArch::Arcs(ArcWithReverseArc::from_fullness(0.15, 0.53)),
        HalfArch::Arcs(ArcWithReverseArc::from_fullness(0.6, 0.45)),
        HalfArch::Spline(ArchSpline::new(&measured)),
    ]
}

#[test]
fn every_family_runs_level_from_crest_to_channel_and_turns_once_where_it_says() {
    for arch in families() {
        for (place, height) in [(0.0, 1.0), (1.0 - 1e-12, 0.0), (1.3, 0.0)] {
            let [got, slope, _] = arch.at(place);
            assert!((got - height).abs() < 1e-9 && slope.abs() < 1e-9, "{arch:?} {place}: {got} {slope}");
        }
        let bend = |i: u32| arch.at((f64::from(i) + 0.5) / 2000.0)[2];
        let turns: Vec<u32> = (1..2000).filter(|&i| bend(i - 1) * bend(i) < 0.0).collect();
        assert_eq!(turns.len(), 1, "{arch:?}");
        assert!((f64::from(turns[0]) / 2000.0 - arch.inflection()).abs() < 1e-3, "{arch:?}");
    }
}

#[test]
fn every_familys_derivatives_are_its_differences_and_its_fullness_its_mean() {
    let h = 1e-6;
    for arch in families() {
        for i in 1..97 {
            let place = f64::from(i) / 97.0;
            let [_, slope, bend] = arch.at(place);
            let by = |k: usize| (arch.at(place + h)[k] - arch.at(place - h)[k]) / (2.0 * h);
            assert!((slope - by(0)).abs() < 1e-6 && (bend - by(1)).abs() < 1e-4, "{arch:?} {place}");
        }
        let n = 20_000;
        let mean = (0..n).map(|i| arch.at((f64::from(i) + 0.5) / f64::from(n))[0]).sum::<f64>() / f64::from(n);
        assert!((mean - arch.fullness()).abs() < 1e-7, "{arch:?}: {mean} {}", arch.fullness());
    }
}

/// Sagitta of an arc of radius R over a half chord c: R - sqrt(R^2 - c^2) (Euclid III 35: c^2 = s (2 R - s)). Both arcs'
/// points lie on their circles, and rise and span are the sums of both sagittas and both half chords.
#[test]
fn arcs_have_the_closed_forms_sagitta() {
    for (span, rise, place) in [(75.0, 12.0, 0.6), (48.0, 11.8, 0.7), (170.0, 12.3, 0.9), (40.0, 30.0, 0.45)] {
        let arcs = ArcWithReverseArc::from_inflection(rise / span, place);
        let meets = [place * span, arcs.at(place)[0] * rise];
        // From c^2 = s (2 R - s).
        let radius = |chord: f64, sag: f64| 0.5 * (chord * chord / sag + sag);
        let (crest, channel) = (radius(meets[0], rise - meets[1]), radius(span - meets[0], meets[1]));
        for i in 0..200 {
            let x = span * f64::from(i) / 200.0;
            let z = rise * arcs.at(x / span)[0];
            let (off, radius) = if x < meets[0] {
                (x.hypot(z - (rise - crest)), crest)
            } else {
                ((span - x).hypot(z - channel), channel)
            };
            assert!((off - radius).abs() < 1e-9 * radius, "x = {x}: {off} {radius}");
        }
        // No corner where they meet: both circles' centres and the meeting lie on one line.
        assert!(((span).hypot(rise - crest - channel) - (crest + channel)).abs() < 1e-9 * (crest + channel));
        let again = ArcWithReverseArc::from_fullness(rise / span, arcs.fullness());
        assert!((again.inflection() - place).abs() < 1e-9);
    }
}

/// A complete cubic spline gives back any cubic with those ends: 1 - 3 u^2 + 2 u^3.
#[test]
fn a_spline_gives_back_the_cubic_it_was_measured_on_and_passes_its_points() {
    let cubic = |u: f64| 1.0 - 3.0 * u * u + 2.0 * u * u * u;
    let spline = ArchSpline::new(&[0.1, 0.35, 0.5, 0.9].map(|u| [u, cubic(u)]));
    for i in 0..=100 {
        let u = f64::from(i) / 100.0;
        assert!((spline.at(u)[0] - cubic(u)).abs() < 1e-12);
    }
    assert!((spline.inflection() - 0.5).abs() < 1e-12);
    let points = [[0.2, 0.95], [0.31, 0.8], [0.7, 0.33]];
    let spline = ArchSpline::new(&points);
    for [place, height] in points {
        assert!((spline.at(place)[0] - height).abs() < 1e-15);
    }
}

/// Every pair of families on its way from one to the other: both are reached, and the derivatives are the differences'.
#[test]
fn a_family_passes_into_another_smoothly() {
    let h = 1e-6;
    for a in families() {
        for b in families() {
            for i in 1..40 {
                let place = f64::from(i) / 40.0 + 0.003;
                assert!((a.towards(&b, 0.0, place).height - a.at(place)[0]).abs() < 1e-12);
                assert!((a.towards(&b, 1.0, place).height - b.at(place)[0]).abs() < 1e-12);
                let share = (f64::from(i) * 0.618_034).fract();
                let at = |share: f64, place: f64| a.towards(&b, share, place);
                let on = at(share, place);
                let by_place = |f: fn(&OnWay) -> f64| (f(&at(share, place + h)) - f(&at(share, place - h))) / (2.0 * h);
                let by_share = |f: fn(&OnWay) -> f64| (f(&at(share + h, place)) - f(&at(share - h, place))) / (2.0 * h);
                let wanted = [
                    by_place(|on| on.height),
                    by_share(|on| on.height),
                    by_place(|on| on.slope[0]),
                    by_share(|on| on.slope[0]),
                    by_share(|on| on.slope[1]),
                ];
                let got = [on.slope[0], on.slope[1], on.bend[0], on.bend[1], on.bend[2]];
                for (got, wanted) in got.iter().zip(wanted) {
                    assert!((got - wanted).abs() < 1e-5 * (1.0 + wanted.abs()), "{a:?} {b:?} {place}: {got} {wanted}");
                }
            }
        }
    }
}

fn surface_of(design: &Design) -> (Outline, Surface) {
    let outline = Outline::new(&design.outline).unwrap();
    let arching = Arching::new(&design.arching, &outline).unwrap();
    let surface = Surface::new(&arching, &outline);
    (outline, surface)
}

/// The demonstration with every family somewhere, an extra station and a bass side of its own.
fn mixed() -> Design {
    let mut design = Design::demo();
    let points = |all: &[[f64; 2]]| all.iter().map(|&[place, height]| ArchPoint { place, height }).collect::<Vec<_>>();
    let a = &mut design.arching;
    a.apex_station_mm = Some(185.0);
    a.long_arch = LongArchCurve::ArcWithReverseArc {};
    let arches = &mut a.cross_arches;
    arches.lower_bout.curve = ArchCurve::ArcWithReverseArc {};
    arches.waist.curve = ArchCurve::Spline { points: points(&[[0.2, 0.95], [0.4, 0.8], [0.6, 0.54], [0.8, 0.18]]) };
    arches.waist.bass = Some(BassArch { fullness: 0.55, curve: ArchCurve::CurtateCycloid {} });
    let arch = CrossArch { fullness: 0.54, curve: ArchCurve::ArcWithReverseArc {}, bass: None };
    a.extra_arches = vec![ExtraArch { station_mm: 110.0, arch }];
    design.check().unwrap();
    design
}

/// Each given arch on the surface, to 0.02 mm: arcs on their circles in millimetres, spline through its points, the bass
/// side its own.
#[test]
fn the_surface_holds_arches_of_every_family() {
    let design = mixed();
    let (_, surface) = surface_of(&design);
    let channel = 3.2;
    let half = |y: f64| surface.arching().boundary().half_width(y, true).unwrap().x_mm;
    for (y, fullness) in [(71.0, 0.53), (110.0, 0.54)] {
        let (span, rise) = (half(y), surface.height_mm([0.0, y]) - channel);
        let meets = ArcWithReverseArc::from_fullness(rise / span, fullness).inflection() * span;
        let sum = (span * span + rise * rise) / (2.0 * rise);
        let (crest, hollow) = (sum * meets / span, sum * (1.0 - meets / span));
        for i in 0..100 {
            let x = span * f64::from(i) / 100.0;
            let z = if x < meets {
                rise - crest + (crest * crest - x * x).sqrt()
            } else {
                hollow - (hollow * hollow - (span - x).powi(2)).sqrt()
            };
            for side in [-1.0, 1.0] {
                assert!((surface.height_mm([side * x, y]) - channel - z).abs() < 0.02, "y = {y}, x = {x}");
            }
        }
    }
    let (y, top) = (195.0, surface.height_mm([0.0, 195.0]) - channel);
    for [place, height] in [[0.2, 0.95], [0.4, 0.8], [0.6, 0.54], [0.8, 0.18]] {
        assert!((surface.height_mm([place * half(y), y]) - channel - top * height).abs() < 0.02);
        let cycloid = CurtateCycloid::from_fullness(0.55).at(place).height;
        assert!((surface.height_mm([-place * half(y), y]) - channel - top * cycloid).abs() < 0.02);
    }
    // The long arch's apex stands where it was put; its halves are arcs of their own lengths.
    assert!((surface.height_mm([0.0, 185.0]) - 15.5).abs() < 1e-12);
    for (end, apex) in [(8.0, 185.0), (347.0, 185.0)] {
        let span: f64 = f64::abs(apex - end);
        let meets = ArcWithReverseArc::from_fullness(12.3 / span, 0.64).inflection() * span;
        let crest = (span * span + 12.3 * 12.3) / (2.0 * 12.3) * meets / span;
        let y = apex + (end - apex) * 0.4;
        let off = 0.4 * span;
        assert!((surface.height_mm([0.0, y]) - (15.5 - crest + (crest * crest - off * off).sqrt())).abs() < 0.02);
    }
}

#[test]
fn a_mixed_surface_has_slopes_and_bends_of_its_differences() {
    let design = mixed();
    let (outline, surface) = surface_of(&design);
    let h = 1e-5;
    let (mut checked, mut missed) = (0, 0);
    for i in 0..3000 {
        let p = [(f64::from(i) * 0.618_034).fract() * 206.0 - 103.0, (f64::from(i) * 0.414_214).fract() * 355.0];
        if outline.signed_distance_mm(p) < 0.01 {
            continue;
        }
        checked += 1;
        let at = |dx: f64, dy: f64| surface.at([p[0] + dx, p[1] + dy]);
        let on = at(0.0, 0.0);
        let slope = [
            (at(h, 0.0).height_mm - at(-h, 0.0).height_mm) / (2.0 * h),
            (at(0.0, h).height_mm - at(0.0, -h).height_mm) / (2.0 * h),
        ];
        assert!((0..2).all(|k| (slope[k] - on.slope[k]).abs() < 1e-5), "{p:?}: {slope:?} {:?}", on.slope);
        let bend = [
            (at(h, 0.0).slope[0] - at(-h, 0.0).slope[0]) / (2.0 * h),
            (at(0.0, h).slope[0] - at(0.0, -h).slope[0]) / (2.0 * h),
            (at(0.0, h).slope[1] - at(0.0, -h).slope[1]) / (2.0 * h),
        ];
        missed += usize::from((0..3).any(|k| (bend[k] - on.bend[k]).abs() > 1e-4));
    }
    // Within h of a line where the bend jumps.
    assert!(checked > 1500 && missed <= 2, "{missed} of {checked}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Neighbours of any family, alike in fullness: one turn a side on every section between them, where the inflection line
    /// says.
    #[test]
    fn mixed_families_turn_once_a_side(
        fullness in prop::array::uniform5(0.5..0.58f64), families in prop::array::uniform5(0..2u8), long in 0.58..0.64f64,
        long_family in 0..2u8, apex in 165.0..195.0f64,
    ) {
        let mut design = Design::demo();
        let a = &mut design.arching;
        a.long_arch_fullness = long;
        a.apex_station_mm = Some(apex);
        if long_family == 1 {
            a.long_arch = LongArchCurve::ArcWithReverseArc {};
        }
        let arches = &mut a.cross_arches;
        let all = [
            &mut arches.upper_bout, &mut arches.upper_corners, &mut arches.waist, &mut arches.lower_corners,
            &mut arches.lower_bout,
        ];
        for ((arch, fullness), family) in all.into_iter().zip(fullness).zip(families) {
            arch.fullness = fullness;
            arch.curve = if family == 0 { ArchCurve::CurtateCycloid {} } else { ArchCurve::ArcWithReverseArc {} };
        }
        let (_, surface) = surface_of(&design);
        for i in 1..40 {
            let y = 8.0 + 339.0 * f64::from(i) / 40.0;
            let half = surface.arching().boundary().half_width(y, true).unwrap().x_mm;
            let bend = |j: u32| surface.at([half * (f64::from(j) + 0.5) / 400.0, y]).bend[0];
            let turns: Vec<u32> = (1..399).filter(|&j| bend(j - 1) * bend(j) < 0.0).collect();
            prop_assert_eq!(turns.len(), 1, "y = {}", y);
            let turn = surface.inflection_mm(y, true).unwrap();
            prop_assert!((turn - half * f64::from(turns[0]) / 400.0).abs() < half / 200.0);
        }
    }
}
