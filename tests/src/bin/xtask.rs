//! The project's chores: `cargo xtask test`, and those that it is made of.

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result, bail};
use bombatura_serve::Workspace;
use bombatura_tests::chores::{licences, page_sources, test};
use bombatura_tests::outcome::{Outcome, all_passed, closing};
use bombatura_tests::{bench, lessons, shots, studies, verify};

const HELP: &str = "\
    cargo xtask test               everything below but shots and bench, and cargo's own tests
    cargo xtask browser [NAME]     the page in Chromium, on WebGPU and on WebGL 2; only checks whose name holds NAME
    cargo xtask lint               types, style and unit tests of the page's scripts; licences
    cargo xtask verify [--json]    our figures beside published ones
    cargo xtask studies            what makers say of holes and wings, beside what the program computes
    cargo xtask lessons [FILE...]  whether the model shows what the lessons say: ours, or those named
    cargo xtask bench [--json]     what a user waits for
    cargo xtask shots DIR          pictures of the page's main states
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match run(&arguments) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

/// Whether what was asked for went well.
fn run(arguments: &[&str]) -> Result<bool> {
    let workspace = Workspace::find()?;
    match arguments {
        ["test"] => tell(&test::everything(&workspace)?),
        ["browser"] => tell(&test::in_browsers(&workspace, None)?),
        ["browser", name] => tell(&test::in_browsers(&workspace, Some(name))?),
        ["lint"] => {
            let mut outcomes = page_sources::check(&workspace)?;
            outcomes.push(Outcome::of("licences", || licences::check(&workspace)));
            tell(&outcomes)
        }
        ["verify"] => {
            let rows = verify::rows()?;
            print!("{}", verify::table(&rows));
            Ok(verify::all_pass(&rows))
        }
        ["verify", "--json"] => {
            let rows = verify::rows()?;
            println!("{}", verify::json(&rows)?);
            Ok(verify::all_pass(&rows))
        }
        ["studies"] => {
            print!("{}", studies::table(&studies::all()?));
            Ok(true)
        }
        ["lessons"] => tell(&lessons::outcomes(&workspace)?),
        ["lessons", files @ ..] => {
            let mut all_shown = true;
            for file in files {
                match lessons::show(&PathBuf::from(file)) {
                    Ok(shown) => {
                        println!("{}", shown.line());
                        all_shown &= shown.outcome.shown;
                    }
                    Err(error) => {
                        println!("{error:#}");
                        all_shown = false;
                    }
                }
            }
            Ok(all_shown)
        }
        ["bench"] => {
            print!("{}", bench::run(&workspace)?.table());
            Ok(true)
        }
        ["bench", "--json"] => {
            println!("{}", bench::run(&workspace)?.json()?);
            Ok(true)
        }
        ["shots", folder] => {
            shots::take(&workspace, &PathBuf::from(folder)).context("taking pictures")?;
            Ok(true)
        }
        [] | ["--help" | "-h"] => {
            print!("{HELP}");
            Ok(true)
        }
        other => bail!("unknown chore `{}`\n\n{HELP}", other.join(" ")),
    }
}

fn tell(outcomes: &[Outcome]) -> Result<bool> {
    print!("{}", closing(outcomes));
    Ok(all_passed(outcomes))
}
