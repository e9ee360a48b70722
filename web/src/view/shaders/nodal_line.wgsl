// The nodal line: where a motion field passes through zero, drawn as wide on the screen whatever the field's slope.

const NODAL_INK: vec3f = vec3f(0.012, 0.014, 0.018); // #1b1d21
// A field that changes by less than this share of its largest value from one pixel to the next is at rest here (a held
// edge, or no motion at all): there the whole area is a node and a line would only be noise.
const STILL_SLOPE: f32 = 2e-6;

// How much of the pixel the line covers, 0..1. `field` over its screen slope is the distance to the zero in pixels.
fn nodal_coverage(field: f32, half_width_px: f32) -> f32 {
    let slope = length(vec2f(dpdx(field), dpdy(field)));
    let distance_px = abs(field) / max(slope, STILL_SLOPE);
    let covered = 1.0 - smoothstep(half_width_px - 0.5, half_width_px + 0.5, distance_px);
    return select(0.0, covered, half_width_px > 0.0 && slope > STILL_SLOPE);
}
