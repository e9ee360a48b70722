//! The built page in headless Chromium, on both drawing backends.
//!
//! Things on the page are found as a person finds them, by role and name; a page error at any moment fails the check.

mod backend;
mod breakage;
pub mod checks;
mod chromedriver;
mod figures;
mod find;
mod firefox;
mod hands;
mod motion;
mod page;
mod page_errors;
mod pixels;
mod process;
mod session;
mod site_copy;
mod virtual_screen;

pub use backend::Backend;
pub use chromedriver::Chromedriver;
pub use page::{DESKTOP, PHONE, Page, SMALL, Screen};
pub use session::Session;
