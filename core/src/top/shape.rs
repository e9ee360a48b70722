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

/// Outline and holes: what heights and thickness leave as it is.
#[derive(Debug, Clone)]
pub(super) struct Boundaries {
    pub(super) outline: Outline,
    pub(super) holes: Vec<SoundHole>,
}

impl Boundaries {
    /// Of a design whose numbers are within their limits.
    pub(super) fn new(design: &Design) -> Result<Self, DesignError> {
        let outline = Outline::new(&design.outline)?;
        let holes = SoundHole::both(&design.sound_holes, &outline)?;
        Ok(Self { outline, holes })
    }
}

impl Shape {
    /// Draws `design`.
    ///
    /// # Errors
    /// [`DesignError`] naming the measure that keeps it from being drawn.
    pub fn new(design: &Design) -> Result<Self, DesignError> {
        design.check_numbers()?;
        let boundaries = Boundaries::new(design)?;
        design.check_within(&boundaries.outline, &boundaries.holes)?;
        Self::within(&boundaries, design)
    }

    /// Draws a checked `design` within its boundaries.
    pub(super) fn within(boundaries: &Boundaries, design: &Design) -> Result<Self, DesignError> {
        let Boundaries { outline, holes } = boundaries.clone();
        let arching = Arching::new(&design.arching, &outline)?;
        let surface = Surface::new(&arching, &outline).fluted(&design.sound_holes, &outline, &holes);
        let graduation = Graduation::new(&design.graduation, &arching, &outline).beside(&outline, &holes);
        Ok(Self { outline, holes, surface, graduation })
    }
}
