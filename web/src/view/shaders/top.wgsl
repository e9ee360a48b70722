// The two stages that draw the top.

struct Vertex {
    @location(0) position: vec3f,
    @location(1) normal: vec3f,
    @location(2) kind: u32,
    @location(3) displacement_re: vec3f,
    @location(4) turn_re: vec3f,
    @location(5) displacement_im: vec3f,
    @location(6) turn_im: vec3f,
}

struct Surface {
    @builtin(position) clip: vec4f,
    @location(0) view_normal: vec3f,
    @location(1) view_position: vec3f,
    // Where the wood is at rest, mm: the grain moves with the wood.
    @location(2) rest: vec3f,
    // Outward motion now, and the field whose zero is the nodal line.
    @location(3) outward: vec2f,
    @location(4) @interpolate(flat) kind: u32,
}

@vertex
fn place(vertex: Vertex) -> Surface {
    let motion = Motion(vertex.displacement_re, vertex.turn_re, vertex.displacement_im, vertex.turn_im);
    let position = vertex.position
        + frame.exaggeration * swung(motion.displacement_re, motion.displacement_im, frame.swing);
    let normal = vertex.normal + frame.exaggeration * swung(motion.turn_re, motion.turn_im, frame.swing);
    let outward = outward_motion(motion, vertex.normal, vertex.kind);

    var surface: Surface;
    surface.clip = frame.clip_from_top * vec4f(position, 1.0);
    surface.view_position = (frame.view_from_top * vec4f(position, 1.0)).xyz;
    surface.view_normal = (frame.view_from_top * vec4f(normal, 0.0)).xyz;
    surface.rest = vertex.position;
    surface.outward = vec2f(dot(outward, frame.swing), dot(outward, frame.nodal_swing));
    surface.kind = vertex.kind;
    return surface;
}

@fragment
fn shade(surface: Surface) -> @location(0) vec4f {
    let line = nodal_coverage(surface.outward.y, frame.nodal_half_width_px);
    let wood = wood_colour(surface.rest, surface.kind);
    let along_map = vec2f(0.5 + 0.5 * clamp(surface.outward.x, -1.0, 1.0), 0.5);
    let colour = textureSampleLevel(motion_colours, motion_colours_sampler, along_map, 0.0).rgb;
    let reflectance = mix(wood, colour * grain_lightness(wood), frame.colour_amount);
    let light = lit(reflectance, normalize(surface.view_normal), normalize(-surface.view_position));
    return vec4f(srgb_from_linear(mix(light, NODAL_INK, line)), 1.0);
}
