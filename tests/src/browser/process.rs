//! A program of ours that must not outlive us.

use std::process::Child;

/// A running program; it is ended when this is dropped.
pub(super) struct Process(pub(super) Child);

impl Drop for Process {
    fn drop(&mut self) {
        // Failing to kill means that it has ended by itself.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
