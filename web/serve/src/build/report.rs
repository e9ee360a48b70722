//! What a build made, for people.

use std::fmt;

/// A file of the site and what it costs to send.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SiteFile {
    /// Path inside the site, with forward slashes: `wasm/compute_bg.wasm`.
    pub path: String,
    /// Size as it is.
    pub bytes: u64,
    /// Size with brotli at level 11, where that is smaller.
    pub brotli_bytes: Option<u64>,
    /// Size with gzip, where that is smaller.
    pub gzip_bytes: Option<u64>,
}

impl SiteFile {
    /// What a browser that reads brotli downloads, without headers.
    #[must_use]
    pub fn transfer_bytes(&self) -> u64 {
        self.brotli_bytes.unwrap_or(self.bytes)
    }
}

/// What [`build_site`](super::build_site) made.
#[derive(Debug, Clone, Default)]
pub struct Report {
    /// Every file of the site, sorted by path; the `.br` and `.gz` beside them are not listed.
    pub files: Vec<SiteFile>,
}

impl fmt::Display for Report {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{:>11} {:>11}  file", "bytes", "brotli")?;
        for file in &self.files {
            writeln!(f, "{:>11} {:>11}  {}", file.bytes, file.transfer_bytes(), file.path)?;
        }
        Ok(())
    }
}
