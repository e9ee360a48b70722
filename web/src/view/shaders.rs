//! The shader, put together from one file an idea. Both backends take the same text.

/// A program without its comments and indentation: what people read of it, no visitor has to download.
macro_rules! bare {
    ($text:expr) => {{
        const BARE: ([u8; $text.len()], usize) = bare($text.as_bytes());
        match str::from_utf8(BARE.0.split_at(BARE.1).0) {
            Ok(text) => text,
            Err(_) => panic!("a shader is ASCII but for its comments"),
        }
    }};
}

/// The whole program: entry points `place` (vertex), `shade` and `ghost` (fragment).
pub const TOP: &str = bare!(concat!(
    include_str!("shaders/frame.wgsl"),
    include_str!("shaders/motion.wgsl"),
    include_str!("shaders/wood.wgsl"),
    include_str!("shaders/purfling.wgsl"),
    include_str!("shaders/light.wgsl"),
    include_str!("shaders/line.wgsl"),
    include_str!("shaders/nodal_line.wgsl"),
    include_str!("shaders/srgb.wgsl"),
    include_str!("shaders/marks.wgsl"),
    include_str!("shaders/top.wgsl"),
    include_str!("shaders/ghost.wgsl"),
));

/// The text of `LENGTH` bytes without comments, indentation and empty lines, and how many bytes that leaves.
const fn bare<const LENGTH: usize>(text: &[u8]) -> ([u8; LENGTH], usize) {
    let mut left = [0; LENGTH];
    let (mut kept, mut at) = (0, 0);
    let mut line_began = true;
    while at < LENGTH {
        if text[at] == b'/' && at + 1 < LENGTH && text[at + 1] == b'/' {
            while at < LENGTH && text[at] != b'\n' {
                at += 1;
            }
        } else if line_began && (text[at] == b' ' || text[at] == b'\n') {
            at += 1;
        } else {
            line_began = text[at] == b'\n';
            left[kept] = text[at];
            kept += 1;
            at += 1;
        }
    }
    (left, kept)
}

#[cfg(test)]
mod tests;
