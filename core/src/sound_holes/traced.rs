//! A hole traced elsewhere and kept as a path in SVG's notation.

use super::{impossible, traced_path::parts};
use crate::{
    design::{DesignError, TracedHole},
    plan::{Line, Loop, Piece, vector::distance},
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
    let lines = "one closed line of M, L, Q and C commands, and Z";
    let parts = match parts(&m.path) {
        Ok(parts) => parts,
        Err(found) => {
            return refuse(
                "the traced hole is no path",
                found,
                lines,
                "read the hole's drawing on the page, which writes such a path, or write one with absolute commands",
            );
        }
    };
    let [mut pieces]: [Vec<Piece>; 1] = match parts.try_into() {
        Ok(only) => only,
        Err(parts) => {
            let parts: Vec<Vec<Piece>> = parts;
            return refuse(
                "the traced hole must be one line",
                format!("{} lines", parts.len()),
                lines,
                "give the path of one hole alone",
            );
        }
    };
    if pieces.len() > MOST_SEGMENTS {
        return refuse(
            "the traced hole has too many segments",
            format!("more than {MOST_SEGMENTS}"),
            &format!("at most {MOST_SEGMENTS} segments"),
            "simplify the path in the program it was traced with",
        );
    }
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
