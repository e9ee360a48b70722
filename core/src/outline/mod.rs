//! The outline: the shape of the top in plan, built with compass arcs from workshop measures.
//!
//! After this stage the outline is one closed counter-clockwise [`Loop`] of arcs and short straight corner tips. It is
//! tangent-continuous everywhere except at the eight points where a corner's tip is cut; between these points lie its
//! smooth *sides*: lower bout, upper bout, two waists and four tips. The measures come back from the drawn curve; a
//! spline through workshop points would only come near them, which is why arcs are used.

mod band;
mod construction;
mod drawing;
#[cfg(test)]
mod tests;

use construction::Half;

use crate::{
    design::{BassSide, DesignError, OutlineMeasures},
    plan::{Loop, Piece, Point, vector::mirrored},
};

pub use band::{EdgeBand, OnBand};
pub use drawing::Side;

/// The top's shape in plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    measures: OutlineMeasures,
    boundary: Loop,
    sides: Vec<Side>,
    treble: Half,
    bass: Half,
}

impl Outline {
    /// Draws the outline.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] when stations cross, an arc can't be drawn or the outline crosses itself.
    pub fn new(measures: &OutlineMeasures) -> Result<Outline, DesignError> {
        let treble = Half::new(measures)?;
        // Both halves are drawn on the side x > 0; the bass one is mirrored when it is laid down.
        let bass = match &measures.bass {
            None => treble.clone(),
            Some(own) => Half::new(&drawn_alone(measures, own)).map_err(on_bass_side)?,
        };
        let sides = drawing::sides(&treble, &bass);
        let boundary = Loop::new(sides.iter().flat_map(|side| side.pieces.iter().copied()).collect());
        if boundary.crosses_itself() {
            return Err(construction::crossing(measures));
        }
        Ok(Outline { measures: measures.clone(), boundary, sides, treble, bass })
    }

    /// The closed boundary, counter-clockwise from the bass lower corner.
    pub fn boundary(&self) -> &Loop {
        &self.boundary
    }

    /// The smooth sides between corner points, in the boundary's order.
    pub fn sides(&self) -> &[Side] {
        &self.sides
    }

    /// The measures it was drawn from.
    pub fn measures(&self) -> &OutlineMeasures {
        &self.measures
    }

    /// True when the bass side mirrors the treble side exactly.
    pub fn is_symmetric(&self) -> bool {
        self.treble == self.bass
    }

    /// Length along the centreline, mm.
    pub fn length_mm(&self) -> f64 {
        self.measures.length_mm
    }

    /// The eight points where a corner's tip begins or ends, in the boundary's order.
    pub fn corner_points_mm(&self) -> Vec<Point> {
        self.sides.iter().filter_map(|side| side.pieces.first().map(Piece::start)).collect()
    }

    /// Distance of the outermost outline point at station y from the centreline, mm, on the treble side.
    /// `None` beyond the ends.
    pub fn half_width_mm(&self, y_mm: f64) -> Option<f64> {
        self.treble.half_width_mm(y_mm)
    }

    /// Width of the outline at station y, both sides, mm. `None` beyond the ends.
    pub fn width_mm(&self, y_mm: f64) -> Option<f64> {
        Some(self.treble.half_width_mm(y_mm)? + self.bass.half_width_mm(y_mm)?)
    }

    /// Inside the outline.
    pub fn contains(&self, p: Point) -> bool {
        self.boundary.contains(p)
    }

    /// Distance to the outline, mm: positive inside.
    pub fn signed_distance_mm(&self, p: Point) -> f64 {
        self.boundary.signed_distance_mm(p)
    }

    /// Closed polyline that strays at most `tolerance_mm`, corner points kept.
    pub fn polyline(&self, tolerance_mm: f64) -> Vec<Point> {
        self.boundary.polyline(tolerance_mm)
    }

    /// Enclosed area, mm2.
    pub fn area_mm2(&self) -> f64 {
        self.boundary.area_mm2()
    }

    /// Length of the boundary, mm.
    pub fn perimeter_mm(&self) -> f64 {
        self.boundary.perimeter_mm()
    }

    /// One half, drawn as if on the treble side.
    pub(crate) fn half(&self, treble_side: bool) -> &Half {
        if treble_side { &self.treble } else { &self.bass }
    }

    /// Where the middle of a corner's tip stands, treble side: lower, then upper.
    pub fn corner_tips_mm(&self) -> [Point; 2] {
        [self.treble.lower_tip.point(0.5), self.treble.upper_tip.point(0.5)]
    }

    /// Lays a point of the treble half on the side asked for.
    pub fn on_side(p: Point, treble_side: bool) -> Point {
        if treble_side { p } else { mirrored(p) }
    }
}

/// The measures of a top whose both sides are like its bass side.
fn drawn_alone(measures: &OutlineMeasures, own: &BassSide) -> OutlineMeasures {
    OutlineMeasures {
        upper_width_mm: 2.0 * own.upper_half_width_mm,
        waist_width_mm: 2.0 * own.waist_half_width_mm,
        lower_width_mm: 2.0 * own.lower_half_width_mm,
        upper_corner: own.upper_corner.clone(),
        lower_corner: own.lower_corner.clone(),
        bass: None,
        ..measures.clone()
    }
}

/// Says of a fault of the bass side's drawing that it is there.
fn on_bass_side(error: DesignError) -> DesignError {
    match error {
        DesignError::Impossible { kind, what, value, limits, remedy, .. } => DesignError::Impossible {
            kind,
            path: "outline.bass".into(),
            what: format!("on the bass side: {what}"),
            value,
            limits,
            remedy,
        },
        other => other,
    }
}
