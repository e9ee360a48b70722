//! Where each vertex number lies in the buffers; `Vertex` of `shaders/top.wgsl` reads them at these locations.

use super::arrays::MOTION_COMPONENTS;

/// What a vertex attribute holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Holds {
    /// Three floats.
    Vector,
    /// One float.
    Number,
    /// One unsigned integer.
    Index,
}

/// One attribute within its buffer.
#[derive(Clone, Copy, Debug)]
pub struct Attribute {
    /// Location in the shader.
    pub location: u32,
    /// What it holds.
    pub holds: Holds,
    /// Bytes from the vertex's start.
    pub offset: u64,
}

/// One vertex buffer: the arrays that the page gives are laid on the device as they are, one buffer each.
#[derive(Clone, Copy, Debug)]
pub struct VertexBuffer {
    /// Bytes from one vertex to the next.
    pub stride: u64,
    /// What lies in it.
    pub attributes: &'static [Attribute],
}

const FLOAT: u64 = size_of::<f32>() as u64;
/// Numbers that a vertex has of what is round it: distance from the edge, share of the sky hidden.
pub const SURROUNDINGS: usize = 2;
const MOTION_STRIDE: u64 = MOTION_COMPONENTS as u64 * FLOAT;

const fn vector(location: u32, offset: u64) -> Attribute {
    Attribute { location, holds: Holds::Vector, offset }
}

const fn number(location: u32, offset: u64) -> Attribute {
    Attribute { location, holds: Holds::Number, offset }
}

/// The buffers in the order of their slots: positions, normals, kinds, motion re, motion im, scalar,
/// surroundings.
pub const VERTEX_BUFFERS: [VertexBuffer; 7] = [
    VertexBuffer { stride: 3 * FLOAT, attributes: &[vector(0, 0)] },
    VertexBuffer { stride: 3 * FLOAT, attributes: &[vector(1, 0)] },
    VertexBuffer {
        stride: size_of::<u32>() as u64,
        attributes: &[Attribute { location: 2, holds: Holds::Index, offset: 0 }],
    },
    VertexBuffer { stride: MOTION_STRIDE, attributes: &[vector(3, 0), vector(4, 3 * FLOAT)] },
    VertexBuffer { stride: MOTION_STRIDE, attributes: &[vector(5, 0), vector(6, 3 * FLOAT)] },
    VertexBuffer { stride: FLOAT, attributes: &[number(7, 0)] },
    VertexBuffer { stride: SURROUNDINGS as u64 * FLOAT, attributes: &[number(8, 0), number(9, FLOAT)] },
];
