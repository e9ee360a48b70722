//! Bombatura in the browser.

#[cfg(feature = "board")]
pub mod board;
#[cfg(feature = "compute")]
pub mod compute;
#[cfg(feature = "drive")]
pub mod drive;
#[cfg(any(feature = "board", feature = "drive"))]
mod page_values;
#[cfg(any(feature = "compute", feature = "drive"))]
pub mod patience;
#[cfg(feature = "core")]
mod problem;
#[cfg(feature = "view")]
pub mod view;

#[cfg(feature = "core")]
pub use problem::Problem;
