//! Bombatura in the browser.

#[cfg(feature = "compute")]
pub mod compute;

#[cfg(feature = "measured")]
pub mod measured;

#[cfg(any(feature = "compute", feature = "measured"))]
pub mod problem;

#[cfg(feature = "view")]
pub mod view;
