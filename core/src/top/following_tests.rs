//! Modes followed along a handle, against searches from nothing on the same equations.

use crate::design::{Design, SoundHoleChoice};
use crate::mesh::MeshSize;
use crate::modes::{FOLLOW_RESIDUAL, Followed, ModesRequest};
use crate::shell::DOFS_PER_NODE;
use crate::top::{Stages, kin};

const COUNT: usize = 12;
const PREVIEW: MeshSize = MeshSize::Preview;
const COLD: ModesRequest = ModesRequest { most: COUNT, below_hz: None, prove: false };

type Change = fn(&mut Design);

fn demo_with(change: impl Fn(&mut Design)) -> Design {
    let mut design = Design::demo();
    change(&mut design);
    design
}

fn move_lower_eyes(design: &mut Design, by_mm: f64) {
    for hole in [&mut design.sound_holes.bass, &mut design.sound_holes.treble] {
        let SoundHoleChoice::EyesAndStem(hole) = hole else { panic!("the demonstration has f-holes") };
        hole.lower_eye_to_edge_mm += by_mm;
    }
}

/// From the demonstration's modes to those of the changed design.
fn followed(change: impl Fn(&mut Design)) -> (Stages, Followed) {
    let mut stages = Stages::new(Design::demo());
    stages.follow(PREVIEW, COUNT).unwrap();
    stages.set_design(demo_with(change)).unwrap();
    let followed = stages.follow(PREVIEW, COUNT).unwrap().clone();
    (stages, followed)
}

/// The largest relative difference of frequencies from those of a search from nothing.
fn worst(stages: &mut Stages, followed: &Followed) -> f64 {
    let cold = stages.modes(PREVIEW, &COLD).unwrap();
    let pairs = followed.modes.frequencies_hz.iter().zip(&cold.frequencies_hz);
    pairs.map(|(warm, cold)| (warm / cold - 1.0).abs()).fold(0.0, f64::max)
}

#[test]
fn modes_followed_are_those_of_a_search_from_nothing() {
    let changes: [(&str, Change); 6] = [
        ("arch", |design| design.arching.apex_height_mm += 0.5),
        ("arch by much", |design| design.arching.apex_height_mm += 2.0),
        ("thickness", |design| design.graduation.centre_mm *= 0.95),
        ("thickness by much", |design| design.graduation.centre_mm *= 0.8),
        ("wood", |design| design.wood.ring_angle_deg = 3.0),
        ("lower eyes, on another mesh", |design| move_lower_eyes(design, 0.5)),
    ];
    for (what, change) in changes {
        let (mut stages, followed) = followed(change);
        assert!(followed.passes.is_some(), "{what}: sought from nothing");
        assert!(followed.modes.residuals.iter().all(|own| *own <= FOLLOW_RESIDUAL), "{what}");
        let worst = worst(&mut stages, &followed);
        assert!(worst < 1e-3, "{what}: {worst}");
    }
}

#[test]
fn a_jump_is_sought_from_nothing_and_says_so() {
    let (mut stages, followed) = followed(|design| {
        design.arching.apex_height_mm += 7.0;
        design.graduation.centre_mm += 3.0;
        design.rim = crate::design::Rim::Clamped;
    });
    assert_eq!(followed.passes, None);
    assert!(worst(&mut stages, &followed) < 1e-9);
}

/// How much a shape moves as another does, with its sign: one for the same, minus one for the opposite.
fn overlap(a: &[f64], b: &[f64]) -> f64 {
    let outward = |shape: &[f64]| shape.iter().skip(2).step_by(DOFS_PER_NODE).copied().collect::<Vec<_>>();
    let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let (a, b) = (outward(a), outward(b));
    dot(&a, &b) / (dot(&a, &a) * dot(&b, &b)).sqrt()
}

