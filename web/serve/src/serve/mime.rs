//! Media types by a file's ending.

/// Endings the page uses or may come to use: ending, media type, whether compression makes such files smaller.
const TYPES: [(&str, &str, bool); 16] = [
    ("html", "text/html; charset=utf-8", true),
    ("css", "text/css; charset=utf-8", true),
    ("js", "text/javascript; charset=utf-8", true),
    ("mjs", "text/javascript; charset=utf-8", true),
    // Streaming compilation starts only under this type.
    ("wasm", "application/wasm", true),
    ("json", "application/json", true),
    ("webmanifest", "application/manifest+json", true),
    ("svg", "image/svg+xml", true),
    ("txt", "text/plain; charset=utf-8", true),
    ("csv", "text/csv; charset=utf-8", true),
    ("png", "image/png", false),
    ("jpg", "image/jpeg", false),
    ("webp", "image/webp", false),
    ("ico", "image/x-icon", false),
    ("woff2", "font/woff2", false),
    ("webm", "video/webm", false),
];

/// The media type of a file with this path.
pub(crate) fn of(path: &str) -> &'static str {
    find(path).map_or("application/octet-stream", |(_, media_type, _)| media_type)
}

/// Whether files with this path's ending gain from compression.
pub(crate) fn is_compressible(path: &str) -> bool {
    find(path).is_some_and(|(_, _, compressible)| *compressible)
}

fn find(path: &str) -> Option<&'static (&'static str, &'static str, bool)> {
    let ending = path.rsplit_once('.')?.1.to_ascii_lowercase();
    TYPES.iter().find(|(known, _, _)| *known == ending)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Types from the IANA media type registry; `text/javascript` by RFC 9239, wasm by the WebAssembly Web API.
    #[test]
    fn browsers_get_the_registered_types() {
        assert_eq!(of("wasm/compute_bg.wasm"), "application/wasm");
        assert_eq!(of("js/main.js"), "text/javascript; charset=utf-8");
        assert_eq!(of("site.webmanifest"), "application/manifest+json");
        assert_eq!(of("icon.SVG"), "image/svg+xml");
        assert_eq!(of("LICENSE"), "application/octet-stream");
        assert_eq!(of("a.unknown"), "application/octet-stream");
    }
}
