//! Bombatura in the browser.

#[cfg(feature = "compute")]
pub mod compute;

#[cfg(feature = "view")]
pub mod view;
