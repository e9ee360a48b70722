// A ghost: the top at another moment, clear as glass, so that only where it is seen edge on does it show.

// Share of the density that a surface keeps which is looked at straight: enough to tell a ghost from none.
const FACING: f32 = 0.03;

@fragment
fn ghost(surface: Surface) -> @location(0) vec4f {
    // One skin is enough: two, a thickness apart, would be two outlines.
    if surface.kind == INSIDE {
        discard;
    }
    let facing = abs(dot(normalize(surface.view_normal), normalize(surface.view_position)));
    let edge_on = 1.0 - facing;
    return vec4f(frame.ghost.rgb, frame.ghost.a * mix(FACING, 1.0, edge_on * edge_on * edge_on));
}
