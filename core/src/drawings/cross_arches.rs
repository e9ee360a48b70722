//! The five cross arches, one below the other.

use super::{Drawing, LineKind, handle::Handles, long_arch::by_fullness, path::Path, section::Cut};
use crate::{
    arching::Arching,
    design::{ArchingMeasures, CrossArch, Design},
    top::Shape,
};

/// From one plane of the ribs to the next, over the apex height: arches of different width then never meet.
const SPACING: f64 = 1.08;
/// Where the fullness is moved: half way to the channel, where a fuller curve rises most.
const FLANK: f64 = 0.5;

/// Height of a station's name over the crest's: low, where there is most room under the arch.
const NAME: f64 = 0.2;

type Picked = fn(&mut ArchingMeasures) -> &mut CrossArch;

pub(super) fn draw(design: &Design, shape: &Shape, handles: &Handles) -> Drawing {
    let m = &design.outline;
    let arching = shape.surface.arching();
    let stations: [(&'static str, f64, Picked); 5] = [
        ("upper_bout", m.upper_station_mm, |m| &mut m.cross_arches.upper_bout),
        ("upper_corners", m.upper_corner.station_mm, |m| &mut m.cross_arches.upper_corners),
        ("waist", m.waist_station_mm, |m| &mut m.cross_arches.waist),
        ("lower_corners", m.lower_corner.station_mm, |m| &mut m.cross_arches.lower_corners),
        ("lower_bout", m.lower_station_mm, |m| &mut m.cross_arches.lower_bout),
    ];
    let (low, high) = shape.outline.boundary().bounds_mm();
    let spacing = SPACING * design.arching.apex_height_mm;
    let last = spacing * (stations.len() - 1) as f64;
    let mut sheet = Drawing::new([low[0], -design.arching.apex_height_mm], [high[0], last]);
    for (row, (name, y, picked)) in stations.into_iter().enumerate() {
        let base = spacing * row as f64;
        let cut = Cut::Across(y);
        let wood = cut.wood(shape);
        if let (Some(first), Some(last)) = (wood.first(), wood.last()) {
            let plane = [[first[0], base], [last[1], base]];
            sheet.line(LineKind::RibPlane, Path::default().polyline(&plane, false).text());
        }
        for path in cut.draw(shape, &wood, base) {
            sheet.line(LineKind::Wood, path);
        }
        let crest = shape.surface.height_mm([0.0, y]);
        sheet.label(name, crest, [0.0, base - NAME * crest]);
        let own_bass = picked(&mut design.arching.clone()).bass.is_some();
        for (treble_side, sign) in [(true, 1.0), (false, -1.0)] {
            let Some(half) = arching.boundary().half_width(y, treble_side) else {
                continue;
            };
            let height =
                |a: &Arching| a.channel_height_mm() + a.long_rise_mm(y)[0] * a.cross_arch(y, FLANK, treble_side).height;
            let at = [sign * FLANK * half.x_mm, base - height(arching)];
            if treble_side {
                let fuller = by_fullness(&design.arching, shape, |m| &mut picked(m).fullness, height);
                let measure = format!("arching.cross_arches.{name}.fullness");
                sheet.handles.extend(handles.at(&measure, at, [0.0, -fuller]));
            } else if own_bass {
                let fuller = by_fullness(&design.arching, shape, |m| bass_of(picked(m)), height);
                let measure = "arching.cross_arches.*.bass.fullness";
                sheet.handles.extend(handles.sided(measure, &[name], at, [0.0, -fuller]));
            }
        }
    }
    sheet
}

/// The bass side's fullness; where that has none of its own, the treble side's.
fn bass_of(arch: &mut CrossArch) -> &mut f64 {
    match &mut arch.bass {
        Some(bass) => &mut bass.fullness,
        None => &mut arch.fullness,
    }
}
