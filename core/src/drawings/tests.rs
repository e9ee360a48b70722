//! The drawings against the measures and surfaces they are drawn from, and path data against closed forms.

use super::{path::Path, section::inside_height_mm, *};
use crate::design::{ArchingMeasures, BassArch, BassSide, RoundHole, SoundHoleChoice};
use crate::inside::InsideSurface;

fn drawn(design: &Design) -> (Shape, Drawings) {
    let shape = Shape::new(design).unwrap();
    let drawings = Drawings::new(design, &shape);
    (shape, drawings)
}

/// All numbers of path data without arcs, in pairs.
fn points(path: &str) -> Vec<Point> {
    let numbers: Vec<f64> =
        path.split(|c: char| c.is_whitespace() || c.is_ascii_alphabetic()).filter_map(|n| n.parse().ok()).collect();
    numbers.chunks(2).map(|pair| [pair[0], pair[1]]).collect()
}

fn handle<'a>(drawing: &'a Drawing, path: &str) -> &'a Handle {
    drawing.handles.iter().find(|handle| handle.paths.iter().any(|p| p == path)).unwrap()
}

/// The promise of a handle: when its number changes by d, it goes d times `along`. Exact for measures, to first order
/// for fullness.
#[test]
fn handles_move_with_their_number_as_they_say() {
    let mut own_bass = Design::demo();
    let m = &own_bass.outline;
    own_bass.outline.bass = Some(BassSide {
        upper_half_width_mm: 0.5 * m.upper_width_mm + 1.0,
        waist_half_width_mm: 0.5 * m.waist_width_mm + 1.0,
        lower_half_width_mm: 0.5 * m.lower_width_mm + 1.0,
        upper_corner: m.upper_corner.clone(),
        lower_corner: m.lower_corner.clone(),
    });
    own_bass.arching.apex_station_mm = Some(185.0);
    own_bass.arching.cross_arches.waist.bass =
        Some(BassArch { fullness: 0.6, curve: own_bass.arching.cross_arches.waist.curve.clone() });
    let mut fitted = Design::demo();
    fitted.bar = Some(fitted.usual_bar());
    fitted.post = Some(fitted.usual_post());
    for (design, count) in [(Design::demo(), 26), (own_bass, 35), (fitted, 30)] {
        moves_as_it_says(&design, count);
    }
}

fn moves_as_it_says(design: &Design, count: usize) {
    let (_, before) = drawn(design);
    let json = serde_json::to_value(design).unwrap();
    let all = |drawings: &Drawings| -> Vec<Handle> {
        [&drawings.plan, &drawings.long_arch, &drawings.cross_arches]
            .into_iter()
            .flat_map(|d| d.handles.clone())
            .collect()
    };
    let first = all(&before);
    assert_eq!(first.len(), count, "{:?}", first.iter().map(|handle| &handle.paths).collect::<Vec<_>>());
    for (index, handle) in first.iter().enumerate() {
        assert!(handle.least <= handle.value && handle.value <= handle.most, "{handle:?}");
        let change = if handle.unit == "mm" { 0.4 } else { 0.004 };
        let mut changed = json.clone();
        for path in &handle.paths {
            *changed.pointer_mut(&format!("/{}", path.replace('.', "/"))).unwrap() = (handle.value + change).into();
        }
        let changed: Design = serde_json::from_value(changed).unwrap();
        let now = all(&drawn(&changed).1).swap_remove(index);
        assert_eq!(now.paths, handle.paths);
        for k in 0..2 {
            let moved = now.at[k] - handle.at[k];
            // An edge that curves under the lower eye bends the way it goes; 0.4 mm in a radius of some 30 mm.
            let far = (moved - change * handle.along[k]).abs();
            assert!(far < 0.02, "{}: moved {moved}, said {}", handle.what, change * handle.along[k]);
        }
    }
}

#[test]
fn alike_holes_move_together_and_others_each_by_itself() {
    let mut design = Design::demo();
    let (_, drawings) = drawn(&design);
    let both = handle(&drawings.plan, "sound_holes.treble.lower_eye_to_edge_mm");
    assert_eq!(both.paths.len(), 2);
    if let SoundHoleChoice::EyesAndStem(m) = &mut design.sound_holes.bass {
        m.lower_eye_to_edge_mm += 1.0;
    }
    let (_, drawings) = drawn(&design);
    for side in ["bass", "treble"] {
        for measure in ["upper_eye_station_mm", "lower_eye_to_edge_mm"] {
            let one = handle(&drawings.plan, &format!("sound_holes.{side}.{measure}"));
            assert_eq!(one.paths.len(), 1);
            assert_eq!(one.at[0] > 0.0, side == "treble");
        }
    }
}

