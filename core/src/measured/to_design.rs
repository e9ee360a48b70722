//! From measured heights to an arching that can be changed.

use super::{HeightMap, MeasuredError, long_arch_fit::long_arch_through};
use crate::{
    design::{ArchCurve, ArchPoint, ArchingMeasures, BassArch, CrossArch, CrossArches, ExtraArch, LongArchCurve},
    outline::Outline,
};

/// Places of a curve's points, crest to channel: closer where cross arches turn into the channel.
const PLACES: [f64; 9] = [0.12, 0.25, 0.38, 0.5, 0.6, 0.7, 0.8, 0.88, 0.95];
/// How far inside the edge a channel is looked for, share of the length: 8 to 12 mm on a violin.
const CHANNEL_REACH: f64 = 0.05;
/// Step of that search, and of the search for the apex, mm.
const STEP_MM: f64 = 0.05;
/// A fall from the edge of less than this is no channel, mm.
const LEAST_DEPTH_MM: f64 = 0.05;

/// Where along a top there are readings.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredStations {
    /// The lowest and the highest, mm.
    pub range_mm: [f64; 2],
    /// The stations themselves where there are a few only, rising, mm; none where readings lie close all along.
    pub rows_mm: Vec<f64>,
}

/// Reads an arching off heights: edge, channel and apex, the long arch and the cross arches as splines, at the five stations and,
/// where the readings lie close, midway between them. `present` gives what the heights don't tell. From a few rows, as a gauge
/// reads them, the long arch comes from their crests.
///
/// # Errors
/// [`MeasuredError::DoesNotFit`] when nothing rises above the edge.
pub fn arching_of(
    map: &HeightMap,
    outline: &Outline,
    present: &ArchingMeasures,
    stations: &MeasuredStations,
) -> Result<ArchingMeasures, MeasuredError> {
    let height = |x: f64, y: f64| map.at([x, y]).height_mm;
    let (measured_mm, dense) = (stations.range_mm, stations.rows_mm.is_empty());
    let (edge, depth, distance) = channel(map, outline, present);
    let channel = edge - depth;
    let [from, to] = [measured_mm[0].max(0.2 * outline.length_mm()), measured_mm[1].min(0.8 * outline.length_mm())];
    let steps = ((to - from) / STEP_MM).ceil().max(1.0) as u32;
    let along = (0..=steps).map(|i| from + (to - from) * f64::from(i) / f64::from(steps));
    let apex = along.max_by(|&a, &b| height(0.0, a).total_cmp(&height(0.0, b))).unwrap_or(0.5 * (from + to));
    let rise = height(0.0, apex) - channel;
    if rise <= depth {
        return Err(MeasuredError::DoesNotFit {
            what: "the heights don't rise above the edge".into(),
            value: format!("{:.2} mm on the centreline", height(0.0, apex)),
            limits: format!("the edge stands at {edge:.2} mm"),
            remedy: "measure the outside, upwards from the plane of the ribs".into(),
        });
    }
    let shares = |at: &dyn Fn(f64) -> Option<f64>| -> Vec<ArchPoint> {
        let points =
            PLACES.iter().filter_map(|&place| Some(ArchPoint { place, height: at(place)?.clamp(-0.19, 1.19) }));
        points.collect()
    };
    let long = |end: f64| {
        shares(&|place: f64| {
            let y = apex + (end - apex) * place;
            (y >= measured_mm[0] && y <= measured_mm[1]).then(|| (height(0.0, y) - channel) / rise)
        })
    };
    let ends = [distance, outline.length_mm() - distance];
    let crests: Vec<[f64; 2]> = stations.rows_mm.iter().map(|&y| [y, height(0.0, y) - channel]).collect();
    let (lower, upper) = (long(ends[0]), long(ends[1]));
    // Readings that leave the long arch's ends open don't tell its family; the present one stays.
    let told = lower.len() >= 3 && upper.len() >= 3;
    let mut arching = ArchingMeasures {
        edge_height_mm: edge,
        apex_height_mm: height(0.0, apex),
        apex_station_mm: Some(apex),
        channel_depth_mm: depth,
        channel_distance_mm: distance,
        long_arch: if told { LongArchCurve::Spline { lower, upper } } else { present.long_arch.clone() },
        extra_arches: Vec::new(),
        ..present.clone()
    };
    if let Some(fitted) = long_arch_through(&crests, ends) {
        arching.apex_height_mm = channel + fitted.rise_mm;
        arching.apex_station_mm = Some(fitted.apex_mm);
        (arching.long_arch_fullness, arching.long_arch) = (fitted.fullness, fitted.curve);
    }
    // The half widths of the arching belong to outline and channel alone.
    let plain =
        ArchingMeasures { long_arch: LongArchCurve::default(), cross_arches: plain_arches(present), ..arching.clone() };
    let plain = crate::arching::Arching::new(&plain, outline).map_err(|error| MeasuredError::DoesNotFit {
        what: "no arching can be laid on this outline with the channel that was measured".into(),
        value: format!("channel {distance:.1} mm from the edge, {depth:.2} mm deep"),
        limits: error.limits(),
        remedy: error.remedy(),
    })?;
    let cross = |y: f64, kept: &CrossArch| {
        let side = |treble_side: bool| {
            let half = plain.boundary().half_width(y, treble_side)?.x_mm;
            let sign = if treble_side { 1.0 } else { -1.0 };
            let top = height(0.0, y) - channel;
            let points = shares(&|place| Some((height(sign * place * half, y) - channel) / top));
            Some(ArchCurve::Spline { points })
        };
        match (side(true), side(false)) {
            (Some(curve), Some(bass)) => CrossArch {
                fullness: kept.fullness,
                curve,
                bass: Some(BassArch { fullness: kept.fullness, curve: bass }),
            },
            _ => kept.clone(),
        }
    };
    let m = outline.measures();
    let old = &present.cross_arches;
    arching.cross_arches = CrossArches {
        upper_bout: cross(m.upper_station_mm, &old.upper_bout),
        upper_corners: cross(m.upper_corner.station_mm, &old.upper_corners),
        waist: cross(m.waist_station_mm, &old.waist),
        lower_corners: cross(m.lower_corner.station_mm, &old.lower_corners),
        lower_bout: cross(m.lower_station_mm, &old.lower_bout),
    };
    if dense {
        let (low, high) = (m.lower_station_mm, m.upper_station_mm);
        let stations = [
            0.5 * (distance + low),
            0.5 * (low + m.lower_corner.station_mm),
            0.5 * (m.lower_corner.station_mm + m.waist_station_mm),
            0.5 * (m.waist_station_mm + m.upper_corner.station_mm),
            0.5 * (m.upper_corner.station_mm + high),
            0.5 * (high + m.length_mm - distance),
        ];
        arching.extra_arches = stations.map(|y| ExtraArch { station_mm: y, arch: cross(y, &old.waist) }).into();
    }
    Ok(arching)
}

