//! Two compass arcs through two points with given directions.

use super::{
    Arc, Line, Piece, Point,
    vector::{along, dot, scale, sub, unit},
};

/// Joins `start` (leaving along `leaving`) and `end` (arriving along `arriving`, both unit vectors) by two arcs that
/// share their tangent where they meet. `ratio` (> 0) is the first tangent length over the second: larger makes the
/// first arc longer and its radius larger.
///
/// `None` when no pair of positive tangent lengths exists, or the points coincide.
///
/// Source: Bolton 1975, Biarc curves, Computer-Aided Design 7(2), 89-92: with tangent lengths d1, d2 the inner
/// control points q1 = start + d1 t1 and q2 = end - d2 t2 must be d1 + d2 apart.
pub fn biarc(start: Point, leaving: Point, end: Point, arriving: Point, ratio: f64) -> Option<[Piece; 2]> {
    let v = sub(end, start);
    let vv = dot(v, v);
    // |v - d1 t1 - d2 t2|^2 = (d1 + d2)^2 with d1 = ratio d2.
    let a = 2.0 * ratio * (1.0 - dot(leaving, arriving));
    let b = 2.0 * (ratio * dot(v, leaving) + dot(v, arriving));
    let d2 = if a < 1e-12 * (1.0 + ratio) {
        if b <= 0.0 {
            return None;
        }
        vv / b
    } else {
        // a d2^2 + b d2 - vv = 0, positive root, in the form that does not cancel.
        let root = (b * b + 4.0 * a * vv).sqrt();
        2.0 * vv / (b + root)
    };
    if !(d2 > 0.0 && d2.is_finite()) {
        return None;
    }
    let d1 = ratio * d2;
    let q1 = along(start, leaving, d1);
    let q2 = along(end, arriving, -d2);
    let joint = scale([q1[0] * d2 + q2[0] * d1, q1[1] * d2 + q2[1] * d1], 1.0 / (d1 + d2));
    let shared = unit(sub(q2, q1));
    Some([arc_or_line(start, leaving, joint), arc_or_line(joint, shared, end)])
}

fn arc_or_line(start: Point, leaving: Point, end: Point) -> Piece {
    match Arc::leaving(start, leaving, end) {
        Some(arc) => Piece::Arc(arc),
        None => Piece::Line(Line { start, end }),
    }
}
