//! Where the viewer stands.
//!
//! The viewer turns round the middle of the top's box: `yaw` about the long axis y (0 sees the outside), `pitch` up or
//! down over the ends, and a `roll` of the whole picture that only named views set. The neck end therefore stays on its
//! side of the screen however the top is turned. A turntable about z was not taken: seen from the front, which is how
//! a top is looked at, it spins the top like a record instead of showing its sides.
//!
//! Transforms are named so that products read off: `clip_from_top = clip_from_view * view_from_top`.

use std::f32::consts::{FRAC_PI_2, PI};

use glam::{Mat3, Mat4, Vec2, Vec3};

use super::bounds::Bounds;
use super::framing::Framing;
use super::problem::ViewError;

#[cfg(test)]
mod tests;

/// Vertical angle of view in radians (24 degrees): near enough to parallel that the outline keeps its proportions.
pub const ANGLE_OF_VIEW: f32 = 24.0 / 180.0 * PI;

/// Limits of the zoom against the framed distance: a tenth shows an eye of a sound hole, four times is a small top in
/// a wide stage.
const NEAREST: f32 = 0.1;
const FARTHEST: f32 = 4.0;

/// See [`Camera::pose`].
pub type Pose = [f32; 9];

/// Where the viewer looks from. Invariants: every number is finite, the viewport is at least one pixel each way.
#[derive(Clone, Copy, Debug)]
pub struct Camera {
    bounds: Bounds,
    direction: Direction,
    /// Where the viewer stood when the top was last fitted: the framing belongs to it.
    fitted_from: Direction,
    framing: Framing,
    /// Distance as a share of the framed one.
    zoom: f32,
    /// Shift of the viewer across the screen, mm at the pivot, from the framed place.
    pan_mm: Vec2,
    viewport_px: [u32; 2],
}

/// The three angles of the viewer's stand, radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Direction {
    yaw: f32,
    pitch: f32,
    roll: f32,
}

impl Direction {
    /// The outside from the front, tilted towards the bottom edge so that the arching reads.
    pub const OUTSIDE: Self = Self { yaw: 0.0, pitch: -0.42, roll: 0.0 };
    /// The inside from the front, tilted alike; bass and treble change sides, as on the bench.
    pub const INSIDE: Self = Self { yaw: PI, pitch: -0.42, roll: 0.0 };
    /// Across the top from the bass side, neck end left, outside up: the long arch in profile, from just above.
    pub const BASS_SIDE: Self = Self { yaw: -1.51, pitch: 0.0, roll: FRAC_PI_2 };
    /// Along the grain from the bottom edge, outside up: the cross arches in profile, likewise.
    pub const ALONG_GRAIN: Self = Self { yaw: 0.0, pitch: -1.47, roll: 0.0 };

    /// The named view: "outside", "inside", "bass_side" or "along_grain".
    ///
    /// # Errors
    /// [`ViewError::UnknownView`].
    pub fn named(name: &str) -> Result<Self, ViewError> {
        match name {
            "outside" => Ok(Self::OUTSIDE),
            "inside" => Ok(Self::INSIDE),
            "bass_side" => Ok(Self::BASS_SIDE),
            "along_grain" => Ok(Self::ALONG_GRAIN),
            _ => Err(ViewError::UnknownView { name: name.to_owned() }),
        }
    }

    /// Rotation from the top's frame to the viewer's (x right, y up, z towards the viewer).
    pub fn view_from_top(self) -> Mat3 {
        let (yaw_sin, yaw_cos) = self.yaw.sin_cos();
        let (pitch_sin, pitch_cos) = self.pitch.sin_cos();
        // Rows: the viewer's right, up and backward directions in the top's frame.
        let right = Vec3::new(yaw_cos, 0.0, -yaw_sin);
        let back = Vec3::new(yaw_sin * pitch_cos, pitch_sin, yaw_cos * pitch_cos);
        let up = back.cross(right);
        Mat3::from_rotation_z(self.roll) * Mat3::from_cols(right, up, back).transpose()
    }
}

