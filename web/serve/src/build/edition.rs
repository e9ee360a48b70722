//! An edition of the site: its scripts, style sheets and modules in a folder named by what the whole site holds.
//!
//! A page that is open while another build takes the site's place goes on asking for its own edition's files, which the browser has kept
//! (`www/service_worker.js`), and never for another's under the same name. For the same reason a browser may keep them for ever without
//! asking again.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};

use serde_json::json;

use super::Module;
use super::page::Source;
use crate::Error;

/// What an edition's folder begins with.
const PREFIX: &str = "edition-";

/// What goes into it. The pages stay where people have them, icons where systems look for them.
const FOLDERS: [&str; 4] = ["js/", "css/", "lessons/", "wasm/"];

/// The script that keeps an edition in the browser. It has to lie above all that it answers for.
const KEEPER: &str = "service_worker.js";

/// Whether a path inside the site belongs to an edition, and thus stands for the same bytes for ever.
pub(crate) fn is_inside(path: &str) -> bool {
    path.starts_with(PREFIX)
}

/// The folder of the edition that a built site's page asks for.
///
/// # Errors
/// [`Error::File`] where there is no such site.
pub fn edition_of(site: &Path) -> Result<PathBuf, Error> {
    let page = site.join("index.html");
    let text = std::fs::read_to_string(&page).map_err(Error::file("read", &page))?;
    let name = text.find(PREFIX).and_then(|at| text[at..].split('/').next());
    let missing = || Error::file("find an edition in", &page)(std::io::ErrorKind::InvalidData.into());
    Ok(site.join(name.ok_or_else(missing)?))
}

/// Moves what belongs there into the edition's folder, leads the pages to it, and tells the keeper what there is to keep.
pub(super) fn set_apart(files: &mut [Source]) {
    files.sort_by(|a, b| a.path.cmp(&b.path));
    let edition = name(files);
    for file in &mut *files {
        if FOLDERS.iter().any(|folder| file.path.starts_with(folder)) {
            file.path = format!("{edition}/{}", file.path);
        } else if file.path.ends_with(".html") {
            file.content = led_to(&edition, &String::from_utf8_lossy(&file.content)).into_bytes();
        }
    }
    let told = format!("const SITE={};\n", contents(&edition, files));
    if let Some(keeper) = files.iter_mut().find(|file| file.path == KEEPER) {
        keeper.content.splice(..0, told.into_bytes());
    }
}

/// A name that other content has not.
fn name(files: &[Source]) -> String {
    let mut hasher = DefaultHasher::new();
    for Source { path, content } in files {
        (path, content).hash(&mut hasher);
    }
    format!("{PREFIX}{:016x}", hasher.finish())
}

/// The page with its addresses of files in [`FOLDERS`] leading into the edition.
fn led_to(edition: &str, page: &str) -> String {
    FOLDERS.iter().fold(page.to_owned(), |page, folder| {
        page.replace(&format!("\"{folder}"), &format!("\"{edition}/{folder}"))
            .replace(&format!("\"./{folder}"), &format!("\"./{edition}/{folder}"))
    })
}

/// What the keeper is told: `{edition, pages, files, views}`, the views' files apart, of which a browser needs one's.
fn contents(edition: &str, files: &[Source]) -> serde_json::Value {
    let backends = [Module::ViewWebGpu, Module::ViewWebGl2].map(|module| {
        let name = module.name();
        (
            name.trim_start_matches("view_"),
            [format!("{edition}/wasm/{name}.js"), format!("{edition}/wasm/{name}_bg.wasm")],
        )
    });
    let kept: Vec<&str> = files
        .iter()
        .map(|file| file.path.as_str())
        .filter(|path| *path != KEEPER && !backends.iter().any(|(_, view)| view.iter().any(|file| file == path)))
        .collect();
    let (pages, kept): (Vec<&str>, Vec<&str>) = kept.into_iter().partition(|path| path.ends_with(".html"));
    let views: serde_json::Map<_, _> = backends.iter().map(|(name, view)| ((*name).to_owned(), json!(view))).collect();
    json!({ "edition": edition, "pages": pages, "files": kept, "views": views })
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = r##"<script type="importmap">{"imports":{"#words/":"./js/words/en/"}}</script><link href="css/a.css">
<link rel="icon" href="icons/a.svg"><script src="js/main.js"></script>"##;

    fn site(main: &str) -> Vec<Source> {
        [
            ("index.html", PAGE),
            ("js/main.js", main),
            ("css/a.css", "p{}"),
            ("icons/a.svg", "<svg/>"),
            ("service_worker.js", "keep(SITE)"),
            ("wasm/view_webgl2.js", "draw()"),
            ("wasm/view_webgl2_bg.wasm", "\0asm"),
        ]
        .map(|(path, content)| Source { path: path.into(), content: content.as_bytes().into() })
        .into()
    }

    fn text(files: &[Source], path: &str) -> String {
        let file = files.iter().find(|file| file.path == path).unwrap_or_else(|| panic!("no {path}"));
        String::from_utf8(file.content.clone()).unwrap()
    }

    #[test]
    fn pages_lead_into_the_edition_and_the_keeper_knows_all_of_it() {
        let mut files = site("start()");
        set_apart(&mut files);
        let page = text(&files, "index.html");
        let edition = page.split('"').find(|part| part.starts_with(PREFIX)).unwrap().split('/').next().unwrap();
        assert_eq!(text(&files, &format!("{edition}/js/main.js")), "start()");
        for address in
            ["\"./EDITION/js/words/en/\"", "\"EDITION/css/a.css\"", "\"icons/a.svg\"", "\"EDITION/js/main.js\""]
        {
            assert!(page.contains(&address.replace("EDITION", edition)), "{address} in {page}");
        }
        let keeper = text(&files, KEEPER);
        let told = keeper.strip_prefix("const SITE=").unwrap().split(";\n").next().unwrap();
        let told: serde_json::Value = serde_json::from_str(told).unwrap();
        assert_eq!(told["pages"], json!(["index.html"]));
        let kept = ["css/a.css", "js/main.js"].map(|path| format!("{edition}/{path}"));
        assert_eq!(told["files"], json!([kept[0], "icons/a.svg", kept[1]]));
        assert_eq!(told["views"]["webgl2"][1], format!("{edition}/wasm/view_webgl2_bg.wasm"));
        assert!(keeper.ends_with("keep(SITE)"));
    }

    #[test]
    fn other_content_is_another_edition_and_the_same_is_the_same() {
        let name = |main| {
            let mut files = site(main);
            set_apart(&mut files);
            files.iter().find(|file| is_inside(&file.path)).unwrap().path.clone()
        };
        assert_eq!(name("start()"), name("start()"));
        assert_ne!(name("start()"), name("begin()"));
    }

    #[test]
    fn a_built_site_tells_its_edition() {
        let folder = tempfile::tempdir().unwrap();
        assert!(edition_of(folder.path()).is_err());
        std::fs::write(folder.path().join("index.html"), "<link href=\"edition-12ab/js/main.js\">").unwrap();
        assert_eq!(edition_of(folder.path()).unwrap(), folder.path().join("edition-12ab"));
    }
}
