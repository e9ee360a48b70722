//! Running CalculiX and reading its answer.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;

use anyhow::{Context, Result, anyhow, bail, ensure};
use bombatura_core::top::Held;

use super::case::Case;
use super::deck;
use super::wedges::Wedges;

const PROGRAM: &str = "ccx";

/// CalculiX, found on the search path.
pub(super) struct Calculix {
    version: String,
}

/// The elastic modes of a top of solids.
pub(super) struct SolidModes {
    /// (mode) Hz.
    pub(super) frequencies_hz: Vec<f64>,
    /// (mode, node, xyz): motion in the middle of the wood, to no particular scale.
    pub(super) shapes: Vec<Vec<[f64; 3]>>,
    /// (node, xy) in plan, mm.
    pub(super) points_mm: Vec<[f64; 2]>,
    /// How long the program ran, s.
    pub(super) wall_s: f64,
}

impl Calculix {
    /// Looks for the program.
    ///
    /// # Errors
    /// When it isn't there, with what to install.
    pub(super) fn find() -> Result<Calculix> {
        let output = Command::new(PROGRAM).arg("-v").stdin(Stdio::null()).output().map_err(|error| {
            let remedy = "install CalculiX (Debian package calculix-ccx), with ccx on the search path";
            match error.kind() {
                ErrorKind::NotFound => anyhow!("the program ccx is missing: {remedy}"),
                _ => anyhow!("ccx can't be started ({error}): {remedy}"),
            }
        })?;
        let told = String::from_utf8_lossy(&output.stdout).into_owned();
        let version = told.split_whitespace().last().with_context(|| format!("`ccx -v` said `{told}`, no version"))?;
        Ok(Calculix { version: version.to_owned() })
    }

    pub(super) fn version(&self) -> &str {
        &self.version
    }

    /// The lowest `wanted` elastic modes of `case` as `wedges`.
    pub(super) fn modes(&self, case: &Case, wedges: &Wedges, wanted: usize) -> Result<SolidModes> {
        let rigid = match case.held {
            Held::Nothing => 6,
            Held::Hinged | Held::Clamped => 0,
        };
        let Answer { text, wall_s } = answer(case.name, &deck::text(wedges, &case.wood, rigid + wanted))?;
        let frequencies_hz = elastic_hz(case.name, &text, rigid, wanted)?;
        let shapes = shapes(&text, wedges)?;
        ensure!(shapes.len() >= rigid + wanted, "{}: CalculiX printed {} shapes", case.name, shapes.len());
        let shapes = shapes[rigid..rigid + wanted].to_vec();
        Ok(SolidModes { frequencies_hz, shapes, points_mm: wedges.points_mm.clone(), wall_s })
    }

    /// The lowest `wanted` frequencies above `rigid` motions of what the `deck` describes, Hz.
    pub(super) fn elastic_hz(&self, name: &str, deck: &str, rigid: usize, wanted: usize) -> Result<Vec<f64>> {
        elastic_hz(name, &answer(name, deck)?.text, rigid, wanted)
    }
}

/// What the program printed into its result file.
struct Answer {
    text: String,
    wall_s: f64,
}

fn answer(name: &str, deck: &str) -> Result<Answer> {
    let folder = tempfile::tempdir().context("making a folder for CalculiX")?;
    fs::write(folder.path().join("top.inp"), deck)?;
    let begun = Instant::now();
    run(folder.path()).with_context(|| format!("CalculiX on {name}"))?;
    let wall_s = begun.elapsed().as_secs_f64();
    let text = fs::read_to_string(folder.path().join("top.dat")).context("CalculiX left no top.dat")?;
    Ok(Answer { text, wall_s })
}

fn elastic_hz(name: &str, answer: &str, rigid: usize, wanted: usize) -> Result<Vec<f64>> {
    let all_hz = frequencies_hz(answer)?;
    ensure!(all_hz.len() >= rigid + wanted, "{name}: CalculiX found {} modes", all_hz.len());
    let elastic_hz = all_hz[rigid..rigid + wanted].to_vec();
    // A missed or invented mode would shift the list: rigid motions must be far below the first elastic mode.
    if let Some(rigid_hz) = all_hz[..rigid].iter().find(|hz| **hz > 0.05 * elastic_hz[0]) {
        bail!("{name}: CalculiX gives a rigid motion {rigid_hz} Hz");
    }
    Ok(elastic_hz)
}

