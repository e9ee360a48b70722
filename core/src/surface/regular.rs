//! Random regular designs: tops as makers draw them, from small fractional to cello size.

use proptest::prelude::*;

use crate::design::Design;

/// Designs with outline and arching drawn at random round the demonstration design. Sound holes stay away: the surface
/// doesn't know them.
pub(crate) fn regular_designs() -> impl Strategy<Value = Design> {
    let outline = (0.55..2.0f64, 198.0..212.0f64, 160.0..174.0f64, 104.0..118.0f64, 148.0..158.0f64, 5.0..35.0f64);
    let ends = (0.72..0.9f64, 0.72..0.9f64);
    let arching = (12.0..18.0f64, 0.3..1.5f64, 6.0..9.5f64, 0.55..0.68f64);
    let cross = prop::array::uniform5(0.46..0.64f64);
    (outline, ends, arching, cross).prop_map(|(outline, ends, arching, cross)| {
        let mut design = Design::demo();
        let (scale, lower, upper, waist, corner, lean) = outline;
        let m = &mut design.outline;
        (m.lower_width_mm, m.upper_width_mm, m.waist_width_mm) = (lower, upper, waist);
        (m.lower_corner.station_mm, m.lower_corner.lean_deg) = (corner, lean);
        (m.upper_end_fullness, m.lower_end_fullness) = ends;
        for measure in [
            &mut m.length_mm,
            &mut m.lower_width_mm,
            &mut m.upper_width_mm,
            &mut m.waist_width_mm,
            &mut m.lower_station_mm,
            &mut m.upper_station_mm,
            &mut m.waist_station_mm,
            &mut m.lower_corner.station_mm,
            &mut m.lower_corner.reach_mm,
            &mut m.upper_corner.station_mm,
            &mut m.upper_corner.reach_mm,
            &mut m.lower_corner.width_mm,
            &mut m.upper_corner.width_mm,
        ] {
            *measure *= scale;
        }
        let (apex, depth, distance, long) = arching;
        let a = &mut design.arching;
        (a.apex_height_mm, a.edge_height_mm) = (apex * scale, 4.0 * scale);
        (a.channel_depth_mm, a.channel_distance_mm) = (depth * scale, distance * scale);
        a.long_arch_fullness = long;
        let arches = &mut a.cross_arches;
        for (arch, fullness) in [
            &mut arches.upper_bout,
            &mut arches.upper_corners,
            &mut arches.waist,
            &mut arches.lower_corners,
            &mut arches.lower_bout,
        ]
        .into_iter()
        .zip(cross)
        {
            arch.fullness = fullness;
        }
        design
    })
}
