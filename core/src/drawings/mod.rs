//! Working drawings of a top: the plan with its contour lines, the long arch, the five cross arches.
//!
//! After this stage each [`Drawing`] is a sheet of lines, labels and handles in millimetres at true scale, u to the right
//! and v downwards as SVG has it. How large, in which colours and with which words it is shown is the page's business.
//! Sections are cut through outline, holes and both surfaces, so that they show what a saw would.

mod cross_arches;
mod fittings;
mod handle;
mod long_arch;
mod path;
mod plan;
mod plan_lines;
mod section;
#[cfg(test)]
mod tests;

pub use handle::Handle;
pub use plan_lines::{closed, contour_on_plan, region_on_plan};

use serde::Serialize;

use crate::{design::Design, plan::Point, top::Shape};
use handle::Handles;

/// The three drawings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Drawings {
    /// Seen from outside, neck end up: u is x, v is minus y.
    pub plan: Drawing,
    /// Cut along the centreline, lying, the bottom edge at the left: u is y, v is minus z.
    pub long_arch: Drawing,
    /// Cut across at the five stations, the upper bout on top, one below the other: u is x.
    pub cross_arches: Drawing,
}

/// One sheet, mm.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Drawing {
    /// Least u and v of what is drawn.
    pub low: Point,
    /// Greatest u and v of what is drawn.
    pub high: Point,
    /// In drawing order.
    pub lines: Vec<DrawnLine>,
    /// Numbers and names.
    pub labels: Vec<Label>,
    /// What can be moved.
    pub handles: Vec<Handle>,
}

/// One line of a drawing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DrawnLine {
    /// What it is.
    pub kind: LineKind,
    /// SVG path data, mm with two decimals.
    pub path: String,
}

/// What a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LineKind {
    /// The edge in plan.
    Outline,
    /// A sound hole.
    Hole,
    /// The foot of bar or post, or the place of an added mass.
    Fitting,
    /// All points of one height, a whole number of millimetres.
    Contour,
    /// The same at each fifth millimetre.
    FifthContour,
    /// The lowest line of the channel.
    ChannelLine,
    /// Where the cross arches turn from convex to concave.
    InflectionLine,
    /// Wood that a section cuts through.
    Wood,
    /// The plane on which the top is glued to the ribs.
    RibPlane,
    /// The line that a measure is taken along.
    Dimension,
}

/// A name, a number in mm, or both.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Label {
    /// Key of the name: a station as in the design, or empty.
    pub name: &'static str,
    /// The number, mm.
    pub value_mm: f64,
    /// Its middle.
    pub at: Point,
    /// True for the height of a contour line, which is written small.
    pub minor: bool,
}

impl Drawings {
    /// Draws `shape`, which was made from `design`.
    ///
    /// Cost: a few milliseconds, most of it contour lines.
    #[must_use]
    pub fn new(design: &Design, shape: &Shape) -> Drawings {
        let handles = Handles::new(design);
        Drawings {
            plan: plan::draw(design, shape, &handles),
            long_arch: long_arch::draw(design, shape, &handles),
            cross_arches: cross_arches::draw(design, shape, &handles),
        }
    }
}

impl Drawing {
    fn new(low: Point, high: Point) -> Drawing {
        Drawing { low, high, lines: Vec::new(), labels: Vec::new(), handles: Vec::new() }
    }

    fn line(&mut self, kind: LineKind, path: String) {
        self.lines.push(DrawnLine { kind, path });
    }

    fn label(&mut self, name: &'static str, value_mm: f64, at: Point) {
        self.labels.push(Label { name, value_mm, at, minor: false });
    }
}