fn run(folder: &Path) -> Result<()> {
    let output = Command::new(PROGRAM)
        .args(["-i", "top"])
        .current_dir(folder)
        // Two threads, as many as the smallest machine that runs the checks has; more change no digit that counts.
        .env("OMP_NUM_THREADS", "2")
        .stdin(Stdio::null())
        .output()?;
    let told = String::from_utf8_lossy(&output.stdout);
    if !output.status.success() || told.contains("*ERROR") {
        let tail: Vec<&str> = told.lines().rev().take(12).collect();
        bail!("failed ({}): {}", output.status, tail.into_iter().rev().collect::<Vec<_>>().join("\n"));
    }
    Ok(())
}

/// The table `MODE NO, EIGENVALUE, FREQUENCY (RAD/TIME, CYCLES/TIME, IMAGINARY PART)`. A rigid motion's eigenvalue can be
/// slightly negative by rounding; its frequency then stands in the imaginary column.
fn frequencies_hz(answer: &str) -> Result<Vec<f64>> {
    let mut found = Vec::new();
    let table = answer.lines().skip_while(|line| !line.contains("E I G E N V A L U E   O U T P U T")).skip(1);
    for line in table.take_while(|line| !line.contains("P A R T I C I P A T I O N")) {
        let fields: Vec<&str> = line.split_whitespace().collect();
        let [mode, _, _, hz, _] = fields[..] else { continue };
        if mode.parse() == Ok(found.len() + 1) {
            found.push(hz.parse().with_context(|| format!("`{hz}` is no frequency"))?);
        }
    }
    ensure!(!found.is_empty(), "CalculiX's answer holds no table of eigenvalues");
    Ok(found)
}

/// (mode, node, xyz): the printed displacements of every mode, in the order of the wedges' middle nodes.
fn shapes(answer: &str, wedges: &Wedges) -> Result<Vec<Vec<[f64; 3]>>> {
    let mut place = vec![None; wedges.nodes_mm.len() + 1];
    for (i, node) in wedges.middle.iter().enumerate() {
        place[node + 1] = Some(i);
    }
    let mut shapes: Vec<Vec<[f64; 3]>> = Vec::new();
    for line in answer.lines() {
        if line.contains("displacements") && line.contains(deck::PRINTED) {
            shapes.push(vec![[f64::NAN; 3]; wedges.middle.len()]);
            continue;
        }
        let Some(shape) = shapes.last_mut() else { continue };
        let fields: Vec<&str> = line.split_whitespace().collect();
        let [node, x, y, z] = fields[..] else { continue };
        let Some(Some(at)) = node.parse().ok().and_then(|node: usize| place.get(node)) else { continue };
        for (value, field) in shape[*at].iter_mut().zip([x, y, z]) {
            *value = number(field).with_context(|| format!("`{field}` is no displacement"))?;
        }
    }
    match shapes.iter().position(|shape| shape.iter().flatten().any(|value| value.is_nan())) {
        Some(mode) => bail!("CalculiX did not print the whole shape of mode {}", mode + 1),
        None => Ok(shapes),
    }
}

/// A number as Fortran writes it: three digits of an exponent push its letter out, as in -4.171034-130.
fn number(field: &str) -> Option<f64> {
    let exponent = || field.rfind(['-', '+']).filter(|&at| at > 0);
    field.parse().ok().or_else(|| exponent().and_then(|at| format!("{}e{}", &field[..at], &field[at..]).parse().ok()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two lines of the table as CalculiX 2.20 prints it.
    #[test]
    fn numbers_are_read_as_fortran_writes_them() {
        assert_eq!(super::number("1.250000E-01"), Some(0.125));
        assert_eq!(super::number("-4.171034-130"), Some(-4.171034e-130));
        assert_eq!(["x", "-", ""].map(super::number), [None; 3]);
    }

    #[test]
    fn the_table_of_eigenvalues_is_read() {
        let answer = "\n     E I G E N V A L U E   O U T P U T\n\n MODE NO    EIGENVALUE                       FREQUENCY   \n\
                      \n      1  -0.1000000E-03   0.0000000E+00   0.0000000E+00   0.1000000E-01\n\
                      \n      2   0.3947842E+06   0.6283185E+03   0.1000000E+03   0.0000000E+00\n\
                      \n     P A R T I C I P A T I O N   F A C T O R S\n\n      3   1.  2.  3.  4.\n";
        assert_eq!(frequencies_hz(answer).unwrap(), [0.0, 100.0]);
        assert!(frequencies_hz("nothing").is_err());
    }
}
