// The two stages that draw the top.

struct Vertex {
    @location(0) position: vec3f,
    @location(1) normal: vec3f,
    @location(2) kind: u32,
    @location(3) displacement_re: vec3f,
    @location(4) turn_re: vec3f,
    @location(5) displacement_im: vec3f,
    @location(6) turn_im: vec3f,
    @location(7) scalar: f32,
    @location(8) edge_mm: f32,
    @location(9) hidden: f32,
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
    // A scalar's share of its range, 0..1.
    @location(5) scalar: f32,
    // Distance from the outline at rest, mm; 0 where it is not known.
    @location(6) edge_mm: f32,
    // Share of the sky that the wood round it hides, 0..1.
    @location(7) hidden: f32,
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
    surface.scalar = vertex.scalar;
    surface.edge_mm = vertex.edge_mm;
    surface.hidden = vertex.hidden;
    return surface;
}

@fragment
fn shade(surface: Surface) -> @location(0) vec4f {
    let line = nodal_coverage(surface.outward.y, frame.nodal_half_width_px);
    let mark = max(cut_coverage(surface.rest), place_coverage(surface.rest));
    let bare = mix(wood_colour(surface.rest, surface.kind), PLAIN, frame.plain);
    let wood = with_purfling(bare, surface.edge_mm, surface.kind);
    let share = mix(0.5 + 0.5 * surface.outward.x, surface.scalar, frame.by_scalar);
    // The maps lie in the texture's two rows; between the rows' middles nothing is read.
    let along_map = vec2f(clamp(share, 0.0, 1.0), 0.25 + 0.5 * frame.by_scalar);
    let colour = textureSampleLevel(colour_maps, colour_maps_sampler, along_map, 0.0).rgb;
    let reflectance = mix(wood, colour * grain_lightness(wood), frame.colour_amount);
    let light = lit(reflectance, normalize(surface.view_normal), normalize(-surface.view_position), surface.hidden);
    return vec4f(srgb_from_linear(mix(mix(light, NODAL_INK, line), MARK_INK, mark)), 1.0);
}