impl Default for Camera {
    fn default() -> Self {
        Self::new()
    }
}

impl Camera {
    /// A viewer in front of the outside of nothing in particular.
    pub fn new() -> Self {
        let mut camera = Self {
            bounds: Bounds::default(),
            direction: Direction::OUTSIDE,
            fitted_from: Direction::OUTSIDE,
            framing: Framing::default(),
            zoom: 1.0,
            pan_mm: Vec2::ZERO,
            viewport_px: [1, 1],
        };
        camera.fit();
        camera
    }

    /// Looks at a top that fills `bounds`. The viewer stays until the next [`fit`](Self::fit), so that a change of the
    /// design is seen against a still picture.
    pub const fn set_bounds(&mut self, bounds: Bounds) {
        self.bounds = bounds;
    }

    /// The box of what is looked at.
    pub const fn bounds(&self) -> Bounds {
        self.bounds
    }

    /// Stands where `other` does. What this one looks at stays, and so does its canvas: with one of another shape it sees more or less to
    /// the sides.
    pub fn stand_with(&mut self, other: &Camera) {
        *self = Self { bounds: self.bounds.and(other.bounds), viewport_px: self.viewport_px, ..*other };
    }

    /// Draws on a canvas of this many pixels; the framing follows the new shape, zoom and pan stay.
    pub fn set_viewport_px(&mut self, viewport_px: [u32; 2]) {
        self.viewport_px = viewport_px.map(|side| side.max(1));
        self.frame();
    }

    /// Width and height of the canvas in pixels, at least 1.
    #[must_use]
    pub const fn viewport_px(&self) -> [u32; 2] {
        self.viewport_px
    }

    /// Turns to a named view and fits the top.
    pub fn turn_to(&mut self, direction: Direction) {
        self.direction = direction;
        self.fit();
    }

    /// Brings the whole top into the picture from the present direction.
    pub fn fit(&mut self) {
        self.zoom = 1.0;
        self.pan_mm = Vec2::ZERO;
        self.fitted_from = self.direction;
        self.frame();
    }

    /// Where the viewer stands, as numbers that mean the same on a canvas of any size: yaw, pitch and roll now and when the top was last
    /// fitted, in radians, the zoom as a share of the framed distance, and the shift across the screen in mm.
    #[must_use]
    pub const fn pose(&self) -> Pose {
        let Self { direction: now, fitted_from: then, zoom, pan_mm, .. } = self;
        [now.yaw, now.pitch, now.roll, then.yaw, then.pitch, then.roll, *zoom, pan_mm.x, pan_mm.y]
    }

    /// Stands where [`pose`](Self::pose) says, as far as zoom and shift may go here.
    ///
    /// # Errors
    /// [`ViewError::WrongPose`] unless they are nine finite numbers; the viewer then stays.
    pub fn take_pose(&mut self, numbers: &[f32]) -> Result<(), ViewError> {
        let pose = Pose::try_from(numbers).ok().filter(|pose| pose.iter().all(|number| number.is_finite()));
        let [yaw, pitch, roll, fitted_yaw, fitted_pitch, fitted_roll, zoom, x, y] =
            pose.ok_or(ViewError::WrongPose { numbers: numbers.len() })?;
        self.direction = Direction { yaw, pitch: pitch.clamp(-FRAC_PI_2, FRAC_PI_2), roll };
        self.fitted_from = Direction { yaw: fitted_yaw, pitch: fitted_pitch, roll: fitted_roll };
        self.frame();
        self.zoom = zoom.clamp(NEAREST, FARTHEST);
        self.shift_to(Vec2::new(x, y));
        Ok(())
    }

    fn shift_to(&mut self, pan_mm: Vec2) {
        let limit = 2.0 * self.bounds.radius();
        self.pan_mm = pan_mm.clamp(Vec2::splat(-limit), Vec2::splat(limit));
    }

