//! Camera sums against plain geometry.

use super::*;

const VIEWS: [Direction; 4] = [Direction::OUTSIDE, Direction::INSIDE, Direction::BASS_SIDE, Direction::ALONG_GRAIN];
/// Phone portrait to a very wide strip, and a single pixel.
const VIEWPORTS: [[u32; 2]; 7] = [[360, 740], [1, 1], [1280, 720], [900, 900], [3440, 600], [300, 2400], [5000, 200]];

fn top() -> Bounds {
    Bounds::round(&[-104.0, 0.0, -2.0, 104.0, 356.0, 17.0]).expect("two corners")
}

fn camera(view: Direction, viewport_px: [u32; 2]) -> Camera {
    let mut camera = Camera::new();
    camera.set_viewport_px(viewport_px);
    camera.set_bounds(top());
    camera.turn_to(view);
    camera
}

/// Screen place (x right, y up, -1..1; depth 0..1) of a point of the top.
fn seen(camera: &Camera, point: Vec3) -> Vec3 {
    camera.clip_from_top().project_point3(point)
}

#[test]
fn the_whole_box_is_in_the_picture_and_touches_its_margin() {
    for view in VIEWS {
        for viewport in VIEWPORTS {
            let camera = camera(view, viewport);
            let mut reach: f32 = 0.0;
            for corner in top().corners() {
                let place = seen(&camera, top().middle() + corner);
                assert!(place.truncate().abs().max_element() <= 0.9201, "{view:?} {viewport:?} {place}");
                assert!((0.0..=1.0).contains(&place.z), "{view:?} {viewport:?} {place}");
                reach = reach.max(place.truncate().abs().max_element());
            }
            assert!(reach > 0.88, "{view:?} {viewport:?}: the top only reaches {reach}");
        }
    }
}

#[test]
fn room_is_left_for_enlarged_motion_in_depth() {
    for view in VIEWS {
        let camera = camera(view, [1280, 720]);
        for corner in top().corners() {
            for shift in [Vec3::Z, Vec3::NEG_Z] {
                let place = seen(&camera, top().middle() + corner + 60.0 * shift);
                assert!((0.0..=1.0).contains(&place.z), "{view:?} {place}");
            }
        }
    }
}

#[test]
fn view_rotations_are_orthonormal_and_keep_handedness() {
    let mut directions = VIEWS.to_vec();
    for step in 0_u8..20 {
        let angle = f32::from(step) * 0.31;
        directions.push(Direction { yaw: angle, pitch: (angle * 1.7).sin() * FRAC_PI_2, roll: -angle });
    }
    for direction in directions {
        let rotation = direction.view_from_top();
        assert!((rotation * rotation.transpose()).abs_diff_eq(Mat3::IDENTITY, 1e-5), "{direction:?}");
        assert!((rotation.determinant() - 1.0).abs() < 1e-5, "{direction:?}");
    }
}

#[test]
fn named_views_show_what_they_say() {
    let toward = |view, axis: Vec3| {
        let camera = camera(view, [1000, 1000]);
        (seen(&camera, top().middle() + 40.0 * axis) - seen(&camera, top().middle())).truncate()
    };
    // Design: look at the outside, neck end up, treble on the right.
    assert!(toward(Direction::OUTSIDE, Vec3::Y).y > 0.0);
    assert!(toward(Direction::OUTSIDE, Vec3::X).x > 0.0);
    // From the inside the bass side is on the right.
    assert!(toward(Direction::INSIDE, Vec3::Y).y > 0.0);
    assert!(toward(Direction::INSIDE, Vec3::X).x < 0.0);
    // Both profiles have the outside up.
    assert!(toward(Direction::BASS_SIDE, Vec3::Z).y > 0.0);
    assert!(toward(Direction::BASS_SIDE, Vec3::Y).x < 0.0);
    assert!(toward(Direction::ALONG_GRAIN, Vec3::Z).y > 0.0);
    assert!(toward(Direction::ALONG_GRAIN, Vec3::X).x > 0.0);
}

#[test]
fn the_outside_faces_the_viewer_outside_and_turns_away_inside() {
    let facing = |view: Direction| (view.view_from_top() * Vec3::Z).z;
    assert!(facing(Direction::OUTSIDE) > 0.8);
    assert!(facing(Direction::INSIDE) < -0.8);
}

#[test]
fn a_panned_middle_stays_under_the_pointer() {
    for view in VIEWS {
        let mut camera = camera(view, [1200, 800]);
        camera.zoom(1.7);
        let before = seen(&camera, top().middle());
        camera.pan(Vec2::new(60.0, -40.0));
        let moved = (seen(&camera, top().middle()) - before).truncate();
        // 60 of 600 pixels right, 40 of 400 up.
        assert!(moved.abs_diff_eq(Vec2::new(0.1, 0.1), 1e-4), "{view:?} {moved}");
    }
}

