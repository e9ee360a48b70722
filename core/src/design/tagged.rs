//! Parts of a document whose other keys depend on one of them.
//!
//! serde's own tagged enums keep what they read in a form of their own, and make the code of every kind once more for that form: a
//! fiftieth of the compute module.

use std::fmt::Formatter;
use std::marker::PhantomData;

use serde::de::{Deserialize, Deserializer, Error, MapAccess, Visitor};

/// An object's kind and its other entries, each taken once.
pub(super) struct Tagged<K, T> {
    pub(super) kind: K,
    entries: Vec<(String, T)>,
}

impl<'de, K: Deserialize<'de>, T: Deserialize<'de>> Tagged<K, T> {
    /// Reads an object whose key `tag` tells its kind, wherever it stands.
    pub(super) fn read<D: Deserializer<'de>>(deserializer: D, tag: &'static str) -> Result<Tagged<K, T>, D::Error> {
        deserializer.deserialize_map(Reader { tag, holds: PhantomData })
    }
}

impl<K, T> Tagged<K, T> {
    /// What stands at `key`, if anything does.
    pub(super) fn take(&mut self, key: &str) -> Option<T> {
        let at = self.entries.iter().position(|(name, _)| name == key)?;
        Some(self.entries.swap_remove(at).1)
    }

    /// What must stand at `key`.
    pub(super) fn need<E: Error>(&mut self, key: &'static str) -> Result<T, E> {
        self.take(key).ok_or_else(|| E::missing_field(key))
    }

    /// That nothing stands at a key but these: a misspelt key is said before the one that is missing for it.
    pub(super) fn only<E: Error>(&self, keys: &[&str]) -> Result<(), E> {
        match self.entries.iter().find(|(name, _)| !keys.contains(&name.as_str())) {
            Some((name, _)) if keys.is_empty() => {
                Err(E::custom(format_args!("unknown field `{name}`, expected no other")))
            }
            Some((name, _)) => {
                Err(E::custom(format_args!("unknown field `{name}`, expected one of `{}`", keys.join("`, `"))))
            }
            None => Ok(()),
        }
    }
}

struct Reader<K, T> {
    tag: &'static str,
    holds: PhantomData<(K, T)>,
}

impl<'de, K: Deserialize<'de>, T: Deserialize<'de>> Visitor<'de> for Reader<K, T> {
    type Value = Tagged<K, T>;

    fn expecting(&self, formatter: &mut Formatter<'_>) -> std::fmt::Result {
        write!(formatter, "an object with the key `{}`", self.tag)
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Tagged<K, T>, A::Error> {
        let (mut kind, mut entries) = (None, Vec::<(String, T)>::new());
        let twice = |key: &str| A::Error::custom(format_args!("duplicate field `{key}`"));
        while let Some(key) = map.next_key::<String>()? {
            if key == self.tag {
                if kind.replace(map.next_value()?).is_some() {
                    return Err(twice(&key));
                }
            } else if entries.iter().any(|(name, _)| *name == key) {
                return Err(twice(&key));
            } else {
                entries.push((key, map.next_value()?));
            }
        }
        Ok(Tagged { kind: kind.ok_or_else(|| A::Error::missing_field(self.tag))?, entries })
    }
}
