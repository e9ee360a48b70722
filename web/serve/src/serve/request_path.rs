//! From a request's target to a file inside the served folder, and never outside it.

/// The path inside the site that `target` asks for, with forward slashes; a folder asks for its `index.html`.
/// `None` for a target that names anything but a file below the site's folder.
pub(super) fn inside_site(target: &str) -> Option<String> {
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let decoded = decode(path.strip_prefix('/')?)?;
    let is_name = |part: &str| !part.is_empty() && part != "." && part != ".." && !part.contains(['\\', ':', '\0']);
    let (folder, asks_for_folder) = match decoded.strip_suffix('/') {
        Some(folder) => (folder, true),
        None => (decoded.as_str(), decoded.is_empty()),
    };
    if !folder.is_empty() && !folder.split('/').all(is_name) {
        return None;
    }
    if !asks_for_folder {
        return Some(decoded);
    }
    Some(if folder.is_empty() && decoded.is_empty() {
        "index.html".into()
    } else if folder.is_empty() {
        return None;
    } else {
        format!("{folder}/index.html")
    })
}

/// Undoes percent encoding; `None` for an incomplete escape or bytes that aren't UTF-8.
fn decode(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let Some((&first, after)) = rest.split_first() {
        if first == b'%' {
            let digits = std::str::from_utf8(after.get(..2)?).ok()?;
            // `from_str_radix` would also take a sign.
            if !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
                return None;
            }
            bytes.push(u8::from_str_radix(digits, 16).ok()?);
            rest = &after[2..];
        } else {
            bytes.push(first);
            rest = after;
        }
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_and_folders_are_found() {
        assert_eq!(inside_site("/").as_deref(), Some("index.html"));
        assert_eq!(inside_site("/guide/").as_deref(), Some("guide/index.html"));
        assert_eq!(inside_site("/wasm/compute.js?v=1").as_deref(), Some("wasm/compute.js"));
        assert_eq!(inside_site("/long%20arch.svg").as_deref(), Some("long arch.svg"));
    }

    #[test]
    fn nothing_outside_the_folder_is_reached() {
        let escapes = [
            "/../Cargo.toml",
            "/wasm/../../Cargo.toml",
            "/%2e%2e/Cargo.toml",
            "/..%2fCargo.toml",
            "/wasm/%2e%2e%2f%2e%2e%2fCargo.toml",
            "/..%5cCargo.toml",
            "//etc/passwd",
            "/%2fetc/passwd",
            "/C:/Windows",
            "/a%00b",
            "/./index.html",
            "Cargo.toml",
            "/%",
            "/%+1",
            "/%ff",
            "//",
        ];
        for target in escapes {
            assert_eq!(inside_site(target), None, "{target}");
        }
    }
}
