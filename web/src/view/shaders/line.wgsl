// Lines that are as wide on the screen whatever the slope of the field whose zero they are.

// How much of the pixel the line covers, 0..1; width 0 is no line. `field` over its screen slope is the distance to the zero in pixels.
fn line_coverage(field: f32, half_width_px: f32) -> f32 {
    let slope = length(vec2f(dpdx(field), dpdy(field)));
    let distance_px = abs(field) / max(slope, 1e-6);
    let covered = 1.0 - smoothstep(half_width_px - 0.5, half_width_px + 0.5, distance_px);
    return select(0.0, covered, half_width_px > 0.0);
}
