//! The compute worker's side: one design, its stages, and what the page asks of them.
//!
//! Thin on purpose: what is computed, and what of it is kept, is `bombatura_core::top`'s business. Typed arrays are
//! copied once, out of this module's memory, since only arrays of their own can be handed over to the page.

mod arches;
mod arrays;
mod replies;
mod workshop;

pub use workshop::Workshop;
