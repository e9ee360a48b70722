//! Numbers in order.
//!
//! One sort for all that is sorted by a number: the standard library's sort is compiled anew for each kind of item, 2 kB of the
//! first load each time. Lists of places are short, and a heap sorts them in a tenth of the code.

use std::collections::BinaryHeap;

/// The places of `values` from the lowest to the highest; equal ones stay in their order.
pub(crate) fn ascending(values: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
    order
}

/// The same places, ascending and each once.
pub(crate) fn distinct(places: Vec<u32>) -> Vec<u32> {
    let mut sorted = BinaryHeap::from(places).into_sorted_vec();
    sorted.dedup();
    sorted
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_values_stay_in_their_order() {
        assert_eq!(ascending(&[2.0, -1.0, 2.0, -0.0, 0.0, f64::INFINITY]), [1, 3, 4, 0, 2, 5]);
    }

    #[test]
    fn places_that_are_named_twice_stand_once() {
        assert_eq!(distinct(vec![3, 1, 3, u32::MAX, 0, 1]), [0, 1, 3, u32::MAX]);
    }
}
