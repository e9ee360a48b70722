//! A measured outline, turned into workshop measures.

use super::{MeasuredError, OutlineCorrection, band_matrix::BandMatrix, outline_frame::in_frame};
use crate::{
    design::{BassSide, Measure, OutlineMeasures},
    outline::Outline,
    plan::{Point, vector::cross},
};

/// Points compared with the drawn outline; more cost time in proportion and tell nothing new.
const COMPARED: usize = 500;
/// Rounds at most; twenty are usual from another top's proportions.
const ROUNDS: usize = 60;
/// The search ends when a round lowers the mean square distance by less than this share, or it is below rounding, mm^2.
const LEAST_GAIN: f64 = 1e-6;
const ROUNDING_MM2: f64 = 1e-14;
/// Damping at the start and at the end of the patience; a good round divides it by ten, a bad one multiplies it by ten
/// (Marquardt 1963, J. SIAM 11, 431-441).
const DAMPING: [f64; 2] = [1e-3, 1e9];
/// Steps for the derivatives, in mm or degrees and in pure numbers: far above rounding, far below the outline's radii.
const NUDGE: f64 = 1e-5;
const NUDGE_PURE: f64 = 1e-7;

/// Workshop measures that draw a measured outline, and how far the drawing stays from it.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedOutline {
    /// The measures; the bass side has its own if that was needed.
    pub measures: OutlineMeasures,
    /// The points in the top's frame, mm.
    pub points: Vec<Point>,
    /// Root mean square distance from the points to the drawn outline, mm.
    pub rms_mm: f64,
    /// The largest of these distances, mm.
    pub largest_mm: f64,
    /// Where it is, in the top's frame, mm.
    pub largest_at: Point,
    /// Which of the points that is, from 0.
    pub largest_index: usize,
}

/// Finds the measures whose outline runs nearest to the points, which may start anywhere, run either way or lie in any
/// order and turned in any way. Both sides are taken to be alike; if the outline then strays by more than `tolerance_mm`
/// anywhere, the bass side gets measures of its own.
///
/// Least squares of the distances over all measures and the outline's place, by Levenberg's and Marquardt's method, from
/// `present` stretched to the points' length and width. It finds the nearest minimum: an outline unlike any violin's is not
/// found, and the distances say so. An outline that was drawn by these measures comes back to a hundredth of a millimetre.
///
/// # Errors
/// [`MeasuredError`] for too few points, NaN, inches, or a shape that the arcs can't be laid on at all.
pub fn outline_of(
    points: &[Point],
    present: &OutlineMeasures,
    tolerance_mm: f64,
    correction: OutlineCorrection,
) -> Result<FittedOutline, MeasuredError> {
    if let Some(index) = points.iter().position(|p| !p.iter().all(|v| v.is_finite())) {
        return Err(MeasuredError::NotFinite { index: index + 1 });
    }
    super::check_count(points.len())?;
    let points = in_frame(points, correction)?;
    let step = points.len().div_ceil(COMPARED);
    let compared: Vec<Point> = points.iter().copied().step_by(step).collect();
    let start = Laid { measures: stretched(present, &points), across_mm: 0.0, along_mm: 0.0, turn_deg: 0.0 };
    let alike = nearest(start, &compared).ok_or_else(|| MeasuredError::DoesNotFit {
        what: "no outline can be laid through these points".into(),
        value: format!("{} points", points.len()),
        limits: "the outline of a top has an upper bout, a waist, a lower bout and four corners".into(),
        remedy: "give the points of the outline alone, or start from a design of like proportions".into(),
    })?;
    let fitted = judged(&alike, &points)?;
    if fitted.largest_mm <= tolerance_mm {
        return Ok(fitted);
    }
    let own = Laid { measures: with_bass_side(alike.measures.clone()), ..alike };
    let own = nearest(own, &compared).map(|own| judged(&own, &points)).transpose()?;
    Ok(own.filter(|own| own.largest_mm < fitted.largest_mm).unwrap_or(fitted))
}

/// An outline and how the points lie on it.
#[derive(Clone)]
struct Laid {
    measures: OutlineMeasures,
    across_mm: f64,
    along_mm: f64,
    turn_deg: f64,
}

impl Laid {
    /// What the search may change, by the measures' paths; the place has none.
    fn numbers(&mut self) -> Vec<(&'static str, &mut f64)> {
        let mut numbers = numbers(&mut self.measures);
        numbers.extend([("", &mut self.across_mm), ("", &mut self.along_mm), ("deg", &mut self.turn_deg)]);
        numbers
    }

