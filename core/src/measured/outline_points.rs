//! The points of a measured outline: a table or an SVG path.

use super::{MeasuredError, check_count, csv::Table};
use crate::plan::{Point, vector::bounds};

/// Chords of an SVG path's curves stray at most this far, mm.
const FLATTENING_MM: f64 = 0.01;

/// Reads points of an outline from text: two columns, across and along, with or without a line of headings; what stands in
/// further columns is left alone. Cells are parted as in [`super::read_csv`].
///
/// # Errors
/// [`MeasuredError`] with line and column of what can't be read; too few or too many points.
pub fn points_of_csv(text: &str) -> Result<Vec<Point>, MeasuredError> {
    let table = Table::new(text);
    let headings = table.headings();
    if headings.len() < 2 {
        return Err(MeasuredError::NotAnOutline { detail: "the first line has one column".into() });
    }
    let has_headings = headings[..2].iter().any(|cell| table.number(cell).is_none());
    let points: Vec<Point> = table.rows(has_headings)?;
    check_count(points.len())?;
    Ok(points)
}

/// The points of an outline in an SVG path's `d`, y upwards. `mm_from_path` are the six numbers of the transform to
/// millimetres, as in SVG's `matrix(a b c d e f)`. Curves are flattened within 0.01 mm; what lies within another part of the
/// path, as sound holes do, is left out.
///
/// # Errors
/// [`MeasuredError::NotAnOutline`] for text that is no path.
pub fn points_of_svg_path(d: &str, mm_from_path: [f64; 6]) -> Result<Vec<Point>, MeasuredError> {
    let path = kurbo::BezPath::from_svg(d)
        .map_err(|error| MeasuredError::NotAnOutline { detail: format!("no SVG path: {error}") })?;
    let mut parts: Vec<Vec<Point>> = Vec::new();
    kurbo::flatten(kurbo::Affine::new(mm_from_path) * path, FLATTENING_MM, |element| match element {
        kurbo::PathEl::MoveTo(p) => parts.push(vec![[p.x, -p.y]]),
        kurbo::PathEl::LineTo(p) => parts.last_mut().into_iter().for_each(|part| part.push([p.x, -p.y])),
        _ => {}
    });
    let boxes: Vec<(Point, Point)> = parts.iter().map(|part| bounds(part.iter().copied())).collect();
    let within = |a: &(Point, Point), b: &(Point, Point)| (0..2).all(|k| a.0[k] > b.0[k] && a.1[k] < b.1[k]);
    let outer = parts.iter().zip(&boxes).filter(|(_, own)| !boxes.iter().any(|other| within(own, other)));
    Ok(outer.flat_map(|(part, _)| part.iter().copied()).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_svg_path_gives_its_points_upright_and_in_millimetres() {
        // A circle of radius 50 about (10, 20) as two half turns: kurbo's arcs are exact to the flattening.
        let d = "M 60 20 A 50 50 0 0 1 -40 20 A 50 50 0 0 1 60 20 Z";
        for (matrix, scale) in [([1.0, 0.0, 0.0, 1.0, 0.0, 0.0], 1.0), ([0.5, 0.0, 0.0, 0.5, 5.0, 0.0], 0.5)] {
            let points = points_of_svg_path(d, matrix).unwrap();
            assert!(points.len() > 20);
            for p in &points {
                let off = (p[0] - 10.0 * scale - matrix[4]).hypot(p[1] + 20.0 * scale) - 50.0 * scale;
                assert!(off.abs() < 0.02, "{p:?}");
            }
        }
        let holed =
            points_of_svg_path(&format!("{d} M 0 10 L 10 10 L 5 20 Z"), [1.0, 0.0, 0.0, 1.0, 0.0, 0.0]).unwrap();
        assert!(holed.iter().all(|p| (p[0] - 10.0).hypot(p[1] + 20.0) > 49.0), "the hole's points are left out");
        assert_eq!(points_of_svg_path("hello", [1.0, 0.0, 0.0, 1.0, 0.0, 0.0]).unwrap_err().kind(), "not_an_outline");
    }

    #[test]
    fn a_table_of_points_is_read_with_and_without_headings() {
        let rows = "1,5;2\n0,5;2,25\n".repeat(10);
        let points = points_of_csv(&format!("x;y\n{rows}")).unwrap();
        assert_eq!((points.len(), points[0], points[1]), (20, [1.5, 2.0], [0.5, 2.25]));
        assert_eq!(points_of_csv(&rows).unwrap(), points);
        assert_eq!(points_of_csv("1,2\n3,4\n5,6\n").unwrap_err().kind(), "too_few_points");
        assert_eq!(points_of_csv("hello").unwrap_err().kind(), "not_an_outline");
        assert_eq!(points_of_csv(&format!("{rows}1;x\n")).unwrap_err().kind(), "not_a_number");
        assert_eq!(points_of_csv(&format!("{rows}1;NaN\n")), Err(MeasuredError::NotFinite { index: 21 }));
    }
}
