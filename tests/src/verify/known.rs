//! Figures that are known to miss, and why.
//!
//! A known miss doesn't fail the run, and stays a miss in the table. One that begins to pass does fail it, so that it
//! is taken off the list.

use std::collections::BTreeSet;

use super::Row;

/// Rows of one subject.
struct KnownMiss {
    /// What their names begin with, up to the colon.
    group: &'static str,
    /// What follows it.
    members: &'static [&'static str],
}

/// The preview alone against solids, before better meshes have set it right: modes that twist the narrow wood between the holes and a
/// hinged rim, where elements are as wide as the thickness takes to change and up to five times as wide as the layer in which a free edge sheds
/// twist. Of that layer coarse elements miss more than they are relieved of: `DEVELOPERS.md`, *Not taken yet: all of the twist's layer*.
///
/// A bar that ends bluntly on a plate: at its ends it sheds torsion, which is left out; one that is scooped, as bars are, has little there.
///
/// The bar on the top: the ring is thought to rise most. On the demonstration the X rises by 20 %, the twist by 13 % and the ring by 6 %,
/// because two thirds of the ring's energy stretches the arch (it goes with the 0.34th power of the thickness, the X with the 0.83rd),
/// of which the bar takes little. A bar of any height, even or short, or along the middle leaves it so, and the bar itself is right within a
/// per cent on a strip. The finding is from memory and has no numbers.
const KNOWN: [KnownMiss; 5] = [
    KnownMiss { group: "SOLID-plate-with-blunt-bar-preview", members: &["1", "5"] },
    KnownMiss { group: "SOLID-plate-with-blunt-bar-standard", members: &["5"] },
    KnownMiss { group: "SOLID-arched-holes-hinged-preview-alone", members: &["6", "8", "9", "10", "12"] },
    KnownMiss { group: "SOLID-flat-holes-free-preview-alone", members: &["11"] },
    KnownMiss { group: "V-EFF-BAR", members: &["order"] },
];

/// The names of the rows that are known to miss.
pub(super) fn misses() -> BTreeSet<String> {
    KNOWN
        .iter()
        .flat_map(|KnownMiss { group, members }| members.iter().map(move |member| format!("{group}:{member}")))
        .collect()
}

/// Names of rows that are not as expected: a miss that isn't known, and a known one that passes or isn't there.
pub(super) fn surprises(rows: &[Row]) -> Vec<String> {
    unexpected(rows, misses())
}

fn unexpected(rows: &[Row], mut known: BTreeSet<String>) -> Vec<String> {
    let mut surprises = Vec::new();
    for row in rows {
        if known.remove(&row.id) == row.pass {
            surprises.push(row.id.clone());
        }
    }
    surprises.extend(known);
    surprises
}

#[cfg(test)]
mod tests {
    use super::super::Target;
    use super::*;

    fn row(id: &str, got: f64) -> Row {
        let (source, source_kind) = ("book".into(), "seen".into());
        Row::judge(&Target { id: id.into(), source, source_kind, value: 100.0, tolerance_pct: 1.0 }, got, 0)
    }

    #[test]
    fn only_what_was_expected_passes() {
        let known = || BTreeSet::from(["B".to_owned()]);
        let surprises = |a, b| unexpected(&[row("A", a), row("B", b)], known());
        assert!(surprises(100.0, 105.0).is_empty());
        assert_eq!(surprises(105.0, 105.0), ["A"], "a new miss");
        assert_eq!(surprises(100.0, 100.0), ["B"], "a known miss that passes");
        assert_eq!(unexpected(&[row("A", 100.0)], known()), ["B"], "a known miss that isn't checked");
    }
}
