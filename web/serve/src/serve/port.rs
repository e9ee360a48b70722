//! Finding a port to listen on.

use std::net::TcpListener;

use crate::Error;

/// How many ports after the one asked for are tried.
const TRIED: u16 = 100;

/// Listens on 127.0.0.1 at `port` or the next free one above it; with 0 the system chooses.
pub(super) fn listen(port: u16) -> Result<(TcpListener, u16), Error> {
    let last = if port == 0 { 0 } else { port.saturating_add(TRIED) };
    let mut reason = String::new();
    for candidate in port..=last {
        let bound = TcpListener::bind(("127.0.0.1", candidate))
            .and_then(|listener| listener.local_addr().map(|address| (listener, address.port())));
        match bound {
            Ok(bound) => return Ok(bound),
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

    #[test]
    fn when_nothing_is_free_the_ports_tried_are_named() {
        let (_first, taken) = listen(u16::MAX).unwrap();
        assert_eq!(taken, u16::MAX);
        let error = listen(u16::MAX).unwrap_err().to_string();
        assert!(error.contains("65535") && error.contains("--port"), "{error}");
    }
}