    fn frame(&mut self) {
        self.framing = Framing::new(&self.bounds, self.fitted_from.view_from_top(), self.half_extent());
    }

    /// Turns the top under a drag of this many pixels (y down): the near side follows the pointer, half a turn for
    /// the canvas's shorter side. The distance stays, so that nothing breathes while it turns.
    pub fn orbit(&mut self, drag_px: Vec2) {
        if !drag_px.is_finite() {
            return;
        }
        let shorter_px = self.viewport_px[0].min(self.viewport_px[1]) as f32;
        let along_screen = Vec2::new(drag_px.x, -drag_px.y) * (PI / shorter_px);
        let unrolled = Vec2::from_angle(-self.direction.roll).rotate(along_screen);
        self.direction.yaw = (self.direction.yaw - unrolled.x).rem_euclid(2.0 * PI);
        self.direction.pitch = (self.direction.pitch - unrolled.y).clamp(-FRAC_PI_2, FRAC_PI_2);
    }

    /// Shifts the picture by this many pixels (y down): a point at the middle of the top stays under the pointer.
    pub fn pan(&mut self, drag_px: Vec2) {
        if !drag_px.is_finite() {
            return;
        }
        let mm_per_px = 2.0 * self.half_extent().y * self.distance_mm() / self.viewport_px[1] as f32;
        self.shift_to(self.pan_mm + Vec2::new(-drag_px.x, drag_px.y) * mm_per_px);
    }

    /// Comes closer by this factor (2 is twice as large), within limits.
    pub fn zoom(&mut self, factor: f32) {
        if factor.is_finite() && factor > 0.0 {
            self.zoom = (self.zoom / factor).clamp(NEAREST, FARTHEST);
        }
    }

    /// What the viewer sees at a pixel of the canvas (y down): a point on the line of sight and its direction away from the
    /// viewer, in the top's frame, mm and unit.
    pub fn ray(&self, px: Vec2) -> (Vec3, Vec3) {
        let [width, height] = self.viewport_px.map(|side| side as f32);
        let across = Vec2::new(2.0 * px.x / width - 1.0, 1.0 - 2.0 * px.y / height) * self.half_extent();
        let top_from_view = self.view_from_top().inverse();
        (top_from_view.transform_point3(Vec3::ZERO), top_from_view.transform_vector3(across.extend(-1.0)).normalize())
    }

    /// Half the width and height that the viewer sees at distance 1.
    fn half_extent(&self) -> Vec2 {
        let half_height = (0.5 * ANGLE_OF_VIEW).tan();
        Vec2::new(half_height * self.viewport_px[0] as f32 / self.viewport_px[1] as f32, half_height)
    }

    fn distance_mm(&self) -> f32 {
        self.framing.distance_mm * self.zoom
    }

    /// From the top's frame (mm) to the viewer's (mm, the viewer at the origin looking along -z).
    pub fn view_from_top(&self) -> Mat4 {
        let viewer = (self.framing.centre_mm + self.pan_mm).extend(self.distance_mm());
        let rotation = Mat4::from_mat3(self.direction.view_from_top());
        Mat4::from_translation(-viewer) * rotation * Mat4::from_translation(-self.framing.pivot_mm)
    }

    /// From the viewer's frame to clip space: x and y in -w..w, depth in 0..w.
    fn clip_from_view(&self) -> Mat4 {
        let distance = self.distance_mm();
        // Twice the box's radius leaves room for enlarged motion. Close up the near plane follows the viewer: a
        // thousandth of the far plane would still leave steps of a micrometre in a 24 bit depth.
        let reach = 2.0 * self.bounds.radius();
        let near = (distance - reach).max(0.02 * distance);
        let extent = self.half_extent() * near;
        glam::camera::rh::proj::directx::frustum(-extent.x, extent.x, -extent.y, extent.y, near, distance + reach)
    }

    /// From the top's frame (mm) to clip space.
    pub fn clip_from_top(&self) -> Mat4 {
        self.clip_from_view() * self.view_from_top()
    }
}
