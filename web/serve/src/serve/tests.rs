//! The server as a browser sees it, over a plain socket.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::SystemTime;

use super::Server;

fn site() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("wasm")).unwrap();
    std::fs::create_dir(folder.path().join("edition-1f")).unwrap();
    for (path, content) in [
        ("index.html", "plain page"),
        ("index.html.br", "brotli page"),
        ("index.html.gz", "gzip page"),
        ("wasm/index.html", "folder page"),
        ("wasm/compute_bg.wasm", "module"),
        ("edition-1f/main.js", "script"),
    ] {
        std::fs::write(folder.path().join(path), content).unwrap();
    }
    folder
}

/// Sends one request and gives the whole answer, headers and body.
fn ask(server: &Server, request: &str, accept_encoding: &str) -> String {
    let mut stream = TcpStream::connect(("127.0.0.1", server.port())).unwrap();
    write!(stream, "{request} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n").unwrap();
    write!(stream, "Accept-Encoding: {accept_encoding}\r\n\r\n").unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}

#[test]
fn the_best_form_is_sent_with_its_type_and_length() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    let begun = SystemTime::now();
    let answer = ask(&server, "GET /", "gzip, br");
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    assert!(answer.contains("Content-Encoding: br\r\n"), "{answer}");
    assert!(answer.contains("Content-Type: text/html; charset=utf-8\r\n"), "{answer}");
    assert!(answer.contains("Content-Length: 11\r\n"), "{answer}");
    assert!(answer.ends_with("brotli page"), "{answer}");
    let served = server.take_served();
    let [super::Served { target, status, bytes, at }] = &served[..] else { panic!("{served:?}") };
    assert_eq!((target.as_str(), *status, *bytes), ("/", 200, 11));
    assert!((begun..=SystemTime::now()).contains(at));
    assert!(ask(&server, "GET /index.html", "gzip").ends_with("gzip page"));
    assert!(ask(&server, "GET /", "").ends_with("plain page"));
}

#[test]
fn a_file_without_compressed_forms_is_sent_plain_and_isolated() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    let answer = ask(&server, "GET /wasm/compute_bg.wasm", "gzip, br");
    assert!(answer.ends_with("module"), "{answer}");
    assert!(!answer.contains("Content-Encoding"), "{answer}");
    assert!(answer.contains("Content-Type: application/wasm\r\n"), "{answer}");
    assert!(answer.contains("Cross-Origin-Opener-Policy: same-origin\r\n"), "{answer}");
    assert!(answer.contains("Cross-Origin-Embedder-Policy: require-corp\r\n"), "{answer}");
}

/// RFC 8246 for `immutable`.
#[test]
fn only_what_belongs_to_an_edition_may_be_kept_without_asking() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    let edition = ask(&server, "GET /edition-1f/main.js", "");
    assert!(edition.contains("Cache-Control: public, max-age=31536000, immutable\r\n"), "{edition}");
    for request in ["GET /", "GET /wasm/compute_bg.wasm", "GET /edition-1f/missing.js"] {
        let answer = ask(&server, request, "");
        assert!(answer.contains("Cache-Control: no-cache\r\n") && !answer.contains("immutable"), "{answer}");
    }
}

#[test]
fn wrong_requests_get_a_status_that_says_so() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    assert!(ask(&server, "GET /missing.js", "").starts_with("HTTP/1.1 404"));
    assert!(ask(&server, "GET /../secret", "").starts_with("HTTP/1.1 400"));
    assert!(ask(&server, "POST /", "").starts_with("HTTP/1.1 405"));
    let moved = ask(&server, "GET /wasm", "");
    assert!(moved.starts_with("HTTP/1.1 308") && moved.contains("Location: /wasm/\r\n"), "{moved}");
}

/// A browser opens several connections, asks on one of them and keeps the others for later.
#[test]
fn idle_connections_keep_nobody_waiting() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    let idle: Vec<_> = (0..40).map(|_| TcpStream::connect(("127.0.0.1", server.port())).unwrap()).collect();
    assert!(ask(&server, "GET /", "").ends_with("plain page"));
    drop(idle);
}

#[test]
fn one_connection_serves_several_requests() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    let mut stream = TcpStream::connect(("127.0.0.1", server.port())).unwrap();
    write!(stream, "HEAD / HTTP/1.1\r\n\r\nGET /wasm/compute_bg.wasm HTTP/1.1\r\nConnection: close\r\n\r\n").unwrap();
    let mut answers = String::new();
    stream.read_to_string(&mut answers).unwrap();
    assert_eq!(answers.matches("HTTP/1.1 200").count(), 2, "{answers}");
    assert!(answers.contains("Content-Length: 10\r\n") && !answers.contains("plain page"), "{answers}");
    assert!(answers.ends_with("module"), "{answers}");
}

#[test]
fn a_dropped_server_frees_its_port() {
    let folder = site();
    let server = Server::start(folder.path(), 0).unwrap();
    let port = server.port();
    drop(server);
    assert!(std::net::TcpListener::bind(("127.0.0.1", port)).is_ok());
}
