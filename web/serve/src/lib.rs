//! Builds Bombatura's static site from the Rust modules and the page, and serves it on this machine.
//!
//! [`build`] makes four wasm modules (the solver, the drawings, and one view for each drawing backend), binds them to JavaScript,
//! optimises and compresses them and lays them beside the page. [`serve`] hands such a folder to a browser.
//! Neither knows what the page does.

pub mod build;
mod error;
pub mod serve;
mod workspace;

pub use error::Error;
pub use workspace::Workspace;
