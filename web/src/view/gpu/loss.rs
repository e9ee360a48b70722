//! Noticing that the graphics device is gone.
//!
//! A device can be lost at any moment, even silently just after it was made. The first reason is kept; whoever waits is
//! woken once. The backend's callbacks must be `Send`, which a JavaScript function is not, so they leave the reason
//! here and a task on the page's thread passes it on.

use std::future::poll_fn;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::task::{Poll, Waker};

use wgpu::Device;

use crate::view::problem::ViewError;

/// Shared knowledge of one device's end; clones look at the same device.
#[derive(Clone, Debug, Default)]
pub(crate) struct Loss(Arc<Mutex<State>>);

#[derive(Debug, Default)]
struct State {
    end: Option<End>,
    waiting: Vec<Waker>,
}

#[derive(Clone, Debug)]
enum End {
    /// The device was lost for this reason.
    Lost(String),
    /// The stage was put away; nobody is to be told.
    PutAway,
}

impl Loss {
    /// Watches `device`.
    pub(crate) fn of(device: &Device) -> Self {
        let loss = Self::default();
        let watcher = loss.clone();
        // Every reason counts, "destroyed" too: Chromium gives it when its graphics process goes. A device that the stage
        // itself gives up was put away before.
        device.set_device_lost_callback(move |_, message| watcher.report(&message));
        let watcher = loss.clone();
        // An error that no one caught leaves the device in a state we know nothing about.
        device.on_uncaptured_error(Arc::new(move |error| watcher.report(&error.to_string())));
        loss
    }

    /// Says that the device was lost; browsers give a sentence, a clause or nothing.
    pub(crate) fn report(&self, reason: &str) {
        let reason = match reason.trim().trim_end_matches('.') {
            "" => "the browser gave no reason",
            given => given,
        };
        self.end_with(End::Lost(reason.to_owned()));
    }

    /// Lets those who wait go without a word.
    pub(crate) fn put_away(&self) {
        self.end_with(End::PutAway);
    }

    fn end_with(&self, end: End) {
        let waiting = {
            let mut state = self.state();
            state.end.get_or_insert(end);
            std::mem::take(&mut state.waiting)
        };
        for waker in waiting {
            waker.wake();
        }
    }

    /// An error once the device is lost.
    pub(crate) fn check(&self) -> Result<(), ViewError> {
        match &self.state().end {
            Some(End::Lost(reason)) => Err(ViewError::Lost { reason: reason.clone() }),
            Some(End::PutAway) | None => Ok(()),
        }
    }

    /// Waits for the end: the reason if the device was lost, None if the stage was put away.
    pub(crate) async fn reason(self) -> Option<String> {
        poll_fn(|context| {
            let mut state = self.state();
            match &state.end {
                Some(End::Lost(reason)) => Poll::Ready(Some(reason.clone())),
                Some(End::PutAway) => Poll::Ready(None),
                None => {
                    state.waiting.push(context.waker().clone());
                    Poll::Pending
                }
            }
        })
        .await
    }

    fn state(&self) -> MutexGuard<'_, State> {
        // The state is whole after every step, so a panic elsewhere cannot have left it half changed.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
