//! Each arch of a design by name: what it is, and the same design with another turn or family for it.
//!
//! A maker names an arch by its fullness or by the place where it turns from convex to concave; for the families that are
//! drawn from their fullness the two say the same. A change of family keeps the arch as near as the new family can.

use super::{
    ArcWithReverseArc, ArchName, Arching, CurtateCycloid, Family, HalfArch, Station,
    arc_with_reverse_arc::{MEETING, STEEPEST},
    arch_name::{cross, cross_mut, fullness_of, path_of},
};
use crate::{
    design::{ArchCurve, ArchPoint, ArchingMeasures, BassArch, CrossArch, DesignError, LongArchCurve},
    outline::Outline,
};

/// Places of a spline's points when a curve of another family becomes one: few enough to be moved by hand, and closer where
/// the curve turns into the channel. A cycloid or two arcs of a violin's size are kept to some hundredths of a millimetre.
const SPLINE_PLACES: [f64; 8] = [0.15, 0.3, 0.45, 0.58, 0.7, 0.8, 0.88, 0.95];

/// One arch as it is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct ArchFigures {
    /// Which.
    pub name: ArchName,
    /// What it is drawn with.
    pub family: Family,
    /// Mean height over the rise.
    pub fullness: f64,
    /// Where it stands, from the bottom edge, mm; the long arch's is its apex.
    pub station_mm: f64,
    /// From the crest to the channel line, mm; the long arch's lower half.
    pub half_span_mm: f64,
    /// Of the crest above the channel line, mm.
    pub rise_mm: f64,
    /// Where it turns from convex to concave, from the crest, mm.
    pub inflection_mm: f64,
}

impl Arching {
    /// Every arch as it is drawn, in the order of [`ArchName::all`].
    #[must_use]
    pub fn arches(&self, outline: &Outline) -> Vec<ArchFigures> {
        let names = ArchName::all(&self.measures);
        names.into_iter().filter_map(|name| self.arch(outline, name)).collect()
    }

    fn arch(&self, outline: &Outline, name: ArchName) -> Option<ArchFigures> {
        let (station_mm, half_span_mm) = self.stands(outline, name)?;
        let rise_mm = self.long_rise_mm(station_mm)[0];
        let half = self.half_arch(name, rise_mm / half_span_mm)?;
        let family = match half {
            HalfArch::Cycloid(_) => Family::CurtateCycloid,
            HalfArch::Arcs(_) => Family::ArcWithReverseArc,
            HalfArch::Spline(_) => Family::Spline,
        };
        let (fullness, inflection_mm) = (half.fullness(), half.inflection() * half_span_mm);
        Some(ArchFigures { name, family, fullness, station_mm, half_span_mm, rise_mm, inflection_mm })
    }

    /// Station and half span.
    fn stands(&self, outline: &Outline, name: ArchName) -> Option<(f64, f64)> {
        let ArchName::Cross { station, bass } = name else {
            return Some((self.apex_station_mm(), self.apex_station_mm() - self.boundary.ends_mm()[0]));
        };
        let m = outline.measures();
        let y = match station {
            Station::Named(0) => m.upper_station_mm,
            Station::Named(1) => m.upper_corner.station_mm,
            Station::Named(2) => m.waist_station_mm,
            Station::Named(3) => m.lower_corner.station_mm,
            Station::Named(_) => m.lower_station_mm,
            Station::Extra(index) => self.measures.extra_arches.get(index)?.station_mm,
        };
        Some((y, self.boundary.half_width(y, !bass)?.x_mm))
    }

    fn half_arch(&self, name: ArchName, aspect: f64) -> Option<HalfArch> {
        let m = &self.measures;
        match name {
            ArchName::Long => match &m.long_arch {
                LongArchCurve::CurtateCycloid {} => {
                    Some(HalfArch::Cycloid(CurtateCycloid::from_fullness(m.long_arch_fullness)))
                }
                LongArchCurve::ArcWithReverseArc {} => HalfArch::arcs(m.long_arch_fullness, aspect, "").ok(),
                LongArchCurve::Spline { lower, .. } => HalfArch::through(lower, "").ok(),
            },
            ArchName::Cross { station, bass } => {
                let arch = cross(m, station)?;
                let (curve, fullness) = match &arch.bass {
                    Some(own) if bass => (&own.curve, own.fullness),
                    _ => (&arch.curve, arch.fullness),
                };
                HalfArch::new(curve, fullness, aspect, "").ok()
            }
        }
    }

