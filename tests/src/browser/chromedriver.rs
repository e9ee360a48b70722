//! The program that drives Chromium, as a process of ours.

use std::net::{TcpListener, TcpStream};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};

/// How long it may take to listen. Measured at 0.1 s on an idle machine; a loaded one has taken seconds.
const START_LIMIT: Duration = Duration::from_secs(30);

/// A running chromedriver; it ends, and the browsers it started with it, when dropped.
pub struct Chromedriver {
    process: Child,
    port: u16,
}

impl Chromedriver {
    /// Starts chromedriver on a free port.
    ///
    /// # Errors
    /// When it isn't installed or doesn't listen in time.
    pub fn start() -> Result<Chromedriver> {
        let port = free_port()?;
        let process = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .arg("--silent")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .context("can't start chromedriver")?;
        let driver = Chromedriver { process, port };
        let begun = Instant::now();
        while TcpStream::connect(("127.0.0.1", port)).is_err() {
            ensure!(begun.elapsed() < START_LIMIT, "chromedriver doesn't listen on port {port}");
            std::thread::sleep(Duration::from_millis(50));
        }
        Ok(driver)
    }

    /// Where it listens.
    pub(super) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Chromedriver {
    fn drop(&mut self) {
        // Asked in its own language it also ends the browsers that a failed check left open; killed, it would not.
        let asked = TcpStream::connect(("127.0.0.1", self.port)).and_then(|mut stream| {
            use std::io::{Read, Write};
            stream.set_read_timeout(Some(Duration::from_secs(5)))?;
            write!(stream, "GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n")?;
            stream.read(&mut [0; 64])
        });
        let ended = |process: &mut Child| matches!(process.try_wait(), Ok(Some(_)));
        let begun = Instant::now();
        while asked.is_ok() && !ended(&mut self.process) && begun.elapsed() < Duration::from_secs(5) {
            std::thread::sleep(Duration::from_millis(50));
        }
        if !ended(&mut self.process) {
            // Failing to kill means that it has ended by itself.
            let _ = self.process.kill();
            let _ = self.process.wait();
        }
    }
}

fn free_port() -> Result<u16> {
    let listener = TcpListener::bind(("127.0.0.1", 0)).context("no free port for chromedriver")?;
    Ok(listener.local_addr()?.port())
}
