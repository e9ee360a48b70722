//! A shell read from other people's files: nodes, triangles and material.
//!
//! - nodes CSV, header `x_mm,y_mm,z_mm,thickness_mm,fixed`; `fixed` holds any of the letters `x y z` (displacements held) and
//!   `a b c` (rotations about x, y, z held), or nothing;
//! - triangles CSV: three 0-based node numbers a row, with or without a header;
//! - material JSON, isotropic `{"e_gpa": 210, "nu": 0.3, "density_kg_m3": 7850}` or the nine constants with the grain along
//!   global y, R along x, T along z: `{"e_l_gpa": …, "e_r_gpa": …, "e_t_gpa": …, "g_lr_gpa": …, "g_lt_gpa": …,
//!   "g_rt_gpa": …, "nu_lr": …, "nu_lt": …, "nu_rt": …, "density_kg_m3": …}`; `density_kg_m3` may be left out for statics.

use std::error::Error;
use std::fs;
use std::path::Path;

use bombatura_core::eigen::Symbolic;
use bombatura_core::shell::{ElementOptions, Equations, ShellGeometry, ShellModel, Supports};
use bombatura_core::wood::{OrthotropicConstants, Wood};
use serde::Deserialize;
use serde::de::DeserializeOwned;

/// Everything needed to solve.
pub(crate) struct ShellCase {
    pub(crate) geometry: ShellGeometry,
    pub(crate) supports: Supports,
    pub(crate) equations: Equations,
    pub(crate) model: ShellModel,
    pub(crate) symbolic: Symbolic,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Node {
    x_mm: f64,
    y_mm: f64,
    z_mm: f64,
    thickness_mm: f64,
    #[serde(default)]
    fixed: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Isotropic {
    e_gpa: f64,
    nu: f64,
    #[serde(default = "unit_density")]
    density_kg_m3: f64,
}

#[derive(Deserialize)]
struct Orthotropic {
    #[serde(flatten)]
    constants: OrthotropicConstants,
    #[serde(default = "unit_density")]
    density_kg_m3: f64,
}

/// Statics don't ask for the density, but the mass matrix must exist.
fn unit_density() -> f64 {
    1.0
}

/// Reads the three files and assembles the shell.
pub(crate) fn read(nodes: &Path, triangles: &Path, material: &Path) -> Result<ShellCase, Box<dyn Error>> {
    let wood = read_material(material)?;
    let nodes: Vec<Node> = read_csv(nodes)?;
    let triangles = read_triangles(triangles)?;
    let places: Vec<_> = nodes.iter().map(|node| [node.x_mm, node.y_mm, node.z_mm]).collect();
    let thickness: Vec<_> = nodes.iter().map(|node| node.thickness_mm).collect();
    let geometry = ShellGeometry::new(&places, None, &thickness, &triangles)?;
    let held = nodes.iter().enumerate().map(|(row, node)| held(row, &node.fixed)).collect::<Result<_, _>>()?;
    let supports = Supports { held };
    let equations = Equations::new(&triangles, &supports)?;
    let model = ShellModel::assemble(&geometry, &wood, &equations, ElementOptions::default())?;
    let symbolic = Symbolic::new(&equations.pattern)?;
    Ok(ShellCase { geometry, supports, equations, model, symbolic })
}

/// Rows of a CSV file with a header.
pub(crate) fn read_csv<T: DeserializeOwned>(path: &Path) -> Result<Vec<T>, Box<dyn Error>> {
    let mut reader = csv::ReaderBuilder::new()
        .trim(csv::Trim::All)
        .from_path(path)
        .map_err(|error| format!("{}: {error}", path.display()))?;
    let rows = reader.deserialize().collect::<Result<Vec<T>, _>>();
    rows.map_err(|error| format!("{}: {error}", path.display()).into())
}

fn read_triangles(path: &Path) -> Result<Vec<[u32; 3]>, Box<dyn Error>> {
    let in_file = |message: String| format!("{}: {message}", path.display());
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .trim(csv::Trim::All)
        .from_path(path)
        .map_err(|error| in_file(error.to_string()))?;
    let mut triangles = Vec::new();
    for (row, record) in reader.records().enumerate() {
        let record = record.map_err(|error| in_file(error.to_string()))?;
        match record.deserialize(None) {
            Ok(triangle) => triangles.push(triangle),
            // A first row of words is the header.
            Err(_) if row == 0 && record.iter().all(|word| word.parse::<f64>().is_err()) => {}
            Err(error) => return Err(in_file(format!("row {}: {error}", row + 1)).into()),
        }
    }
    Ok(triangles)
}

fn read_material(path: &Path) -> Result<Wood, Box<dyn Error>> {
    let in_file = |error: &dyn Error| format!("{}: {error}", path.display());
    let text = fs::read_to_string(path).map_err(|error| in_file(&error))?;
    let value: serde_json::Value = serde_json::from_str(&text).map_err(|error| in_file(&error))?;
    let (constants, density_kg_m3) = if value.get("e_gpa").is_some() {
        let m: Isotropic = serde_json::from_value(value).map_err(|error| in_file(&error))?;
        (OrthotropicConstants::isotropic(m.e_gpa, m.nu), m.density_kg_m3)
    } else {
        let m: Orthotropic = serde_json::from_value(value).map_err(|error| in_file(&error))?;
        (m.constants, m.density_kg_m3)
    };
    constants.check()?;
    Ok(Wood { constants, density_kg_m3, ring_angle_deg: 0.0 })
}

fn held(row: usize, letters: &str) -> Result<[bool; 6], String> {
    let mut held = [false; 6];
    for letter in letters.chars() {
        let dof = "xyzabc".find(letter).ok_or_else(|| {
            format!(
                "node {row} is fixed along \"{letter}\"; use any of the letters x y z (displacements) a b c (rotations)"
            )
        })?;
        held[dof] = true;
    }
    Ok(held)
}
