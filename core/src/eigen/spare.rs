//! Large pieces of memory that a search is done with, for the next one on the same thread.
//!
//! Natively an operating system clears every page that it gives, and takes pages back that a process frees: a seventh of the time of a search
//! went there. In wasm nothing is ever given back, but small things move in where a factor was, until the next one doesn't fit there: the memory
//! grew by one every thousand steps of a dragged handle. There the last piece is kept, which is a factor.

use std::cell::RefCell;

/// Pieces kept: both halves of a basis and, last, the factor.
const PIECES: usize = if cfg!(target_arch = "wasm32") { 1 } else { 3 };

/// A piece so many times as large as is asked for stays for whom it fits.
const TOO_LARGE: usize = 2;

thread_local! {
    /// The last ones freed, the newest at the end.
    static PIECES_KEPT: RefCell<Vec<Vec<f64>>> = const { RefCell::new(Vec::new()) };
}

/// An empty vector with room for so many numbers.
pub(super) fn take(capacity: usize) -> Vec<f64> {
    let fits = |piece: &Vec<f64>| (capacity..=TOO_LARGE * capacity).contains(&piece.capacity());
    let kept = PIECES_KEPT.try_with(|kept| {
        let mut kept = kept.borrow_mut();
        let found = kept.iter().position(fits)?;
        Some(kept.remove(found))
    });
    let mut piece = kept.ok().flatten().unwrap_or_else(|| Vec::with_capacity(capacity));
    piece.clear();
    piece
}

/// Keeps a piece for the next [`take`].
pub(super) fn give(piece: Vec<f64>) {
    // A thread that ends has no next one.
    let _ = PIECES_KEPT.try_with(|kept| {
        let mut kept = kept.borrow_mut();
        if kept.len() == PIECES {
            kept.remove(0);
        }
        kept.push(piece);
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A kept piece is told by its capacity, which a new one has just as asked for.
    fn give_one_of(capacity: usize) {
        let mut piece = Vec::with_capacity(capacity);
        piece.push(1.0);
        give(piece);
    }

    #[test]
    fn a_piece_comes_back_empty_to_whom_it_fits() {
        give_one_of(1013);
        assert_eq!(take(1014).capacity(), 1014, "too small");
        assert_eq!(take(500).capacity(), 500, "too large");
        let again = take(1000);
        assert_eq!((again.capacity(), again.len()), (1013, 0));
        assert_eq!(take(1000).capacity(), 1000, "given twice");
    }

    #[test]
    fn only_the_last_pieces_are_kept() {
        let sizes = [513, 5_013, 50_013, 500_013];
        sizes.into_iter().for_each(give_one_of);
        assert_eq!(sizes.map(|size| take(size - 13).capacity()), [500, 5_013, 50_013, 500_013]);
    }
}
