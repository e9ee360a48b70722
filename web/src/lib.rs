//! Bombatura in the browser.

#[cfg(feature = "view")]
pub mod view;
