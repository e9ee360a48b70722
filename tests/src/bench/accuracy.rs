//! How far quick figures lie from those of the fine mesh.

use anyhow::{Context, Result};
use bombatura_core::design::Design;
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::top::{Stages, kin};

use super::Row;

const MODES: usize = 12;

/// What the handle has done since the standard mesh was last worked out.
const MOVED: &str = "arch raised by 1 mm since the last standard figures";

pub(super) fn rows() -> Result<Vec<Row>> {
    let mut stages = Stages::new(Design::demo());
    // As the page does: the ratio of each mode's standard figure to its quick one, known by its shape.
    let quick = stages.follow(MeshSize::Preview, MODES)?.clone();
    let thorough = stages.modes(MeshSize::Standard, &ModesRequest::lowest(26))?.frequencies_hz.clone();
    let partners = kin(&stages.signatures(MeshSize::Preview, true), &stages.signatures(MeshSize::Standard, false));
    let ratios: Vec<(u32, f64)> = partners
        .iter()
        .enumerate()
        .filter_map(|(mode, partner)| {
            Some((quick.identities[mode], thorough[(*partner)?] / quick.modes.frequencies_hz[mode]))
        })
        .collect();

    // And what judging, with the fine mesh, made of each standard figure.
    let standard_then = stages.signatures(MeshSize::Standard, false);
    let judged: Vec<Option<f64>> =
        converged_hz(&mut stages)?.iter().zip(&thorough).map(|(judged, hz)| Some((*judged)? / hz)).collect();

    let mut design = Design::demo();
    design.arching.apex_height_mm += 1.0;
    stages.set_design(design)?;
    let fine = stages.modes(MeshSize::Fine, &ModesRequest::lowest(26))?.frequencies_hz.clone();
    let fine_signatures = stages.signatures(MeshSize::Fine, false);
    let worst = |own: &[f32], figures_hz: &[f64]| -> Result<f64> {
        let partners = kin(own, &fine_signatures);
        let errors =
            figures_hz.iter().zip(partners).filter_map(|(own, partner)| Some((own / fine[partner?] - 1.0).abs()));
        errors.reduce(f64::max).map(|worst| 100.0 * worst).context("no mode has its like on the fine mesh")
    };

    let moved = stages.follow(MeshSize::Preview, MODES)?.clone();
    let corrected: Vec<f64> = moved
        .identities
        .iter()
        .zip(&moved.modes.frequencies_hz)
        .map(|(identity, hz)| hz * ratios.iter().find(|(known, _)| known == identity).map_or(1.0, |(_, ratio)| *ratio))
        .collect();
    let preview = worst(&stages.signatures(MeshSize::Preview, true), &corrected)?;
    let standard = stages.modes(MeshSize::Standard, &ModesRequest::lowest(26))?.frequencies_hz.clone();
    let signatures = stages.signatures(MeshSize::Standard, false);
    let bare = worst(&signatures, &standard[..MODES])?;
    let then = kin(&signatures, &standard_then);
    let foreseen = then.iter().zip(&standard).map(|(then, hz)| Some(hz * judged[(*then)?]?));
    let now = converged_hz(&mut stages)?;
    let errors = foreseen.zip(now).take(MODES).filter_map(|(foreseen, now)| Some((foreseen? / now? - 1.0).abs()));
    let foreseen = errors.reduce(f64::max).map(|worst| 100.0 * worst).context("no mode was judged")?;
    let row = |id, value, what: &str| Row {
        id,
        value,
        unit: "%",
        note: format!("{what}, worst of {MODES} modes, against the fine mesh; {MOVED}"),
    };
    Ok(vec![
        row("preview_error_pct", preview, "set right by the last standard figures"),
        Row {
            id: "standard_error_pct",
            value: foreseen,
            unit: "%",
            note: format!(
                "corrected as the fine mesh did before, worst of {MODES} modes, against what it makes of them now; {MOVED}; \
                 {bare:.1} % from the bare standard mesh to the bare fine one"
            ),
        },
    ])
}

/// (mode): the standard figures corrected for the mesh with the help of the fine one, as the page shows them once they are judged.
fn converged_hz(stages: &mut Stages) -> Result<Vec<Option<f64>>> {
    let sureties = stages.certainty(MeshSize::Standard, &ModesRequest::lowest(26))?;
    Ok(sureties.into_iter().map(|surety| surety.converged_hz).collect())
}
