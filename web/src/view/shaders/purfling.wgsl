// The purfling: a pale strip between two dark ones, let into the outside along the edge.

// Its middle from the edge, its width, and the pale strip's, mm (common practice, no source).
const PURFLING_AT: f32 = 4.2;
const PURFLING_HALF: f32 = 0.65;
const PALE_HALF: f32 = 0.27;
const PURFLING_DARK: vec3f = vec3f(0.045, 0.035, 0.030);
const PURFLING_PALE: vec3f = vec3f(0.60, 0.45, 0.27);

// Mean over a pixel that is `width` mm wide of a strip that reaches `half` mm to both sides of its middle.
fn strip(off: f32, half: f32, width: f32) -> f32 {
    let pixel = max(width, 0.01);
    return clamp((half + 0.5 * pixel - abs(off)) / pixel, 0.0, 1.0) * min(1.0, 2.0 * half / pixel);
}

fn with_purfling(wood: vec3f, edge_mm: f32, kind: u32) -> vec3f {
    let off = edge_mm - PURFLING_AT;
    let width = length(vec2f(dpdx(edge_mm), dpdy(edge_mm)));
    let laid = select(0.0, strip(off, PURFLING_HALF, width), kind == OUTSIDE);
    return mix(wood, mix(PURFLING_DARK, PURFLING_PALE, strip(off, PALE_HALF, width)), laid);
}
