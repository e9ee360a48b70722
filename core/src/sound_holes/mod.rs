//! Sound holes: closed smooth boundaries cut through the top.
//!
//! After this stage every hole is a clockwise [`Loop`] (the wood lies on its left) that does not cross itself, lies
//! inside the outline on its own side, and meets no other hole.

mod crescent;
mod equal_area;
mod eyes_and_stem;
mod landmarks;
mod layout;
mod lean;
#[cfg(test)]
mod pattern_tests;
mod round;
mod slot;
#[cfg(test)]
mod tests;
mod traced;
mod traced_path;
mod traced_svg;

use crate::{
    design::{DesignError, SoundHoleChoice, SoundHoles},
    outline::Outline,
    plan::{Loop, Piece, Point},
};

pub use equal_area::Pattern;
pub use landmarks::{Eye, EyesAndAxis, StemAxis};

/// One hole.
#[derive(Clone, Debug, PartialEq)]
pub struct SoundHole {
    landmarks: Option<EyesAndAxis>,
    /// As drawn, on the treble side.
    drawn: Loop,
    boundary: Loop,
    treble_side: bool,
}

impl SoundHole {
    /// The holes of a design, bass first; a side without a hole gives none.
    ///
    /// # Errors
    /// [`DesignError::Impossible`] when a hole can't be drawn, leaves the wood or meets the other hole.
    pub fn both(choices: &SoundHoles, outline: &Outline) -> Result<Vec<SoundHole>, DesignError> {
        let mut holes = Vec::new();
        for (choice, treble_side, path) in
            [(&choices.bass, false, "sound_holes.bass"), (&choices.treble, true, "sound_holes.treble")]
        {
            // Drawn as if on the treble side, then laid on its own.
            let (drawn, landmarks) = match choice {
                SoundHoleChoice::None => continue,
                SoundHoleChoice::Round(round) => (round::boundary(round), None),
                SoundHoleChoice::Crescent(m) => (
                    placed(&crescent::pieces(m, path)?, m.lean_deg, m.centre_to_centreline_mm, m.centre_station_mm),
                    None,
                ),
                SoundHoleChoice::Slot(m) => {
                    (placed(&slot::pieces(m, path)?, m.lean_deg, m.centre_to_centreline_mm, m.centre_station_mm), None)
                }
                SoundHoleChoice::Traced(m) => (
                    placed(&traced::pieces(m, path)?, m.lean_deg, m.centre_to_centreline_mm, m.centre_station_mm),
                    None,
                ),
                SoundHoleChoice::EyesAndStem(measures) => {
                    // Both sides of a symmetric outline are measured on one, so that alike holes come out alike to the last bit.
                    let measured_on_treble = treble_side || outline.is_symmetric();
                    let to_edge = |p: Point| outline.signed_distance_mm(Outline::on_side(p, measured_on_treble));
                    let nick_station = outline.length_mm() - choices.stop_mm;
                    let (drawn, landmarks) = eyes_and_stem::boundary(measures, nick_station, path, to_edge)?;
                    (drawn, Some(landmarks))
                }
            };
            let boundary = if treble_side { drawn.clone() } else { drawn.mirrored() };
            let landmarks = landmarks.map(|drawn: EyesAndAxis| drawn.laid(|p| Outline::on_side(p, treble_side)));
            holes.push(SoundHole { landmarks, drawn, boundary, treble_side });
        }
        layout::check(&holes, outline)?;
        Ok(holes)
    }

    /// The boundary, clockwise.
    pub fn boundary(&self) -> &Loop {
        &self.boundary
    }

    /// The stem at its nicks; a hole that isn't an f-hole has none.
    pub fn stem(&self) -> Option<StemAxis> {
        self.landmarks.map(|landmarks| landmarks.stem)
    }

    /// The upper and the lower eye; a hole that isn't an f-hole has none.
    pub fn eyes(&self) -> Option<[Eye; 2]> {
        self.landmarks.map(|landmarks| landmarks.eyes)
    }

    /// A point in the opening at its upper end and one at its lower end: the middles of the eyes where there are eyes.
    pub fn ends_mm(&self) -> [Point; 2] {
        self.eyes().map_or_else(|| landmarks::ends(&self.boundary), |eyes| eyes.map(|eye| eye.centre))
    }

    /// True for a point of the boundary on the stem's sides or nicks; false on hooks and eyes, which are compass arcs.
    pub fn on_stem(&self, p: Point) -> bool {
        !matches!(self.boundary.pieces()[self.boundary.nearest(p).piece], Piece::Arc(_))
    }

    /// Middle of the box round it, as on the treble side, mm.
    pub fn middle_mm(&self) -> Point {
        let (low, high) = self.drawn.bounds_mm();
        [0, 1].map(|axis| 0.5 * (low[axis] + high[axis]))
    }

    /// True for the hole on the treble side.
    pub fn is_treble(&self) -> bool {
        self.treble_side
    }

    /// True when the other hole is this one's mirror image across the centreline.
    pub fn mirrors(&self, other: &SoundHole) -> bool {
        self.treble_side != other.treble_side && self.drawn == other.drawn
    }

    /// Area of the opening, mm2.
    pub fn area_mm2(&self) -> f64 {
        -self.boundary.area_mm2()
    }

    /// True for a point in the opening.
    pub fn contains(&self, p: Point) -> bool {
        self.boundary.contains(p)
    }

    pub(crate) fn path(&self) -> &'static str {
        if self.treble_side { "sound_holes.treble" } else { "sound_holes.bass" }
    }
}

/// Pieces about the origin, laid on the treble side.
fn placed(pieces: &[Piece], lean_deg: f64, across_mm: f64, station_mm: f64) -> Loop {
    Loop::new(pieces.iter().map(|piece| piece.placed(lean_deg.to_radians(), [across_mm, station_mm])).collect())
}

/// A hole whose measures don't go together.
fn impossible(path: String, what: &str, value: String, limits: String, remedy: &str) -> DesignError {
    DesignError::Impossible {
        kind: "hole_not_drawable",
        path: path.into(),
        what: what.into(),
        value,
        limits,
        remedy: remedy.into(),
    }
}
