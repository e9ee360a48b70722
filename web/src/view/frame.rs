//! What the shader is told once a frame.

use bytemuck::{Pod, Zeroable};
use glam::Mat4;

use super::camera::Camera;
use super::look::Look;
use super::marks::Marks;

/// `Frame` of `shaders/frame.wgsl`, byte for byte.
#[derive(Clone, Copy, Debug, Pod, Zeroable)]
#[repr(C)]
pub struct Frame {
    /// The top's frame (mm) to clip space.
    pub clip_from_top: Mat4,
    /// The top's frame (mm) to the viewer's.
    pub view_from_top: Mat4,
    /// (cos, -sin) of the phase.
    pub swing: [f32; 2],
    /// The swing whose zero is drawn as the nodal line.
    pub nodal_swing: [f32; 2],
    /// How many times the motion fields are enlarged.
    pub exaggeration: f32,
    /// Share of the motion's colour, 0..1.
    pub colour_amount: f32,
    /// Half the nodal line's width, pixels; 0 draws none.
    pub nodal_half_width_px: f32,
    /// Light from the stage below, linear.
    pub stage_glow: f32,
    /// Normal (x, y), distance (mm) and half width (pixels) of the cut's line; width 0 draws none.
    pub cut: [f32; 4],
    /// (x, y) of a place and the radius of its ring, mm; radius 0 draws none.
    pub place: [f32; 3],
    /// 1 where a scalar's colours cover the wood, 0 where the motion's do.
    pub by_scalar: f32,
    /// Ghosts' colour, sRGB, and their density seen edge on.
    pub ghost: [f32; 4],
    /// 1 for even grey in place of the wood's own colour.
    pub plain: f32,
    /// Uniforms come in steps of 16 bytes.
    pub unused: [f32; 3],
}

/// The moment of the motion that is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Phase of the motion, radians.
    pub phase_rad: f32,
    /// How many times the motion fields (mm) are enlarged.
    pub exaggeration: f32,
    /// Whether the motion has one phase everywhere (its imaginary part is zero), so that its nodes stand still.
    pub standing: bool,
}

impl Moment {
    /// What stands beside the moving top as ghosts: rest, and the two ends of the swing, half a period apart.
    ///
    /// `furthest_rad` is the phase at which the motion as a whole is farthest from rest.
    #[must_use]
    pub fn ghosts(self, furthest_rad: f32) -> [Moment; 3] {
        let at = |phase_rad| Moment { phase_rad, ..self };
        [Moment { exaggeration: 0.0, ..self }, at(furthest_rad), at(furthest_rad + std::f32::consts::PI)]
    }
}

impl Frame {
    /// The frame seen by `camera` with `look` and `marks` at `moment`.
    pub fn new(camera: &Camera, look: &Look, marks: &Marks, moment: Moment) -> Self {
        let swing = [moment.phase_rad.cos(), -moment.phase_rad.sin()];
        Self {
            clip_from_top: camera.clip_from_top(),
            view_from_top: camera.view_from_top(),
            swing,
            nodal_swing: if moment.standing { [1.0, 0.0] } else { swing },
            exaggeration: moment.exaggeration,
            colour_amount: look.colour_amount(),
            nodal_half_width_px: look.nodal_half_width_px(camera.viewport_px()),
            stage_glow: look.theme().stage_glow(),
            cut: marks.cut(look.line_half_width_px(camera.viewport_px())),
            place: marks.place(),
            by_scalar: look.by_scalar(),
            ghost: look.theme().ghost(),
            plain: look.plain(),
            unused: [0.0; 3],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_standing_motion_keeps_its_nodes_while_it_swings() {
        let camera = Camera::new();
        let at = |phase_rad, standing| {
            let moment = Moment { phase_rad, exaggeration: 2.0, standing };
            Frame::new(&camera, &Look::default(), &Marks::default(), moment)
        };
        assert_eq!(at(1.2, true).nodal_swing, [1.0, 0.0]);
        assert_eq!(at(1.2, false).nodal_swing, at(1.2, false).swing);
        // e^{i pi/2} = i, and Re[(re + i im) i] = -im.
        let quarter = at(std::f32::consts::FRAC_PI_2, true).swing;
        assert!(quarter[0].abs() < 1e-6 && (quarter[1] + 1.0).abs() < 1e-6);
    }

    #[test]
    fn ghosts_are_rest_and_two_opposite_moments() {
        let now = Moment { phase_rad: 0.3, exaggeration: 12.0, standing: false };
        let [rest, out, back] = now.ghosts(1.1);
        assert_eq!(rest.exaggeration, 0.0);
        let swing = |moment| Frame::new(&Camera::new(), &Look::default(), &Marks::default(), moment).swing;
        // Re[(re + i im) e^{i (phase + pi)}] is the opposite of that at the phase.
        for (there, opposite) in swing(out).iter().zip(swing(back)) {
            assert!((there + opposite).abs() < 1e-6);
        }
    }
}
