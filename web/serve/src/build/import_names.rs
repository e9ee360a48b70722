//! Short names for what a module imports from its glue.
//!
//! The generator names each of the 280 browser functions of a view by what it does and a hash that no compression gets
//! rid of, once in the wasm and once in the script: 6 kB of a first visit's download.

use std::collections::BTreeMap;

/// Old and new names.
pub(super) type Names = BTreeMap<String, String>;

/// A short name for each of `imports`, in their order.
pub(super) fn short<'name>(imports: impl Iterator<Item = &'name mut String>) -> Names {
    imports
        .enumerate()
        .map(|(index, name)| {
            let short = format!("i{index}");
            (std::mem::replace(name, short.clone()), short)
        })
        .collect()
}

/// `script` with every identifier that is an old name in `names` replaced.
pub(super) fn renamed(script: &str, names: &Names) -> String {
    let mut renamed = String::with_capacity(script.len());
    let mut rest = script;
    while !rest.is_empty() {
        let word = rest.find(|c| !is_part_of_a_name(c)).unwrap_or(rest.len());
        let gap = rest[word..].find(is_part_of_a_name).map_or(rest.len(), |gap| word + gap);
        renamed.push_str(names.get(&rest[..word]).map_or(&rest[..word], String::as_str));
        renamed.push_str(&rest[word..gap]);
        rest = &rest[gap..];
    }
    renamed
}

fn is_part_of_a_name(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || c == '$'
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_names_are_replaced_on_both_sides() {
        let mut imports = ["__wbg_set_1f", "__wbg_set_1f2"].map(str::to_owned);
        let names = short(imports.iter_mut());
        assert_eq!(imports, ["i0", "i1"]);
        let script = "{ __wbg_set_1f2: function(a) {}, __wbg_set_1f: f, x__wbg_set_1f: 'ä' };";
        assert_eq!(renamed(script, &names), "{ i1: function(a) {}, i0: f, x__wbg_set_1f: 'ä' };");
    }
}
