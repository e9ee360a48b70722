//! The page's own files: everything in `www` that a browser asks for, as it is, and the page in other languages.

use std::path::Path;

use super::languages;
use crate::Error;

/// A file of the site before compression.
#[derive(Debug)]
pub(super) struct Source {
    /// Path inside the site, with forward slashes.
    pub(super) path: String,
    pub(super) content: Vec<u8>,
}

/// Files of `www` that serve the people who write it, not the browser.
const FOR_WRITERS: [&str; 6] =
    ["node_modules", "package.json", "package-lock.json", "tsconfig.json", "biome.json", "index.json"];

/// The page's files, sorted by path.
pub(super) fn files(page: &Path) -> Result<Vec<Source>, Error> {
    let mut files = Vec::new();
    collect(page, "", &mut files)?;
    let index = page.join("index.html");
    let written = std::fs::read_to_string(&index).map_err(Error::file("read", &index))?;
    files.extend(languages::pages(page, &written)?);
    files.sort_by(|a: &Source, b| a.path.cmp(&b.path));
    Ok(files)
}

fn collect(folder: &Path, prefix: &str, files: &mut Vec<Source>) -> Result<(), Error> {
    for entry in std::fs::read_dir(folder).map_err(Error::file("read", folder))? {
        let path = entry.map_err(Error::file("read", folder))?.path();
        let Some(name) = path.file_name().map(|name| name.to_string_lossy().into_owned()) else {
            continue;
        };
        if !belongs_in_the_site(&name) {
            continue;
        }
        if path.is_dir() {
            collect(&path, &format!("{prefix}{name}/"), files)?;
        } else {
            let content = std::fs::read(&path).map_err(Error::file("read", &path))?;
            files.push(Source { path: format!("{prefix}{name}"), content });
        }
    }
    Ok(())
}

/// Hidden files, tool settings, type declarations and tests stay at home.
fn belongs_in_the_site(name: &str) -> bool {
    let left_at_home = [".ts", ".test.js", ".md"];
    !name.starts_with('.') && !FOR_WRITERS.contains(&name) && !left_at_home.iter().any(|ending| name.ends_with(ending))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_browser_asks_for_goes_into_the_site_and_tool_files_stay() {
        let page = tempfile::tempdir().unwrap();
        for path in [
            "index.html",
            "js/main.js",
            "js/main.test.js",
            "js/words/de/index.json",
            "types.d.ts",
            "package.json",
            ".npmrc",
        ] {
            let path = page.path().join(path);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, "{}").unwrap();
        }
        std::fs::create_dir(page.path().join("node_modules")).unwrap();
        std::fs::write(page.path().join("node_modules/a.js"), "x").unwrap();
        let paths: Vec<_> = files(page.path()).unwrap().into_iter().map(|file| file.path).collect();
        assert_eq!(paths, ["de.html", "index.html", "js/main.js"]);
    }
}
