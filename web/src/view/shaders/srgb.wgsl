// The canvas holds sRGB codes; everything before this line of the program is linear light.

// IEC 61966-2-1, for light clamped to what the canvas can show.
fn srgb_from_linear(light: vec3f) -> vec3f {
    let shown = clamp(light, vec3f(0.0), vec3f(1.0));
    let low = 12.92 * shown;
    let high = 1.055 * pow(shown, vec3f(1.0 / 2.4)) - 0.055;
    return select(high, low, shown <= vec3f(0.0031308));
}
