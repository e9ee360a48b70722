//! The plan: outline, holes, channel line, inflection line and contour lines.

use super::{
    Drawing, Label, LineKind,
    handle::{Handle, Handles},
    path::{Path, on_sheet},
};
use crate::{
    design::{CornerMeasures, Design, EyesAndStem, SoundHoleChoice},
    outline::Outline,
    plan::{
        Piece, Point,
        vector::{along, left_of},
    },
    sound_holes::SoundHole,
    top::Shape,
};

/// Between contour lines, mm.
const CONTOUR_STEP_MM: f64 = 1.0;
/// Which of them are drawn stronger and with their height.
const FIFTH: u32 = 5;
/// How far below the bottom edge the length stands.
const LENGTH_BELOW_MM: f64 = 8.0;
/// Between points of the channel line and of the inflection line, mm.
const STEP_MM: f64 = 3.0;

pub(super) fn draw(design: &Design, shape: &Shape, handles: &Handles) -> Drawing {
    let (low, high) = shape.outline.boundary().bounds_mm();
    let mut sheet = Drawing::new([low[0], -high[1]], [high[0], LENGTH_BELOW_MM - low[1]]);
    sheet.line(LineKind::Outline, Path::default().pieces(shape.outline.boundary().pieces()).text());
    contours(design, shape, &mut sheet);
    let channel = channel_line(&shape.outline, design.arching.channel_distance_mm);
    sheet.line(LineKind::ChannelLine, channel);
    for treble_side in [false, true] {
        let line = shape.surface.inflection_line(treble_side, STEP_MM);
        let line: Vec<Point> = line.into_iter().map(on_sheet).collect();
        sheet.line(LineKind::InflectionLine, Path::default().smooth(&line, false).text());
    }
    dimensions(design, &mut sheet);
    for hole in &shape.holes {
        sheet.line(LineKind::Hole, Path::default().pieces(hole.boundary().pieces()).text());
    }
    super::fittings::draw(design, handles, &mut sheet);
    sheet.handles.extend(outline_handles(design, handles));
    sheet.handles.extend(hole_handles(design, shape, handles));
    sheet
}

/// Contour lines, those of each fifth millimetre with their height where they cross the centreline above the apex.
fn contours(design: &Design, shape: &Shape, sheet: &mut Drawing) {
    let highest = (design.arching.apex_height_mm / CONTOUR_STEP_MM).ceil() as u32;
    let symmetric = shape.outline.is_symmetric() && shape.surface.arching().sides_are_alike();
    for step in 1..highest {
        let height_mm = f64::from(step) * CONTOUR_STEP_MM;
        let ring: Vec<Point> = shape.surface.contour(height_mm, symmetric).into_iter().map(on_sheet).collect();
        let Some(&top) = ring.iter().min_by(|p, q| p[1].total_cmp(&q[1])) else {
            continue;
        };
        let fifth = step % FIFTH == 0;
        let kind = if fifth { LineKind::FifthContour } else { LineKind::Contour };
        sheet.line(kind, Path::default().smooth(&ring, true).text());
        if fifth {
            sheet.labels.push(Label { name: "", value_mm: height_mm, at: top, minor: true });
        }
    }
}

/// The outline moved in by the channel's distance, cut off where two sides of a corner would cross.
fn channel_line(outline: &Outline, distance_mm: f64) -> String {
    /// Moved-in points that are nearer than the distance by more than this belong to the other side of a corner. A point
    /// moved right through a corner is nearer too: no corner's tip is as wide as twice the distance.
    const SLACK_MM: f64 = 0.01;
    let mut line = Vec::new();
    for piece in outline.boundary().pieces() {
        let steps = (piece.length_mm() / STEP_MM).ceil().max(1.0) as u32;
        for i in 0..=steps {
            let t = f64::from(i) / f64::from(steps);
            let moved = along(piece.point(t), left_of(piece.tangent(t)), distance_mm);
            if outline.boundary().nearest(moved).distance_mm > distance_mm - SLACK_MM {
                line.push(on_sheet(moved));
            }
        }
    }
    Path::default().polyline(&line, true).text()
}

