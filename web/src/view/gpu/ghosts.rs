//! The top at rest and at both ends of its swing, clear as glass beside the moving one.

use wgpu::{
    BindGroup, BindGroupDescriptor, BindGroupEntry, BlendState, Buffer, Device, Queue, RenderPass, RenderPipeline,
    TextureFormat,
};

use super::buffers::TopBuffers;
use super::pipeline::{compiled, frame_buffer};
use crate::view::frame::Frame;

/// A pipeline of their own, and what each is told of the frame.
pub(crate) struct Ghosts {
    pipeline: RenderPipeline,
    each: [(Buffer, BindGroup); 3],
}

impl Ghosts {
    /// Compiles the shader for canvases of `format`.
    pub(crate) fn new(device: &Device, format: TextureFormat) -> Self {
        let pipeline = compiled(device, format, "ghost", Some(BlendState::ALPHA_BLENDING));
        let each = std::array::from_fn(|_| {
            let frame = frame_buffer(device);
            let resources = device.create_bind_group(&BindGroupDescriptor {
                label: Some("ghost"),
                layout: &pipeline.get_bind_group_layout(0),
                entries: &[BindGroupEntry { binding: 0, resource: frame.as_entire_binding() }],
            });
            (frame, resources)
        });
        Self { pipeline, each }
    }

    /// Tells the shader about the next frame.
    pub(crate) fn set_frames(&self, queue: &Queue, frames: &[Frame; 3]) {
        for ((buffer, _), frame) in self.each.iter().zip(frames) {
            queue.write_buffer(buffer, 0, bytemuck::bytes_of(frame));
        }
    }

    /// Draws them over the top, which must be drawn before.
    pub(crate) fn draw(&self, pass: &mut RenderPass<'_>, top: &TopBuffers) {
        pass.set_pipeline(&self.pipeline);
        for (_, resources) in &self.each {
            pass.set_bind_group(0, resources, &[]);
            top.draw(pass);
        }
    }
}
