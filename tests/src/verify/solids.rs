//! The carved top as a shell against the same wood as solids, computed by an independent program.
//!
//! CalculiX gets the wood as quadratic wedges, two layers of them through the thickness, with every node laid on the
//! design's own surfaces and normals. It shares with the shell the design's geometry and the wood's nine constants, and
//! neither element, mass, reduction to a shell nor eigenvalue search.

mod barred;
mod bricks;
mod calculix;
mod case;
mod deck;
mod matching;
mod wedges;

use anyhow::{Context, Result};
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::{Certainty, Sensitivity, certainty, match_modes};
use bombatura_core::top::Held;
use bombatura_core::wood::{Scatter, WoodConstant};

use self::calculix::{Calculix, SolidModes};
use self::case::{Case, ShellSolution};
use self::wedges::Wedges;
use super::{Row, Target};

/// Elastic modes compared.
const MODES: usize = 12;

/// Layers of wedges through the thickness. One layer leaves frequencies 0.1 to 0.25 % high: its linear shear can't follow
/// the parabola.
const LAYERS: usize = 2;

/// Largest accepted error, per cent: what a reader is promised of figures that follow a dragged handle (preview), of those
/// shown (standard) and of those checked (fine).
const PREVIEW_PCT: f64 = 2.5;
const STANDARD_PCT: f64 = 1.0;
const FINE_PCT: f64 = 0.4;

/// At least this share of the figures must lie within what they state of themselves, per cent.
const COVERED_PCT: f64 = 95.0;

/// The checks of this subject: the figures that are shown. That is what standard and fine mesh foretell together, which is held against
/// both promises; while a handle moves, the preview's as they set it right before. The preview's alone are held against the same promise,
/// for whoever has nothing to set them right by.
pub(super) fn rows() -> Result<Vec<Row>> {
    let calculix = Calculix::find()?;
    let mut rows = barred::rows(&calculix)?;
    let mut within = Vec::new();
    for case in Case::all()? {
        let solids = calculix.modes(&case, &Wedges::new(&case, case.wedges(), LAYERS)?, MODES)?;
        let [preview, standard, fine] = case.shells(MODES)?;
        let mut add = |label: &str, tolerance_pct: f64, got: &[f64], nodes: usize, other_nodes: usize| {
            for (mode, (&value, &got)) in solids.frequencies_hz.iter().zip(got).enumerate() {
                let target = Target {
                    id: format!("SOLID-{}-{label}:{}", case.name, mode + 1),
                    source: format!("CalculiX {}, C3D15, two layers (computed here)", calculix.version()),
                    source_kind: "computed".into(),
                    value,
                    tolerance_pct,
                };
                rows.push(Row { other_nodes, ..Row::judge(&target, got, nodes) });
            }
        };
        let own_hz = figures(&solids, &preview, |mode| Some(preview.modes.frequencies_hz[mode]));
        add("preview-alone", PREVIEW_PCT, &own_hz, preview.modes.nodes, 0);
        let set_right = set_right_hz(&preview, &case.earlier()?)?;
        let set_right_hz = figures(&solids, &preview, |mode| set_right[mode]);
        add("preview", PREVIEW_PCT, &set_right_hz, preview.modes.nodes, fine.modes.nodes);
        for (label, tolerance_pct, own, other) in
            [("standard", STANDARD_PCT, &standard, &fine), ("fine", FINE_PCT, &fine, &standard)]
        {
            let certainties = judged(own, other);
            let best_hz = figures(&solids, own, |mode| certainties[mode].converged_hz);
            add(label, tolerance_pct, &best_hz, own.modes.nodes, other.modes.nodes);
            let open_hz = figures(&solids, own, |mode| certainties[mode].numerical_hz());
            let solid_hz = solids.frequencies_hz.iter();
            within.extend(solid_hz.zip(best_hz).zip(open_hz).map(|((solid, best), open)| (best - solid).abs() <= open));
        }
    }
    let covered = within.iter().filter(|within| **within).count();
    let target = Target {
        id: "SOLID-within-what-is-stated".into(),
        source: format!("CalculiX {}, C3D15, two layers (computed here): % of the figures", calculix.version()),
        source_kind: "computed".into(),
        value: 100.0,
        tolerance_pct: 100.0 - COVERED_PCT,
    };
    rows.push(Row::judge(&target, 100.0 * covered as f64 / within.len() as f64, 0));
    Ok(rows)
}

/// (mode of the solids): `figure` of the shell's mode of that shape; not a number where there is none, so that the check fails.
fn figures(solids: &SolidModes, shell: &ShellSolution, figure: impl Fn(usize) -> Option<f64>) -> Vec<f64> {
    matching::partners(solids, shell).into_iter().map(|mode| mode.and_then(&figure).unwrap_or(f64::NAN)).collect()
}

/// (mode of `preview`): its frequency by what better meshes made of the same mode of the `earlier` top, as the page does it; none for a
/// mode that was not there.
fn set_right_hz(preview: &ShellSolution, earlier: &Case) -> Result<Vec<Option<f64>>> {
    let [quick, standard, fine] = earlier.shells(MODES)?;
    let judged = judged(&standard, &fine);
    let before = match_modes(preview.as_pair(), quick.as_pair());
    let better = match_modes(quick.as_pair(), standard.as_pair());
    let frequencies = preview.modes.frequencies_hz.iter().zip(before);
    let set_right = frequencies.map(|(hz, before)| {
        let before = before?;
        Some(hz * judged[better[before]?].converged_hz? / quick.modes.frequencies_hz[before])
    });
    Ok(set_right.collect())
}

/// (mode of `own`): how sure it is by the mesh; the wood is the same as the solids'.
fn judged(own: &ShellSolution, other: &ShellSolution) -> Vec<Certainty> {
    const STILL: Sensitivity =
        Sensitivity { by_constant: [0.0; WoodConstant::COUNT], by_density: 0.0, by_thickness: 0.0 };
    let sensitivities = vec![STILL; own.modes.count()];
    certainty(own.as_pair(), other.as_pair(), &sensitivities, &Scatter::CLEAR_WOOD)
}

/// How long CalculiX takes for the lowest `modes` of the demonstration top on a hinged rim, s, as one layer of wedges on the
/// standard mesh, and their number.
///
/// # Errors
/// When CalculiX is missing or fails.
pub(crate) fn one_layer_of_solids_s(modes: usize) -> Result<(f64, usize)> {
    let cases = Case::all()?;
    let case = cases.iter().find(|case| case.held == Held::Hinged).context("no case has a hinged rim")?;
    let wedges = Wedges::new(case, MeshSize::Standard, 1)?;
    let solved = Calculix::find()?.modes(case, &wedges, modes)?;
    Ok((solved.wall_s, wedges.elements.len()))
}