#[test]
fn the_near_side_follows_a_drag_however_the_view_is_rolled() {
    for view in VIEWS {
        let mut camera = camera(view, [1000, 1000]);
        let rotation = view.view_from_top();
        // The point of the top that faces the viewer, in the top's frame.
        let facing = top().middle() + 30.0 * (rotation.transpose() * Vec3::Z);
        for drag in [Vec2::new(8.0, 0.0), Vec2::new(0.0, 8.0)] {
            let before = seen(&camera, facing);
            camera.orbit(drag);
            let moved = (seen(&camera, facing) - before).truncate();
            assert!(moved.dot(Vec2::new(drag.x, -drag.y)) > 0.0, "{view:?} {drag} {moved}");
        }
    }
}

#[test]
fn zooming_is_limited_and_ignores_nonsense() {
    let mut camera = camera(Direction::OUTSIDE, [1000, 1000]);
    let size = |camera: &Camera| (seen(camera, top().middle() + Vec3::X) - seen(camera, top().middle() - Vec3::X)).x;
    let framed = size(&camera);
    camera.zoom(2.0);
    assert!((size(&camera) / framed - 2.0).abs() < 1e-3);
    for nonsense in [0.0, -1.0, f32::NAN, f32::INFINITY] {
        camera.zoom(nonsense);
    }
    camera.orbit(Vec2::NAN);
    camera.pan(Vec2::INFINITY);
    assert!((size(&camera) / framed - 2.0).abs() < 1e-3);
    camera.zoom(1e9);
    assert!((size(&camera) / framed - 10.0).abs() < 0.05);
    camera.zoom(1e-9);
    assert!((size(&camera) / framed - 0.25).abs() < 1e-3);
    assert!(camera.clip_from_top().is_finite());
}

#[test]
fn a_new_design_leaves_the_viewer_where_it_is_until_the_next_fit() {
    let mut camera = camera(Direction::OUTSIDE, [1000, 1000]);
    let before = camera.clip_from_top() * top().middle().extend(1.0);
    camera.set_bounds(Bounds::round(&[-104.0, 0.0, -2.0, 104.0, 356.0, 19.0]).expect("two corners"));
    let after = camera.clip_from_top() * top().middle().extend(1.0);
    assert!((after - before).truncate().truncate().length() < 1e-4);
}

#[test]
fn a_pose_shows_the_same_on_another_canvas_of_the_same_shape() {
    let point = Vec3::new(-35.0, 120.0, 9.0);
    for view in VIEWS {
        let mut camera = camera(view, [1000, 700]);
        camera.orbit(Vec2::new(170.0, -60.0));
        camera.zoom(1.7);
        camera.pan(Vec2::new(30.0, 80.0));
        let mut other = Camera::new();
        other.set_viewport_px([500, 350]);
        other.set_bounds(top());
        other.take_pose(&camera.pose()).expect("the pose of a camera");
        assert!((seen(&camera, point) - seen(&other, point)).length() < 1e-4, "{view:?}");
    }
}

#[test]
fn what_is_no_pose_leaves_the_viewer_where_it_is() {
    let mut camera = camera(Direction::INSIDE, [1000, 700]);
    let before = camera.pose();
    let mut nowhere = before;
    nowhere[6] = f32::NAN;
    for wrong in [&before[..8], &nowhere[..], &[]] {
        let error = camera.take_pose(wrong).expect_err("no pose");
        assert!(matches!(error, ViewError::WrongPose { numbers } if numbers == wrong.len()));
    }
    assert_eq!(camera.pose(), before);
    let mut far = before;
    (far[6], far[7]) = (1e9, 1e9);
    camera.take_pose(&far).expect("finite");
    assert!(camera.clip_from_top().is_finite() && camera.pose()[6] <= 4.0);
}

#[test]
fn the_ray_through_a_pixel_meets_what_is_seen_there() {
    let point = Vec3::new(-35.0, 120.0, 9.0);
    for view in VIEWS {
        for viewport in VIEWPORTS {
            let camera = camera(view, viewport);
            let place = seen(&camera, point).truncate();
            let [width, height] = viewport.map(|side| side as f32);
            let (from, along) = camera.ray(Vec2::new(0.5 * (1.0 + place.x) * width, 0.5 * (1.0 - place.y) * height));
            let beside = (point - from).reject_from(along).length();
            assert!(beside < 1e-2, "{view:?} {viewport:?}: {beside} mm beside it");
            assert!(along.dot(point - from) > 0.0, "the ray goes away from the viewer");
        }
    }
}

/// Two tops on canvases of one shape are seen from one place however the first is turned: what is drawn of a point is the same.
#[test]
fn two_that_stand_together_see_the_same() {
    let mut first = camera(Direction::OUTSIDE, [400, 600]);
    let small = Bounds::round(&[-60.0, 0.0, 0.0, 60.0, 200.0, 9.0]).expect("two points");
    let mut second = camera(Direction::INSIDE, [400, 600]);
    second.set_bounds(small);
    second.fit();
    first.orbit(Vec2::new(37.0, -12.0));
    first.zoom(1.4);
    first.pan(Vec2::new(-9.0, 22.0));
    second.stand_with(&first);
    for point in [Vec3::ZERO, Vec3::new(20.0, 150.0, 12.0), Vec3::new(-90.0, 300.0, 3.0)] {
        assert!((seen(&first, point) - seen(&second, point)).length() < 1e-5, "{point}");
    }
    assert_eq!(second.viewport_px(), [400, 600]);
    assert_eq!(second.bounds(), top().and(small));
}
