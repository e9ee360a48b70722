//! Thicknesses at places: measured ones that make a map, and painted ones that lie over it.

use crate::{
    design::{MeasuredThickness, PaintedThickness, PlanPlace},
    plan::{Point, vector::distance},
};

/// The mean of measured thicknesses, each weighted by the distance to the power of minus four: exact at the points, smooth,
/// and never outside their range.
///
/// Source: Shepard 1968, A two-dimensional interpolation function for irregularly-spaced data, Proc. 23rd ACM Nat. Conf.,
/// 517-524. Its square lets far points pull everywhere; a smoothing spline overshoots where few points were measured.
/// Cost: one visit to every point.
pub(super) fn measured(points: &[MeasuredThickness], p: Point) -> f64 {
    let (mut weights, mut sum) = (0.0, 0.0);
    for point in points {
        let square = distance_to(&point.place, p).powi(2);
        if square == 0.0 {
            return point.thickness_mm;
        }
        let weight = 1.0 / (square * square);
        weights += weight;
        sum += weight * point.thickness_mm;
    }
    sum / weights
}

/// `under` with the painted thicknesses over it: each counts fully at its place and not at all from its reach on.
pub(super) fn painted(points: &[PaintedThickness], p: Point, under: f64) -> f64 {
    points.iter().fold(under, |thickness, point| {
        let nearness = (1.0 - (distance_to(&point.place, p) / point.reach_mm).powi(2)).max(0.0);
        thickness + (point.thickness_mm - thickness) * nearness * nearness
    })
}

fn distance_to(place: &PlanPlace, p: Point) -> f64 {
    distance([place.across_mm, place.station_mm], p)
}