    fn place(&self, [x, y]: Point) -> Point {
        let (sin, cos) = self.turn_deg.to_radians().sin_cos();
        // About the middle of the length, so that turn and shift don't pull at each other.
        let (along, middle) = (y - 0.5 * self.measures.length_mm, 0.5 * self.measures.length_mm);
        [cos * x - sin * along + self.across_mm, sin * x + cos * along + middle + self.along_mm]
    }

    /// Distances of the points from the outline, positive inside. `None` where it can't be drawn.
    fn distances(&self, points: &[Point]) -> Option<Vec<f64>> {
        let outline = Outline::new(&self.measures).ok()?;
        let boundary = outline.boundary();
        let distance = |&p: &Point| {
            let p = self.place(p);
            let nearest = boundary.nearest(p);
            let tangent = boundary.pieces()[nearest.piece].tangent(nearest.t);
            let inside = cross(tangent, [p[0] - nearest.point[0], p[1] - nearest.point[1]]) >= 0.0;
            if inside { nearest.distance_mm } else { -nearest.distance_mm }
        };
        Some(points.iter().map(distance).collect())
    }
}

/// The nearest minimum of the mean square distance. `None` where not even the start can be drawn.
fn nearest(start: Laid, points: &[Point]) -> Option<Laid> {
    let square = |distances: &[f64]| distances.iter().map(|d| d * d).sum::<f64>() / distances.len() as f64;
    let mut best = start;
    let mut distances = best.distances(points)?;
    let mut damping = DAMPING[0];
    for _ in 0..ROUNDS {
        let columns = derivatives(&best, &distances, points);
        let count = columns.len();
        let before = square(&distances);
        let mut improved = false;
        while damping < DAMPING[1] && !improved {
            let mut matrix = BandMatrix::zero(count, count - 1);
            let mut right: Vec<f64> = columns.iter().map(|column| -dot(column, &distances)).collect();
            for (i, column) in columns.iter().enumerate() {
                for (j, other) in columns.iter().enumerate().take(i + 1) {
                    matrix.add(i, j, dot(column, other));
                }
                // A number that moves nothing here still needs a pivot.
                matrix.add(i, i, damping * dot(column, column) + f64::EPSILON);
            }
            let tried = matrix.factor().map(|factor| {
                factor.solve(&mut right);
                stepped(&best, &right)
            });
            let now = tried.as_ref().and_then(|tried| tried.distances(points));
            match (tried, now) {
                (Some(tried), Some(now)) if square(&now) < before => {
                    (best, distances, improved) = (tried, now, true);
                    damping = (0.1 * damping).max(1e-12);
                }
                _ => damping *= 10.0,
            }
        }
        let now = square(&distances);
        if !improved || now < ROUNDING_MM2 || before - now < LEAST_GAIN * before {
            break;
        }
    }
    Some(best)
}

/// How each distance changes with each number.
fn derivatives(at: &Laid, distances: &[f64], points: &[Point]) -> Vec<Vec<f64>> {
    let mut at = at.clone();
    let count = at.numbers().len();
    let column = |which: usize| {
        let mut nudged = at.clone();
        let mut by = NUDGE;
        if let Some((path, number)) = nudged.numbers().get_mut(which) {
            if path.ends_with("fullness") {
                by = NUDGE_PURE;
            }
            **number += by;
        }
        let Some(moved) = nudged.distances(points) else { return vec![0.0; distances.len()] };
        // At a corner's point the two sides give a distance opposite signs; it can't have leapt from one to the other.
        let change = |(&now, &before): (&f64, &f64)| {
            let now = if (now - before).abs() < (now + before).abs() { now } else { -now };
            (now - before) / by
        };
        moved.iter().zip(distances).map(change).collect()
    };
    (0..count).map(column).collect()
}

