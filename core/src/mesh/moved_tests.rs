//! Laws of meshes that were moved.

use proptest::prelude::*;

use super::quality::{Quality, corners, smallest_angle_deg};
use super::tests::{assert_conforming, assert_on_boundaries, assert_symmetric, patterns, plan};
use super::*;
use crate::design::{Design, SoundHoleChoice};

/// The demonstration's preview with the same hole on both sides.
fn with_holes(choice: &SoundHoleChoice) -> (Design, MovableMesh) {
    let mut design = Design::demo();
    (design.sound_holes.bass, design.sound_holes.treble) = (choice.clone(), choice.clone());
    let (outline, holes) = plan(&design);
    let mesh = PlanMesh::new(&outline, &holes, MeshSize::Preview).unwrap();
    (design, MovableMesh::new(mesh, &outline, &holes))
}

fn f_hole() -> SoundHoleChoice {
    Design::demo().sound_holes.treble
}

/// Moves a hole across and along, or an f-hole's eyes each their own way.
fn shift(choice: &mut SoundHoleChoice, [across, along, lower_across, lower_along]: [f64; 4]) {
    let (x, y) = match choice {
        SoundHoleChoice::EyesAndStem(m) => {
            m.lower_eye_to_edge_mm += lower_across;
            m.lower_eye_station_mm += lower_along;
            (&mut m.upper_eye_to_centreline_mm, &mut m.upper_eye_station_mm)
        }
        SoundHoleChoice::Round(m) => (&mut m.centre_to_centreline_mm, &mut m.centre_station_mm),
        SoundHoleChoice::Crescent(m) => (&mut m.centre_to_centreline_mm, &mut m.centre_station_mm),
        SoundHoleChoice::Slot(m) => (&mut m.centre_to_centreline_mm, &mut m.centre_station_mm),
        SoundHoleChoice::Traced(m) => (&mut m.centre_to_centreline_mm, &mut m.centre_station_mm),
        SoundHoleChoice::None => return,
    };
    *x += across;
    *y += along;
}

fn moved(movable: &MovableMesh, design: &Design) -> Result<PlanMesh, Unmoved> {
    let (outline, holes) = plan(design);
    movable.moved(&outline, &holes)
}

/// What a moved mesh has in common with a new one, and with the one it came from.
fn assert_lawful(mesh: &PlanMesh, movable: &MovableMesh, design: &Design) {
    let (outline, holes) = plan(design);
    assert_on_boundaries(mesh, &outline, &holes);
    assert_conforming(mesh);
    let made = movable.made();
    assert_eq!((&mesh.triangles, &mesh.edges), (&made.triangles, &made.edges));
    assert_eq!((&mesh.rim_nodes, &mesh.hole_loops), (&made.rim_nodes, &made.hole_loops));
    for triangle in &mesh.triangles {
        let [own, before] = [mesh, made].map(|mesh| smallest_angle_deg(corners(mesh, triangle)));
        // The point of a wing cut sharp is sharper than 20 degrees from the start.
        assert!(own > 0.0 && own >= 20.0_f64.min(0.89 * before), "{own} degrees, {before} before");
    }
}

