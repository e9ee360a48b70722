// The bare wood: spruce, quarter cut, two halves joined at the centre so that the rings mirror each other. All colours
// are linear reflectances chosen by eye; the sRGB code beside each is what it looks like.

const EARLYWOOD: vec3f = vec3f(0.753, 0.564, 0.342); // #e1c69e
const LATEWOOD: vec3f = vec3f(0.491, 0.292, 0.130); // #b9935f
const INSIDE_TINT: vec3f = vec3f(0.93, 0.95, 0.98);
const WALL_TINT: vec3f = vec3f(0.74, 0.68, 0.60);
// As light as the wood on average, for looking at shape alone.
const PLAIN: vec3f = vec3f(0.51);

// Distance between rings near the joint. Fine tops run from 0.7 to 2 mm (common practice, no source); the picture
// shows no particular tree.
const RING_MM: f32 = 1.3;
// Within one ring the pale earlywood darkens from the first share of the ring to the second, and the dark latewood ends
// at a sharp line from the third to the ring's end.
const DARKENS: f32 = 0.5;
const DARK: f32 = 0.92;
const ENDS: f32 = 0.95;
// Mean darkness of a ring: two ramps and what lies between.
const MEAN_LATEWOOD: f32 = 0.5 * (DARK - DARKENS) + (ENDS - DARK) + 0.5 * (1.0 - ENDS);

// Integral of a smooth step from 0 at `low` to 1 at `high`.
fn ramp_integral(low: f32, high: f32, at: f32) -> f32 {
    let t = clamp((at - low) / (high - low), 0.0, 1.0);
    return (high - low) * t * t * t * (1.0 - 0.5 * t) + max(at - high, 0.0);
}

// Darkness added up from the joint to `ring`, in rings.
fn latewood_integral(ring: f32) -> f32 {
    let through = fract(ring);
    return floor(ring) * MEAN_LATEWOOD + ramp_integral(DARKENS, DARK, through) - ramp_integral(ENDS, 1.0, through);
}

// Mean darkness over a pixel that is `width` rings wide: exact, so rings fade before they beat against the pixels.
fn latewood(ring: f32, width: f32) -> f32 {
    let pixel = max(width, 0.02);
    return (latewood_integral(ring + 0.5 * pixel) - latewood_integral(ring - 0.5 * pixel)) / pixel;
}

// Reflectance of the wood at a point of the top at rest, mm.
fn wood_colour(point: vec3f, kind: u32) -> vec3f {
    let from_joint = abs(point.x);
    let drift = 0.5 * sin(0.019 * point.y + 0.7) + 0.25 * sin(0.047 * point.y + 0.05 * from_joint);
    // The rings widen and narrow a little across the top; the slope stays positive so that no ring folds back.
    let across = from_joint + drift + 1.7 * sin(0.21 * from_joint + 0.4);
    let slope = 1.0 + 0.357 * cos(0.21 * from_joint + 0.4);
    // The joint's kink is kept out of the derivative.
    let mm_per_pixel = length(vec2f(dpdx(point.x), dpdy(point.x)));
    let width = mm_per_pixel * slope / RING_MM;
    // What a box leaves of still finer rings is noise.
    let fine = mix(latewood(across / RING_MM, width), MEAN_LATEWOOD, smoothstep(0.5, 1.0, width));
    // Broad bands of darker years, wide enough to be seen from afar; seen along the top they are too fine as well.
    let broad = 1.0 - smoothstep(1.5, 4.0, mm_per_pixel);
    let bands = broad * (0.075 * sin(0.62 * across) + 0.055 * sin(0.27 * across + 1.9));
    let spruce = mix(EARLYWOOD, LATEWOOD, clamp(0.7 * fine + bands, 0.0, 1.0));
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
    let against_mean = wood.g / mix(EARLYWOOD.g, LATEWOOD.g, 0.7 * MEAN_LATEWOOD);
    return mix(1.0, against_mean, GRAIN_UNDER_COLOUR);
}
