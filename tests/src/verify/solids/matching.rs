//! Which mode of the shell is which mode of the solids.

use super::calculix::SolidModes;
use super::case::ShellSolution;

/// Two shapes count as one mode from this modal assurance criterion on (Allemang & Brown 1982, Proc. 1st Int. Modal Anal.
/// Conf., 110): shapes of different modes stay far below, those of one mode read at the nearest node a little under 1.
const SAME_SHAPE: f64 = 0.8;

/// (mode of the solids): the shell's mode of the same shape; none where there is none.
pub(super) fn partners(solids: &SolidModes, shell: &ShellSolution) -> Vec<Option<usize>> {
    let nearest: Vec<usize> = solids.points_mm.iter().map(|&p| nearest(p, &shell.points_mm)).collect();
    let shapes: Vec<Vec<[f64; 3]>> = (0..shell.modes.count())
        .map(|mode| {
            let shape = shell.modes.shape(mode);
            nearest.iter().map(|&node| std::array::from_fn(|k| shape[6 * node + k])).collect()
        })
        .collect();
    let partner = |solid: &Vec<[f64; 3]>| {
        let likeness = shapes.iter().map(|shape| modal_assurance_criterion(solid, shape)).enumerate();
        likeness.max_by(|a, b| a.1.total_cmp(&b.1)).filter(|(_, mac)| *mac >= SAME_SHAPE).map(|(mode, _)| mode)
    };
    solids.shapes.iter().map(partner).collect()
}

fn nearest(p: [f64; 2], points: &[[f64; 2]]) -> usize {
    let distance = |q: &[f64; 2]| (p[0] - q[0]).hypot(p[1] - q[1]);
    let all = points.iter().map(distance).enumerate();
    all.min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(node, _)| node)
}

/// |aᵀb|² / (aᵀa bᵀb): 1 for the same shape at any scale.
fn modal_assurance_criterion(a: &[[f64; 3]], b: &[[f64; 3]]) -> f64 {
    let product = |a: &[[f64; 3]], b: &[[f64; 3]]| -> f64 {
        a.iter().flatten().zip(b.iter().flatten()).map(|(a, b)| a * b).sum()
    };
    product(a, b).powi(2) / (product(a, a) * product(b, b))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn likeness_knows_no_scale_and_sees_a_different_shape() {
        let a = [[1.0, 0.0, 2.0], [0.0, 1.0, -1.0]];
        let twice = a.map(|v| v.map(|x| -2.0 * x));
        assert!((modal_assurance_criterion(&a, &twice) - 1.0).abs() < 1e-12);
        assert!(modal_assurance_criterion(&a, &[[0.0, 1.0, 0.0], [1.0, 0.0, 0.0]]) < 1e-12);
    }
}
