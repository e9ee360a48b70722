//! The geometry of a design.

use crate::arching::Arching;
use crate::design::{Design, DesignError};
use crate::graduation::Graduation;
use crate::outline::Outline;
use crate::sound_holes::SoundHole;
use crate::surface::Surface;

/// Outline, holes, outer surface and thickness.
#[derive(Debug, Clone)]
pub struct Shape {
    /// The outline.
    pub outline: Outline,
    /// The sound holes, bass first; fewer than two where a side has none.
    pub holes: Vec<SoundHole>,
    /// The outer surface.
    pub surface: Surface,
    /// The thickness.
    pub graduation: Graduation,
}

impl Shape {
    /// Draws `design`.
    ///
    /// # Errors
    /// [`DesignError`] naming the measure that keeps it from being drawn.
    pub fn new(design: &Design) -> Result<Self, DesignError> {
        design.check()?;
        let outline = Outline::new(&design.outline)?;
        let holes = SoundHole::both(&design.sound_holes, &outline)?;
        let arching = Arching::new(&design.arching, &outline)?;
        let surface = Surface::new(&arching, &outline).fluted(&design.sound_holes, &outline, &holes);
        let graduation = Graduation::new(&design.graduation, &arching, &outline).beside(&outline, &holes);
        Ok(Self { outline, holes, surface, graduation })
    }
}
