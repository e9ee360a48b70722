//! A figure's value, and how sure it and its changes are.

use super::figure::Scale;

/// One figure of one design.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// In the figure's unit.
    pub value: f64,
    /// ± in the same unit: one standard deviation of what boards of the wood differ by, and what the mesh leaves open; zero for what
    /// the drawing alone decides.
    pub sure_within: f64,
    /// What one standard deviation of each figure of the wood adds to it.
    wood: Vec<f64>,
    /// What the mesh adds to it, as two meshes foretell.
    mesh: f64,
    /// Whether `wood` says which way each figure of the wood moves it.
    signed: bool,
}

impl Reading {
    /// What the drawing alone decides.
    pub(super) fn drawn(value: f64) -> Self {
        Self { value, sure_within: 0.0, wood: Vec::new(), mesh: 0.0, signed: true }
    }

    /// `wood`: what one standard deviation of each figure of the wood adds; `mesh`: what a finer mesh adds, and what is left open.
    pub(super) fn new(value: f64, wood: Vec<f64>, [mesh, mesh_within]: [f64; 2]) -> Self {
        let squares: f64 = wood.iter().map(|part| part * part).sum();
        Self { value, sure_within: squares.sqrt().hypot(mesh_within), wood, mesh, signed: true }
    }

    /// Of which it is known how far the wood moves it, and not which way: a change of it is then taken to be as unsure as both together.
    pub(super) fn scattered(value: f64, sure_within: f64) -> Self {
        Self { value, sure_within, wood: vec![sure_within], mesh: 0.0, signed: false }
    }

    /// How it changes to `after`, and how sure that is; `same_board`: what the wood's scatter adds to both is the same wood's doing.
    pub(super) fn change(&self, after: &Self, scale: Scale, same_board: bool) -> [f64; 2] {
        // By how much the change grows with either value.
        let (change, by_before, by_after) = match scale {
            Scale::Difference => (after.value - self.value, -1.0, 1.0),
            Scale::Ratio => {
                let ratio = after.value / self.value;
                (100.0 * (ratio - 1.0), -100.0 * ratio / self.value, 100.0 / self.value)
            }
        };
        let together = same_board && self.signed && after.signed && self.wood.len() == after.wood.len();
        let wood: f64 = if together {
            let both = self.wood.iter().zip(&after.wood);
            both.map(|(before, after)| (before * by_before + after * by_after).powi(2)).sum()
        } else {
            let own = |parts: &[f64], by: f64| parts.iter().map(|part| (part * by).powi(2)).sum::<f64>();
            own(&self.wood, by_before) + own(&after.wood, by_after)
        };
        [change, wood.sqrt().hypot(self.mesh * by_before + after.mesh * by_after)]
    }
}
