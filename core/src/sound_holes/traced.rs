//! A hole traced elsewhere and given as the data of an SVG path.

use kurbo::{Affine, BezPath, PathEl, PathSeg};

use super::impossible;
use crate::{
    design::{DesignError, TracedHole},
    plan::{Cubic, Line, Loop, Piece, Point, vector::distance},
};

/// Longest path read: a scan's thousands of points tell no more than a few dozen curves and make every stage slow.
const MOST_SEGMENTS: usize = 400;
/// Pieces shorter than this are rounding of the tracing program, mm.
const SHORTEST_MM: f64 = 1e-3;
/// Smallest opening, mm2: a hole of 1 mm diameter.
const LEAST_AREA_MM2: f64 = 0.8;

/// Clockwise about the middle of its box, y upwards.
pub(super) fn pieces(m: &TracedHole, path: &str) -> Result<Vec<Piece>, DesignError> {
    let refuse = |what: &str, value: String, limits: &str, remedy: &str| {
        Err(impossible(format!("{path}.path"), what, value, limits.to_owned(), remedy))
    };
    let lines = "one closed line of lines, arcs and Bézier curves";
    let drawn = match BezPath::from_svg(&m.path) {
        Ok(drawn) => drawn,
        Err(error) => {
            return refuse(
                "the traced hole is no SVG path",
                error.to_string(),
                lines,
                "copy the whole of the d attribute of the hole's path",
            );
        }
    };
    let begun = drawn.elements().iter().filter(|element| matches!(element, PathEl::MoveTo(_))).count();
    let segments: Vec<PathSeg> = drawn.segments().take(MOST_SEGMENTS + 1).collect();
    if begun != 1 || segments.is_empty() {
        return refuse(
            "the traced hole must be one line",
            format!("{begun} lines"),
            lines,
            "give the path of one hole alone",
        );
    }
    if segments.len() > MOST_SEGMENTS {
        return refuse(
            "the traced hole has too many segments",
            format!("more than {MOST_SEGMENTS}"),
            &format!("at most {MOST_SEGMENTS} segments"),
            "simplify the path in the program it was traced with",
        );
    }
    let mut pieces: Vec<Piece> = segments.iter().map(piece).collect();
    if let (Some(first), Some(last)) = (pieces.first(), pieces.last()) {
        pieces.push(Piece::Line(Line { start: last.end(), end: first.start() }));
    }
    pieces.retain(|piece| !piece.is_finite() || piece.length_mm() > SHORTEST_MM);
    if !pieces.iter().all(Piece::is_finite) {
        return refuse(
            "the traced hole's path holds a number that is too large",
            "infinite".into(),
            lines,
            "mend the path",
        );
    }
    if Loop::new(pieces.clone()).crosses_itself() {
        return refuse(
            "the traced hole's line crosses itself",
            "it crosses itself".into(),
            lines,
            "trace it once round",
        );
    }
    let area: f64 = pieces.iter().map(Piece::area_share_mm2).sum();
    if area.abs() < LEAST_AREA_MM2 {
        return refuse(
            "the traced hole is too small to be one",
            format!("{:.3} mm2", area.abs()),
            &format!("at least {LEAST_AREA_MM2} mm2; one unit of the path is one millimetre"),
            "scale the path to millimetres",
        );
    }
    if area > 0.0 {
        pieces = pieces.iter().rev().map(Piece::reversed).collect();
    }
    close_gaps(&mut pieces);
    let (low, high) = Loop::new(pieces.clone()).bounds_mm();
    let middle = [0, 1].map(|axis| -0.5 * (low[axis] + high[axis]));
    Ok(pieces.iter().map(|piece| piece.placed(0.0, middle)).collect())
}

impl TracedHole {
    /// A hole traced as an SVG path `d`, with its middle where `middle_mm` says. `mm_from_path` are the six numbers of the
    /// transform to millimetres, as in SVG's `matrix(a b c d e f)`; it may mirror.
    ///
    /// The path is kept with thousandths of a millimetre.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] for what is no path or no hole.
    pub fn of_svg_path(d: &str, mm_from_path: [f64; 6], middle_mm: Point) -> Result<TracedHole, DesignError> {
        const WHERE: &str = "sound_holes.treble";
        let [centre_to_centreline_mm, centre_station_mm] = middle_mm;
        let traced = |path: String| TracedHole { path, centre_to_centreline_mm, centre_station_mm, lean_deg: 0.0 };
        // Text that is no path is told by `pieces`, as it is where a design holds it.
        let Ok(drawn) = BezPath::from_svg(d) else { return pieces(&traced(d.into()), WHERE).map(|_| traced(d.into())) };
        let mut drawn = Affine::new(mm_from_path) * drawn;
        let fine = |p: kurbo::Point| kurbo::Point::new((p.x * 1e3).round() / 1e3, (p.y * 1e3).round() / 1e3);
        for element in drawn.elements_mut() {
            let points = match element {
                PathEl::MoveTo(p) | PathEl::LineTo(p) => vec![p],
                PathEl::QuadTo(p, q) => vec![p, q],
                PathEl::CurveTo(p, q, r) => vec![p, q, r],
                PathEl::ClosePath => vec![],
            };
            points.into_iter().for_each(|p| *p = fine(*p));
        }
        let hole = traced(drawn.to_svg());
        pieces(&hole, WHERE).map(|_| hole)
    }
}

/// SVG's y points down.
fn piece(segment: &PathSeg) -> Piece {
    let up = |p: kurbo::Point| [p.x, -p.y];
    match segment {
        PathSeg::Line(line) => Piece::Line(Line { start: up(line.p0), end: up(line.p1) }),
        PathSeg::Quad(quad) => cubic(&quad.raise(), up),
        PathSeg::Cubic(curve) => cubic(curve, up),
    }
}

fn cubic(curve: &kurbo::CubicBez, up: impl Fn(kurbo::Point) -> Point) -> Piece {
    Piece::Cubic(Cubic { control: [curve.p0, curve.p1, curve.p2, curve.p3].map(up) })
}

/// Joins ends that dropped pieces have left apart.
fn close_gaps(pieces: &mut [Piece]) {
    for i in 0..pieces.len() {
        let start = pieces[(i + 1) % pieces.len()].start();
        if distance(pieces[i].end(), start) > 0.0 {
            match &mut pieces[i] {
                Piece::Line(line) => line.end = start,
                Piece::Cubic(cubic) => cubic.control[3] = start,
                Piece::Arc(_) => {}
            }
        }
    }
}
