//! The smallest change within limits.

/// The smallest change, and what each limit costs.
#[derive(Debug, Clone, PartialEq)]
pub struct LeastChange {
    /// (unknown)
    pub changes: Vec<f64>,
    /// (limit): its multiplier, zero for one that doesn't bind.
    pub prices: Vec<f64>,
}

/// A sweep that changes no multiplier by more than this share of the largest ends it.
const SETTLED: f64 = 1e-12;
const MOST_SWEEPS: usize = 50_000;

/// The x of least Σ x² for which every row of `limits`, (coefficients, most), holds: coefficients · x ≤ most.
///
/// Hildreth's method on the dual (1957, Naval Research Logistics Quarterly 4, 79; from memory): each multiplier in turn is set to what makes its
/// own limit hold, and to no less than zero, until nothing moves. There must be an x for which all hold; without one the multipliers grow
/// without end, and what is returned after the last sweep breaks some. Cost: each sweep twice the number of coefficients.
#[must_use]
pub fn least_change(unknowns: usize, limits: &[(Vec<f64>, f64)]) -> LeastChange {
    let squares: Vec<f64> = limits.iter().map(|(row, _)| row.iter().map(|own| own * own).sum()).collect();
    let mut changes = vec![0.0; unknowns];
    let mut prices = vec![0.0; limits.len()];
    for _ in 0..MOST_SWEEPS {
        let (mut moved, mut largest) = (0.0_f64, f64::MIN_POSITIVE);
        for (((row, most), square), price) in limits.iter().zip(&squares).zip(&mut prices) {
            if *square <= 0.0 {
                continue;
            }
            let over = row.iter().zip(&changes).map(|(own, x)| own * x).sum::<f64>() - most;
            let next = (*price + over / square).max(0.0);
            let step = next - *price;
            if step != 0.0 {
                changes.iter_mut().zip(row).for_each(|(x, own)| *x -= step * own);
                *price = next;
                moved = moved.max(step.abs());
            }
            largest = largest.max(next);
        }
        if moved <= SETTLED * largest {
            break;
        }
    }
    LeastChange { changes, prices }
}
