//! The carved top as a shell against the same wood as solids, computed by an independent program.
//!
//! CalculiX gets the wood as quadratic wedges, two layers of them through the thickness, with every node laid on the
//! design's own surfaces and normals. It shares with the shell the design's geometry and the wood's nine constants, and
//! neither element, mass, reduction to a shell nor eigenvalue search.

mod calculix;
mod case;
mod deck;
mod matching;
mod wedges;

use anyhow::Result;
use bombatura_core::mesh::MeshSize;

use self::{calculix::Calculix, case::Case, matching::Matched, wedges::Wedges};
use super::{Row, Target};

/// Elastic modes compared.
const MODES: usize = 12;

/// The plan mesh under the wedges. On the demonstration top the next finer one, at six times the time, lowers the modes of
/// the wedges by 0.2 to 0.6 %.
const WEDGES: MeshSize = MeshSize::Preview;

/// Largest accepted error of each mesh size, per cent: what a reader is promised of the figures shown (standard), of
/// those checked (fine), and of those that follow a dragged handle (preview).
const TOLERANCES_PCT: [(MeshSize, &str, f64); 3] =
    [(MeshSize::Preview, "preview", 2.5), (MeshSize::Standard, "standard", 1.0), (MeshSize::Fine, "fine", 0.4)];

/// The checks of this subject.
pub(super) fn rows() -> Result<Vec<Row>> {
    let calculix = Calculix::find()?;
    let mut rows = Vec::new();
    for case in Case::all()? {
        let wedges = Wedges::new(&case, WEDGES)?;
        let solids = calculix.modes(&case, &wedges, MODES)?;
        for (size, label, tolerance_pct) in TOLERANCES_PCT {
            let shell = case.shell(size, MODES)?;
            let matched = Matched::new(&solids, &shell);
            for (mode, (&value, got)) in solids.frequencies_hz.iter().zip(matched.frequencies_hz).enumerate() {
                let target = Target {
                    id: format!("SOLID-{}-{label}:{}", case.name, mode + 1),
                    source: format!("CalculiX {}, C3D15, two layers (computed here)", calculix.version()),
                    source_kind: "computed".into(),
                    value,
                    tolerance_pct,
                };
                rows.push(Row::judge(&target, got, shell.points_mm.len()));
            }
        }
    }
    Ok(rows)
}
