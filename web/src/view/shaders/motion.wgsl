// Moving the top: each vertex swings by its own displacement, and its normal turns with it.

struct Motion {
    displacement_re: vec3f,
    turn_re: vec3f,
    displacement_im: vec3f,
    turn_im: vec3f,
}

// Re[(re + i im) e^{i phase}] for swing = (cos phase, -sin phase).
fn swung(re: vec3f, im: vec3f, swing: vec2f) -> vec3f {
    return re * swing.x + im * swing.y;
}

// The motion's size along the outward direction, (real, imaginary) part, in units of the motion field.
// Outside and inside answer alike: positive is outward on both. A wall's own normal lies across the motion, so it
// answers with z, which is the outward direction near enough along an edge.
fn outward_motion(motion: Motion, normal: vec3f, kind: u32) -> vec2f {
    var outward = normal;
    if kind == INSIDE {
        outward = -normal;
    } else if kind == WALL {
        outward = vec3f(0.0, 0.0, 1.0);
    }
    return vec2f(dot(motion.displacement_re, outward), dot(motion.displacement_im, outward));
}
