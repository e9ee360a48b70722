//! Changes of a design, by the paths of its values.

use std::fmt::Formatter;

use serde::de::{Deserialize, Deserializer, Error, MapAccess, Visitor};
use serde::{Serialize, Serializer};
use serde_json::Value;

use super::LessonError;
use crate::design::Design;

/// Values by their paths in the design's document, keys joined by dots, in the order they are written: `*` stands for both holes or
/// all cross arches. A last key that the design leaves out is added; null takes one out.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Changes(Vec<(String, Value)>);

impl Changes {
    /// `design` with the changes; `whose` is where in the lesson they stand.
    ///
    /// # Errors
    /// [`LessonError::NoSuchPlace`] for a path that leads nowhere, [`LessonError::Design`] for a design that can't be.
    pub(super) fn of(&self, design: &Design, whose: &'static str) -> Result<Design, LessonError> {
        let mut document = serde_json::to_value(design).unwrap_or_default();
        for (path, value) in &self.0 {
            let keys: Vec<&str> = path.split('.').collect();
            put(&mut document, &keys, value)
                .map_err(|key| LessonError::NoSuchPlace { path: format!("{whose}.{path}"), key: key.to_owned() })?;
        }
        Design::from_json(&document.to_string())
            .map_err(|error| LessonError::Design { path: whose, error: Box::new(error) })
    }
}

/// Sets what `keys` lead to.
///
/// # Errors
/// The key that leads nowhere.
fn put<'k>(within: &mut Value, keys: &[&'k str], value: &Value) -> Result<(), &'k str> {
    let [key, rest @ ..] = keys else {
        within.clone_from(value);
        return Ok(());
    };
    if *key == "*" {
        // Of objects only: the stop beside the two holes is none.
        let object = within.as_object_mut().ok_or(*key)?;
        let parts: Vec<&mut Value> = object.values_mut().filter(|part| part.is_object()).collect();
        return parts.into_iter().try_for_each(|part| put(part, rest, value));
    }
    let next = match within {
        Value::Object(object) if rest.is_empty() => {
            if value.is_null() {
                object.remove(*key);
            } else {
                object.insert((*key).to_owned(), value.clone());
            }
            return Ok(());
        }
        Value::Object(object) => object.get_mut(*key),
        Value::Array(list) => key.parse::<usize>().ok().and_then(|index| list.get_mut(index)),
        _ => None,
    }
    .ok_or(*key)?;
    put(next, rest, value)
}

impl Serialize for Changes {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(path, value)| (path, value)))
    }
}

impl<'de> Deserialize<'de> for Changes {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;
        impl<'de> Visitor<'de> for Reader {
            type Value = Changes;

            fn expecting(&self, formatter: &mut Formatter<'_>) -> std::fmt::Result {
                formatter.write_str("values by their paths in a design")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Changes, A::Error> {
                let mut changes: Vec<(String, Value)> = Vec::new();
                while let Some((path, value)) = map.next_entry::<String, Value>()? {
                    if changes.iter().any(|(known, _)| *known == path) {
                        return Err(A::Error::custom(format_args!("duplicate field `{path}`")));
                    }
                    changes.push((path, value));
                }
                Ok(Changes(changes))
            }
        }
        deserializer.deserialize_map(Reader)
    }
}
