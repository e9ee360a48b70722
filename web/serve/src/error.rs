//! What can go wrong between the sources and a page in a browser, in words that say what to do.

use std::path::{Path, PathBuf};

/// A failure of the build or of the server.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// A program or a compiler target isn't there.
    #[error("{what} is missing: {remedy}")]
    Missing {
        /// What was looked for.
        what: String,
        /// What to install or to run.
        remedy: String,
    },
    /// A program ran and reported a failure of its own.
    #[error("`{command}` failed ({status}); what it printed says why")]
    Command {
        /// The command line.
        command: String,
        /// Its exit status.
        status: String,
    },
    /// A file or folder could not be read or written.
    #[error("can't {doing} {}: {source}", .path.display())]
    File {
        /// `read`, `write`, `create`…
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// The operating system's reason.
        source: std::io::Error,
    },
    /// The bindings generator refused a module.
    #[error("can't make JavaScript bindings for {module}: {reason}")]
    Bindings {
        /// The module's name.
        module: &'static str,
        /// The generator's reason.
        reason: String,
    },
    /// The page's words in another language don't match the page.
    #[error("the words in {} don't match the page: {reason}", .path.display())]
    Words {
        /// The file of translations.
        path: PathBuf,
        /// What is missing or too many, or why it can't be read.
        reason: String,
    },
    /// No port could be opened.
    #[error("ports {first} to {last} on 127.0.0.1 are all taken ({reason}); choose another with --port N")]
    Port {
        /// The port asked for.
        first: u16,
        /// The last one tried.
        last: u16,
        /// The operating system's reason for the last one.
        reason: String,
    },
}

impl Error {
    /// A closure for `map_err` that says what was being done to which file.
    pub(crate) fn file(doing: &'static str, path: &Path) -> impl FnOnce(std::io::Error) -> Error {
        let path = path.to_owned();
        move |source| Error::File { doing, path, source }
    }
}
