//! The top's arrays on the device.

use bytemuck::NoUninit;
use wgpu::{Buffer, BufferDescriptor, BufferUsages, Device, Queue, RenderPass};

use crate::view::arrays::{MOTION_COMPONENTS, MotionArrays, PictureArrays};
use crate::view::layout::SURROUNDINGS;
use crate::view::problem::ViewError;

/// A picture and its motion. Invariant: all vertex buffers hold the same number of vertices.
pub(crate) struct TopBuffers {
    positions: Buffer,
    normals: Buffer,
    kinds: Buffer,
    motion_re: Buffer,
    motion_im: Buffer,
    scalar: Buffer,
    surroundings: Buffer,
    triangles: Buffer,
    vertices: usize,
    corners: u32,
    standing: bool,
    furthest_rad: f32,
}

impl TopBuffers {
    /// Lays a picture on the device, at rest.
    ///
    /// # Errors
    /// [`ViewError::TooLarge`].
    pub(crate) fn new(device: &Device, queue: &Queue, picture: &PictureArrays<'_>) -> Result<Self, ViewError> {
        let vertices = picture.kinds.len();
        let vertex = |bytes| made(device, BufferUsages::VERTEX, bytes);
        let vector_bytes = size_of_val(picture.positions);
        let motion_bytes = vertices * MOTION_COMPONENTS * size_of::<f32>();
        let mut buffers = Self {
            positions: vertex(vector_bytes)?,
            normals: vertex(vector_bytes)?,
            kinds: vertex(size_of_val(picture.kinds))?,
            // New buffers hold zeros: no motion.
            motion_re: vertex(motion_bytes)?,
            motion_im: vertex(motion_bytes)?,
            scalar: vertex(vertices * size_of::<f32>())?,
            // Zeros here: far from any purfling, under an open sky.
            surroundings: vertex(vertices * SURROUNDINGS * size_of::<f32>())?,
            triangles: made(device, BufferUsages::INDEX, size_of_val(picture.triangles))?,
            vertices,
            corners: 0,
            standing: true,
            furthest_rad: 0.0,
        };
        buffers.write(queue, picture);
        Ok(buffers)
    }

    /// Takes another picture of the same size into the same buffers and keeps the motion; false if the sizes differ.
    pub(crate) fn take(&mut self, queue: &Queue, picture: &PictureArrays<'_>) -> bool {
        let fits = picture.kinds.len() == self.vertices && picture.triangles.len() == self.corners as usize;
        if fits {
            self.write(queue, picture);
        }
        fits
    }

    fn write(&mut self, queue: &Queue, picture: &PictureArrays<'_>) {
        laid(queue, &self.positions, picture.positions);
        laid(queue, &self.normals, picture.normals);
        laid(queue, &self.kinds, picture.kinds);
        laid(queue, &self.triangles, picture.triangles);
        // The buffer was made, so the count is far below 2^32.
        self.corners = picture.triangles.len() as u32;
    }

    /// Takes a motion of as many vertices.
    pub(crate) fn take_motion(&mut self, queue: &Queue, motion: &MotionArrays<'_>) {
        laid(queue, &self.motion_re, motion.re);
        laid(queue, &self.motion_im, motion.im);
        self.standing = motion.standing;
        self.furthest_rad = motion.furthest_rad;
    }

    /// Takes as many numbers as there are vertices.
    pub(crate) fn take_scalar(&mut self, queue: &Queue, values: &[f32]) {
        laid(queue, &self.scalar, values);
    }

    pub(crate) const fn vertices(&self) -> usize {
        self.vertices
    }

    /// Whether the motion has one phase everywhere.
    pub(crate) const fn standing(&self) -> bool {
        self.standing
    }

    /// Takes what is round each vertex, (vertex, [mm from the edge, share of the sky hidden]).
    pub(crate) fn take_surroundings(&mut self, queue: &Queue, surroundings: &[f32]) {
        laid(queue, &self.surroundings, surroundings);
    }

    /// The phase at which the motion is farthest from rest.
    pub(crate) const fn furthest_rad(&self) -> f32 {
        self.furthest_rad
    }

    /// Draws every triangle; the pass must have its pipeline and bind group.
    pub(crate) fn draw(&self, pass: &mut RenderPass<'_>) {
        let Self { positions, normals, kinds, motion_re, motion_im, scalar, surroundings, .. } = self;
        let buffers = [positions, normals, kinds, motion_re, motion_im, scalar, surroundings];
        for (slot, buffer) in (0..).zip(buffers) {
            pass.set_vertex_buffer(slot, buffer.slice(..));
        }
        pass.set_index_buffer(self.triangles.slice(..), wgpu::IndexFormat::Uint32);
        pass.draw_indexed(0..self.corners, 0, 0..1);
    }
}

fn made(device: &Device, usage: BufferUsages, bytes: usize) -> Result<Buffer, ViewError> {
    let bytes = bytes as u64;
    let limit = device.limits().max_buffer_size;
    if bytes > limit {
        return Err(ViewError::TooLarge { bytes, limit });
    }
    Ok(device.create_buffer(&BufferDescriptor {
        label: Some("top"),
        size: bytes,
        usage: usage | BufferUsages::COPY_DST,
        mapped_at_creation: false,
    }))
}

fn laid<T: NoUninit>(queue: &Queue, buffer: &Buffer, numbers: &[T]) {
    queue.write_buffer(buffer, 0, bytemuck::cast_slice(numbers));
}
