//! Results that are slow to make, kept under a name made of everything they depend on.

use std::hash::{DefaultHasher, Hasher};
use std::path::{Path, PathBuf};

use crate::Error;

/// A folder of results.
pub(super) struct Cache {
    folder: PathBuf,
}

impl Cache {
    pub(super) fn new(folder: PathBuf) -> Cache {
        Cache { folder }
    }

    /// The result for `input` made by `recipe` (a step's name, its settings and its tool's version), from the folder
    /// or, the first time, from `make`.
    pub(super) fn get_or_make(
        &self,
        recipe: &str,
        input: &[u8],
        make: impl FnOnce() -> Result<Vec<u8>, Error>,
    ) -> Result<Vec<u8>, Error> {
        let path = self.folder.join(name(recipe, input));
        if let Ok(result) = std::fs::read(&path) {
            return Ok(result);
        }
        let result = make()?;
        self.keep(&path, &result)?;
        Ok(result)
    }

    /// Writes beside the final name first, so that an interrupted run leaves no half result under it.
    fn keep(&self, path: &Path, result: &[u8]) -> Result<(), Error> {
        std::fs::create_dir_all(&self.folder).map_err(Error::file("create", &self.folder))?;
        let unfinished = path.with_extension(format!("unfinished-{}", std::process::id()));
        std::fs::write(&unfinished, result).map_err(Error::file("write", &unfinished))?;
        std::fs::rename(&unfinished, path).map_err(Error::file("write", path))
    }
}

/// A file name for a result: two 64-bit hashes with different beginnings and the input's length. The standard
/// library's hash may change with the compiler, which costs a rebuild of the cache and no more.
fn name(recipe: &str, input: &[u8]) -> String {
    let hash = |beginning: u8| {
        let mut hasher = DefaultHasher::new();
        hasher.write_u8(beginning);
        hasher.write(recipe.as_bytes());
        hasher.write_u8(0);
        hasher.write(input);
        hasher.finish()
    };
    format!("{:016x}{:016x}-{}", hash(0), hash(1), input.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_result_is_made_once_for_each_recipe_and_input() {
        let folder = tempfile::tempdir().unwrap();
        let cache = Cache::new(folder.path().join("cache"));
        let made = std::cell::Cell::new(0);
        let get = |recipe: &str, input: &[u8]| {
            let make = || {
                made.set(made.get() + 1);
                Ok([recipe.as_bytes(), input].concat())
            };
            cache.get_or_make(recipe, input, make).unwrap()
        };
        assert_eq!(get("small", b"abc"), b"smallabc");
        assert_eq!(get("small", b"abc"), b"smallabc");
        assert_eq!(made.get(), 1);
        assert_eq!(get("fast", b"abc"), b"fastabc");
        assert_eq!(get("small", b"abd"), b"smallabd");
        assert_eq!(made.get(), 3);
    }

    #[test]
    fn a_failure_is_not_kept() {
        let folder = tempfile::tempdir().unwrap();
        let cache = Cache::new(folder.path().into());
        let fail = || Err(Error::Missing { what: "x".into(), remedy: "y".into() });
        assert!(cache.get_or_make("small", b"abc", fail).is_err());
        assert_eq!(cache.get_or_make("small", b"abc", || Ok(vec![1])).unwrap(), [1]);
    }
}