/// A tenth of a millimetre either way is what a handle moves by at least; half a millimetre, what a quick hand moves it by between
/// two answers.
#[test]
fn every_pattern_goes_along_with_a_handle_on_one_side_and_on_both() {
    for choice in [vec![f_hole()], patterns()].concat() {
        let (before, movable) = with_holes(&choice);
        for (axis, by_mm) in (0..4).flat_map(|axis| [-0.5, -0.1, 0.1, 0.5].map(|by_mm| (axis, by_mm))) {
            for alone in [false, true] {
                let mut design = before.clone();
                let mut by = [0.0; 4];
                by[axis] = by_mm;
                shift(&mut design.sound_holes.treble, by);
                if !alone {
                    shift(&mut design.sound_holes.bass, by);
                }
                let mesh = moved(&movable, &design).unwrap_or_else(|error| panic!("{choice:?} {by:?}: {error:?}"));
                assert_lawful(&mesh, &movable, &design);
                if !alone {
                    assert_symmetric(&mesh);
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whatever isn't refused is lawful, however far it was moved and whichever way each eye went.
    #[test]
    fn what_is_moved_is_lawful(
        across in -3.0..3.0f64, along in -3.0..3.0f64, lower_across in -2.0..3.0f64, lower_along in -3.0..3.0f64,
        waist in -3.0..3.0f64, alike: bool,
    ) {
        let (before, movable) = with_holes(&f_hole());
        for share in [0.1, 0.3, 1.0] {
            let mut design = before.clone();
            let by = [across, along, lower_across, lower_along].map(|by| share * by);
            design.outline.waist_width_mm += share * waist;
            shift(&mut design.sound_holes.treble, by);
            if alike {
                shift(&mut design.sound_holes.bass, by);
            }
            if design.check().is_ok() && let Ok(mesh) = moved(&movable, &design) {
                assert_lawful(&mesh, &movable, &design);
                if alike {
                    assert_symmetric(&mesh);
                }
            }
        }
    }
}

#[test]
fn a_large_move_or_another_hole_is_refused() {
    let (before, movable) = with_holes(&f_hole());
    let after = |change: fn(&mut Design)| {
        let mut design = before.clone();
        change(&mut design);
        design.check().unwrap();
        moved(&movable, &design)
    };
    let both = |design: &mut Design, by: [f64; 4]| {
        shift(&mut design.sound_holes.bass, by);
        shift(&mut design.sound_holes.treble, by);
    };
    let inwards = after(|design| shift(&mut design.sound_holes.treble, [0.0, 0.0, 6.0, 0.0]));
    assert!(matches!(inwards, Err(Unmoved::Stray { stray_mm }) if stray_mm > BOUNDARY_TOLERANCE_MM), "{inwards:?}");
    let mut wider = before.clone();
    both(&mut wider, [0.0, 0.0, -4.0, 0.0]);
    let wider = moved(&movable, &wider);
    assert!(matches!(wider, Err(Unmoved::Stretched { ratio }) if ratio < 0.75), "{wider:?}");
    assert_eq!(after(|design| design.sound_holes.bass = SoundHoleChoice::None), Err(Unmoved::OtherBoundaries));
    assert_eq!(after(|design| design.sound_holes.bass = patterns().remove(1)), Err(Unmoved::OtherBoundaries));
}

/// Back where it was made for a mesh is what it was: moves don't add up.
#[test]
fn a_mesh_moved_nowhere_is_the_one_that_was_made() {
    let (design, movable) = with_holes(&f_hole());
    let mesh = moved(&movable, &design).unwrap();
    for (p, q) in mesh.points_mm.iter().zip(&movable.made().points_mm) {
        assert!((p[0] - q[0]).abs() < 1e-9 && (p[1] - q[1]).abs() < 1e-9, "{p:?} {q:?}");
    }
    assert!(Quality::of(&mesh).angles_deg[0] > 25.0);
}

/// Springs hold a node in the weighted mean of its neighbours, so that no node goes farther than the boundary does.
#[test]
fn nothing_inside_moves_farther_than_the_boundary() {
    let (before, movable) = with_holes(&f_hole());
    let mut design = before;
    shift(&mut design.sound_holes.treble, [0.5, 0.0, 0.0, 0.0]);
    let mesh = moved(&movable, &design).unwrap();
    let shifts: Vec<f64> =
        mesh.points_mm.iter().zip(&movable.made().points_mm).map(|(p, q)| (p[0] - q[0]).hypot(p[1] - q[1])).collect();
    let on_boundary: Vec<u32> = mesh.loops().flatten().copied().collect();
    let most = on_boundary.iter().map(|&node| shifts[node as usize]).fold(0.0, f64::max);
    let inside = (0..shifts.len()).filter(|&node| !on_boundary.contains(&(node as u32)));
    let farthest = inside.map(|node| shifts[node]).fold(0.0, f64::max);
    assert!(most > 0.45 && farthest <= most && farthest > 0.8 * most, "{farthest} of {most} mm");
}
