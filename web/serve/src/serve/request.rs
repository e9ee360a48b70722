//! Reading a request's head, as far as a file server needs it (RFC 9112, sections 2 and 3).

use std::io::{self, BufRead, Read};

/// Longer heads are refused; browsers' are below 2 kB.
const HEAD_LIMIT: u64 = 16 * 1024;

/// What a browser asks for.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Request {
    /// What it asks for, as it was sent: `/wasm/compute.js?v=1`.
    pub(super) target: String,
    /// Whether the method is one that is answered: GET or HEAD.
    pub(super) is_understood: bool,
    /// Whether the answer's body is wanted; a HEAD asks for the headers only.
    pub(super) wants_body: bool,
    /// The `Accept-Encoding` header, empty when there is none.
    pub(super) accept_encoding: String,
    /// Whether more requests may follow on this connection.
    pub(super) keeps_connection: bool,
}

/// Reads up to the empty line that ends a head; empty when the connection was closed before a request.
pub(super) fn read_head(reader: &mut impl BufRead) -> io::Result<String> {
    let mut head = Vec::new();
    let mut reader = reader.take(HEAD_LIMIT);
    while reader.read_until(b'\n', &mut head)? > 0 {
        if head.ends_with(b"\r\n\r\n") || head.ends_with(b"\n\n") {
            break;
        }
    }
    Ok(String::from_utf8_lossy(&head).into_owned())
}

impl Request {
    /// Understands a head; `None` when it is not HTTP/1.x or ends early.
    pub(super) fn parse(head: &str) -> Option<Request> {
        let (first, rest) = head.split_once('\n')?;
        if !head.ends_with("\n\r\n") && !head.ends_with("\n\n") {
            return None;
        }
        let mut words = first.trim_end().split(' ');
        let (method, target, version) = (words.next()?, words.next()?, words.next()?);
        if words.next().is_some() || !version.starts_with("HTTP/1.") {
            return None;
        }
        let fields = || rest.lines().filter_map(|line| line.split_once(':'));
        let field =
            |name: &str| fields().find(|(known, _)| known.eq_ignore_ascii_case(name)).map(|(_, value)| value.trim());
        // A body would have to be read before the next request; nothing that is answered here has one.
        let has_body =
            field("Content-Length").is_some_and(|length| length != "0") || field("Transfer-Encoding").is_some();
        let closes = field("Connection").is_some_and(|value| value.to_ascii_lowercase().contains("close"));
        Some(Request {
            target: target.to_owned(),
            is_understood: method == "GET" || method == "HEAD",
            wants_body: method != "HEAD",
            accept_encoding: field("Accept-Encoding").unwrap_or_default().to_owned(),
            keeps_connection: version != "HTTP/1.0" && !closes && !has_body,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_browser_s_head_is_understood() {
        let head = "GET /a?b HTTP/1.1\r\nHost: x\r\naccept-encoding: gzip, br \r\n\r\n";
        let request = Request::parse(head).unwrap();
        assert_eq!(request.target, "/a?b");
        assert_eq!(request.accept_encoding, "gzip, br");
        assert!(request.is_understood && request.wants_body && request.keeps_connection);
    }

    #[test]
    fn the_connection_ends_where_the_next_request_could_not_be_found() {
        let keeps = |head: &str| Request::parse(head).unwrap().keeps_connection;
        assert!(!keeps("GET / HTTP/1.1\r\nConnection: Close\r\n\r\n"));
        assert!(!keeps("GET / HTTP/1.0\r\n\r\n"));
        assert!(!keeps("POST / HTTP/1.1\r\nContent-Length: 3\r\n\r\n"));
        assert!(!Request::parse("POST / HTTP/1.1\r\n\r\n").unwrap().is_understood);
        assert!(!Request::parse("HEAD / HTTP/1.1\r\n\r\n").unwrap().wants_body);
    }

    #[test]
    fn what_is_no_request_is_refused() {
        for head in [
            "",
            "\r\n\r\n",
            "GET /\r\n\r\n",
            "GET / HTTP/2\r\n\r\n",
            "GET / x HTTP/1.1\r\n\r\n",
            "GET / HTTP/1.1\r\nHost",
        ] {
            assert_eq!(Request::parse(head), None, "{head:?}");
        }
    }

    #[test]
    fn a_head_is_read_to_its_end_and_not_for_ever() {
        let mut two = "GET /1 HTTP/1.1\r\n\r\nGET /2 HTTP/1.1\r\n\r\n".as_bytes();
        assert_eq!(read_head(&mut two).unwrap(), "GET /1 HTTP/1.1\r\n\r\n");
        assert_eq!(read_head(&mut two).unwrap(), "GET /2 HTTP/1.1\r\n\r\n");
        assert_eq!(read_head(&mut two).unwrap(), "");
        let endless = "x".repeat(100_000);
        assert_eq!(read_head(&mut endless.as_bytes()).unwrap().len() as u64, HEAD_LIMIT);
    }
}
