//! One side of a shell whose sides mirror each other: it says all there is to know of both.

use super::equations::{ELEMENT_ENTRIES, Equations, HELD};
use crate::eigen::Symbolic;

/// Where the elements of the first side go in the half of a mirrored pencil.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OneSide {
    /// (triangle of the first side, entry of an element's lower triangle): the place among the half's values.
    pub(super) places: Vec<[u32; ELEMENT_ENTRIES]>,
    /// Entries of the half.
    pub(super) entries: usize,
}

impl OneSide {
    /// Of `equations` whose second half of triangles mirrors the first; none unless `symbolic` knows the half of their pattern.
    #[must_use]
    pub fn new(equations: &Equations, symbolic: &Symbolic) -> Option<Self> {
        let entries = symbolic.half()?.entries();
        let mut on_half = vec![HELD; equations.pattern.entries()];
        for (place, [own, _]) in (0..).zip(symbolic.half_entries()) {
            on_half[*own as usize] = place;
        }
        let moved = |place: u32| if place == HELD { HELD } else { on_half[place as usize] };
        let places = (0..equations.triangle_count() / 2).map(|triangle| equations.places(triangle).map(moved));
        Some(Self { places: places.collect(), entries })
    }
}
