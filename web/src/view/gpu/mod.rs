//! What lives on the graphics device.

pub(super) mod buffers;
pub(super) mod canvas;
pub(super) mod context_loss;
pub(super) mod device;
pub(super) mod ghosts;
pub(super) mod loss;
pub(super) mod pipeline;
