//! Where things lie in a checkout.

use std::path::{Path, PathBuf};

use crate::Error;

/// A checkout of this project. Build products of the site stay under its `target` folder, whatever
/// `CARGO_TARGET_DIR` says, because the page's type checker finds the modules' declarations there.
#[derive(Debug, Clone)]
pub struct Workspace {
    root: PathBuf,
}

impl Workspace {
    /// Finds the checkout from where Cargo runs the program, or from the current folder upwards.
    ///
    /// # Errors
    /// [`Error::Missing`] outside a checkout.
    pub fn find() -> Result<Workspace, Error> {
        let start = std::env::var_os("CARGO_MANIFEST_DIR").map(PathBuf::from).or_else(|| std::env::current_dir().ok());
        start.and_then(|folder| Workspace::above(&folder)).ok_or_else(|| Error::Missing {
            what: "Bombatura's source folder".into(),
            remedy: "run this program inside a checkout of the project".into(),
        })
    }

    /// The checkout that holds `folder`, if there is one.
    #[must_use]
    pub fn above(folder: &Path) -> Option<Workspace> {
        let holds_sources = |folder: &Path| folder.join("web/serve/Cargo.toml").is_file();
        folder.ancestors().find(|folder| holds_sources(folder)).map(|root| Workspace { root: root.to_owned() })
    }

    /// The checkout's top folder.
    #[must_use]
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The page's sources.
    #[must_use]
    pub fn page(&self) -> PathBuf {
        self.root.join("www")
    }

    /// Where the site goes when no other folder is named.
    #[must_use]
    pub fn site(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// JavaScript bindings and type declarations, before optimisation: `wasm/compute.d.ts` and so on.
    #[must_use]
    pub fn bindings(&self) -> PathBuf {
        self.root.join("target/bindings/wasm")
    }

    /// Results that are slow to make, named by what they were made from.
    #[must_use]
    pub fn cache(&self) -> PathBuf {
        self.root.join("target/site-cache")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_checkout_is_found_from_deep_inside_and_not_from_outside() {
        let here = Path::new(env!("CARGO_MANIFEST_DIR"));
        let workspace = Workspace::above(&here.join("src/serve")).unwrap();
        assert_eq!(workspace.root(), here.ancestors().nth(2).unwrap());
        assert!(Workspace::above(Path::new("/")).is_none());
    }
}
