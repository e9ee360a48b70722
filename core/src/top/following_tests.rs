//! Modes followed along a handle, against searches from nothing on the same equations.

use crate::design::{Design, SoundHoleChoice};
use crate::mesh::MeshSize;
use crate::modes::{FOLLOW_RESIDUAL, Followed, ModesRequest};
use crate::shell::DOFS_PER_NODE;
use crate::top::{FollowedRuns, Plan, Stages, kin};

const COUNT: usize = 12;
const PREVIEW: MeshSize = MeshSize::Preview;
const COLD: ModesRequest = ModesRequest { most: COUNT, below_hz: None, prove: false };

type Change = fn(&mut Design);
type Handle = fn(&mut Design, f64);

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

/// The largest relative difference of frequencies from those of a search from nothing on the same mesh.
fn worst(stages: &mut Stages, followed: &Followed) -> f64 {
    let (plan, carved) = stages.followed_carved(PREVIEW).unwrap();
    let cold = carved.modes(plan, &COLD).unwrap();
    largest(&changes(&followed.modes.frequencies_hz, &cold.frequencies_hz))
}

/// (mode): by what share of the second the first differs.
fn changes(after_hz: &[f64], before_hz: &[f64]) -> Vec<f64> {
    after_hz.iter().zip(before_hz).map(|(after, before)| after / before - 1.0).collect()
}

fn largest(shares: &[f64]) -> f64 {
    shares.iter().fold(0.0, |worst: f64, share| worst.max(share.abs()))
}

#[test]
fn modes_followed_are_those_of_a_search_from_nothing() {
    let changes: [(&str, Change, usize); 7] = [
        ("arch", |design| design.arching.apex_height_mm += 0.5, 1),
        ("arch by much", |design| design.arching.apex_height_mm += 2.0, 1),
        ("thickness", |design| design.graduation.centre_mm *= 0.95, 1),
        ("thickness by much", |design| design.graduation.centre_mm *= 0.8, 1),
        ("wood", |design| design.wood.ring_angle_deg = 3.0, 1),
        ("lower eyes, on the same mesh", |design| move_lower_eyes(design, 0.5), 1),
        ("lower eyes, on another mesh", |design| move_lower_eyes(design, 2.0), 2),
    ];
    for (what, change, meshes) in changes {
        let (mut stages, followed) = followed(change);
        assert_eq!(stages.runs().followed.plan, meshes, "{what}");
        assert!(followed.passes.is_some(), "{what}: sought from nothing");
        assert!(followed.modes.residuals.iter().all(|own| *own <= FOLLOW_RESIDUAL), "{what}");
        let worst = worst(&mut stages, &followed);
        assert!(worst < 1e-3, "{what}: {worst}");
    }
}

/// Drags in small steps, as far as a step factorises only now and then: (what, change by a step, most steps of twenty in which one half of the pencil
/// is factorised, or both are).
const DRAGS: [(&str, Handle, usize); 4] = [
    ("arch by tenths", |design, steps| design.arching.apex_height_mm += 0.1 * steps, 8),
    ("arch by thirds", |design, steps| design.arching.apex_height_mm += 0.33 * steps, 17),
    ("thickness by twentieths", |design, steps| design.graduation.centre_mm -= 0.05 * steps, 4),
    ("lower eyes by tenths", |design, steps| move_lower_eyes(design, 0.1 * steps), 11),
];

#[test]
fn a_drag_in_small_steps_seldom_factorises_and_goes_on_as_well() {
    for (what, change, most) in DRAGS {
        let mut stages = Stages::new(Design::demo());
        stages.follow(PREVIEW, COUNT).unwrap();
        let (mut factorised, mut off) = (0, Vec::new());
        for step in 1..=20 {
            stages.set_design(demo_with(|design| change(design, f64::from(step)))).unwrap();
            let followed = stages.follow(PREVIEW, COUNT).unwrap().clone();
            factorised += usize::from(followed.passes != Some(0));
            off.push(worst(&mut stages, &followed));
        }
        assert!(largest(&off) < 1e-3, "{what}: {off:?}");
        assert!(factorised <= most, "{what}: {factorised}");
    }
}

/// As many more as no guards stand for.
#[test]
fn more_modes_than_before_are_sought_from_nothing() {
    let mut stages = Stages::new(Design::demo());
    stages.follow(PREVIEW, COUNT).unwrap();
    stages.set_design(demo_with(|design| design.arching.apex_height_mm += 0.1)).unwrap();
    let followed = stages.follow(PREVIEW, COUNT + 2).unwrap();
    assert_eq!((followed.passes, followed.modes.count()), (None, COUNT + 2));
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

/// Through moved meshes, and through the new one that is made where the eyes have gone too far.
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
    let FollowedRuns { plan, moved, modes, .. } = stages.runs().followed;
    assert_eq!((plan, moved, modes), (2, 3, 5));
}

/// Lower and upper eyes, on one side and on both, by tenths of a millimetre.
const HANDLES: [(&str, Handle); 3] = [
    ("lower eyes", move_lower_eyes),
    ("one lower eye", |design, by_mm| {
        let SoundHoleChoice::EyesAndStem(hole) = &mut design.sound_holes.bass else { panic!("it is an f-hole") };
        hole.lower_eye_to_edge_mm += by_mm;
    }),
    ("upper eyes", |design, by_mm| {
        for hole in [&mut design.sound_holes.bass, &mut design.sound_holes.treble] {
            let SoundHoleChoice::EyesAndStem(hole) = hole else { panic!("it is an f-hole") };
            hole.upper_eye_to_centreline_mm -= by_mm;
        }
    }),
];

