//! The cross arch at every station: the five given ones and all between.

use super::{CurtateCycloid, MonotoneCubic};
use crate::design::{ArchingMeasures, OutlineMeasures};

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

/// Cycloids whose ratio follows a monotone cubic over the stations.
#[derive(Clone, Debug)]
pub(super) struct CrossArches {
    ratio: MonotoneCubic,
}

impl CrossArches {
    pub(super) fn new(measures: &ArchingMeasures, outline: &OutlineMeasures) -> CrossArches {
        let arches = &measures.cross_arches;
        let ratios = [
            (outline.lower_station_mm, &arches.lower_bout),
            (outline.lower_corner.station_mm, &arches.lower_corners),
            (outline.waist_station_mm, &arches.waist),
            (outline.upper_corner.station_mm, &arches.upper_corners),
            (outline.upper_station_mm, &arches.upper_bout),
        ]
        .map(|(y, arch)| [y, CurtateCycloid::from_fullness(arch.fullness).ratio()]);
        CrossArches { ratio: MonotoneCubic::new(ratios.to_vec()) }
    }

    pub(super) fn at(&self, y_mm: f64, place: f64) -> OnCrossArch {
        let [ratio, by_y, by_y_twice] = self.ratio.at(y_mm);
        let on = CurtateCycloid::from_ratio(ratio).at(place);
        OnCrossArch {
            height: on.height,
            slope: [on.slope[0], on.slope[1] * by_y],
            bend: [on.bend[0], on.bend[1] * by_y, on.bend[2] * by_y * by_y + on.slope[1] * by_y_twice],
        }
    }

    pub(super) fn inflection(&self, y_mm: f64) -> f64 {
        CurtateCycloid::from_ratio(self.ratio.at(y_mm)[0]).inflection()
    }
}
