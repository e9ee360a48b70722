//! Opening the page in the default browser.

use std::process::{Command, Stdio};

/// Asks the desktop to show `url`; says so when it can't, for the address is printed anyway.
pub(crate) fn open(url: &str) {
    let (program, arguments): (_, &[&str]) = if cfg!(target_os = "macos") {
        ("open", &[])
    } else if cfg!(windows) {
        ("cmd", &["/C", "start", ""])
    } else {
        ("xdg-open", &[])
    };
    let opened = Command::new(program)
        .args(arguments)
        .arg(url)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn();
    if opened.is_err() {
        eprintln!("There is no `{program}` here to open a browser with; open the address yourself.");
    }
}