/// Frequencies on the moved preview and on a new one for the same design, from nothing both.
fn moved_and_new(stages: &mut Stages, design: &Design) -> [Vec<f64>; 2] {
    stages.set_design(design.clone()).unwrap();
    let (plan, carved) = stages.followed_carved(PREVIEW).unwrap();
    let moved = carved.modes(plan, &COLD).unwrap().frequencies_hz;
    [moved, stages.modes(PREVIEW, &COLD).unwrap().frequencies_hz.clone()]
}

fn rms(shares: &[f64]) -> f64 {
    (shares.iter().map(|share| share * share).sum::<f64>() / shares.len() as f64).sqrt()
}

/// Previews differ from the fine mesh by 1.2 to 1.3 % rms, each design's new mesh in other ways.
/// A moved one may differ from a new one by no more than either does from the fine mesh, must come as near to that, and follows the
/// design at least ten times more smoothly than new ones do.
#[test]
fn a_moved_mesh_is_as_good_as_a_new_one_and_smoother() {
    for (what, handle) in HANDLES {
        let mut stages = Stages::new(Design::demo());
        stages.followed_carved(PREVIEW).unwrap();
        let along: Vec<[Vec<f64>; 2]> = (0..=6)
            .map(|step| moved_and_new(&mut stages, &demo_with(|design| handle(design, 0.2 * f64::from(step)))))
            .collect();
        assert_eq!((stages.runs().followed.plan, stages.runs().followed.moved), (1, 6), "{what}");
        let off: Vec<f64> = along.iter().flat_map(|[moved, new]| changes(moved, new)).collect();
        let fine = stages.modes(MeshSize::Fine, &COLD).unwrap().frequencies_hz.clone();
        let [moved, new] = [0, 1].map(|way| rms(&changes(&along[6][way], &fine)));
        assert!(largest(&off) < 0.015 && rms(&off) < new, "{what}: {} at most, {} rms", largest(&off), rms(&off));
        assert!(moved < 1.25 * new, "{what}: {moved} from the fine mesh, new {new}");
        // How far each frequency lies from the middle of its neighbours'.
        let rough = |way: usize| {
            let bends = along.windows(3).flat_map(|steps| {
                let [before, after] = [0, 2].map(|step| changes(&steps[step][way], &steps[1][way]));
                before.into_iter().zip(after).map(|(before, after)| 0.5 * (before + after)).collect::<Vec<_>>()
            });
            largest(&bends.collect::<Vec<_>>())
        };
        assert!(rough(0) < 0.1 * rough(1), "{what}: moved {}, new {}", rough(0), rough(1));
    }
}

/// What a handle's move does to the frequencies is small beside what two previews differ by. The fine mesh says what it is: a moved
/// preview tells it within a tenth, two new previews hardly at all.
#[test]
fn a_moved_mesh_tells_what_a_move_changes() {
    let mut stages = Stages::new(Design::demo());
    let mut figures = |design: Design| {
        let [moved, new] = moved_and_new(&mut stages, &design);
        [moved, new, stages.modes(MeshSize::Fine, &COLD).unwrap().frequencies_hz.clone()]
    };
    let (before, after) = (figures(Design::demo()), figures(demo_with(|design| move_lower_eyes(design, 1.2))));
    let [moved, new, fine] = [0, 1, 2].map(|mesh| changes(&after[mesh], &before[mesh]));
    let error = |told: &[f64]| {
        let off: Vec<f64> = told.iter().zip(&fine).map(|(told, fine)| told - fine).collect();
        rms(&off) / rms(&fine)
    };
    assert!(error(&moved) < 0.15 && error(&new) > 0.3, "moved {}, new {}", error(&moved), error(&new));
}

/// The same two designs give the same mesh, whatever lay between; what is settled knows nothing of it.
#[test]
fn a_followed_mesh_depends_on_where_it_was_made_and_a_settled_one_does_not() {
    let points = |plan: &Plan| plan.mesh.points_mm.clone();
    let over = |way: &[f64]| {
        let mut stages = Stages::new(Design::demo());
        stages.followed_carved(PREVIEW).unwrap();
        for &by_mm in way {
            stages.set_design(demo_with(|design| move_lower_eyes(design, by_mm))).unwrap();
            stages.follow(PREVIEW, COUNT).unwrap();
        }
        let followed = points(stages.followed_carved(PREVIEW).unwrap().0);
        (followed, points(stages.carved(PREVIEW).unwrap().0), stages.picture(PREVIEW).unwrap().clone())
    };
    let straight = over(&[0.6]);
    assert_eq!(over(&[0.3, 1.1, -0.4, 0.6]), straight);
    let (followed, settled, _) = &straight;
    let mut alone = Stages::new(demo_with(|design| move_lower_eyes(design, 0.6)));
    assert_eq!(&points(alone.carved(PREVIEW).unwrap().0), settled);
    assert_ne!(followed, settled);
    // Too far: a new mesh, which then goes along.
    let far = over(&[2.0, 2.1]);
    assert_eq!(over(&[2.0, 2.3, 2.1]), far);
    assert_ne!(over(&[2.1]).0, far.0);
}

#[test]
fn the_same_design_is_followed_once_and_a_failure_keeps_the_last() {
    let mut stages = Stages::new(Design::demo());
    let first = stages.follow(PREVIEW, COUNT).unwrap().clone();
    assert_eq!(stages.follow(PREVIEW, COUNT).unwrap(), &first);
    assert_eq!(stages.runs().followed.modes, 1);
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
