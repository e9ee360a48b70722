// What is the same for every vertex and pixel of one frame; `Frame` in frame.rs has the same layout, and a test holds
// the two together.

struct Frame {
    // The top's frame (mm, x across, y along the grain, z outward) to clip space, depth 0..1.
    clip_from_top: mat4x4f,
    // The same to the viewer's frame (mm, x right, y up, z towards the viewer).
    view_from_top: mat4x4f,
    // (cos, -sin) of the present phase: Re[(re + i im) e^{i phase}] = re cos - im sin.
    swing: vec2f,
    // The swing whose zero line is drawn: (1, 0) for a standing motion, whose nodes do not depend on the phase.
    nodal_swing: vec2f,
    // How many times the motion fields (mm) are enlarged.
    exaggeration: f32,
    // Share of the motion's colour over the wood's, 0..1.
    colour_amount: f32,
    // Half the nodal line's width in pixels of the canvas; 0 draws none.
    nodal_half_width_px: f32,
    // How much light the stage throws back on the wood from below, linear.
    stage_glow: f32,
    // A cut through the top at rest: (x, y) of its plane's unit normal; its distance from the origin, mm; half the width
    // of its line, pixels, 0 for none.
    cut: vec4f,
    // A place in plan and the radius of the ring round it, mm; 0 for none.
    place: vec3f,
    // 1 where a scalar's colours cover the wood, 0 where the motion's do.
    by_scalar: f32,
    // What ghosts are drawn in, sRGB, and how dense they are where they are seen edge on.
    ghost: vec4f,
    // 1 for even grey in place of the wood's own colour.
    plain: f32,
}

// The sides a vertex can belong to.
const OUTSIDE: u32 = 0u;
const INSIDE: u32 = 1u;
const WALL: u32 = 2u;

@group(0) @binding(0) var<uniform> frame: Frame;
@group(0) @binding(1) var colour_maps: texture_2d<f32>;
@group(0) @binding(2) var colour_maps_sampler: sampler;
