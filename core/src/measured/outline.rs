//! A measured outline: points or an SVG path, turned into workshop measures.

use super::{MeasuredError, check_length};
use crate::{
    design::{MEASURES, OutlineMeasures},
    outline::Outline,
    plan::Point,
};

/// Points compared with the drawn outline; more cost time in proportion and tell nothing new.
const COMPARED: usize = 500;
/// The search ends when its steps are this share of the length: 0.004 mm on a violin.
const FINEST: f64 = 1e-5;
/// Tries at most; a hundred rounds over all measures.
const MOST_TRIES: usize = 3000;
/// Chords of an SVG path's curves stray at most this far, mm.
const FLATTENING_MM: f64 = 0.01;

/// Workshop measures that draw a measured outline, and how far the drawing stays from it.
#[derive(Clone, Debug, PartialEq)]
pub struct FittedOutline {
    /// The measures, both sides alike.
    pub measures: OutlineMeasures,
    /// Root mean square distance from the points to the drawn outline, mm.
    pub rms_mm: f64,
    /// The largest of these distances, mm.
    pub largest_mm: f64,
    /// Where it is, in the top's frame, mm.
    pub largest_at: Point,
}

/// The points of an outline in an SVG path's `d`, y upwards. Curves are flattened within 0.01 mm; one unit is one mm.
///
/// # Errors
/// [`MeasuredError::NotATable`] for text that is no path.
pub fn points_of_svg_path(d: &str) -> Result<Vec<Point>, MeasuredError> {
    let path = kurbo::BezPath::from_svg(d)
        .map_err(|error| MeasuredError::NotATable { detail: format!("no SVG path: {error}") })?;
    let mut points: Vec<Point> = Vec::new();
    kurbo::flatten(path, FLATTENING_MM, |element| {
        if let kurbo::PathEl::MoveTo(p) | kurbo::PathEl::LineTo(p) = element {
            points.push([p.x, -p.y]);
        }
    });
    Ok(points)
}

/// Finds the measures whose outline runs nearest to the points, which may start anywhere, run either way or lie in any
/// order; upright or lying, neck end up or down.
///
/// The search starts from `present`, stretched to the points' length and width, and moves one measure after the other as
/// long as the mean square distance falls. It finds the nearest minimum: an outline unlike any violin's is not found, and the
/// distances say so.
///
/// # Errors
/// [`MeasuredError`] for too few points, NaN, inches, or a shape that the arcs can't be laid on at all.
pub fn outline_of(points: &[Point], present: &OutlineMeasures) -> Result<FittedOutline, MeasuredError> {
    if let Some(index) = points.iter().position(|p| !p.iter().all(|v| v.is_finite())) {
        return Err(MeasuredError::NotFinite { index: index + 1 });
    }
    super::check_count(points.len())?;
    let points = in_frame(points)?;
    let step = points.len().div_ceil(COMPARED);
    let compared: Vec<Point> = points.iter().copied().step_by(step).collect();
    let square = |measures: &OutlineMeasures| -> f64 {
        match Outline::new(measures) {
            Ok(outline) => {
                let distance = |&p: &Point| outline.boundary().nearest(p).distance_mm.powi(2);
                compared.iter().map(distance).sum::<f64>() / compared.len() as f64
            }
            Err(_) => f64::INFINITY,
        }
    };
    let mut best = stretched(present, &points);
    let mut error = square(&best);
    if error.is_infinite() {
        return Err(MeasuredError::DoesNotFit {
            what: "no outline can be laid through these points".into(),
            value: format!("{:.0} mm long, {:.0} mm wide", best.length_mm, best.lower_width_mm),
            limits: "the outline of a top has an upper bout, a waist, a lower bout and four corners".into(),
            remedy: "give the points of the outline alone, or start from a design of like proportions".into(),
        });
    }
    let unit = 0.02 * best.length_mm;
    let mut steps: Vec<f64> = numbers(&mut best).into_iter().map(|(path, _)| unit * scale_of(path, unit)).collect();
    let mut tries = 0;
    while tries < MOST_TRIES && steps.iter().any(|step| *step > FINEST * best.length_mm * 0.05) {
        for (which, step) in steps.iter_mut().enumerate() {
            let mut better = false;
            for direction in [1.0, -1.0] {
                let mut tried = best.clone();
                let (path, number) = numbers(&mut tried).swap_remove(which);
                *number += direction * *step;
                let allowed = MEASURES.iter().find(|measure| measure.path == path);
                if allowed.is_some_and(|measure| *number < measure.least || *number > measure.most) {
                    continue;
                }
                tries += 1;
                let now = square(&tried);
                if now < error {
                    (best, error, better) = (tried, now, true);
                    break;
                }
            }
            // A step that helped may be longer the next time.
            *step *= if better { 1.3 } else { 0.5 };
        }
    }
    let outline = Outline::new(&best).map_err(|error| MeasuredError::DoesNotFit {
        what: error.to_string(),
        value: error.value(),
        limits: error.limits(),
        remedy: error.remedy(),
    })?;
    let distances = points.iter().map(|&p| (p, outline.boundary().nearest(p).distance_mm));
    let sum: f64 = distances.clone().map(|(_, d)| d * d).sum();
    let (largest_at, largest_mm) =
        distances.max_by(|a, b| a.1.total_cmp(&b.1)).ok_or(MeasuredError::TooFew { count: 0, least: 1 })?;
    Ok(FittedOutline { measures: best, rms_mm: (sum / points.len() as f64).sqrt(), largest_mm, largest_at })
}

