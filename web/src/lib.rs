//! Bombatura in the browser.
