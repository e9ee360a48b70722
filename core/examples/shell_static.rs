//! Displacements of any triangulated shell under point loads, as CSV (node, displacements in mm, rotations in degrees).
//!
//! `cargo run --release -p bombatura-core --example shell_static -- NODES.csv TRIANGLES.csv MATERIAL.json LOADS.csv`
//!
//! The first three files are described in `shell_case/mod.rs`; loads CSV has the header `node,fx_n,fy_n,fz_n`.

use std::error::Error;
use std::path::Path;
use std::process::ExitCode;

use bombatura_core::statics::{PointLoad, displacements};
use serde::Deserialize;

mod shell_case;

const USAGE: &str = "usage: shell_static NODES.csv TRIANGLES.csv MATERIAL.json LOADS.csv";

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Load {
    node: usize,
    fx_n: f64,
    fy_n: f64,
    fz_n: f64,
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("shell_static: {error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [nodes, triangles, material, loads] = arguments.as_slice() else {
        return Err(USAGE.into());
    };
    let case = shell_case::read(Path::new(nodes), Path::new(triangles), Path::new(material))?;
    let loads: Vec<Load> = shell_case::read_csv(Path::new(loads))?;
    let loads: Vec<_> =
        loads.iter().map(|load| PointLoad { node: load.node, force_n: [load.fx_n, load.fy_n, load.fz_n] }).collect();
    let moved = displacements(&case.geometry, &case.supports, &case.equations, &case.model, &case.symbolic, &loads)?;
    println!("node,ux_mm,uy_mm,uz_mm,rx_deg,ry_deg,rz_deg");
    for (node, dofs) in moved.iter().enumerate() {
        let [x, y, z] = [dofs[0], dofs[1], dofs[2]].map(|metres| metres * 1e3);
        let [a, b, c] = [dofs[3], dofs[4], dofs[5]].map(f64::to_degrees);
        println!("{node},{x:.9e},{y:.9e},{z:.9e},{a:.9e},{b:.9e},{c:.9e}");
    }
    Ok(())
}
