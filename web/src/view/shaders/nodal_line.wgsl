// The nodal line: where a motion field passes through zero.

const NODAL_INK: vec3f = vec3f(0.012, 0.014, 0.018); // #1b1d21
// A field that changes by less than this share of its largest value from one pixel to the next is at rest here (a held
// edge, or no motion at all): there the whole area is a node and a line would only be noise.
const STILL_SLOPE: f32 = 2e-6;

fn nodal_coverage(field: f32, half_width_px: f32) -> f32 {
    let slope = length(vec2f(dpdx(field), dpdy(field)));
    return select(0.0, line_coverage(field, half_width_px), slope > STILL_SLOPE);
}