fn plain_arches(present: &ArchingMeasures) -> CrossArches {
    let plain = |arch: &CrossArch| CrossArch { fullness: arch.fullness, curve: ArchCurve::default(), bass: None };
    let old = &present.cross_arches;
    CrossArches {
        upper_bout: plain(&old.upper_bout),
        upper_corners: plain(&old.upper_corners),
        waist: plain(&old.waist),
        lower_corners: plain(&old.lower_corners),
        lower_bout: plain(&old.lower_bout),
    }
}

/// Edge height, channel depth and channel distance: means over both sides of bouts and waist, where the outline runs along y
/// so that the distance is across.
fn channel(map: &HeightMap, outline: &Outline, present: &ArchingMeasures) -> (f64, f64, f64) {
    let m = outline.measures();
    let (mut edges, mut lowest, mut distances, mut count) = (0.0, 0.0, 0.0, 0.0);
    for y in [m.lower_station_mm, m.waist_station_mm, m.upper_station_mm] {
        for treble_side in [true, false] {
            let Some(half) = outline.half(treble_side).half_width_mm(y) else { continue };
            let sign = if treble_side { 1.0 } else { -1.0 };
            let height = |inside: f64| map.at([sign * (half - inside), y]).height_mm;
            let steps = (CHANNEL_REACH * m.length_mm / STEP_MM) as u32;
            let inside = (0..=steps).map(|i| f64::from(i) * STEP_MM);
            let deepest = inside.min_by(|&a, &b| height(a).total_cmp(&height(b))).unwrap_or_default();
            edges += height(0.0);
            lowest += height(deepest);
            distances += deepest;
            count += 1.0;
        }
    }
    let (edge, depth, distance) = (edges / count, (edges - lowest) / count, distances / count);
    if depth < LEAST_DEPTH_MM {
        return (edge, 0.0, present.channel_distance_mm);
    }
    (edge, depth, distance)
}
