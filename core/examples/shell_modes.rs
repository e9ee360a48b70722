//! Modes of any triangulated shell, as CSV (mode, Hz, residual).
//!
//! `cargo run --release -p bombatura-core --example shell_modes -- NODES.csv TRIANGLES.csv MATERIAL.json [COUNT]`
//!
//! The files are described in `shell_case/mod.rs`; COUNT is the number of elastic modes, 20 when left out.

use std::error::Error;
use std::path::Path;
use std::process::ExitCode;

use bombatura_core::modes::{ModesRequest, solve_modes};

mod shell_case;

const USAGE: &str = "usage: shell_modes NODES.csv TRIANGLES.csv MATERIAL.json [COUNT]";

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("shell_modes: {error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let ([nodes, triangles, material] | [nodes, triangles, material, _]) = arguments.as_slice() else {
        return Err(USAGE.into());
    };
    let count = arguments.get(3).map_or(Ok(20), |count| count.parse()).map_err(|error| format!("COUNT: {error}"))?;
    let case = shell_case::read(Path::new(nodes), Path::new(triangles), Path::new(material))?;
    let request = ModesRequest::lowest(count);
    let modes = solve_modes(&case.geometry, &case.supports, &case.equations, &case.model, &case.symbolic, &request)?;
    println!("mode,hz,residual");
    for (index, (hz, residual)) in modes.frequencies_hz.iter().zip(&modes.residuals).enumerate() {
        println!("{},{hz:.6},{residual:.2e}", index + 1);
    }
    for (index, hz) in modes.rigid_hz.iter().enumerate() {
        eprintln!("rigid motion {}: {hz:.2e} Hz", index + 1);
    }
    Ok(())
}
