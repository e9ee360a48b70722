//! A static file server for this machine only: MIME types, compressed forms, and the headers of an isolated page.

pub(crate) mod mime;
mod negotiation;
mod port;
mod request_path;
mod response;

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;

use crate::Error;

/// How many requests are answered at once. A browser opens six connections to one host.
const THREADS: usize = 6;

/// One answer that was sent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Served {
    /// The request's target: `/wasm/compute_bg.wasm`.
    pub target: String,
    /// The answer's status.
    pub status: u16,
    /// Length of its body as sent, that is compressed where the browser takes that.
    pub bytes: usize,
}

/// A running server; it stops when dropped.
pub struct Server {
    listener: Arc<tiny_http::Server>,
    served: Arc<Mutex<Vec<Served>>>,
    threads: Vec<JoinHandle<()>>,
    port: u16,
}

impl Server {
    /// Serves `folder` on 127.0.0.1 at `port` or, when that is taken, at the next free one; 0 lets the system choose.
    ///
    /// # Errors
    /// [`Error::Port`] when none of the ports tried is free.
    pub fn start(folder: &Path, port: u16) -> Result<Server, Error> {
        let (listener, port) = port::listen(port)?;
        let listener = Arc::new(listener);
        let served = Arc::new(Mutex::new(Vec::new()));
        let folder: Arc<PathBuf> = Arc::new(folder.to_owned());
        let answer_requests = |_| {
            let (listener, folder, served) = (Arc::clone(&listener), Arc::clone(&folder), Arc::clone(&served));
            std::thread::spawn(move || {
                while let Ok(request) = listener.recv() {
                    let answer = response::answer(&folder, &request);
                    let entry = Served {
                        target: request.url().to_owned(),
                        status: answer.status_code().0,
                        bytes: answer.data_length().unwrap_or(0),
                    };
                    served.lock().unwrap_or_else(PoisonError::into_inner).push(entry);
                    // A browser that went away needs no answer.
                    let _ = request.respond(answer);
                }
            })
        };
        let threads = (0..THREADS).map(answer_requests).collect();
        Ok(Server { listener, served, threads, port })
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

    /// What was sent so far, in the order of the requests; the list begins anew with each call.
    pub fn take_served(&self) -> Vec<Served> {
        std::mem::take(&mut self.served.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// Serves until the program is interrupted.
    pub fn wait(mut self) {
        for thread in std::mem::take(&mut self.threads) {
            // A thread ends only when the server is dropped, or by a panic, which it has printed itself.
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // Each call wakes one waiting thread, whose loop then ends.
        for _ in &self.threads {
            self.listener.unblock();
        }
    }
}

#[cfg(test)]
mod tests;