/// A centre thinned by 1.2 mm carries one mode of the demonstration past its neighbour.
#[test]
fn every_mode_keeps_its_number_and_its_sign_through_a_crossing() {
    let mut stages = Stages::new(Design::demo());
    let mut before = stages.follow(PREVIEW, COUNT).unwrap().clone();
    let first = before.clone();
    for step in 1..=16 {
        stages.set_design(demo_with(|design| design.graduation.centre_mm -= 0.075 * f64::from(step))).unwrap();
        let now = stages.follow(PREVIEW, COUNT).unwrap().clone();
        for (mode, identity) in now.identities.iter().enumerate() {
            // One that has come down from above is nobody's successor.
            if let Some(then) = before.identities.iter().position(|known| known == identity) {
                let alike = overlap(now.modes.shape(mode), before.modes.shape(then));
                assert!(alike > 0.6, "step {step}, mode {}: {alike}", mode + 1);
            }
        }
        before = now;
    }
    let places = |followed: &Followed| -> Vec<usize> {
        let place = |identity: &u32| followed.identities.iter().position(|known| known == identity);
        first.identities.iter().filter_map(place).collect()
    };
    assert!(places(&before).windows(2).any(|pair| pair[0] > pair[1]), "no two modes crossed: {:?}", before.identities);
    // What is at the same place now moves otherwise than what was there.
    let crossed = (0..COUNT).find(|&mode| before.identities[mode] != first.identities[mode]).unwrap();
    assert!(overlap(before.modes.shape(crossed), first.modes.shape(crossed)).abs() < 0.5);
}

#[test]
fn a_hole_that_moves_takes_no_mode_its_number() {
    let mut stages = Stages::new(Design::demo());
    let first = stages.follow(PREVIEW, COUNT).unwrap().identities.clone();
    for step in 1..=4 {
        stages.set_design(demo_with(|design| move_lower_eyes(design, 0.5 * f64::from(step)))).unwrap();
        let followed = stages.follow(PREVIEW, COUNT).unwrap();
        assert!(followed.passes.is_some(), "step {step}");
        let mut identities = followed.identities.clone();
        identities.sort_unstable();
        assert_eq!(identities, first, "step {step}");
    }
    assert_eq!(stages.runs().followed, 5);
}

#[test]
fn the_same_design_is_followed_once_and_a_failure_keeps_the_last() {
    let mut stages = Stages::new(Design::demo());
    let first = stages.follow(PREVIEW, COUNT).unwrap().clone();
    assert_eq!(stages.follow(PREVIEW, COUNT).unwrap(), &first);
    assert_eq!(stages.runs().followed, 1);
    assert!(stages.follow(PREVIEW, 0).is_err());
    assert!(stages.set_design(demo_with(|design| design.arching.apex_height_mm = 0.5)).is_err());
    assert_eq!(stages.follow(PREVIEW, COUNT).unwrap().identities, first.identities);
}

/// A change of mesh moves these frequencies by 4 % at most (see DEVELOPERS.md), so a partner farther off is none.
#[test]
fn modes_of_two_meshes_know_each_other_by_their_signatures() {
    let mut stages = Stages::new(Design::demo());
    let preview = stages.follow(PREVIEW, COUNT).unwrap().modes.clone();
    let standard = stages.modes(MeshSize::Standard, &ModesRequest { most: 16, ..COLD }).unwrap().clone();
    let partners = kin(&stages.signatures(PREVIEW, true), &stages.signatures(MeshSize::Standard, false));
    assert_eq!(partners.len(), COUNT);
    assert!(partners.iter().flatten().count() >= COUNT - 2, "{partners:?}");
    for (mode, partner) in partners.iter().enumerate() {
        if let Some(partner) = *partner {
            let ratio = standard.frequencies_hz[partner] / preview.frequencies_hz[mode];
            assert!((ratio - 1.0).abs() < 0.05, "mode {} and {}: {ratio}", mode + 1, partner + 1);
        }
    }
}
