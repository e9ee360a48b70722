// Lines laid on the wood in plan: they move with it.

const MARK_INK: vec3f = vec3f(0.235, 0.014, 0.010); // #851f1b
// Half the width of the ring's line, pixels.
const RING_HALF_WIDTH: f32 = 1.2;

fn cut_coverage(rest: vec3f) -> f32 {
    return line_coverage(dot(rest.xy, frame.cut.xy) - frame.cut.z, frame.cut.w);
}

fn place_coverage(rest: vec3f) -> f32 {
    let ring = line_coverage(distance(rest.xy, frame.place.xy) - frame.place.z, RING_HALF_WIDTH);
    return select(0.0, ring, frame.place.z > 0.0);
}
