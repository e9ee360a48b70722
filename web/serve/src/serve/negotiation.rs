//! Which compressed form a browser is given: the `Accept-Encoding` header of RFC 9110, section 12.5.3.

/// A content coding the site has files for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Coding {
    Brotli,
    Gzip,
    Identity,
}

impl Coding {
    /// The coding's name in headers.
    pub(super) fn name(self) -> &'static str {
        match self {
            Coding::Brotli => "br",
            Coding::Gzip => "gzip",
            Coding::Identity => "identity",
        }
    }

    /// The ending of the file that holds this form.
    pub(super) fn ending(self) -> &'static str {
        match self {
            Coding::Brotli => ".br",
            Coding::Gzip => ".gz",
            Coding::Identity => "",
        }
    }
}

/// The codings that `accept_encoding` allows, best first: by the browser's weight, then the smaller form. The plain
/// file comes last, even when refused, because an unreadable answer helps nobody.
pub(super) fn acceptable(accept_encoding: &str) -> Vec<Coding> {
    let mut codings: Vec<(Coding, f32)> = [Coding::Brotli, Coding::Gzip]
        .into_iter()
        .map(|coding| (coding, weight(accept_encoding, coding.name())))
        .filter(|(_, weight)| *weight > 0.0)
        .collect();
    // A stable sort keeps brotli before gzip at equal weights.
    codings.sort_by(|a, b| b.1.total_cmp(&a.1));
    codings.into_iter().map(|(coding, _)| coding).chain([Coding::Identity]).collect()
}

/// The weight given to `name`: its own, otherwise that of `*`, otherwise 0.
fn weight(accept_encoding: &str, name: &str) -> f32 {
    let listed = |wanted: &str| {
        accept_encoding.split(',').find_map(|item| {
            let mut parts = item.split(';').map(str::trim);
            let matches = parts.next()?.eq_ignore_ascii_case(wanted);
            let quality = parts.find_map(|part| part.strip_prefix("q=").or_else(|| part.strip_prefix("Q=")));
            matches.then(|| quality.map_or(1.0, |quality| quality.trim().parse().unwrap_or(0.0)))
        })
    };
    listed(name).or_else(|| listed("*")).unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::Coding::{Brotli, Gzip, Identity};
    use super::*;

    #[test]
    fn browsers_get_brotli_and_old_clients_what_they_can_read() {
        assert_eq!(acceptable("gzip, deflate, br, zstd"), [Brotli, Gzip, Identity]);
        assert_eq!(acceptable("gzip"), [Gzip, Identity]);
        assert_eq!(acceptable(""), [Identity]);
        assert_eq!(acceptable("*"), [Brotli, Gzip, Identity]);
    }

    #[test]
    fn weights_are_obeyed() {
        assert_eq!(acceptable("br;q=0.2, gzip;q=0.8"), [Gzip, Brotli, Identity]);
        assert_eq!(acceptable("br;q=0, gzip"), [Gzip, Identity]);
        assert_eq!(acceptable("BR ; q=0.5, *;q=0"), [Brotli, Identity]);
        assert_eq!(acceptable("br;q=nonsense"), [Identity]);
    }
}
