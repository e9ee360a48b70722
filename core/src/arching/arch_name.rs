//! Which arch of a design is meant, and where its numbers stand.

use crate::design::{ArchingMeasures, CrossArch};

/// Which arch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArchName {
    /// The long arch.
    Long,
    /// A cross arch; its bass side's own shape if `bass`.
    Cross {
        /// Where it stands.
        station: Station,
        /// The shape that only the bass side has.
        bass: bool,
    },
}

/// Where a cross arch stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Station {
    /// At one of the five named stations, numbered from the neck end down.
    Named(usize),
    /// At a further one, numbered as in the design.
    Extra(usize),
}

/// The named stations' words, from the neck end down.
const STATIONS: [&str; 5] = ["upper_bout", "upper_corners", "waist", "lower_corners", "lower_bout"];

/// What an arch is drawn with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Curtate cycloid.
    CurtateCycloid,
    /// Two compass arcs.
    ArcWithReverseArc,
    /// Spline through points.
    Spline,
}

impl Family {
    /// Its word in a design.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Family::CurtateCycloid => "curtate_cycloid",
            Family::ArcWithReverseArc => "arc_with_reverse_arc",
            Family::Spline => "spline",
        }
    }

    /// The family of a word.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Family> {
        [Family::CurtateCycloid, Family::ArcWithReverseArc, Family::Spline].into_iter().find(|f| f.word() == word)
    }
}

impl ArchName {
    /// A stable word: `long_arch`, `waist`, `waist.bass`, `extra.0`, `extra.0.bass`.
    #[must_use]
    pub fn word(self) -> String {
        match self {
            ArchName::Long => "long_arch".into(),
            ArchName::Cross { station, bass } => {
                let station = match station {
                    Station::Named(index) => STATIONS[index % STATIONS.len()].to_owned(),
                    Station::Extra(index) => format!("extra.{index}"),
                };
                if bass { station + ".bass" } else { station }
            }
        }
    }

    /// The arch of a word; `None` where there is none such in these measures.
    #[must_use]
    pub fn of_word(word: &str, measures: &ArchingMeasures) -> Option<ArchName> {
        ArchName::all(measures).into_iter().find(|name| name.word() == word)
    }

    /// Every arch that these measures have, the long arch first, then from the neck end down, further stations last.
    #[must_use]
    pub fn all(measures: &ArchingMeasures) -> Vec<ArchName> {
        let named = (0..STATIONS.len()).map(Station::Named);
        let stations = named.chain((0..measures.extra_arches.len()).map(Station::Extra));
        let sides = stations.flat_map(|station| {
            let own_bass = cross(measures, station).is_some_and(|arch| arch.bass.is_some());
            [false, true].into_iter().filter(move |&bass| !bass || own_bass).map(move |bass| (station, bass))
        });
        let crosses = sides.map(|(station, bass)| ArchName::Cross { station, bass });
        [ArchName::Long].into_iter().chain(crosses).collect()
    }
}

/// Where its fullness stands in a design, as the table of measures has it.
pub(super) fn path_of(name: ArchName) -> String {
    match name {
        ArchName::Long => "arching.long_arch_fullness".into(),
        ArchName::Cross { station: Station::Named(_), bass: true } => "arching.cross_arches.*.bass.fullness".into(),
        ArchName::Cross { station: Station::Named(index), .. } => {
            format!("arching.cross_arches.{}.fullness", STATIONS[index % STATIONS.len()])
        }
        ArchName::Cross { bass: true, .. } => "arching.extra_arches.*.arch.bass.fullness".into(),
        ArchName::Cross { .. } => "arching.extra_arches.*.arch.fullness".into(),
    }
}

pub(super) fn cross(measures: &ArchingMeasures, station: Station) -> Option<&CrossArch> {
    let arches = &measures.cross_arches;
    match station {
        Station::Named(0) => Some(&arches.upper_bout),
        Station::Named(1) => Some(&arches.upper_corners),
        Station::Named(2) => Some(&arches.waist),
        Station::Named(3) => Some(&arches.lower_corners),
        Station::Named(_) => Some(&arches.lower_bout),
        Station::Extra(index) => measures.extra_arches.get(index).map(|extra| &extra.arch),
    }
}

pub(super) fn cross_mut(measures: &mut ArchingMeasures, station: Station) -> Option<&mut CrossArch> {
    let arches = &mut measures.cross_arches;
    match station {
        Station::Named(0) => Some(&mut arches.upper_bout),
        Station::Named(1) => Some(&mut arches.upper_corners),
        Station::Named(2) => Some(&mut arches.waist),
        Station::Named(3) => Some(&mut arches.lower_corners),
        Station::Named(_) => Some(&mut arches.lower_bout),
        Station::Extra(index) => measures.extra_arches.get_mut(index).map(|extra| &mut extra.arch),
    }
}

pub(super) fn fullness_of(measures: &mut ArchingMeasures, name: ArchName) -> Option<&mut f64> {
    let ArchName::Cross { station, bass } = name else { return Some(&mut measures.long_arch_fullness) };
    let arch = cross_mut(measures, station)?;
    match &mut arch.bass {
        Some(own) if bass => Some(&mut own.fullness),
        _ => Some(&mut arch.fullness),
    }
}
