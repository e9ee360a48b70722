//! Laying the points of an outline into the top's frame.

use super::{MeasuredError, check_length};
use crate::plan::Point;

/// What the maker puts right after seeing how an outline was laid; its turn and place the fit finds by itself.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OutlineCorrection {
    /// The neck end is where the bottom was taken to be.
    pub end_for_end: bool,
    /// Bass and treble side are exchanged: it was drawn from the inside.
    pub mirrored: bool,
}

/// Upright, the wider half below, the bottom at y = 0, the middle of its width on the centreline.
///
/// Found from the points' principal axes, so that start, direction, order and turn don't matter; points that crowd on one
/// side tilt it by some degrees, which the fit then takes out.
pub(super) fn in_frame(points: &[Point], correction: OutlineCorrection) -> Result<Vec<Point>, MeasuredError> {
    let mut points = points.to_vec();
    let count = points.len() as f64;
    let mean = [0, 1].map(|k| points.iter().map(|p| p[k]).sum::<f64>() / count);
    let moment = |i: usize, j: usize| points.iter().map(|p| (p[i] - mean[i]) * (p[j] - mean[j])).sum::<f64>();
    // The longest extent makes this angle with x (Jacobi's rotation of a symmetric 2 x 2 matrix) and is turned onto y.
    let angle = 0.5 * (2.0 * moment(0, 1)).atan2(moment(0, 0) - moment(1, 1));
    let (sin, cos) = angle.sin_cos();
    points.iter_mut().for_each(|p| *p = [sin * p[0] - cos * p[1], cos * p[0] + sin * p[1]]);
    let [low, high] = range(&points, 1);
    check_length(high - low)?;
    let width = |upper: bool| {
        let half: Vec<Point> = points.iter().copied().filter(|p| (p[1] > 0.5 * (low + high)) == upper).collect();
        let [left, right] = range(&half, 0);
        right - left
    };
    if (width(true) > width(false)) != correction.end_for_end {
        points.iter_mut().for_each(|p| *p = [-p[0], -p[1]]);
    }
    let ([left, right], [low, _]) = (range(&points, 0), range(&points, 1));
    let middle = 0.5 * (left + right);
    let sign = if correction.mirrored { -1.0 } else { 1.0 };
    points.iter_mut().for_each(|p| *p = [sign * (p[0] - middle), p[1] - low]);
    Ok(points)
}

fn range(points: &[Point], k: usize) -> [f64; 2] {
    let values = points.iter().map(|p| p[k]);
    [values.clone().fold(f64::INFINITY, f64::min), values.fold(f64::NEG_INFINITY, f64::max)]
}
