//! The long arch: the top cut along its centreline.

use super::{Drawing, LineKind, handle::Handles, path::Path, section::Cut};
use crate::{
    arching::Arching,
    design::{ArchingMeasures, Design},
    plan::Point,
    top::Shape,
};

/// Where the fullness is moved: half way from the middle to the channel, where a fuller curve rises most.
const FLANK: f64 = 0.5;

pub(super) fn draw(design: &Design, shape: &Shape, handles: &Handles) -> Drawing {
    let length = shape.outline.length_mm();
    let arching = shape.surface.arching();
    let m = &design.arching;
    let [low_end, high_end] = arching.boundary().ends_mm();
    let middle = arching.apex_station_mm();
    let mut sheet = Drawing::new([0.0, -m.apex_height_mm], [length, 0.0]);
    sheet.line(LineKind::RibPlane, Path::default().polyline(&[[0.0, 0.0], [length, 0.0]], false).text());
    let cut = Cut::Along(0.0);
    for path in cut.draw(shape, &cut.wood(shape), 0.0) {
        sheet.line(LineKind::Wood, path);
    }
    sheet.label("", m.apex_height_mm, [middle, -m.apex_height_mm]);
    let channel = arching.channel_height_mm();
    let flank = middle + FLANK * (high_end - middle);
    let height = |a: &Arching| a.channel_height_mm() + a.long_rise_mm(flank)[0];
    let fuller = by_fullness(m, shape, |m| &mut m.long_arch_fullness, height);
    sheet.handles.extend(
        [
            ("arching.edge_height_mm", [0.0, -m.edge_height_mm], [0.0, -1.0]),
            ("arching.channel_depth_mm", [low_end, -channel], [0.0, 1.0]),
            ("arching.apex_height_mm", [middle, -m.apex_height_mm], [0.0, -1.0]),
            ("arching.long_arch_fullness", [flank, -height(arching)], [0.0, -fuller]),
            ("arching.apex_station_mm", [middle, 0.0], [1.0, 0.0]),
            ("arching.channel_distance_mm", [high_end, -channel], [-1.0, 0.0]),
        ]
        .into_iter()
        .filter_map(|(measure, at, along): (&str, Point, Point)| handles.at(measure, at, along)),
    );
    sheet
}

/// How a height of the arching changes with a fullness, mm for each unit, by the difference of two archings near the
/// present one; 0 where these can't be drawn.
pub(super) fn by_fullness(
    m: &ArchingMeasures,
    shape: &Shape,
    fullness: impl Fn(&mut ArchingMeasures) -> &mut f64,
    height: impl Fn(&Arching) -> f64,
) -> f64 {
    /// Small beside the range of fullness, large beside rounding.
    const NUDGE: f64 = 1e-3;
    let nudged = |by: f64| {
        let mut changed = m.clone();
        *fullness(&mut changed) += by;
        shape.surface.arching().reshaped(&changed, &shape.outline).map(|arching| height(&arching))
    };
    match (nudged(NUDGE), nudged(-NUDGE)) {
        (Ok(above), Ok(below)) => (above - below) / (2.0 * NUDGE),
        _ => 0.0,
    }
}
