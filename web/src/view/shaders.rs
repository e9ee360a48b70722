//! The shader, put together from one file an idea. Both backends take the same text.

/// The whole program: entry points `place` (vertex) and `shade` (fragment).
pub const TOP: &str = concat!(
    include_str!("shaders/frame.wgsl"),
    include_str!("shaders/motion.wgsl"),
    include_str!("shaders/wood.wgsl"),
    include_str!("shaders/light.wgsl"),
    include_str!("shaders/nodal_line.wgsl"),
    include_str!("shaders/srgb.wgsl"),
    include_str!("shaders/top.wgsl"),
);

#[cfg(test)]
mod tests;
