//! Finding a port to listen on.

use crate::Error;

/// How many ports after the one asked for are tried.
const TRIED: u16 = 100;

/// Listens on 127.0.0.1 at `port` or the next free one above it; with 0 the system chooses.
pub(super) fn listen(port: u16) -> Result<(tiny_http::Server, u16), Error> {
    let last = if port == 0 { 0 } else { port.saturating_add(TRIED) };
    let mut reason = String::new();
    for candidate in port..=last {
        match tiny_http::Server::http(("127.0.0.1", candidate)) {
            Ok(server) => {
                let bound = server.server_addr().to_ip().map_or(candidate, |address| address.port());
                return Ok((server, bound));
            }
            Err(refusal) => reason = refusal.to_string(),
        }
    }
    Err(Error::Port { first: port, last, reason })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_taken_port_gives_a_later_free_one() {
        let (_first, taken) = listen(0).unwrap();
        let (_second, port) = listen(taken).unwrap();
        assert!(port > taken && port <= taken.saturating_add(TRIED));
    }
}
