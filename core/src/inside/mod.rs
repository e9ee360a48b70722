//! The thickness side: the inside surface, and what the wood between outside and inside weighs.
//!
//! The inside is the outside moved in by the graduation along the outside's normal, as a caliper measures it. Volume and
//! centre of mass are integrals over the outside with the exact volume element of such a layer, not sums of flat slabs.

mod body;
mod mass_target;
#[cfg(test)]
mod mass_tests;
mod region_wood;
#[cfg(test)]
mod tests;
mod thickness_contours;

pub use body::Body;
pub use mass_target::{MassTargetError, uniform_change_mm};
pub use region_wood::{BarLine, RegionWood};
pub use thickness_contours::{ThicknessContour, thickness_contours};

use crate::{graduation::Graduation, plan::Point, surface::Surface};

/// The inside surface of a top.
#[derive(Clone, Copy, Debug)]
pub struct InsideSurface<'top> {
    surface: &'top Surface,
    graduation: &'top Graduation,
}

impl<'top> InsideSurface<'top> {
    /// The inside of a surface and its graduation.
    pub fn new(surface: &'top Surface, graduation: &'top Graduation) -> InsideSurface<'top> {
        InsideSurface { surface, graduation }
    }

    /// The point that a caliper touches opposite the outside's point above p: (x, y, z), mm.
    pub fn opposite(&self, p: Point) -> [f64; 3] {
        let on = self.surface.at(p);
        let normal = on.normal();
        let thickness = self.graduation.thickness_mm(p);
        [p[0] - thickness * normal[0], p[1] - thickness * normal[1], on.height_mm - thickness * normal[2]]
    }

    /// Height of the inside straight below a point of the plan, mm.
    ///
    /// Looks for the outside's point whose opposite lies there. Each step leaves the error times thickness times
    /// curvature, 0.3 at most in a regular design, so that thirty steps end at 1e-9 mm; a hollow tighter than the wood is
    /// thick has no inside surface, and what is given there is the last step.
    pub fn height_mm(&self, p: Point) -> f64 {
        let mut above = p;
        let mut opposite = self.opposite(above);
        for _ in 0..30 {
            let off = [p[0] - opposite[0], p[1] - opposite[1]];
            if off[0].abs() + off[1].abs() < 1e-10 {
                break;
            }
            above = [above[0] + off[0], above[1] + off[1]];
            opposite = self.opposite(above);
        }
        opposite[2]
    }
}
