// The light goes with the viewer, so that arching reads from every side: a soft key from the upper left, low enough to
// shade a slope of a few degrees, a weaker cool fill from the right, and the stage all round.

const KEY_DIRECTION: vec3f = vec3f(-0.659, 0.580, 0.479);
const KEY: vec3f = vec3f(1.19, 1.15, 1.09);
const FILL_DIRECTION: vec3f = vec3f(0.802, 0.050, 0.595);
const FILL: vec3f = vec3f(0.11, 0.12, 0.14);
const SKY: vec3f = vec3f(0.23, 0.24, 0.26);
// Planed wood has a faint, broad sheen along its surface.
const SHEEN: f32 = 0.05;
const SHEEN_SHARPNESS: f32 = 18.0;
// How much darker a hollow is drawn than its hidden sky makes it: a channel hides a tenth, and is read by more.
const HOLLOWS: f32 = 2.5;
// Share of the lamps' light that comes from as wide as the sky.
const WIDE: f32 = 0.5;
// How far light reaches round the edge of the shadow, as from a wide window.
const SOFTNESS: f32 = 0.08;

fn soft_diffuse(normal: vec3f, direction: vec3f) -> f32 {
    return clamp((dot(normal, direction) + SOFTNESS) / (1.0 + SOFTNESS), 0.0, 1.0);
}

// Light leaving a surface towards the viewer; `normal` and `to_viewer` are unit vectors of the viewer's frame.
fn lit(reflectance: vec3f, normal: vec3f, to_viewer: vec3f, hidden: f32) -> vec3f {
    let below = vec3f(frame.stage_glow);
    let around = mix(below, SKY, 0.5 + 0.5 * normal.y);
    let open = 1.0 - clamp(HOLLOWS * hidden, 0.0, 0.7);
    let from_lamps = KEY * soft_diffuse(normal, KEY_DIRECTION) + FILL * soft_diffuse(normal, FILL_DIRECTION);
    let diffuse = around * open + from_lamps * mix(1.0, open, WIDE);
    let half_way = normalize(KEY_DIRECTION + to_viewer);
    let sheen = SHEEN * pow(max(dot(normal, half_way), 0.0), SHEEN_SHARPNESS);
    return reflectance * diffuse + vec3f(sheen);
}
