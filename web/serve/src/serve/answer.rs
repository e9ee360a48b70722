//! One answer to one request.

use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;

use super::negotiation::{Coding, acceptable};
use super::request::Request;
use super::{mime, request_path};
use crate::build::edition;

/// Isolate the page from others, as the site's own host should too: memory is shared with a worker only then.
const ISOLATION: [(&str, &str); 3] = [
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Embedder-Policy", "require-corp"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
];

/// Headers of every answer.
const HEADERS: [(&str, &str); 2] = [("X-Content-Type-Options", "nosniff"), ("Vary", "Accept-Encoding")];

/// What an edition holds never changes under the same name; a developer's reload must see everything else as it is now.
fn cache_control(path: &str) -> &'static str {
    if edition::is_inside(path) { "public, max-age=31536000, immutable" } else { "no-cache" }
}

/// A status, headers beside those of every answer, and a body.
pub(super) struct Answer {
    pub(super) status: u16,
    headers: Vec<(&'static str, String)>,
    body: Box<dyn Read>,
    /// Length of the body in bytes.
    pub(super) length: u64,
}

/// Answers `request` from the files in `folder`; `None` is a request that could not be understood.
pub(super) fn to(folder: &Path, request: Option<&Request>) -> Answer {
    let Some(request) = request else { return words(400, "This is no HTTP request.") };
    if !request.is_understood {
        return words(405, "Only GET and HEAD are answered here.").with("Allow", "GET, HEAD");
    }
    let Some(path) = request_path::inside_site(&request.target) else {
        return words(400, "This address names no file of the site.");
    };
    // A folder without its closing slash: relative links in its page would point beside it.
    if folder.join(&path).join("index.html").is_file() {
        return words(308, "The page is in this folder.").with("Location", format!("/{path}/"));
    }
    match open_best(folder, &path, &request.accept_encoding) {
        Some((file, length, coding)) => found(file, length, &path, coding),
        None => words(404, "There is no such file in the site."),
    }
}

fn open_best(folder: &Path, path: &str, accept_encoding: &str) -> Option<(File, u64, Coding)> {
    acceptable(accept_encoding).into_iter().find_map(|coding| {
        let file = File::open(folder.join(format!("{path}{}", coding.ending()))).ok()?;
        let metadata = file.metadata().ok()?;
        metadata.is_file().then_some((file, metadata.len(), coding))
    })
}

fn found(file: File, length: u64, path: &str, coding: Coding) -> Answer {
    // No more than was promised, should the file grow meanwhile.
    let body = Box::new(file.take(length));
    let answer = Answer { status: 200, headers: Vec::new(), body, length }
        .with("Content-Type", mime::of(path))
        .with("Cache-Control", cache_control(path));
    if coding == Coding::Identity { answer } else { answer.with("Content-Encoding", coding.name()) }
}

fn words(status: u16, words: &'static str) -> Answer {
    let body = Box::new(words.as_bytes());
    Answer { status, headers: Vec::new(), body, length: words.len() as u64 }
        .with("Content-Type", mime::of("words.txt"))
        .with("Cache-Control", "no-cache")
}

impl Answer {
    fn with(mut self, name: &'static str, value: impl Into<String>) -> Answer {
        self.headers.push((name, value.into()));
        self
    }

    /// The same for a page that shares nothing with others.
    pub(super) fn isolated(mut self) -> Answer {
        self.headers.extend(ISOLATION.map(|(name, value)| (name, value.to_owned())));
        self
    }

    /// Writes the head, and the body if it is wanted.
    pub(super) fn write(&mut self, to: &mut impl Write, with_body: bool, stays_open: bool) -> io::Result<()> {
        write!(to, "HTTP/1.1 {} {}\r\n", self.status, reason(self.status))?;
        let own = self.headers.iter().map(|(name, value)| (*name, value.as_str()));
        for (name, value) in HEADERS.into_iter().chain(own) {
            // What came from a request's target must not begin a header of its own.
            let value: String = value.chars().filter(|letter| !letter.is_control()).collect();
            write!(to, "{name}: {value}\r\n")?;
        }
        write!(to, "Connection: {}\r\n", if stays_open { "keep-alive" } else { "close" })?;
        write!(to, "Content-Length: {}\r\n\r\n", self.length)?;
        if with_body && io::copy(&mut self.body, to)? < self.length {
            // The file became shorter: only an ended connection tells the browser.
            return Err(io::ErrorKind::UnexpectedEof.into());
        }
        Ok(())
    }
}

fn reason(status: u16) -> &'static str {
    match status {
        200 => "OK",
        308 => "Permanent Redirect",
        400 => "Bad Request",
        404 => "Not Found",
        405 => "Method Not Allowed",
        _ => "",
    }
}
