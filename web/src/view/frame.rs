//! What the shader is told once a frame.

use bytemuck::{Pod, Zeroable};
use glam::Mat4;

use super::camera::Camera;
use super::look::Look;

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
}

/// The moment of the motion that is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Moment {
    /// Phase of the motion, radians.
    pub phase_rad: f32,
    /// How many times the motion fields (mm) are enlarged.
    pub exaggeration: f32,
    /// Whether the motion has one phase everywhere (its imaginary part is zero), so that its nodes stand still.
    pub standing: bool,
}

impl Frame {
    /// The frame seen by `camera` with `look` at `moment`.
    pub fn new(camera: &Camera, look: &Look, moment: Moment) -> Self {
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
            Frame::new(&camera, &Look::default(), Moment { phase_rad, exaggeration: 2.0, standing })
        };
        assert_eq!(at(1.2, true).nodal_swing, [1.0, 0.0]);
        assert_eq!(at(1.2, false).nodal_swing, at(1.2, false).swing);
        // e^{i pi/2} = i, and Re[(re + i im) i] = -im.
        let quarter = at(std::f32::consts::FRAC_PI_2, true).swing;
        assert!(quarter[0].abs() < 1e-6 && (quarter[1] + 1.0).abs() < 1e-6);
    }
}
