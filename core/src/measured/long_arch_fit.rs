//! A long arch from the crests of a few cross arches.
//!
//! Five readings leave most of the long arch open. A smooth plate through them sags between the stations and hangs over the ends;
//! what is known besides, that an arch runs out level in the channel, a curve of a family holds. What the crests say beyond it is
//! added as points of a spline.

use crate::{
    arching::{CurtateCycloid, MonotoneCubic},
    design::{ArchPoint, LongArchCurve},
};

/// Fewer crests don't tell height, station and fullness.
pub(super) const FEWEST_CRESTS: usize = 3;
/// Where the apex is looked for, share of the way between the channel's ends, and how full the arch may be: a little inside what
/// a design allows.
const STANDS: [f64; 2] = [0.32, 0.68];
const FULLNESS: [f64; 2] = [0.425, 0.715];
/// Steps of the first search both ways, and halvings of its step afterwards: 0.34 and 0.29 over 24 steps and 2^18 are far below
/// what a gauge reads.
const STEPS: u32 = 24;
const HALVINGS: u32 = 18;
/// A crest that the family misses by less than a gauge reads, mm, is no reason for a spline.
const GAUGE_MM: f64 = 0.03;
/// Places of the spline's points.
const PLACES: [f64; 9] = [0.12, 0.25, 0.38, 0.5, 0.6, 0.7, 0.8, 0.88, 0.95];

/// What the crests say.
pub(super) struct FittedLongArch {
    pub(super) apex_mm: f64,
    /// Of the apex above the channel.
    pub(super) rise_mm: f64,
    pub(super) fullness: f64,
    pub(super) curve: LongArchCurve,
}

/// The long arch nearest to crests (station, rise above the channel), rising stations, between the channel's two ends.
/// `None` for too few crests.
pub(super) fn long_arch_through(crests: &[[f64; 2]], ends_mm: [f64; 2]) -> Option<FittedLongArch> {
    if crests.len() < FEWEST_CRESTS {
        return None;
    }
    let [low, high] = ends_mm;
    let middle = |range: [f64; 2]| 0.5 * (range[0] + range[1]);
    let mut best = (f64::INFINITY, [middle(STANDS), middle(FULLNESS)]);
    let mut step = [STANDS, FULLNESS].map(|range| (range[1] - range[0]) / f64::from(STEPS));
    let mut reach = STEPS as i32 / 2;
    for _ in 0..HALVINGS {
        let [stands, fullness] = best.1;
        for i in -reach..=reach {
            for j in -reach..=reach {
                let tried = [
                    (stands + f64::from(i) * step[0]).clamp(STANDS[0], STANDS[1]),
                    (fullness + f64::from(j) * step[1]).clamp(FULLNESS[0], FULLNESS[1]),
                ];
                let off = Family::new(tried, ends_mm).best_rise(crests).1;
                if off < best.0 {
                    best = (off, tried);
                }
            }
        }
        // A valley may run askew: each finer search looks two coarse steps to either side.
        (step, reach) = (step.map(|step| 0.5 * step), 4);
    }
    let family = Family::new(best.1, ends_mm);
    let rise = family.best_rise(crests).0;
    let (apex_mm, fullness) = (family.apex_mm, best.1[1]);
    let missed: Vec<[f64; 2]> = crests.iter().map(|&[y, z]| [y, z - rise * family.height(y)]).collect();
    if missed.iter().all(|[_, off]| off.abs() < GAUGE_MM) {
        return Some(FittedLongArch { apex_mm, rise_mm: rise, fullness, curve: LongArchCurve::default() });
    }
    let within = missed.into_iter().filter(|[y, _]| *y > low && *y < high);
    let beyond = MonotoneCubic::new([[low, 0.0]].into_iter().chain(within).chain([[high, 0.0]]).collect());
    let height = |y: f64| rise * family.height(y) + beyond.at(y)[0];
    let rise_mm = height(apex_mm);
    let points = |end: f64| -> Vec<ArchPoint> {
        PLACES.map(|place| ArchPoint { place, height: height(apex_mm + (end - apex_mm) * place) / rise_mm }).into()
    };
    let curve = LongArchCurve::Spline { lower: points(low), upper: points(high) };
    Some(FittedLongArch { apex_mm, rise_mm, fullness, curve })
}

/// A cycloid of rise 1 from an apex to both ends.
struct Family {
    apex_mm: f64,
    ends_mm: [f64; 2],
    curve: CurtateCycloid,
}

impl Family {
    fn new([stands, fullness]: [f64; 2], ends_mm: [f64; 2]) -> Family {
        let [low, high] = ends_mm;
        Family { apex_mm: low + stands * (high - low), ends_mm, curve: CurtateCycloid::from_fullness(fullness) }
    }

    fn height(&self, y: f64) -> f64 {
        let end = self.ends_mm[usize::from(y >= self.apex_mm)];
        self.curve.at(((y - self.apex_mm) / (end - self.apex_mm)).min(1.0)).height
    }

    /// The rise that comes nearest to the crests, and the sum of squares that is left.
    fn best_rise(&self, crests: &[[f64; 2]]) -> (f64, f64) {
        let pairs = crests.iter().map(|&[y, z]| (self.height(y), z));
        let (product, square) = pairs.clone().fold((0.0, 0.0), |(p, s), (h, z)| (p + h * z, s + h * h));
        let rise = if square > 0.0 { product / square } else { 0.0 };
        (rise, pairs.map(|(h, z)| (z - rise * h).powi(2)).sum())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::arching::ArcWithReverseArc;

    const STATIONS: [f64; 5] = [71.0, 152.0, 195.0, 231.0, 289.0];

    #[test]
    fn the_cycloid_that_crests_lie_on_is_found() {
        let known = Family::new([0.54, 0.61], [8.0, 347.0]);
        let crests = STATIONS.map(|y| [y, 12.4 * known.height(y)]);
        let found = long_arch_through(&crests, [8.0, 347.0]).unwrap();
        assert!((found.apex_mm - known.apex_mm).abs() < 0.05, "{}", found.apex_mm);
        assert!((found.rise_mm - 12.4).abs() < 1e-3 && (found.fullness - 0.61).abs() < 1e-3);
        assert_eq!(found.curve, LongArchCurve::default());
        assert!(long_arch_through(&crests[..2], [8.0, 347.0]).is_none());
    }

    /// Crests of another family: held where they were read, and not far off between.
    #[test]
    fn crests_on_no_cycloid_are_held_by_a_spline() {
        let arcs = ArcWithReverseArc::from_fullness(12.0 / 169.5, 0.52);
        let height = |y: f64| 12.0 * arcs.at(((y - 177.5).abs() / 169.5).min(1.0))[0] + 0.3 * (y / 20.0).sin();
        let crests = STATIONS.map(|y| [y, height(y)]);
        let found = long_arch_through(&crests, [8.0, 347.0]).unwrap();
        let LongArchCurve::Spline { lower, upper } = &found.curve else { panic!("{:?}", found.curve) };
        assert_eq!((lower.len(), upper.len()), (9, 9));
        for [y, z] in crests {
            let (points, end) = if y < found.apex_mm { (lower, 8.0) } else { (upper, 347.0) };
            let place = (y - found.apex_mm) / (end - found.apex_mm);
            let pairs: Vec<[f64; 2]> = points.iter().map(|point| [point.place, point.height]).collect();
            let spline = crate::arching::ArchSpline::new(&pairs);
            assert!((found.rise_mm * spline.at(place)[0] - z).abs() < 0.15, "{y}");
        }
    }
}
