//! A crescent between two compass arcs that meet in its horns.

use std::f64::consts::{PI, TAU};

use super::impossible;
use crate::{
    design::{CrescentHole, DesignError, EndCut},
    plan::{Arc, Loop, Piece, Point},
};

/// Clockwise about its middle, upright, bowed out towards +x for a positive bow.
///
/// Both arcs end in the horns, `length` apart; their rises over that chord are the bow and half the width more or less.
/// Rounded horns are circles that touch both arcs.
pub(super) fn pieces(m: &CrescentHole, path: &str) -> Result<Vec<Piece>, DesignError> {
    let bow = m.bow_mm.abs();
    if bow <= 0.5 * m.width_mm {
        return Err(impossible(
            format!("{path}.bow_mm"),
            "the crescent is not hollow on its inner side",
            format!("{} mm", m.bow_mm),
            format!("it must be more than {} mm, half the width, either way", 0.5 * m.width_mm),
            "bow it more or make it narrower",
        ));
    }
    let side = |rise: f64| {
        let half = 0.5 * m.length_mm;
        let radius = (half * half + rise * rise) / (2.0 * rise);
        Side { radius, centre: rise - radius, horn: half.atan2(radius - rise) }
    };
    let (outer, inner) = (side(bow + 0.5 * m.width_mm), side(bow - 0.5 * m.width_mm));
    let pieces = match m.ends {
        EndCut::Sharp => vec![inner.upwards(inner.horn), outer.downwards(outer.horn)],
        EndCut::Round => rounded(&outer, &inner, m.end_rounding_mm).ok_or_else(|| {
            impossible(
                format!("{path}.end_rounding_mm"),
                "the crescent's horns can't be rounded so far",
                format!("{} mm", m.end_rounding_mm),
                format!("the rounding must fit into the crescent, which is {} mm wide at most", m.width_mm),
                "make the rounding smaller or the crescent wider",
            )
        })?,
    };
    let centred: Vec<Piece> = pieces.iter().map(|piece| piece.placed(0.0, [-bow, 0.0])).collect();
    Ok(if m.bow_mm < 0.0 { Loop::new(centred).mirrored().pieces().to_vec() } else { centred })
}

/// One of the two arcs: its middle stands on the x axis.
struct Side {
    radius: f64,
    /// x of the compass point.
    centre: f64,
    /// Angle of the horn.
    horn: f64,
}

impl Side {
    fn upwards(&self, to: f64) -> Piece {
        arc([self.centre, 0.0], self.radius, -to, 2.0 * to)
    }

    fn downwards(&self, from: f64) -> Piece {
        arc([self.centre, 0.0], self.radius, from, -2.0 * from)
    }

    fn angle_of(&self, p: Point) -> f64 {
        p[1].atan2(p[0] - self.centre)
    }
}

fn rounded(outer: &Side, inner: &Side, rounding: f64) -> Option<Vec<Piece>> {
    // The middle of the upper horn's circle: so far from both compass points that it touches both arcs.
    let (to_outer, to_inner) = (outer.radius - rounding, inner.radius + rounding);
    let x = (to_outer * to_outer - to_inner * to_inner - outer.centre * outer.centre + inner.centre * inner.centre)
        / (2.0 * (inner.centre - outer.centre));
    let y_squared = to_inner * to_inner - (x - inner.centre) * (x - inner.centre);
    if to_outer <= 0.0 || y_squared <= rounding * rounding {
        return None;
    }
    let horn = [x, y_squared.sqrt()];
    let (on_inner, on_outer) = (inner.angle_of(horn), outer.angle_of(horn));
    let sweep = -(on_inner + PI - on_outer).rem_euclid(TAU);
    Some(vec![
        inner.upwards(on_inner),
        arc(horn, rounding, on_inner + PI, sweep),
        outer.downwards(on_outer),
        arc([horn[0], -horn[1]], rounding, -on_outer, sweep),
    ])
}

fn arc(centre: Point, radius_mm: f64, start_rad: f64, sweep_rad: f64) -> Piece {
    Piece::Arc(Arc { centre, radius_mm, start_rad, sweep_rad })
}
