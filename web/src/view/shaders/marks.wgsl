// Lines laid on the wood in plan: they move with it.

const MARK_INK: vec3f = vec3f(0.235, 0.014, 0.010); // #851f1b
// Half the width of the ring's line, pixels.
const RING_HALF_WIDTH: f32 = 1.2;

// How much of the pixel lies within `half_width` pixels of where `field` is zero, 0..1.
fn line_coverage(field: f32, half_width: f32) -> f32 {
    let slope = length(vec2f(dpdx(field), dpdy(field)));
    return 1.0 - smoothstep(half_width - 0.5, half_width + 0.5, abs(field) / max(slope, 1e-6));
}

fn cut_coverage(rest: vec3f) -> f32 {
    return select(0.0, line_coverage(dot(rest.xy, frame.cut.xy) - frame.cut.z, frame.cut.w), frame.cut.w > 0.0);
}

fn place_coverage(rest: vec3f) -> f32 {
    return select(0.0, line_coverage(distance(rest.xy, frame.place.xy) - frame.place.z, RING_HALF_WIDTH), frame.place.z > 0.0);
}