    /// The measures with this arch turning `inflection_mm` from its crest.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] for a spline, which turns where its points say, and for a place beyond the channel. Whether
    /// the fullness that it comes to is allowed is seen when the design is checked.
    pub fn with_inflection(
        &self,
        outline: &Outline,
        name: ArchName,
        inflection_mm: f64,
    ) -> Result<ArchingMeasures, DesignError> {
        let mut measures = self.measures.clone();
        let Some(arch) = self.arch(outline, name) else { return Ok(measures) };
        let place = inflection_mm / arch.half_span_mm;
        let [least, most] = MEETING.map(|place| place * arch.half_span_mm);
        let impossible = |what: &str, limits: String, remedy: &str| DesignError::Impossible {
            kind: "turn_out_of_place",
            path: path_of(name).into(),
            what: what.into(),
            value: format!("{inflection_mm} mm from the crest"),
            limits,
            remedy: remedy.into(),
        };
        if !(MEETING[0]..=MEETING[1]).contains(&place) {
            return Err(impossible(
                "the arch can't turn from convex to concave there",
                format!("it may turn {least:.1} to {most:.1} mm from the crest"),
                "give a place between the crest and the channel",
            ));
        }
        let fullness = match arch.family {
            Family::CurtateCycloid => CurtateCycloid::from_inflection(place).fullness(),
            Family::ArcWithReverseArc => {
                ArcWithReverseArc::from_inflection(arch.rise_mm / arch.half_span_mm, place).fullness()
            }
            Family::Spline => {
                return Err(impossible(
                    "a spline turns where its points say",
                    "its points alone decide".into(),
                    "move its points, or take another family",
                ));
            }
        };
        if let Some(number) = fullness_of(&mut measures, name) {
            *number = fullness;
        }
        Ok(measures)
    }

    /// The measures with this arch drawn by another family, as near to the present curve as that can come: a spline through
    /// points of it, or a curve of its fullness.
    #[must_use]
    pub fn with_family(&self, outline: &Outline, name: ArchName, family: Family) -> ArchingMeasures {
        let mut measures = self.measures.clone();
        let Some(arch) = self.arch(outline, name).filter(|arch| arch.family != family) else { return measures };
        let aspect = arch.rise_mm / arch.half_span_mm;
        let points = |half: Option<HalfArch>| -> Vec<ArchPoint> {
            let height = |place: f64| half.as_ref().map_or(1.0 - place, |half| half.at(place)[0]);
            SPLINE_PLACES.map(|place| ArchPoint { place, height: height(place) }).into()
        };
        let fullness = allowed_fullness(name, family, aspect, arch.fullness);
        match (name, family) {
            (ArchName::Long, Family::CurtateCycloid) => measures.long_arch = LongArchCurve::CurtateCycloid {},
            (ArchName::Long, Family::ArcWithReverseArc) => measures.long_arch = LongArchCurve::ArcWithReverseArc {},
            (ArchName::Long, Family::Spline) => {
                let [_, high] = self.boundary.ends_mm();
                let upper = self.half_arch(name, arch.rise_mm / (high - self.apex_station_mm()));
                measures.long_arch =
                    LongArchCurve::Spline { lower: points(self.half_arch(name, aspect)), upper: points(upper) };
            }
            (ArchName::Cross { station, bass }, family) => {
                let curve = match family {
                    Family::CurtateCycloid => ArchCurve::CurtateCycloid {},
                    Family::ArcWithReverseArc => ArchCurve::ArcWithReverseArc {},
                    Family::Spline => ArchCurve::Spline { points: points(self.half_arch(name, aspect)) },
                };
                if let Some(CrossArch { curve: treble, bass: own, .. }) = cross_mut(&mut measures, station) {
                    match own {
                        Some(BassArch { curve: own, .. }) if bass => *own = curve,
                        _ => *treble = curve,
                    }
                }
            }
        }
        if let Some(number) = fullness_of(&mut measures, name) {
            *number = fullness;
        }
        measures
    }
}

/// The fullness nearest to `fullness` that a design may have and the family can draw.
fn allowed_fullness(name: ArchName, family: Family, aspect: f64, fullness: f64) -> f64 {
    let path = path_of(name);
    let limits = crate::design::MEASURES.iter().find(|measure| measure.path == path);
    let (mut least, mut most) = limits.map_or((0.4, 0.7), |measure| (measure.least, measure.most));
    if family == Family::ArcWithReverseArc {
        // A hair inside, so that rounding doesn't put it outside again.
        const HAIR: f64 = 1e-6;
        let reach = MEETING.map(|place| ArcWithReverseArc::from_inflection(aspect.min(STEEPEST), place).fullness());
        (least, most) = (least.max(reach[0] + HAIR), most.min(reach[1] - HAIR));
    }
    fullness.max(least).min(most)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{design::Design, surface::Surface};

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
}
