//! The geometry of a design.

use std::cell::OnceCell;

use crate::arching::Arching;
use crate::design::{Design, DesignError};
use crate::graduation::Graduation;
use crate::outline::Outline;
use crate::regions::{Wing, wings};
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
#[derive(Debug)]
pub(super) struct Boundaries {
    pub(super) outline: Outline,
    pub(super) holes: Vec<SoundHole>,
    /// Found when a fluting or a thickness first asks for them.
    wings: OnceCell<Vec<Wing>>,
}

impl Boundaries {
    /// Of a design whose numbers are within their limits.
    pub(super) fn new(design: &Design) -> Result<Self, DesignError> {
        let outline = Outline::new(&design.outline)?;
        let holes = SoundHole::both(&design.sound_holes, &outline)?;
        Ok(Self { outline, holes, wings: OnceCell::new() })
    }

    fn wings(&self) -> &[Wing] {
        self.wings.get_or_init(|| wings(&self.outline, &self.holes))
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
        Self::within(&boundaries, design, None)
    }

    /// Draws a checked `design` within its boundaries, with the help of the `last` shape where that has the same outline.
    pub(super) fn within(boundaries: &Boundaries, design: &Design, last: Option<&Shape>) -> Result<Self, DesignError> {
        let Boundaries { outline, holes, .. } = boundaries;
        let arching = match last.filter(|last| last.outline.measures() == outline.measures()) {
            Some(last) => last.surface.arching().reshaped(&design.arching, outline)?,
            None => Arching::new(&design.arching, outline)?,
        };
        let surface = Surface::new(&arching, outline).fluted(&design.sound_holes, || boundaries.wings());
        let graduation = Graduation::new(&design.graduation, &arching, outline).beside(holes, || boundaries.wings());
        Ok(Self { outline: outline.clone(), holes: holes.clone(), surface, graduation })
    }
}
