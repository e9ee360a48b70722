//! Sound holes: closed smooth boundaries cut through the top.
//!
//! After this stage every hole is a clockwise [`Loop`] (the wood lies on its left) that does not cross itself, lies
//! inside the outline on its own side, and meets no other hole.

mod eyes_and_stem;
mod layout;
mod round;
#[cfg(test)]
mod tests;

use crate::{
    design::{DesignError, SoundHoleChoice, SoundHoles},
    outline::Outline,
    plan::{Loop, Point},
};

/// One hole.
#[derive(Clone, Debug, PartialEq)]
pub struct SoundHole {
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
            let drawn = match choice {
                SoundHoleChoice::None => continue,
                SoundHoleChoice::Round(round) => round::boundary(round),
                SoundHoleChoice::EyesAndStem(measures) => {
                    // Both sides of a symmetric outline are measured on one, so that alike holes come out alike to the last bit.
                    let measured_on_treble = treble_side || outline.is_symmetric();
                    let to_edge = |p: Point| outline.signed_distance_mm(Outline::on_side(p, measured_on_treble));
                    eyes_and_stem::boundary(measures, outline.length_mm() - choices.stop_mm, path, to_edge)?
                }
            };
            let boundary = if treble_side { drawn.clone() } else { drawn.mirrored() };
            holes.push(SoundHole { drawn, boundary, treble_side });
        }
        layout::check(&holes, outline)?;
        Ok(holes)
    }

    /// The boundary, clockwise.
    pub fn boundary(&self) -> &Loop {
        &self.boundary
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