#[test]
fn the_sections_outer_line_is_the_surface_and_gaps_are_the_holes() {
    let mut design = Design::demo();
    // A round hole of 20 mm, cut through its middle at the waist, leaves a gap of 20 mm.
    design.sound_holes.bass = SoundHoleChoice::None;
    design.sound_holes.treble = SoundHoleChoice::Round(RoundHole {
        diameter_mm: 20.0,
        centre_to_centreline_mm: 30.0,
        centre_station_mm: design.outline.waist_station_mm,
    });
    let (shape, drawings) = drawn(&design);
    let spacing = drawings.cross_arches.high[1] / 4.0;
    let woods: Vec<Vec<Point>> = drawings
        .cross_arches
        .lines
        .iter()
        .filter(|line| line.kind == LineKind::Wood)
        .map(|line| points(&line.path))
        .collect();
    assert_eq!(woods.len(), 6, "five sections, one of them in two");
    let (left, right) = (&woods[2], &woods[3]);
    let far = |line: &[Point]| line.iter().map(|p| p[0]).fold(f64::NEG_INFINITY, f64::max);
    let near = |line: &[Point]| line.iter().map(|p| p[0]).fold(f64::INFINITY, f64::min);
    assert!((far(left) - 20.0).abs() < 0.05 && (near(right) - 40.0).abs() < 0.05);
    let y = design.outline.waist_station_mm;
    for wood in [left, right] {
        for p in &wood[..wood.len() / 2] {
            let z = 2.0 * spacing - p[1];
            assert!((z - shape.surface.height_mm([p[0], y])).abs() < 0.01, "{p:?}");
        }
    }
}

/// From an outer point the normal, followed inwards by the thickness, ends on the inside.
#[test]
fn the_inside_lies_a_thickness_along_the_normal_below_the_outside() {
    let (shape, _) = drawn(&Design::demo());
    let inside = InsideSurface::new(&shape.surface, &shape.graduation);
    for outer in [[0.0, 177.5], [30.0, 120.0], [-60.0, 60.0], [45.0, 195.0], [85.0, 70.0], [98.0, 71.0]] {
        let [x, y, z] = inside.opposite(outer);
        assert!((inside_height_mm(&shape, [x, y]) - z).abs() < 0.01, "{outer:?}");
    }
}

/// Cubics through points of a circle stay on it; the text rounds to 0.005 mm.
#[test]
fn smooth_lines_follow_a_circle() {
    let radius = 40.0;
    let circle: Vec<Point> = (0..150)
        .map(|i| f64::from(i) * std::f64::consts::TAU / 150.0)
        .map(|a| [radius * a.cos(), radius * a.sin()])
        .collect();
    let path = Path::default().smooth(&circle, true).text();
    assert!(path.starts_with('M') && path.ends_with('Z') && !path.contains("NaN"));
    let all = points(&path);
    let mut from = all[0];
    for cubic in all[1..].chunks(3) {
        for i in 0..=8 {
            let (t, s) = (f64::from(i) / 8.0, 1.0 - f64::from(i) / 8.0);
            let at = [0, 1].map(|k| {
                s * s * s * from[k]
                    + 3.0 * s * s * t * cubic[0][k]
                    + 3.0 * s * t * t * cubic[1][k]
                    + t * t * t * cubic[2][k]
            });
            assert!((at[0].hypot(at[1]) - radius).abs() < 0.03, "{at:?}");
        }
        from = cubic[2];
    }
}

#[test]
fn the_channel_line_runs_at_its_distance_all_round() {
    let design = Design::demo();
    let (shape, drawings) = drawn(&design);
    let line = drawings.plan.lines.iter().find(|line| line.kind == LineKind::ChannelLine).unwrap();
    let points = points(&line.path);
    for (p, q) in points.iter().zip(points.iter().skip(1).chain(points.first())) {
        let distance = shape.outline.signed_distance_mm([p[0], -p[1]]);
        assert!((distance - design.arching.channel_distance_mm).abs() < 0.03, "{p:?}: {distance}");
        assert!((p[0] - q[0]).hypot(p[1] - q[1]) < 5.0, "a gap from {p:?} to {q:?}");
    }
}

#[test]
fn a_low_arch_and_a_high_one_draw_too() {
    let changes: [fn(&mut ArchingMeasures); 3] =
        [|m| m.apex_height_mm = 4.5, |m| m.apex_height_mm = 30.0, |m| m.channel_depth_mm = 0.0];
    for change in changes {
        let mut design = Design::demo();
        change(&mut design.arching);
        let (_, drawings) = drawn(&design);
        for line in drawings.plan.lines.iter().chain(&drawings.cross_arches.lines) {
            assert!(!line.path.contains("NaN") && !line.path.is_empty());
        }
    }
}
