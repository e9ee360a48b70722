//! What a step does.

use crate::regions::{RegionKind, Regions};
use crate::top::Shape;

/// What one step does, to first order.
#[derive(Debug, Clone, PartialEq)]
pub struct Effect {
    /// (mode): change of the frequency, Hz.
    pub by_mode_hz: Vec<f64>,
    /// Change of the mass, g.
    pub mass_g: f64,
    /// (narrow place): change of its width, mm.
    pub narrows_mm: Vec<f64>,
}

/// A place where the wood is narrow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Narrow {
    /// Whose.
    pub kind: RegionKind,
    /// How narrow, mm.
    pub width_mm: f64,
}

impl Narrow {
    /// The narrows of `shape`: wood between an eye and what is nearest to it.
    #[must_use]
    pub fn of(shape: &Shape) -> Vec<Narrow> {
        let narrows = |kind: RegionKind| matches!(kind, RegionKind::UpperNarrows | RegionKind::LowerNarrows(_));
        let regions = Regions::new(&shape.outline, &shape.holes).regions;
        let widths = regions.iter().filter(|region| narrows(region.kind));
        widths.filter_map(|own| Some(Narrow { kind: own.kind, width_mm: own.narrowest?.width_mm })).collect()
    }
}
