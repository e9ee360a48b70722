//! A static file server for this machine only: MIME types, compressed forms, and the headers of an isolated page.
//!
//! It is written on the standard library's sockets with a thread for each connection. A pool of fewer threads than a
//! browser has connections can leave a request waiting behind an idle one for ever: `tiny_http` 0.12 did so at
//! more than one first visit in three here.

mod answer;
mod connection;
pub(crate) mod mime;
mod negotiation;
mod port;
mod request;
mod request_path;

use std::net::{TcpListener, TcpStream};
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;
use std::time::SystemTime;

use crate::Error;

/// One answer that was sent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Served {
    /// The request's target: `/wasm/compute_bg.wasm`.
    pub target: String,
    /// The answer's status.
    pub status: u16,
    /// Length of its body as sent, that is compressed where the browser takes that.
    pub bytes: u64,
    /// When it was begun.
    pub at: SystemTime,
}

/// What the server's threads share.
struct Shared {
    folder: std::path::PathBuf,
    /// Whether pages are isolated.
    isolates: bool,
    served: Mutex<Vec<Served>>,
    stopped: AtomicBool,
}

impl Shared {
    fn is_stopped(&self) -> bool {
        self.stopped.load(Ordering::Relaxed)
    }
}

/// A running server; it stops when dropped.
pub struct Server {
    shared: Arc<Shared>,
    accepting: Option<JoinHandle<()>>,
    port: u16,
}

impl Server {
    /// Serves `folder` on 127.0.0.1 at `port` or, when that is taken, at the next free one; 0 lets the system choose.
    ///
    /// # Errors
    /// [`Error::Port`] when none of the ports tried is free.
    pub fn start(folder: &Path, port: u16) -> Result<Server, Error> {
        Server::listen(folder, port, true)
    }

    /// The same without the headers that isolate pages, as most hosts of files answer.
    ///
    /// # Errors
    /// As for [`Server::start`].
    pub fn start_plain(folder: &Path, port: u16) -> Result<Server, Error> {
        Server::listen(folder, port, false)
    }

    fn listen(folder: &Path, port: u16, isolates: bool) -> Result<Server, Error> {
        let (listener, port) = port::listen(port)?;
        let served = Mutex::new(Vec::new());
        let shared = Arc::new(Shared { folder: folder.to_owned(), isolates, served, stopped: AtomicBool::new(false) });
        let accepting = std::thread::spawn({
            let shared = Arc::clone(&shared);
            move || accept(&listener, &shared)
        });
        Ok(Server { shared, accepting: Some(accepting), port })
    }

    /// The address of the site's first page: `http://127.0.0.1:8080/`.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://127.0.0.1:{}/", self.port)
    }

    /// The port it listens on.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.port
    }

    /// What was sent so far, in the order of the answers; the list begins anew with each call.
    pub fn take_served(&self) -> Vec<Served> {
        std::mem::take(&mut self.shared.served.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// Serves until the program is interrupted.
    pub fn wait(mut self) {
        if let Some(accepting) = self.accepting.take() {
            // It ends only when the server is dropped, or by a panic, which it has printed itself.
            let _ = accepting.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.shared.stopped.store(true, Ordering::Relaxed);
        if let Some(accepting) = self.accepting.take() {
            // A connection wakes the waiting thread, which then sees that it is over and lets the port go.
            drop(TcpStream::connect(("127.0.0.1", self.port)));
            let _ = accepting.join();
        }
    }
}

fn accept(listener: &TcpListener, shared: &Arc<Shared>) {
    for stream in listener.incoming() {
        if shared.is_stopped() {
            return;
        }
        // A connection that failed while it was made concerns nobody else.
        let Ok(stream) = stream else { continue };
        let shared = Arc::clone(shared);
        // Only this machine connects, so threads are as many as its browsers have connections.
        std::thread::spawn(move || connection::hold(&stream, &shared));
    }
}

#[cfg(test)]
mod tests;
