//! Laying the two halves down as one closed line.

use super::construction::Half;
use crate::plan::Piece;

/// A smooth part of the outline between two corner points.
#[derive(Clone, Debug, PartialEq)]
pub struct Side {
    /// Tangent-continuous pieces, walked counter-clockwise.
    pub pieces: Vec<Piece>,
}

/// The eight sides, counter-clockwise: lower bout, treble lower tip, treble waist, treble upper tip, upper bout, bass
/// upper tip, bass waist, bass lower tip.
pub(super) fn sides(treble: &Half, bass: &Half) -> Vec<Side> {
    let other_side =
        |pieces: &[Piece]| -> Vec<Piece> { pieces.iter().rev().map(|piece| piece.mirrored().reversed()).collect() };
    let joined = |mut first: Vec<Piece>, second: &[Piece]| {
        first.extend_from_slice(second);
        first
    };
    [
        joined(other_side(&bass.lower_bout), &treble.lower_bout),
        vec![treble.lower_tip],
        treble.waist.clone(),
        vec![treble.upper_tip],
        joined(treble.upper_bout.clone(), &other_side(&bass.upper_bout)),
        other_side(&[bass.upper_tip]),
        other_side(&bass.waist),
        other_side(&[bass.lower_tip]),
    ]
    .map(|pieces| Side { pieces })
    .into()
}
