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
    design::{ArchCurve, ArchPoint, ArchingMeasures, BassArch, CrossArch, DesignError, LongArchCurve, Measure},
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
        let y = match station {
            Station::Named(index) => outline.measures().named_stations_mm().into_iter().rev().nth(index)?.1,
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
    let limits = Measure::of_path(&path_of(name));
    let (mut least, mut most) = limits.map_or((0.4, 0.7), |measure| (measure.least, measure.most));
    if family == Family::ArcWithReverseArc {
        // A hair inside, so that rounding doesn't put it outside again.
        const HAIR: f64 = 1e-6;
        let reach = MEETING.map(|place| ArcWithReverseArc::from_inflection(aspect.min(STEEPEST), place).fullness());
        (least, most) = (least.max(reach[0] + HAIR), most.min(reach[1] - HAIR));
    }
    fullness.max(least).min(most)
}
