//! What a claim can be about.

use std::fmt::{Display, Formatter};

use serde::de::{Deserializer, Error, Visitor};
use serde::{Deserialize, Serialize, Serializer};

use crate::modes::ModeName;

/// A figure of a top.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Figure {
    /// Of a `mode`, corrected for the mesh, Hz.
    Frequency,
    /// How far the island lifts in a `mode`, % of the largest motion anywhere.
    IslandLift,
    /// How far the wing that flaps most flaps beyond going along with the island in a `mode`, % of the largest motion anywhere.
    WingFlap,
    /// Share of a `region`, or of all four "wings", in the kinetic energy when a bow drives the bridge, a mean over half an octave
    /// about `hz`, %.
    EnergyShare,
    /// See [`ResponseFigures`](crate::top::ResponseFigures), dB.
    IslandMobility,
    /// The same, no unit.
    WingActivity,
    /// The same, dB.
    BassOverTreble,
    /// How far the wood gives way to a slow `push` of a newton, µm.
    Give,
    /// The greatest stress along the holes' edges, a mean over 2 mm, while the strings press the bridge down, MPa.
    EdgeStress,
    /// The narrowest wood of a `region`, mm.
    Narrowest,
    /// Mass of the wood, the bar included, g.
    Mass,
}

/// How a change of a figure is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Scale {
    /// As a share, %.
    Ratio,
    /// As a difference, in the figure's unit.
    Difference,
}

impl Figure {
    /// As it is written in a lesson.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Frequency => "frequency",
            Self::IslandLift => "island_lift",
            Self::WingFlap => "wing_flap",
            Self::EnergyShare => "energy_share",
            Self::IslandMobility => "island_mobility",
            Self::WingActivity => "wing_activity",
            Self::BassOverTreble => "bass_over_treble",
            Self::Give => "give",
            Self::EdgeStress => "edge_stress",
            Self::Narrowest => "narrowest",
            Self::Mass => "mass",
        }
    }

    /// Of its value.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::Frequency => "Hz",
            Self::IslandLift | Self::WingFlap | Self::EnergyShare => "%",
            Self::IslandMobility | Self::BassOverTreble => "dB",
            Self::WingActivity => "",
            Self::Give => "µm",
            Self::EdgeStress => "MPa",
            Self::Narrowest => "mm",
            Self::Mass => "g",
        }
    }

    /// Of its change: "%" of its value, "points" between two shares, or "dB".
    #[must_use]
    pub fn change_unit(self) -> &'static str {
        match (self.scale(), self.unit()) {
            (Scale::Ratio, _) => "%",
            (Scale::Difference, "%") => "points",
            (Scale::Difference, unit) => unit,
        }
    }

    pub(super) fn scale(self) -> Scale {
        match self.unit() {
            "%" | "dB" => Scale::Difference,
            _ => Scale::Ratio,
        }
    }

    /// The keys that it is read by.
    pub(super) fn read_by(self) -> &'static [&'static str] {
        match self {
            Self::Frequency | Self::IslandLift | Self::WingFlap => &["mode"],
            Self::EnergyShare => &["region", "hz"],
            Self::Give => &["push"],
            Self::Narrowest => &["region"],
            Self::IslandMobility | Self::WingActivity | Self::BassOverTreble | Self::EdgeStress | Self::Mass => &[],
        }
    }
}

/// A slow push of a newton; the give is how far its own places move along it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Push {
    /// Up under the treble foot, down under the bass foot: the give is how far the feet move against each other.
    Rocking,
    /// Half under each of the bridge's feet.
    BothFeet,
    /// Under the bass foot.
    BassFoot,
    /// Under the treble foot.
    TrebleFoot,
    /// Up at the point of the treble side's lower wing, half down at each end of its root: the give is how far it bends.
    LowerWing,
}

/// A mode by its name or, where it has none, by its number before the change; its shape is found again after it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ModeWish {
    /// Of a free top.
    Named(ModeName),
    /// 1 for the lowest elastic mode.
    Number(usize),
}

impl ModeWish {
    /// The highest number: beyond it modes lie so close that shapes are not found again.
    pub const HIGHEST: usize = 40;
}

impl Display for ModeWish {
    fn fmt(&self, formatter: &mut Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Named(name) => write!(formatter, "\"{}\"", name.word()),
            Self::Number(number) => write!(formatter, "{number}"),
        }
    }
}

impl Serialize for ModeWish {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Named(name) => serializer.serialize_str(name.word()),
            Self::Number(number) => serializer.serialize_u64(*number as u64),
        }
    }
}

impl<'de> Deserialize<'de> for ModeWish {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;
        impl Visitor<'_> for Reader {
            type Value = ModeWish;

            fn expecting(&self, formatter: &mut Formatter<'_>) -> std::fmt::Result {
                write!(formatter, "\"twist\", \"x\", \"ring\" or a mode's number, 1 to {}", ModeWish::HIGHEST)
            }

            fn visit_str<E: Error>(self, word: &str) -> Result<ModeWish, E> {
                let name = ModeName::ALL.into_iter().find(|name| name.word() == word);
                name.map(ModeWish::Named).ok_or_else(|| E::invalid_value(serde::de::Unexpected::Str(word), &self))
            }

            fn visit_u64<E: Error>(self, number: u64) -> Result<ModeWish, E> {
                match usize::try_from(number) {
                    Ok(number) if (1..=ModeWish::HIGHEST).contains(&number) => Ok(ModeWish::Number(number)),
                    _ => Err(E::invalid_value(serde::de::Unexpected::Unsigned(number), &self)),
                }
            }
        }
        deserializer.deserialize_any(Reader)
    }
}
