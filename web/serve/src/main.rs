//! Builds the page and serves it: `cargo run --release`.

mod arguments;
mod open;

use std::process::ExitCode;

use arguments::Action;
use bombatura_serve::{Error, Workspace, build, serve::Server};

fn main() -> ExitCode {
    match arguments::read(std::env::args().skip(1)) {
        Ok(action) => match run(action) {
            Ok(()) => ExitCode::SUCCESS,
            Err(error) => fail(&error.to_string()),
        },
        Err(mistake) => fail(&mistake),
    }
}

fn fail(message: &str) -> ExitCode {
    eprintln!("error: {message}");
    ExitCode::FAILURE
}

fn run(action: Action) -> Result<(), Error> {
    match action {
        Action::Help => print!("{}", arguments::HELP),
        Action::Build { out } => {
            let workspace = Workspace::find()?;
            let out = out.unwrap_or_else(|| workspace.site());
            let report = build::build_site(&workspace, &out)?;
            print!("{report}");
            println!("The site is in {}", out.display());
        }
        Action::Serve { port, open } => {
            let workspace = Workspace::find()?;
            let site = workspace.site();
            build::build_site(&workspace, &site)?;
            let server = Server::start(&site, port)?;
            println!("Bombatura is at {} (Ctrl+C ends it)", server.url());
            if open {
                open::open(&server.url());
            }
            server.wait();
        }
    }
    Ok(())
}
