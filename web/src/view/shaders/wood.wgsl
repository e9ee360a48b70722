// The bare wood: spruce, quarter cut, two halves joined at the centre so that the rings mirror each other. All colours
// are linear reflectances chosen by eye; the sRGB code beside each is what it looks like.

const EARLYWOOD: vec3f = vec3f(0.753, 0.564, 0.342); // #e1c69e
const LATEWOOD: vec3f = vec3f(0.491, 0.292, 0.130); // #b9935f
const INSIDE_TINT: vec3f = vec3f(0.93, 0.95, 0.98);
const WALL_TINT: vec3f = vec3f(0.74, 0.68, 0.60);

// Distance between rings near the joint. Fine tops run from 0.7 to 2 mm (common practice, no source); the picture
// shows no particular tree.
const RING_MM: f32 = 1.3;
// The mean of `latewood` over one ring: what the eye sees once the rings are too fine for the pixels.
const MEAN_LATEWOOD: f32 = 0.225;

// Darkness of the wood within one ring, 0..1: pale earlywood darkens gradually and ends at a sharp line.
fn latewood(ring: f32) -> f32 {
    let through = fract(ring);
    return smoothstep(0.5, 0.92, through) * (1.0 - smoothstep(0.95, 1.0, through));
}

// Reflectance of the wood at a point of the top at rest, mm.
fn wood_colour(point: vec3f, kind: u32) -> vec3f {
    let from_joint = abs(point.x);
    let drift = 0.5 * sin(0.019 * point.y + 0.7) + 0.25 * sin(0.047 * point.y + 0.05 * from_joint);
    // The rings widen and narrow a little across the top; the slope stays positive so that no ring folds back.
    let across = from_joint + drift + 1.7 * sin(0.21 * from_joint + 0.4);
    let ring = across / RING_MM;
    // Rings finer than two pixels would beat against the pixel grid. The joint's kink is kept out of the derivative.
    let mm_per_pixel = length(vec2f(dpdx(point.x), dpdy(point.x)));
    let resolved = 1.0 - smoothstep(0.22, 0.5, 1.3 * mm_per_pixel / RING_MM);
    let fine = mix(MEAN_LATEWOOD, latewood(ring), resolved);
    // Broad bands of darker years, wide enough to be seen from afar.
    let bands = 0.075 * sin(0.62 * across) + 0.055 * sin(0.27 * across + 1.9);
    let spruce = mix(EARLYWOOD, LATEWOOD, clamp(0.85 * fine + bands, 0.0, 1.0));
    if kind == INSIDE {
        return spruce * INSIDE_TINT;
    }
    if kind == WALL {
        return spruce * WALL_TINT;
    }
    return spruce;
}

// Share of the grain's and the edges' contrast that stays under a colour: enough to read as wood, too little to be
// taken for motion.
const GRAIN_UNDER_COLOUR: f32 = 0.5;

// How light the wood is here against the outside's mean, with that share; the colour over it keeps its hue.
fn grain_lightness(wood: vec3f) -> f32 {
    let against_mean = wood.g / mix(EARLYWOOD.g, LATEWOOD.g, 0.85 * MEAN_LATEWOOD);
    return mix(1.0, against_mean, GRAIN_UNDER_COLOUR);
}
