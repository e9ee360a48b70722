//! A reflection that takes the equations of a pencil onto each other.

/// What mirrors what.
///
/// A pencil that the reflection leaves as it is comes apart in two, of half the size: one of the motions that are their own mirror image, one of
/// those that are its opposite.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reflection {
    /// (equation): the one whose mirror image it is; itself where it has an image of its own, and where it lies in the mirror.
    pub image_of: Vec<u32>,
    /// (equation): whether the mirror turns its motion round; alike for both of a pair.
    pub turns: Vec<bool>,
}
