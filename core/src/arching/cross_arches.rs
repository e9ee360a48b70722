//! The cross arch at every station: the given ones and all between.

use super::{ArchingBoundary, CurtateCycloid, HalfArch, MonotoneCubic, between_stations::share_between};
use crate::design::{ArchCurve, ArchingMeasures, CrossArch, DesignError, OutlineMeasures};

/// Nearer to each other than this, two stations ask for a bend that no cutter follows (common practice, no source).
const STATIONS_APART_MM: f64 = 5.0;

/// The cross arch at one place u and station y, scaled to half span 1 and rise 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnCrossArch {
    /// Height above the channel over the long arch's: 1 on the centreline, 0 at the boundary.
    pub height: f64,
    /// Derivatives of the height: by u, by y (1/mm).
    pub slope: [f64; 2],
    /// Second derivatives: by u twice, by u and y, by y twice.
    pub bend: [f64; 3],
}

/// Both sides.
#[derive(Clone, Debug)]
pub(super) struct CrossArches {
    treble: OneSide,
    /// `None`: as the treble side.
    bass: Option<OneSide>,
}

/// Where the given arches come from, for messages.
struct Given<'design> {
    station_mm: f64,
    arch: &'design CrossArch,
    path: String,
}

impl CrossArches {
    /// `rise_mm` gives the long arch's rise above the channel.
    pub(super) fn new(
        measures: &ArchingMeasures,
        outline: &OutlineMeasures,
        boundary: &ArchingBoundary,
        rise_mm: impl Fn(f64) -> f64,
    ) -> Result<CrossArches, DesignError> {
        let given = in_order(measures, outline, boundary)?;
        let side = |treble_side: bool| {
            let arches = given.iter().map(|Given { station_mm, arch, path }| {
                let half = boundary.half_width(*station_mm, treble_side).map_or(f64::INFINITY, |half| half.x_mm);
                let aspect = rise_mm(*station_mm) / half;
                let (curve, fullness, path) = match &arch.bass {
                    Some(bass) if !treble_side => (&bass.curve, bass.fullness, format!("{path}.bass")),
                    _ => (&arch.curve, arch.fullness, path.clone()),
                };
                Ok((*station_mm, HalfArch::new(curve, fullness, aspect, &path)?))
            });
            arches.collect::<Result<Vec<_>, _>>().map(OneSide::new)
        };
        // Arcs follow the half width; sides of one width and one set of arches are alike.
        let plain = |arch: &CrossArch| arch.bass.is_none() && matches!(arch.curve, ArchCurve::CurtateCycloid {});
        let alike = given.iter().all(|given| plain(given.arch));
        let bass = if alike { None } else { Some(side(false)?) };
        Ok(CrossArches { treble: side(true)?, bass })
    }

    pub(super) fn at(&self, y_mm: f64, place: f64, treble_side: bool) -> OnCrossArch {
        self.side(treble_side).at(y_mm, place)
    }

    pub(super) fn inflection(&self, y_mm: f64, treble_side: bool) -> f64 {
        self.side(treble_side).inflection(y_mm)
    }

    fn side(&self, treble_side: bool) -> &OneSide {
        if treble_side { &self.treble } else { self.bass.as_ref().unwrap_or(&self.treble) }
    }
}

/// The five named arches and those between, by station.
fn in_order<'design>(
    measures: &'design ArchingMeasures,
    outline: &OutlineMeasures,
    boundary: &ArchingBoundary,
) -> Result<Vec<Given<'design>>, DesignError> {
    let arches = &measures.cross_arches;
    let upwards = [&arches.lower_bout, &arches.lower_corners, &arches.waist, &arches.upper_corners, &arches.upper_bout];
    let named = outline.named_stations_mm().into_iter().zip(upwards);
    let mut given: Vec<Given> = named
        .map(|((name, station_mm), arch)| Given { station_mm, arch, path: format!("arching.cross_arches.{name}") })
        .collect();
    let [low, high] = boundary.ends_mm();
    for (index, extra) in measures.extra_arches.iter().enumerate() {
        let path = format!("arching.extra_arches.{index}");
        let y = extra.station_mm;
        let near = given.iter().find(|other| (other.station_mm - y).abs() < STATIONS_APART_MM);
        if y < low + STATIONS_APART_MM || y > high - STATIONS_APART_MM || near.is_some() {
            let beside = near.map_or_else(String::new, |other| {
                format!(", and {STATIONS_APART_MM} mm from the station at {} mm", other.station_mm)
            });
            return Err(DesignError::Impossible {
                kind: "station_out_of_place",
                path: format!("{path}.station_mm").into(),
                what: "a cross arch stands too near another or the channel's end".into(),
                value: format!("{y} mm"),
                limits: format!(
                    "it must be between {} and {} mm{beside}",
                    low + STATIONS_APART_MM,
                    high - STATIONS_APART_MM
                ),
                remedy: "move this station, or leave it out".into(),
            });
        }
        let place = given.partition_point(|other| other.station_mm < y);
        given.insert(place, Given { station_mm: y, arch: &extra.arch, path: format!("{path}.arch") });
    }
    Ok(given)
}

/// One side's arches.
#[derive(Clone, Debug)]
enum OneSide {
    /// Cycloids all the way: their ratio follows a monotone cubic over the stations, so that every arch between is a
    /// cycloid too.
    Cycloids(MonotoneCubic),
    /// Any families: between two stations one passes into the other.
    Mixed { stations: Vec<f64>, arches: Vec<HalfArch> },
}

impl OneSide {
    fn new(arches: Vec<(f64, HalfArch)>) -> OneSide {
        let ratios = arches.iter().map(|(y, arch)| match arch {
            HalfArch::Cycloid(curve) => Some([*y, curve.ratio()]),
            _ => None,
        });
        if let Some(ratios) = ratios.collect::<Option<Vec<_>>>() {
            return OneSide::Cycloids(MonotoneCubic::new(ratios));
        }
        let (stations, arches) = arches.into_iter().unzip();
        OneSide::Mixed { stations, arches }
    }

    fn at(&self, y_mm: f64, place: f64) -> OnCrossArch {
        match self {
            OneSide::Cycloids(ratio) => {
                let [ratio, by_y, by_y_twice] = ratio.at(y_mm);
                let on = CurtateCycloid::from_ratio(ratio).at(place);
                OnCrossArch {
                    height: on.height,
                    slope: [on.slope[0], on.slope[1] * by_y],
                    bend: [on.bend[0], on.bend[1] * by_y, on.bend[2] * by_y * by_y + on.slope[1] * by_y_twice],
                }
            }
            OneSide::Mixed { stations, arches } => {
                let (from, to, [share, by_y, by_y_twice]) = share_between(stations, y_mm);
                // Beyond the boundary every family stays level.
                if place >= 1.0 {
                    return OnCrossArch { height: 0.0, slope: [0.0; 2], bend: [0.0; 3] };
                }
                let on = arches[from].towards(&arches[to], share, place);
                OnCrossArch {
                    height: on.height,
                    slope: [on.slope[0], on.slope[1] * by_y],
                    bend: [on.bend[0], on.bend[1] * by_y, on.bend[2] * by_y * by_y + on.slope[1] * by_y_twice],
                }
            }
        }
    }

    fn inflection(&self, y_mm: f64) -> f64 {
        match self {
            OneSide::Cycloids(ratio) => CurtateCycloid::from_ratio(ratio.at(y_mm)[0]).inflection(),
            OneSide::Mixed { stations, arches } => {
                let (from, to, [share, ..]) = share_between(stations, y_mm);
                arches[from].inflection_towards(&arches[to], share)
            }
        }
    }
}
