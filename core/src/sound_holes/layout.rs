//! Whether the holes lie where holes can lie.

use super::SoundHole;
use crate::{
    design::DesignError,
    outline::Outline,
    plan::{Loop, Point, polylines_cross},
};

/// The least wood left anywhere beside a hole: less breaks in the hand (common practice, no source), and a mesh there
/// would need elements far thinner than the wood is thick.
const LEAST_WOOD_MM: f64 = 2.0;

pub(super) fn check(holes: &[SoundHole], outline: &Outline) -> Result<(), DesignError> {
    let drawn: Vec<Vec<Point>> = holes.iter().map(|hole| stations(hole.boundary())).collect();
    for (hole, points) in holes.iter().zip(&drawn) {
        if hole.boundary().crosses_itself() || hole.area_mm2() <= 0.0 {
            return Err(crosses_itself(hole));
        }
        let (mut nearest, mut at) = (f64::INFINITY, [0.0; 2]);
        for &p in points {
            let distance = outline.signed_distance_mm(p);
            if distance < nearest {
                (nearest, at) = (distance, p);
            }
        }
        if nearest < LEAST_WOOD_MM {
            return Err(outside(hole, nearest, at));
        }
    }
    if let ([first, second], [a, b]) = (holes, drawn.as_slice()) {
        let inside_other = second.contains(a[0]) || first.contains(b[0]);
        let between = a
            .iter()
            .flat_map(|p| b.iter().map(move |q| (p[0] - q[0]).hypot(p[1] - q[1])))
            .fold(f64::INFINITY, f64::min);
        if inside_other || polylines_cross(a, b) || between < LEAST_WOOD_MM {
            return Err(overlap(between));
        }
    }
    Ok(())
}

/// Points of a boundary, within 0.05 mm of it and no more than a millimetre apart: small beside the least wood.
fn stations(boundary: &Loop) -> Vec<Point> {
    let mut points = Vec::new();
    for piece in boundary.pieces() {
        let steps = piece.steps_within(0.05).max(piece.length_mm().ceil() as usize);
        points.extend((0..steps).map(|i| piece.point(i as f64 / steps as f64)));
    }
    points
}

fn crosses_itself(hole: &SoundHole) -> DesignError {
    DesignError::Impossible {
        kind: "hole_crosses_itself",
        path: hole.path().into(),
        what: "the sound hole's boundary crosses itself".into(),
        value: "eyes, wings and stem run into each other".into(),
        limits: "wings and stem must fit between the eyes".into(),
        remedy: "move the eyes apart, or make the wings or the stem narrower".into(),
    }
}

fn outside(hole: &SoundHole, distance_mm: f64, at: Point) -> DesignError {
    let place = format!("at x = {:.1} mm, y = {:.1} mm", at[0], at[1]);
    DesignError::Impossible {
        kind: "hole_outside_outline",
        path: hole.path().into(),
        what: if distance_mm < 0.0 {
            format!("the sound hole leaves the outline {place}")
        } else {
            format!("the sound hole comes too near the edge {place}")
        },
        value: format!("{distance_mm:.1} mm of wood"),
        limits: format!("at least {LEAST_WOOD_MM} mm of wood must stay between hole and edge"),
        remedy: "move the eyes inwards, or make the hole smaller".into(),
    }
}

fn overlap(between_mm: f64) -> DesignError {
    DesignError::Impossible {
        kind: "holes_overlap",
        path: "sound_holes".into(),
        what: "the two sound holes meet or nearly meet".into(),
        value: format!("{between_mm:.1} mm between their boundaries"),
        limits: format!("at least {LEAST_WOOD_MM} mm of wood must stay between them"),
        remedy: "move the holes away from the centreline".into(),
    }
}
