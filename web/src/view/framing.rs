//! Standing back just far enough to see the whole top.

use glam::{Mat3, Vec2, Vec3};

use super::bounds::Bounds;

/// Share of the half picture that the top may fill; the rest is margin, and room for enlarged motion.
const FILL: f32 = 0.92;

/// The viewer's place that frames a box.
#[derive(Clone, Copy, Debug, Default)]
pub struct Framing {
    /// The box's middle in the top's frame, mm: the viewer turns about it.
    pub pivot_mm: Vec3,
    /// Shift of the viewer across the screen that centres the picture of the box, mm.
    pub centre_mm: Vec2,
    /// Distance of the viewer from the pivot along the line of sight, mm.
    pub distance_mm: f32,
}

impl Framing {
    /// The nearest place from which every corner of `bounds` is inside the picture, with a margin of 8 %.
    ///
    /// `half_extent` is what the viewer sees at distance 1, half the width and height. A corner (x, y, z) is inside on
    /// the right when x - c <= (d - z) t, so d t + c must reach the largest x + z t, and on the left d t - c the largest
    /// -x + z t: half the sum and half the difference of the two give d and c at once. The same for up and down; the
    /// larger distance holds.
    pub fn new(bounds: &Bounds, view_from_top: Mat3, half_extent: Vec2) -> Self {
        let t = FILL * half_extent;
        let mut positive = Vec2::NEG_INFINITY;
        let mut negative = Vec2::NEG_INFINITY;
        let mut nearest = f32::NEG_INFINITY;
        for corner in bounds.corners() {
            let corner: Vec3 = view_from_top * corner;
            positive = positive.max(corner.truncate() + corner.z * t);
            negative = negative.max(-corner.truncate() + corner.z * t);
            nearest = nearest.max(corner.z);
        }
        let distance = (0.5 * (positive + negative) / t).max_element();
        // A box seen exactly end on could otherwise touch the viewer's eye on an extremely wide picture.
        let clear = nearest + 0.1 * bounds.radius();
        Self { pivot_mm: bounds.middle(), centre_mm: 0.5 * (positive - negative), distance_mm: distance.max(clear) }
    }
}
