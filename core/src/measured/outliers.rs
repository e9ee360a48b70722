//! Which readings lie off the surface that the others agree on.

use super::Reading;

/// A point further off than this many robust standard deviations is an outlier, if it is also off by more than wood and
/// gauge explain, mm (common practice, no source).
const SIGMAS: f64 = 6.0;
const LEAST_MM: f64 = 0.15;
/// A gross slip pulls its neighbours off with it, so that only points beyond this share of the largest residual are put
/// aside at a time; those that come back into line return.
const SHARE: f64 = 0.4;
/// Rounds enough for slips from 0.15 to 150 mm, or for as many slips of a gauge.
pub(super) const ROUNDS: usize = 20;
/// A surface goes through so few points that none is off it. Each is then judged by what the others say there.
pub(super) const FEW: usize = 1500;
/// A gauge's readings every 4 or 5 mm foretell each other to some 0.45 mm beside the channel; less is no slip. Further apart than so
/// many cells they foretell nothing, and none is judged.
const FEW_LEAST_MM: f64 = 0.6;
const FORETELLING_CELLS: f64 = 1.4;
/// Among so few the largest alone is put aside at a time: its neighbours look off too.
const FEW_SHARE: f64 = 0.99;

/// Which of many points lie off, by the sizes of their residuals, with those that are taken to lie off so far.
pub(super) fn among_many(outlying: &[bool], size: impl Fn(usize) -> f64) -> Vec<bool> {
    judged(outlying, LEAST_MM, SHARE, size)
}

/// Which of a few points lie off, by how far they are off what the others say.
pub(super) fn among_few(outlying: &[bool], size: impl Fn(usize) -> f64) -> Vec<bool> {
    judged(outlying, FEW_LEAST_MM, FEW_SHARE, size)
}

/// Whether readings lie so close that each can be told from the others. Every pair of them is looked at.
pub(super) fn foretell_each_other(readings: &[Reading], cell_mm: f64) -> bool {
    let nearest = |(index, a): (usize, &Reading)| {
        let others = readings.iter().enumerate().filter(|(other, _)| *other != index);
        others.map(|(_, b)| (a[0] - b[0]).hypot(a[1] - b[1])).fold(f64::INFINITY, f64::min)
    };
    let mut all: Vec<f64> = readings.iter().enumerate().map(nearest).collect();
    let middle = all.len() / 2;
    *all.select_nth_unstable_by(middle, f64::total_cmp).1 <= FORETELLING_CELLS * cell_mm
}

/// The median of those kept over 0.6745 is a standard deviation that outliers don't move.
fn judged(outlying: &[bool], least_mm: f64, share: f64, size: impl Fn(usize) -> f64) -> Vec<bool> {
    let sizes: Vec<f64> = (0..outlying.len()).map(size).collect();
    let mut kept: Vec<f64> = sizes.iter().zip(outlying).filter(|(_, out)| !**out).map(|(size, _)| *size).collect();
    let middle = kept.len() / 2;
    let median = *kept.select_nth_unstable_by(middle, f64::total_cmp).1;
    let largest = kept.iter().copied().fold(0.0, f64::max);
    let limit = (SIGMAS * median / 0.6745).max(least_mm);
    // Those put aside stay aside unless they are back in line.
    let next = limit.max(share * largest);
    sizes.iter().zip(outlying).map(|(&size, &out)| size > if out { limit } else { next }).collect()
}
