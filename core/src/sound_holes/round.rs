//! A round hole.

use std::f64::consts::FRAC_PI_2;

use crate::{
    design::RoundHole,
    plan::{Arc, Loop, Piece},
};

/// Four clockwise quarter arcs, on the treble side.
pub(super) fn boundary(m: &RoundHole) -> Loop {
    let quarter = |i: u8| {
        Piece::Arc(Arc {
            centre: [m.centre_to_centreline_mm, m.centre_station_mm],
            radius_mm: 0.5 * m.diameter_mm,
            start_rad: -FRAC_PI_2 * f64::from(i),
            sweep_rad: -FRAC_PI_2,
        })
    };
    Loop::new((0..4).map(quarter).collect())
}
