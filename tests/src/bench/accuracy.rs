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

    // And what judging made of each standard figure.
    let standard_then = stages.signatures(MeshSize::Standard, false);
    let converged: Vec<Option<f64>> = stages
        .certainty(MeshSize::Standard, &ModesRequest::lowest(26))?
        .iter()
        .zip(&thorough)
        .map(|(surety, hz)| Some(surety.converged_hz? / hz))
        .collect();

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
    let foreseen: Vec<f64> = kin(&signatures, &standard_then)
        .iter()
        .zip(&standard)
        .map(|(then, hz)| hz * then.and_then(|then| converged[then]).unwrap_or(1.0))
        .collect();
    let bare = worst(&signatures, &standard[..MODES])?;
    let standard = worst(&signatures, &foreseen[..MODES])?;
    let row = |id, value, what: &str| Row {
        id,
        value,
        unit: "%",
        note: format!("{what}, worst of {MODES} modes, against the fine mesh; {MOVED}"),
    };
    Ok(vec![
        row("preview_error_pct", preview, "set right by the last standard figures"),
        row("standard_error_pct", standard, &format!("corrected as judging did before ({bare:.1} % without)")),
    ])
}
