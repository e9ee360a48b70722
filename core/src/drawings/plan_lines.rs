//! Lines that others lay over the plan.

use super::path::{Path, on_sheet};
use crate::{inside::ThicknessContour, plan::Point, regions::Region};

/// SVG path data of a region on the plan's sheet, mm: to be filled by the even-odd rule.
#[must_use]
pub fn region_on_plan(region: &Region) -> String {
    region.polygons.iter().map(|polygon| closed(polygon)).collect()
}

/// SVG path data of a closed polygon on the plan's sheet, mm.
#[must_use]
pub fn closed(polygon: &[Point]) -> String {
    Path::default().polyline(&sheet(polygon), true).text()
}

/// SVG path data of a line of equal thickness on the plan's sheet, mm.
#[must_use]
pub fn contour_on_plan(contour: &ThicknessContour) -> String {
    Path::default().smooth(&sheet(&contour.points), contour.closed).text()
}

fn sheet(points: &[Point]) -> Vec<Point> {
    points.iter().copied().map(on_sheet).collect()
}
