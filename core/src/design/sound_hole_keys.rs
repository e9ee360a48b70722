//! Reading a sound hole: which keys each kind has.

use std::fmt::Formatter;

use serde::de::{Deserialize, Deserializer, Error, IntoDeserializer, Visitor};

use super::sound_holes::{CrescentHole, EndCut, EyesAndStem, RoundHole, SlotHole, SoundHoleChoice, TracedHole};
use super::tagged::Tagged;

/// The kinds by their names in a document.
#[derive(serde::Deserialize)]
#[serde(rename_all = "snake_case")]
enum Kind {
    EyesAndStem,
    Round,
    Crescent,
    Slot,
    Traced,
    None,
}

/// What stands at a key.
enum Entry {
    Measure(f64),
    Words(String),
    /// `null`: for a measure that may be left out, the same as that.
    Nothing,
}

/// A hole's entries, taken by whichever kind it is.
type Keys = Tagged<Kind, Entry>;

impl Keys {
    fn measure<E: Error>(&mut self, key: &'static str) -> Result<f64, E> {
        self.need(key)?.measure(key)
    }

    fn measure_if_there<E: Error>(&mut self, key: &'static str) -> Result<Option<f64>, E> {
        match self.take(key) {
            None | Some(Entry::Nothing) => Ok(None),
            Some(entry) => entry.measure(key).map(Some),
        }
    }

    fn ends<E: Error>(&mut self) -> Result<EndCut, E> {
        match self.take("ends") {
            Some(entry) => EndCut::deserialize(entry.words("ends")?.into_deserializer()),
            None => Ok(EndCut::default()),
        }
    }

    fn path<E: Error>(&mut self) -> Result<String, E> {
        self.need("path")?.words("path")
    }
}

impl Entry {
    fn measure<E: Error>(self, key: &'static str) -> Result<f64, E> {
        match self {
            Entry::Measure(value) => Ok(value),
            _ => Err(E::custom(format_args!("`{key}` must be a number"))),
        }
    }

    fn words<E: Error>(self, key: &'static str) -> Result<String, E> {
        match self {
            Entry::Words(words) => Ok(words),
            _ => Err(E::custom(format_args!("`{key}` must be a text"))),
        }
    }
}

/// A hole of the measures that must stand in the document, those that may, and what else it has.
macro_rules! hole {
    ($keys:ident, $hole:ident { $($must:ident),* } { $($may:ident),* } { $($other:ident: $read:expr),* }) => {{
        $keys.only(&[$(stringify!($must),)* $(stringify!($may),)* $(stringify!($other)),*])?;
        $hole {
            $($must: $keys.measure(stringify!($must))?,)*
            $($may: $keys.measure_if_there(stringify!($may))?,)*
            $($other: $read?,)*
        }
    }};
}

impl<'de> Deserialize<'de> for SoundHoleChoice {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<SoundHoleChoice, D::Error> {
        let mut keys = Keys::read(deserializer, "kind")?;
        Ok(match keys.kind {
            Kind::EyesAndStem => SoundHoleChoice::EyesAndStem(hole!(keys, EyesAndStem {
                upper_eye_diameter_mm, upper_eye_to_centreline_mm, upper_eye_station_mm,
                lower_eye_diameter_mm, lower_eye_to_edge_mm, lower_eye_station_mm,
                stem_width_mm, throat_width_mm, upper_wing_width_mm, lower_wing_width_mm, wing_rounding_mm, nick_depth_mm
            } {
                stem_at_hooks_mm, stem_steeper_deg, lower_wing_hollow_mm, lower_wing_hollow_reach
            } { ends: keys.ends() })),
            Kind::Round => SoundHoleChoice::Round(hole!(keys, RoundHole {
                diameter_mm, centre_to_centreline_mm, centre_station_mm
            } {} {})),
            Kind::Crescent => SoundHoleChoice::Crescent(hole!(keys, CrescentHole {
                length_mm, width_mm, bow_mm, end_rounding_mm, centre_to_centreline_mm, centre_station_mm, lean_deg
            } {} { ends: keys.ends() })),
            Kind::Slot => SoundHoleChoice::Slot(hole!(keys, SlotHole {
                length_mm, width_mm, centre_to_centreline_mm, centre_station_mm, lean_deg
            } {} { ends: keys.ends() })),
            Kind::Traced => SoundHoleChoice::Traced(hole!(keys, TracedHole {
                centre_to_centreline_mm, centre_station_mm, lean_deg
            } {} { path: keys.path() })),
            Kind::None => {
                keys.only(&[])?;
                SoundHoleChoice::None
            }
        })
    }
}

impl<'de> Deserialize<'de> for Entry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Entry, D::Error> {
        deserializer.deserialize_any(EntryReader)
    }
}

struct EntryReader;

impl Visitor<'_> for EntryReader {
    type Value = Entry;

    fn expecting(&self, formatter: &mut Formatter<'_>) -> std::fmt::Result {
        formatter.write_str("a number or a text")
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Entry, E> {
        Ok(Entry::Measure(value))
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Entry, E> {
        Ok(Entry::Measure(value as f64))
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Entry, E> {
        Ok(Entry::Measure(value as f64))
    }

    fn visit_unit<E: Error>(self) -> Result<Entry, E> {
        Ok(Entry::Nothing)
    }

    fn visit_str<E: Error>(self, words: &str) -> Result<Entry, E> {
        Ok(Entry::Words(words.to_owned()))
    }
}
