//! The page in other languages than the one it is written in.
//!
//! The page's scripts have their words from the folder that its import map names (`js/words/LANGUAGE`), so that a language costs
//! the others nothing to download. What stands in the page itself has its translations in that folder's `index.json`, by the
//! English text; from it and the English page the build makes `LANGUAGE.html` beside it.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use super::page::Source;
use crate::Error;

/// The language that the page is written in.
const WRITTEN_IN: &str = "en";

/// Attributes that are read or said; of a `meta` element it is the content of the description.
const SAID: [&str; 2] = ["aria-label", "title"];

/// By the English text, blanks run together.
type Words = BTreeMap<String, String>;

/// The page in every other language that it has words for.
///
/// # Errors
/// A text without a translation, a translation without a text, or words that can't be read.
pub(super) fn pages(page: &Path, index: &str) -> Result<Vec<Source>, Error> {
    let folder = page.join("js/words");
    let mut pages = Vec::new();
    for entry in std::fs::read_dir(&folder).map_err(Error::file("read", &folder))? {
        let path = entry.map_err(Error::file("read", &folder))?.path().join("index.json");
        let language = path.parent().and_then(Path::file_name).unwrap_or_default().to_string_lossy().into_owned();
        if !path.is_file() {
            continue;
        }
        let text = std::fs::read(&path).map_err(Error::file("read", &path))?;
        let words = serde_json::from_slice(&text)
            .map_err(|reason| Error::Words { path: path.clone(), reason: reason.to_string() })?;
        let content = translated(index, &language, &words).map_err(|reason| Error::Words { path, reason })?;
        pages.push(Source { path: format!("{language}.html"), content: content.into_bytes() });
    }
    Ok(pages)
}

/// # Errors
/// What has no translation, or what no text needs.
fn translated(index: &str, language: &str, words: &Words) -> Result<String, String> {
    let mut told = Translation { language, words, used: BTreeSet::new(), missing: BTreeSet::new() };
    let mut page = String::with_capacity(index.len());
    let mut rest = index;
    while let Some(at) = rest.find('<') {
        page.push_str(&told.text(&rest[..at]));
        rest = &rest[at..];
        let end = end_of_markup(rest);
        page.push_str(&told.tag(&rest[..end]));
        rest = &rest[end..];
        if page.ends_with("importmap\">") {
            let end = rest.find('<').unwrap_or(rest.len());
            page.push_str(&rest[..end]);
            rest = &rest[end..];
        }
    }
    page.push_str(rest);
    let unused: Vec<_> = words.keys().filter(|text| !told.used.contains(text.as_str())).collect();
    if told.missing.is_empty() && unused.is_empty() {
        Ok(page.replace(&format!("words/{WRITTEN_IN}/"), &format!("words/{language}/")))
    } else {
        Err(format!("without a translation: {:?}; translated, but not in the page: {unused:?}", told.missing))
    }
}

/// How far a tag or a comment at the beginning of `text` goes.
fn end_of_markup(text: &str) -> usize {
    let end = if text.starts_with("<!--") { "-->" } else { ">" };
    text.find(end).map_or(text.len(), |at| at + end.len())
}

struct Translation<'w> {
    language: &'w str,
    words: &'w Words,
    used: BTreeSet<&'w str>,
    missing: BTreeSet<String>,
}

impl Translation<'_> {
    /// A text with the blanks around it; one without a letter stays as it is.
    fn text(&mut self, text: &str) -> String {
        if !text.contains(char::is_alphabetic) {
            return text.to_owned();
        }
        let said = text.trim();
        text.replacen(said, &self.word(said), 1)
    }

    fn word(&mut self, text: &str) -> String {
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        if let Some((known, word)) = self.words.get_key_value(&text) {
            self.used.insert(known);
            return word.clone();
        }
        self.missing.insert(text.clone());
        text
    }

    fn tag(&mut self, tag: &str) -> String {
        if tag.starts_with("<html ") {
            return with_attribute(tag, "lang", |_| self.language.to_owned());
        }
        if let Some(language) = attribute(tag, "hreflang") {
            let other = tag.replace(" aria-current=\"page\"", "");
            return if language == self.language { other.replace('>', " aria-current=\"page\">") } else { other };
        }
        let tag = SAID.iter().fold(tag.to_owned(), |tag, name| with_attribute(&tag, name, |text| self.word(text)));
        if tag.contains(" name=\"description\"") {
            return with_attribute(&tag, "content", |text| self.word(text));
        }
        tag
    }
}

fn attribute<'tag>(tag: &'tag str, name: &str) -> Option<&'tag str> {
    let (_, rest) = tag.split_once(&format!(" {name}=\""))?;
    rest.split('"').next()
}

/// The tag with another value of an attribute, if it has that.
fn with_attribute(tag: &str, name: &str, change: impl FnOnce(&str) -> String) -> String {
    attribute(tag, name).map_or_else(
        || tag.to_owned(),
        |value| tag.replacen(&format!(" {name}=\"{value}\""), &format!(" {name}=\"{}\"", change(value)), 1),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = r#"<html lang="en-GB"><meta name="description" content="A top"><script type="importmap">{"a":"js/words/en/"}</script>
<link href="js/words/en/page.js"><!-- Not said --><p title="How it
    moves">  Look <b>closer</b> 8&nbsp;°</p><nav aria-label="Language">
<a href="./" hreflang="en" lang="en" aria-current="page">English</a> <a href="de.html" hreflang="de" lang="de">Deutsch</a></nav>"#;

    fn words(pairs: &[(&str, &str)]) -> Words {
        pairs.iter().map(|&(text, word)| (text.to_owned(), word.to_owned())).collect()
    }

    #[test]
    fn everything_that_is_said_is_translated_and_nothing_else() {
        let all = [
            ("A top", "Eine Decke"),
            ("How it moves", "Wie sie sich bewegt"),
            ("Look", "Näher"),
            ("closer", "ansehen"),
            ("8&nbsp;°", "8&nbsp;°"),
            ("Language", "Sprache"),
            ("English", "English"),
            ("Deutsch", "Deutsch"),
        ];
        let page = translated(PAGE, "de", &words(&all)).unwrap();
        let expected = r#"<html lang="de"><meta name="description" content="Eine Decke"><script type="importmap">{"a":"js/words/de/"}</script>
<link href="js/words/de/page.js"><!-- Not said --><p title="Wie sie sich bewegt">  Näher <b>ansehen</b> 8&nbsp;°</p><nav aria-label="Sprache">
<a href="./" hreflang="en" lang="en">English</a> <a href="de.html" hreflang="de" lang="de" aria-current="page">Deutsch</a></nav>"#;
        assert_eq!(page, expected);
        let missing = translated(PAGE, "de", &words(&all[1..])).unwrap_err();
        assert!(missing.contains("\"A top\""), "{missing}");
        let unused = translated(PAGE, "de", &words(&[&all[..], &[("Old", "Alt")]].concat())).unwrap_err();
        assert!(unused.contains("\"Old\""), "{unused}");
    }

    #[test]
    fn the_page_has_every_language_whole() {
        let page = crate::Workspace::above(Path::new(env!("CARGO_MANIFEST_DIR"))).unwrap().page();
        let index = std::fs::read_to_string(page.join("index.html")).unwrap();
        let pages = pages(&page, &index).unwrap();
        assert_eq!(pages.iter().map(|page| page.path.as_str()).collect::<Vec<_>>(), ["de.html"]);
    }
}
