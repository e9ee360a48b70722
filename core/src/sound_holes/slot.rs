//! A straight slot.

use std::f64::consts::PI;

use super::impossible;
use crate::{
    design::{DesignError, EndCut, SlotHole},
    plan::{Arc, Line, Piece, Point},
};

/// Clockwise about the origin, upright.
pub(super) fn pieces(m: &SlotHole, path: &str) -> Result<Vec<Piece>, DesignError> {
    let half = 0.5 * m.width_mm;
    let line = |start: Point, end: Point| Piece::Line(Line { start, end });
    if m.ends == EndCut::Sharp {
        let end = 0.5 * m.length_mm;
        let corners = [[-half, -end], [-half, end], [half, end], [half, -end]];
        return Ok((0..4).map(|i| line(corners[i], corners[(i + 1) % 4])).collect());
    }
    if m.length_mm <= m.width_mm {
        return Err(impossible(
            format!("{path}.length_mm"),
            "the slot is no longer than it is wide, so that its ends can't be half round",
            format!("{} mm", m.length_mm),
            format!("it must be more than {} mm, its width", m.width_mm),
            "make the slot longer or narrower, or cut a round hole",
        ));
    }
    let end = 0.5 * m.length_mm - half;
    let half_round =
        |y: f64, start_rad: f64| Piece::Arc(Arc { centre: [0.0, y], radius_mm: half, start_rad, sweep_rad: -PI });
    Ok(vec![
        line([-half, -end], [-half, end]),
        half_round(end, PI),
        line([half, end], [half, -end]),
        half_round(-end, 0.0),
    ])
}
