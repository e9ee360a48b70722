//! The last step: the site's files and their compressed forms in the folder where they are wanted.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::cache::Cache;
use super::compress::compress;
use super::page::Source;
use super::{Report, SiteFile};
use crate::{Error, Workspace};

/// Writes every file, only where it differs, and in the checkout's own `dist` removes what is no longer part of
/// the site. A folder that a person named may hold other things, which stay.
pub(super) fn publish(workspace: &Workspace, mut files: Vec<Source>, out: &Path) -> Result<Report, Error> {
    let cache = Cache::new(workspace.cache());
    files.sort_by(|a, b| a.path.cmp(&b.path));
    let mut report = Report::default();
    let mut written = BTreeSet::new();
    for Source { path, content } in files {
        let compressed = compress(&cache, &path, &content)?;
        let size = |bytes: &Option<Vec<u8>>| bytes.as_ref().map(|bytes| bytes.len() as u64);
        report.files.push(SiteFile {
            bytes: content.len() as u64,
            brotli_bytes: size(&compressed.brotli),
            gzip_bytes: size(&compressed.gzip),
            path: path.clone(),
        });
        let forms = [("", Some(content)), (".br", compressed.brotli), (".gz", compressed.gzip)];
        for (ending, content) in forms {
            let target = out.join(format!("{path}{ending}"));
            match content {
                Some(content) => write(&target, &content)?,
                None => remove(&target)?,
            }
            written.insert(target);
        }
    }
    if out == workspace.site() {
        remove_others(out, &written)?;
    }
    Ok(report)
}

fn write(path: &Path, content: &[u8]) -> Result<(), Error> {
    if std::fs::read(path).is_ok_and(|there| there == content) {
        return Ok(());
    }
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(Error::file("create", folder))?;
    }
    std::fs::write(path, content).map_err(Error::file("write", path))
}

/// A compressed form left from an earlier build would be served in place of the new file.
fn remove(path: &Path) -> Result<(), Error> {
    match std::fs::remove_file(path) {
        Err(reason) if reason.kind() != std::io::ErrorKind::NotFound => Err(Error::file("remove", path)(reason)),
        _ => Ok(()),
    }
}

fn remove_others(folder: &Path, written: &BTreeSet<PathBuf>) -> Result<(), Error> {
    for entry in std::fs::read_dir(folder).map_err(Error::file("read", folder))? {
        let path = entry.map_err(Error::file("read", folder))?.path();
        if path.is_dir() {
            remove_others(&path, written)?;
        } else if !written.contains(&path) {
            remove(&path)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn source(path: &str, content: &str) -> Source {
        Source { path: path.into(), content: content.as_bytes().into() }
    }

    /// A checkout with nothing in it but what [`Workspace::above`] looks for.
    fn checkout() -> (tempfile::TempDir, Workspace) {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir_all(folder.path().join("web/serve")).unwrap();
        std::fs::write(folder.path().join("web/serve/Cargo.toml"), "").unwrap();
        let workspace = Workspace::above(folder.path()).unwrap();
        (folder, workspace)
    }

    #[test]
    fn a_named_folder_keeps_what_it_held_and_the_own_one_holds_the_site_only() {
        let (_folder, workspace) = checkout();
        for (out, stays) in [(workspace.root().join("elsewhere"), true), (workspace.site(), false)] {
            std::fs::create_dir_all(&out).unwrap();
            std::fs::write(out.join("others.txt"), "mine").unwrap();
            publish(&workspace, vec![source("index.html", "<p>")], &out).unwrap();
            assert_eq!(out.join("others.txt").exists(), stays);
            assert!(out.join("index.html").exists());
        }
    }

    #[test]
    fn no_compressed_form_outlives_a_file_that_became_too_small_for_it() {
        let (_folder, workspace) = checkout();
        let out = workspace.root().join("elsewhere");
        let report = publish(&workspace, vec![source("index.html", &"word ".repeat(200))], &out).unwrap();
        assert_eq!(report.files[0].bytes, 1000);
        assert!(report.files[0].brotli_bytes.unwrap() < 100);
        assert!(out.join("index.html.br").exists());
        publish(&workspace, vec![source("index.html", "<p>")], &out).unwrap();
        assert!(!out.join("index.html.br").exists());
    }
}
