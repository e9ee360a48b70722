//! Where in a JSON document a position lies, in keys.
//!
//! The reader tells the line and column of a fault. Finding the keys from there costs a walk over a few kilobytes, once and only
//! on a fault; a reader that keeps track of them doubles the code for every part of a design (a fiftieth of the compute module).

/// What the walk is inside of.
enum Inside {
    /// An object: the last key read, and whether the next string is a key.
    Object { key: String, key_follows: bool },
    /// A list: the index of the present item.
    List { index: usize },
}

/// The keys and indices, joined by dots, that lead to the byte before `line` and `column` (both from 1, as `serde_json` counts) in
/// `json`, which must be valid up to there; empty for the document itself.
pub(crate) fn path_at(json: &str, line: usize, column: usize) -> String {
    let before: usize = json.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let end = before + column;
    let mut around: Vec<Inside> = Vec::new();
    let mut rest = json.bytes().enumerate().take_while(|&(at, _)| at < end);
    while let Some((at, byte)) = rest.next() {
        match (byte, around.last_mut()) {
            (b'"', inside) => {
                let mut last = at;
                let mut escaped = false;
                for (at, byte) in rest.by_ref() {
                    last = at;
                    if byte == b'"' && !escaped {
                        break;
                    }
                    escaped = byte == b'\\' && !escaped;
                }
                if let Some(Inside::Object { key, key_follows: true }) = inside {
                    *key = json.get(at + 1..last).unwrap_or_default().to_owned();
                }
            }
            (b'{', _) => around.push(Inside::Object { key: String::new(), key_follows: true }),
            (b'[', _) => around.push(Inside::List { index: 0 }),
            (b'}' | b']', _) => _ = around.pop(),
            (b':', Some(Inside::Object { key_follows, .. })) => *key_follows = false,
            (b',', Some(Inside::Object { key, key_follows })) => {
                key.clear();
                *key_follows = true;
            }
            (b',', Some(Inside::List { index })) => *index += 1,
            _ => {}
        }
    }
    let words = around.into_iter().map(|inside| match inside {
        Inside::Object { key, .. } => key,
        Inside::List { index } => index.to_string(),
    });
    words.filter(|word| !word.is_empty()).collect::<Vec<_>>().join(".")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_position_is_told_by_the_keys_round_it() {
        let json = "{\n  \"a\": {\"b, \\\"c\": [1, {\"d\": 2}], \"e\": \"x: {\"},\n  \"f\": 3\n}";
        let at = |text: &str| {
            let end = json.find(text).unwrap() + text.len();
            let line = json[..end].matches('\n').count() + 1;
            path_at(json, line, end - json[..end].rfind('\n').map_or(0, |newline| newline + 1))
        };
        assert_eq!(at("{\"d\": 2"), "a.b, \\\"c.1.d");
        assert_eq!(at("[1"), "a.b, \\\"c.0");
        assert_eq!(at("2}"), "a.b, \\\"c.1");
        assert_eq!(at("x: {\""), "a.e");
        assert_eq!(at("\"f\""), "f");
        assert_eq!(at("x: {\"}"), "a");
        assert_eq!(at("3\n}"), "");
    }
}
