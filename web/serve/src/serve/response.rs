//! One answer to one request.

use std::fs::File;
use std::path::Path;

use tiny_http::{Header, Method, Request, Response, ResponseBox};

use super::negotiation::{Coding, acceptable};
use super::{mime, request_path};

/// Headers of every answer. The first three isolate the page from others, as the site's own host should too; a
/// developer's reload must see the file as it is now.
const HEADERS: [(&str, &str); 6] = [
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Embedder-Policy", "require-corp"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    ("X-Content-Type-Options", "nosniff"),
    ("Cache-Control", "no-cache"),
    ("Vary", "Accept-Encoding"),
];

/// Answers `request` from the files in `folder`.
pub(super) fn answer(folder: &Path, request: &Request) -> ResponseBox {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return text(405, "Only GET and HEAD are answered here.").with_header(header("Allow", "GET, HEAD")).boxed();
    }
    let Some(path) = request_path::inside_site(request.url()) else {
        return text(400, "This address names no file of the site.").boxed();
    };
    // A folder without its closing slash: relative links in its page would point beside it.
    if folder.join(&path).join("index.html").is_file() {
        let target = request.url().split('?').next().unwrap_or_default();
        return text(308, "The page is in this folder.").with_header(header("Location", &format!("{target}/"))).boxed();
    }
    match open_best(folder, &path, accepted_by(request)) {
        Some((file, coding)) => found(file, &path, coding),
        None => text(404, "There is no such file in the site.").boxed(),
    }
}

fn accepted_by(request: &Request) -> &str {
    let sent = request.headers().iter().find(|header| header.field.equiv("Accept-Encoding"));
    sent.map_or("", |header| header.value.as_str())
}

fn open_best(folder: &Path, path: &str, accept_encoding: &str) -> Option<(File, Coding)> {
    acceptable(accept_encoding).into_iter().find_map(|coding| {
        let path = folder.join(format!("{path}{}", coding.ending()));
        let file = path.is_file().then(|| File::open(path).ok())??;
        Some((file, coding))
    })
}

fn found(file: File, path: &str, coding: Coding) -> ResponseBox {
    // With a length the connection stays open, and the browser can show progress.
    let length = file.metadata().ok().and_then(|metadata| usize::try_from(metadata.len()).ok());
    let mut headers = every_header();
    headers.push(header("Content-Type", mime::of(path)));
    if coding != Coding::Identity {
        headers.push(header("Content-Encoding", coding.name()));
    }
    // tiny_http would otherwise send files above 32 KiB in chunks, without their length.
    Response::new(200.into(), headers, file, length, None).with_chunked_threshold(usize::MAX).boxed()
}

fn text(status: u16, message: &str) -> Response<std::io::Cursor<Vec<u8>>> {
    let mut response = Response::from_string(message).with_status_code(status);
    for header in every_header() {
        response.add_header(header);
    }
    response
}

fn every_header() -> Vec<Header> {
    HEADERS.iter().map(|(field, value)| header(field, value)).collect()
}

fn header(field: &str, value: &str) -> Header {
    // Locations come from a request line that was parsed as ASCII, everything else from constants above.
    Header::from_bytes(field, value).expect("header fields and values are ASCII")
}
