//! The built site somewhere else.

use std::path::Path;

use anyhow::{Context, Result};

/// Copies a folder with all that is in it.
pub(super) fn copy(from: &Path, to: &Path) -> Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

/// Copies the site with `html` at the end of its page's head.
pub(super) fn copy_with(from: &Path, to: &Path, html: &str) -> Result<()> {
    copy(from, to)?;
    let page = to.join("index.html");
    let text = std::fs::read_to_string(&page)?;
    let end = text.find("</head>").context("the page has a head")?;
    std::fs::write(&page, format!("{}{html}{}", &text[..end], &text[end..]))?;
    // Its compressed forms are those of the page as it was.
    for form in ["index.html.br", "index.html.gz"] {
        std::fs::remove_file(to.join(form))?;
    }
    Ok(())
}