/// All numbers moved, each no further than a design allows.
fn stepped(from: &Laid, by: &[f64]) -> Laid {
    let mut to = from.clone();
    for ((path, number), by) in to.numbers().into_iter().zip(by) {
        *number += by;
        if let Some(measure) = Measure::of_path(path) {
            *number = number.clamp(measure.least, measure.most);
        }
    }
    to
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn judged(laid: &Laid, points: &[Point]) -> Result<FittedOutline, MeasuredError> {
    let outline = Outline::new(&laid.measures).map_err(|error| MeasuredError::DoesNotFit {
        what: error.to_string(),
        value: error.value(),
        limits: error.limits(),
        remedy: error.remedy(),
    })?;
    let points: Vec<Point> = points.iter().map(|&p| laid.place(p)).collect();
    let distances: Vec<f64> = points.iter().map(|&p| outline.boundary().nearest(p).distance_mm).collect();
    let sum: f64 = distances.iter().map(|d| d * d).sum();
    let farthest = distances.iter().copied().enumerate().max_by(|a, b| a.1.total_cmp(&b.1));
    let (largest_index, largest_mm) = farthest.ok_or(MeasuredError::TooFew { count: 0, least: 1 })?;
    Ok(FittedOutline {
        measures: laid.measures.clone(),
        rms_mm: (sum / points.len() as f64).sqrt(),
        largest_mm,
        largest_at: points[largest_index],
        largest_index,
        points,
    })
}

/// The present outline at the points' length and width.
fn stretched(present: &OutlineMeasures, points: &[Point]) -> OutlineMeasures {
    let length = points.iter().map(|p| p[1]).fold(0.0, f64::max);
    let width = 2.0 * points.iter().map(|p| p[0]).fold(0.0, f64::max);
    let (along, across) = (length / present.length_mm, width / present.lower_width_mm);
    let mut measures = OutlineMeasures { bass: None, ..present.clone() };
    for (path, number) in numbers(&mut measures) {
        if path.ends_with("station_mm") || path.ends_with("length_mm") || path.ends_with("corner.width_mm") {
            *number *= along;
        } else if path.ends_with("_mm") {
            *number *= across;
        }
    }
    measures
}

fn with_bass_side(measures: OutlineMeasures) -> OutlineMeasures {
    let bass = BassSide {
        upper_half_width_mm: 0.5 * measures.upper_width_mm,
        waist_half_width_mm: 0.5 * measures.waist_width_mm,
        lower_half_width_mm: 0.5 * measures.lower_width_mm,
        upper_corner: measures.upper_corner.clone(),
        lower_corner: measures.lower_corner.clone(),
    };
    OutlineMeasures { bass: Some(bass), ..measures }
}

/// The numbers that shape an outline, by their paths.
fn numbers(m: &mut OutlineMeasures) -> Vec<(&'static str, &mut f64)> {
    let mut numbers = vec![
        ("outline.length_mm", &mut m.length_mm),
        ("outline.lower_width_mm", &mut m.lower_width_mm),
        ("outline.upper_width_mm", &mut m.upper_width_mm),
        ("outline.waist_width_mm", &mut m.waist_width_mm),
        ("outline.lower_station_mm", &mut m.lower_station_mm),
        ("outline.upper_station_mm", &mut m.upper_station_mm),
        ("outline.waist_station_mm", &mut m.waist_station_mm),
        ("outline.lower_corner.station_mm", &mut m.lower_corner.station_mm),
        ("outline.lower_corner.reach_mm", &mut m.lower_corner.reach_mm),
        ("outline.upper_corner.station_mm", &mut m.upper_corner.station_mm),
        ("outline.upper_corner.reach_mm", &mut m.upper_corner.reach_mm),
        ("outline.lower_corner.width_mm", &mut m.lower_corner.width_mm),
        ("outline.upper_corner.width_mm", &mut m.upper_corner.width_mm),
        ("outline.lower_corner.lean_deg", &mut m.lower_corner.lean_deg),
        ("outline.upper_corner.lean_deg", &mut m.upper_corner.lean_deg),
        ("outline.lower_end_fullness", &mut m.lower_end_fullness),
        ("outline.upper_end_fullness", &mut m.upper_end_fullness),
    ];
    if let Some(bass) = &mut m.bass {
        numbers.extend([
            ("outline.bass.upper_half_width_mm", &mut bass.upper_half_width_mm),
            ("outline.bass.waist_half_width_mm", &mut bass.waist_half_width_mm),
            ("outline.bass.lower_half_width_mm", &mut bass.lower_half_width_mm),
            ("outline.bass.upper_corner.station_mm", &mut bass.upper_corner.station_mm),
            ("outline.bass.upper_corner.reach_mm", &mut bass.upper_corner.reach_mm),
            ("outline.bass.upper_corner.width_mm", &mut bass.upper_corner.width_mm),
            ("outline.bass.upper_corner.lean_deg", &mut bass.upper_corner.lean_deg),
            ("outline.bass.lower_corner.station_mm", &mut bass.lower_corner.station_mm),
            ("outline.bass.lower_corner.reach_mm", &mut bass.lower_corner.reach_mm),
            ("outline.bass.lower_corner.width_mm", &mut bass.lower_corner.width_mm),
            ("outline.bass.lower_corner.lean_deg", &mut bass.lower_corner.lean_deg),
        ]);
    }
    numbers
}