/// Half widths of upper bout, waist and lower bout with their stations: treble, bass.
fn half_widths(design: &Design) -> [(&'static str, f64, [f64; 2]); 3] {
    let m = &design.outline;
    let bass = m.bass.as_ref();
    [
        (
            "upper",
            m.upper_station_mm,
            [0.5 * m.upper_width_mm, bass.map_or(0.5 * m.upper_width_mm, |b| b.upper_half_width_mm)],
        ),
        (
            "waist",
            m.waist_station_mm,
            [0.5 * m.waist_width_mm, bass.map_or(0.5 * m.waist_width_mm, |b| b.waist_half_width_mm)],
        ),
        (
            "lower",
            m.lower_station_mm,
            [0.5 * m.lower_width_mm, bass.map_or(0.5 * m.lower_width_mm, |b| b.lower_half_width_mm)],
        ),
    ]
}

/// Lines along which the widths are measured, with their numbers, and the length.
fn dimensions(design: &Design, sheet: &mut Drawing) {
    for (key, y, [treble, bass]) in half_widths(design) {
        let line = [[-bass, -y], [treble, -y]];
        sheet.line(LineKind::Dimension, Path::default().polyline(&line, false).text());
        // Beside the heights of the contour lines on the centreline; at the waist these stand elsewhere, and holes stand beside.
        let aside = if key == "waist" { 0.0 } else { 0.26 };
        sheet.label("", treble + bass, [-aside * bass, -y]);
    }
    sheet.label("", design.outline.length_mm, [0.0, LENGTH_BELOW_MM]);
}

/// Where both sides are alike, measures across are moved on the treble side and stations on the bass side: the two never
/// lie on each other. A bass side of its own has all its handles, and stations are then moved further in.
fn outline_handles(design: &Design, handles: &Handles) -> Vec<Handle> {
    /// From the point that is moved across to the one that is moved along.
    const BESIDE_MM: f64 = 12.0;
    let m = &design.outline;
    let upwards = [0.0, -1.0];
    let mut found = vec![handles.at("outline.length_mm", [0.0, -m.length_mm], upwards)];
    for (key, y, [treble, bass]) in half_widths(design) {
        found.push(handles.at(&format!("outline.{key}_width_mm"), [treble, -y], [0.5, 0.0]));
        found.push(handles.at(&format!("outline.bass.{key}_half_width_mm"), [-bass, -y], [-1.0, 0.0]));
        let in_from_edge = if m.bass.is_some() { BESIDE_MM } else { 0.0 };
        found.push(handles.at(&format!("outline.{key}_station_mm"), [in_from_edge - bass, -y], upwards));
    }
    let mut corner = |path: &str, corner: &CornerMeasures, across_sign: f64, along_sign: f64, beside: f64| {
        let (reach, y) = (corner.reach_mm, corner.station_mm);
        found.push(handles.at(&format!("{path}.reach_mm"), [across_sign * reach, -y], [across_sign, 0.0]));
        found.push(handles.at(&format!("{path}.station_mm"), [along_sign * (reach - beside), -y], upwards));
    };
    match &m.bass {
        None => {
            corner("outline.upper_corner", &m.upper_corner, 1.0, -1.0, 0.0);
            corner("outline.lower_corner", &m.lower_corner, 1.0, -1.0, 0.0);
        }
        Some(bass) => {
            corner("outline.upper_corner", &m.upper_corner, 1.0, 1.0, BESIDE_MM);
            corner("outline.lower_corner", &m.lower_corner, 1.0, 1.0, BESIDE_MM);
            corner("outline.bass.upper_corner", &bass.upper_corner, -1.0, -1.0, BESIDE_MM);
            corner("outline.bass.lower_corner", &bass.lower_corner, -1.0, -1.0, BESIDE_MM);
        }
    }
    found.into_iter().flatten().collect()
}

/// The stop, and the places of the eyes. Holes that are alike move together, as the outline's sides do; others each have
/// all of their handles.
fn hole_handles(design: &Design, shape: &Shape, handles: &Handles) -> Vec<Handle> {
    let holes = &design.sound_holes;
    let stop = [0.0, holes.stop_mm - design.outline.length_mm];
    let mut found: Vec<Handle> = handles.at("sound_holes.stop_mm", stop, [0.0, 1.0]).into_iter().collect();
    let alike = holes.bass == holes.treble;
    for (choice, side, sign) in [(&holes.bass, "bass", -1.0), (&holes.treble, "treble", 1.0)] {
        let sides: &[&str] = if alike { &["bass", "treble"] } else { &[side] };
        let drawn = shape.holes.iter().find(|hole| hole.is_treble() == (sign > 0.0));
        let (SoundHoleChoice::EyesAndStem(m), Some(hole)) = (choice, drawn) else {
            continue;
        };
        for eye in eyes(m, hole, &shape.outline, sign).into_iter().flatten() {
            let at = on_sheet(eye.centre);
            if !alike || sign > 0.0 {
                found.extend(handles.sided(&format!("sound_holes.*.{}", eye.across), sides, at, eye.along));
            }
            if !alike || sign < 0.0 {
                // Beside the other handle where the eye has both.
                let at = if alike { at } else { [at[0], at[1] - eye.radius] };
                found.extend(handles.sided(&format!("sound_holes.*.{}", eye.station), sides, at, eye.upwards));
            }
        }
    }
    found
}

struct Eye {
    centre: Point,
    radius: f64,
    across: &'static str,
    along: Point,
    station: &'static str,
    upwards: Point,
}

/// Upper and lower eye where they are drawn.
fn eyes(m: &EyesAndStem, hole: &SoundHole, outline: &Outline, sign: f64) -> [Option<Eye>; 2] {
    let radius = 0.5 * m.upper_eye_diameter_mm;
    let upper = Eye {
        centre: [sign * (m.upper_eye_to_centreline_mm + radius), m.upper_eye_station_mm],
        radius,
        across: "upper_eye_to_centreline_mm",
        along: [sign, 0.0],
        station: "upper_eye_station_mm",
        upwards: [0.0, -1.0],
    };
    let radius = 0.5 * m.lower_eye_diameter_mm;
    // Its distance from the centreline follows from the edge, and is read off the drawn circle.
    let lower = hole.boundary().pieces().iter().find_map(|piece| match piece {
        Piece::Arc(arc)
            if (arc.centre[1] - m.lower_eye_station_mm).abs() < 1e-9 && (arc.radius_mm - radius).abs() < 1e-9 =>
        {
            Some(arc.centre)
        }
        _ => None,
    });
    let lower = lower.map(|centre| {
        /// Small beside the outline's radii, large beside rounding.
        const NUDGE_MM: f64 = 1e-3;
        let to_edge = |x: f64, y: f64| outline.signed_distance_mm([centre[0] + x, centre[1] + y]);
        let by_x = (to_edge(NUDGE_MM, 0.0) - to_edge(-NUDGE_MM, 0.0)) / (2.0 * NUDGE_MM);
        let by_y = (to_edge(0.0, NUDGE_MM) - to_edge(0.0, -NUDGE_MM)) / (2.0 * NUDGE_MM);
        Eye {
            centre,
            radius,
            across: "lower_eye_to_edge_mm",
            along: [1.0 / by_x, 0.0],
            station: "lower_eye_station_mm",
            // Up along the edge, to which it keeps its distance.
            upwards: [-by_y / by_x, -1.0],
        }
    });
    [Some(upper), lower]
}
