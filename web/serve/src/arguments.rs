//! The command line.

use std::path::PathBuf;

/// What `--help` prints.
pub(crate) const HELP: &str = "\
Builds Bombatura and serves it on this machine.

    cargo run --release                            build, then serve on http://127.0.0.1:8080
    cargo run --release -- --port 9000             begin at another port; the next free one is taken
    cargo run --release -- --open                  also open the page in the default browser
    cargo run --release -- build --out DIR         write the static site into DIR and stop
";

/// The port tried first.
const PORT: u16 = 8080;

/// What to do.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Action {
    Help,
    Build { out: Option<PathBuf> },
    Serve { port: u16, open: bool },
}

/// Reads the arguments after the program's name.
pub(crate) fn read(arguments: impl IntoIterator<Item = String>) -> Result<Action, String> {
    let mut arguments = arguments.into_iter().peekable();
    if arguments.next_if(|first| first == "build").is_some() {
        return read_build(arguments);
    }
    let (mut port, mut open) = (PORT, false);
    while let Some(argument) = arguments.next() {
        match argument.as_str() {
            "--help" | "-h" => return Ok(Action::Help),
            "--open" => open = true,
            "--port" => {
                let given = arguments.next().ok_or("--port needs a number from 0 to 65535")?;
                port = given.parse().map_err(|_| format!("--port {given}: a port is a number from 0 to 65535"))?;
            }
            other => return Err(unknown(other)),
        }
    }
    Ok(Action::Serve { port, open })
}

fn read_build(mut arguments: impl Iterator<Item = String>) -> Result<Action, String> {
    let mut out = None;
    while let Some(argument) = arguments.next() {
        match argument.as_str() {
            "--help" | "-h" => return Ok(Action::Help),
            "--out" => out = Some(arguments.next().ok_or("--out needs a folder")?.into()),
            other => return Err(unknown(other)),
        }
    }
    Ok(Action::Build { out })
}

fn unknown(argument: &str) -> String {
    format!("unknown argument `{argument}`\n\n{HELP}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_line(line: &str) -> Result<Action, String> {
        read(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn the_documented_lines_are_understood() {
        assert_eq!(read_line(""), Ok(Action::Serve { port: 8080, open: false }));
        assert_eq!(read_line("--open --port 9000"), Ok(Action::Serve { port: 9000, open: true }));
        assert_eq!(read_line("build --out site"), Ok(Action::Build { out: Some("site".into()) }));
        assert_eq!(read_line("build"), Ok(Action::Build { out: None }));
        assert_eq!(read_line("--help"), Ok(Action::Help));
    }

    #[test]
    fn mistakes_are_named() {
        assert!(read_line("--port 99999").unwrap_err().contains("65535"));
        assert!(read_line("--port").unwrap_err().contains("65535"));
        assert!(read_line("build --out").unwrap_err().contains("folder"));
        assert!(read_line("bulid").unwrap_err().contains("`bulid`"));
    }
}