/// Upright, the wider half below, the bottom at y = 0, the middle of its width on the centreline.
fn in_frame(points: &[Point]) -> Result<Vec<Point>, MeasuredError> {
    let range = |points: &[Point], k: usize| {
        let values = points.iter().map(|p| p[k]);
        [values.clone().fold(f64::INFINITY, f64::min), values.fold(f64::NEG_INFINITY, f64::max)]
    };
    let mut points = points.to_vec();
    let ([left, right], [low, high]) = (range(&points, 0), range(&points, 1));
    if right - left > high - low {
        // A quarter turn; the halves' widths say below which end is the neck's.
        points.iter_mut().for_each(|p| *p = [-p[1], p[0]]);
    }
    let [low, high] = range(&points, 1);
    check_length(high - low)?;
    let width = |upper: bool| {
        let half: Vec<Point> = points.iter().copied().filter(|p| (p[1] > 0.5 * (low + high)) == upper).collect();
        let [left, right] = range(&half, 0);
        right - left
    };
    if width(true) > width(false) {
        points.iter_mut().for_each(|p| *p = [-p[0], -p[1]]);
    }
    let ([left, right], [low, _]) = (range(&points, 0), range(&points, 1));
    let middle = 0.5 * (left + right);
    points.iter_mut().for_each(|p| *p = [p[0] - middle, p[1] - low]);
    Ok(points)
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

/// The numbers that shape an outline, by their paths.
fn numbers(m: &mut OutlineMeasures) -> Vec<(&'static str, &mut f64)> {
    vec![
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
    ]
}

/// The first step of a measure over that of a length: a degree moves a corner by less than a millimetre, a hundredth of
/// fullness an end by about one.
fn scale_of(path: &str, unit_mm: f64) -> f64 {
    if path.ends_with("fullness") { 0.03 / unit_mm } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    fn another() -> OutlineMeasures {
        let mut m = Design::demo().outline;
        (m.length_mm, m.lower_width_mm, m.upper_width_mm, m.waist_width_mm) = (352.0, 203.0, 165.0, 110.0);
        (m.lower_corner.station_mm, m.lower_corner.lean_deg, m.lower_end_fullness) = (150.0, 17.0, 0.81);
        m
    }

    /// A known outline, lying on its side, head down, walked the other way from an odd point: its measures come back.
    #[test]
    fn a_known_outline_comes_back_from_its_points_however_they_lie() {
        let known = another();
        let drawn = Outline::new(&known).unwrap().polyline(0.01);
        let count = drawn.len();
        let points: Vec<Point> = (0..count)
            .map(|i| drawn[(7 * count / 10 + count - i) % count])
            .map(|[x, y]| [900.0 - y, 20.0 + x])
            .collect();
        let fitted = outline_of(&points, &Design::demo().outline).unwrap();
        assert!(fitted.rms_mm < 0.1 && fitted.largest_mm < 0.4, "{} {}", fitted.rms_mm, fitted.largest_mm);
        let m = &fitted.measures;
        for (got, wanted) in [
            (m.length_mm, known.length_mm),
            (m.lower_width_mm, known.lower_width_mm),
            (m.upper_width_mm, known.upper_width_mm),
            (m.waist_width_mm, known.waist_width_mm),
            (m.lower_corner.station_mm, known.lower_corner.station_mm),
        ] {
            assert!((got - wanted).abs() < 0.5, "{got} {wanted}");
        }
    }

    #[test]
    fn an_svg_path_gives_its_points_upright() {
        // A circle of radius 50 about (10, 20) as two half turns: kurbo's arcs are exact to the flattening.
        let points = points_of_svg_path("M 60 20 A 50 50 0 0 1 -40 20 A 50 50 0 0 1 60 20 Z").unwrap();
        assert!(points.len() > 20);
        for p in &points {
            assert!(((p[0] - 10.0).hypot(p[1] + 20.0) - 50.0).abs() < 0.02, "{p:?}");
        }
        assert_eq!(points_of_svg_path("hello").unwrap_err().kind(), "not_a_table");
    }

    #[test]
    fn bad_outlines_are_refused() {
        let present = Design::demo().outline;
        let points = Outline::new(&present).unwrap().polyline(0.05);
        assert_eq!(outline_of(&points[..3], &present).unwrap_err().kind(), "too_few_points");
        let mut nan = points.clone();
        nan[4][0] = f64::NAN;
        assert_eq!(outline_of(&nan, &present), Err(MeasuredError::NotFinite { index: 5 }));
        let inches: Vec<Point> = points.iter().map(|p| p.map(|v| v / 25.4)).collect();
        assert_eq!(outline_of(&inches, &present).unwrap_err().kind(), "looks_like_inches");
    }
}
