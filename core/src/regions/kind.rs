//! The names of the regions.

use crate::sound_holes::SoundHole;

/// A side of the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// x < 0.
    Bass,
    /// x > 0.
    Treble,
}

impl Side {
    /// The side that a hole is on.
    pub fn of(hole: &SoundHole) -> Side {
        if hole.is_treble() { Side::Treble } else { Side::Bass }
    }

    /// The other side.
    pub fn other(self) -> Side {
        match self {
            Side::Bass => Side::Treble,
            Side::Treble => Side::Bass,
        }
    }
}

/// What makers call a part of the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RegionKind {
    /// The wood between the holes.
    Island,
    /// The tongue on the island's side below the upper eye.
    UpperWing(Side),
    /// The tongue on the edge's side above the lower eye.
    LowerWing(Side),
    /// From upper eye to upper eye.
    UpperNarrows,
    /// From the lower eye to the edge.
    LowerNarrows(Side),
    /// From the hole to the edge.
    Flank(Side),
    /// Towards the neck.
    UpperBout,
    /// Between the bouts, where no pair of holes parts it.
    MiddleBout,
    /// Towards the bottom edge.
    LowerBout,
}

impl RegionKind {
    /// A stable snake_case word for programs.
    pub fn key(self) -> &'static str {
        match self {
            RegionKind::Island => "island",
            RegionKind::UpperWing(Side::Bass) => "upper_wing_bass",
            RegionKind::UpperWing(Side::Treble) => "upper_wing_treble",
            RegionKind::LowerWing(Side::Bass) => "lower_wing_bass",
            RegionKind::LowerWing(Side::Treble) => "lower_wing_treble",
            RegionKind::UpperNarrows => "upper_narrows",
            RegionKind::LowerNarrows(Side::Bass) => "lower_narrows_bass",
            RegionKind::LowerNarrows(Side::Treble) => "lower_narrows_treble",
            RegionKind::Flank(Side::Bass) => "flank_bass",
            RegionKind::Flank(Side::Treble) => "flank_treble",
            RegionKind::UpperBout => "upper_bout",
            RegionKind::MiddleBout => "middle_bout",
            RegionKind::LowerBout => "lower_bout",
        }
    }

    /// Whether it is one of the four wings.
    pub fn is_wing(self) -> bool {
        matches!(self, RegionKind::UpperWing(_) | RegionKind::LowerWing(_))
    }

    /// The region that is its mirror image across the centreline.
    pub fn mirrored(self) -> RegionKind {
        match self {
            RegionKind::UpperWing(side) => RegionKind::UpperWing(side.other()),
            RegionKind::LowerWing(side) => RegionKind::LowerWing(side.other()),
            RegionKind::LowerNarrows(side) => RegionKind::LowerNarrows(side.other()),
            RegionKind::Flank(side) => RegionKind::Flank(side.other()),
            own => own,
        }
    }
}
