//! One connection: requests and answers in turn until either side has enough.

use std::io::{self, BufReader, BufWriter, Write};
use std::net::TcpStream;
use std::sync::PoisonError;
use std::time::{Duration, SystemTime};

use super::request::{self, Request};
use super::{Served, Shared, answer};

/// A browser closes idle connections by itself, some after minutes; a client that has died never does.
const IDLE_LIMIT: Duration = Duration::from_secs(300);

/// Answers every request of a connection. Whatever goes wrong on the way ends it: the browser asks again if it cares.
pub(super) fn hold(stream: &TcpStream, shared: &Shared) {
    let _ = stream.set_nodelay(true);
    let _ = stream.set_read_timeout(Some(IDLE_LIMIT));
    let _ = exchange(stream, shared);
}

fn exchange(stream: &TcpStream, shared: &Shared) -> io::Result<()> {
    let mut reader = BufReader::new(stream);
    let mut writer = BufWriter::new(stream);
    loop {
        let head = request::read_head(&mut reader)?;
        if head.is_empty() || shared.is_stopped() {
            return Ok(());
        }
        let request = Request::parse(&head);
        let stays_open = request.as_ref().is_some_and(|request| request.keeps_connection);
        let answer = answer::to(&shared.folder, request.as_ref());
        let mut answer = if shared.isolates { answer.isolated() } else { answer };
        // Taken down first: who has the answer may ask at once what was sent.
        shared.served.lock().unwrap_or_else(PoisonError::into_inner).push(Served {
            target: request.as_ref().map_or_else(String::new, |request| request.target.clone()),
            status: answer.status,
            bytes: answer.length,
            at: SystemTime::now(),
        });
        answer.write(&mut writer, request.is_some_and(|request| request.wants_body), stays_open)?;
        writer.flush()?;
        if !stays_open {
            return Ok(());
        }
    }
}
