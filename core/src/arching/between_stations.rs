//! From one station to the next.

use super::{CurtateCycloid, HalfArch, arc_with_reverse_arc::OnWay};

/// The stations beside a place, and how far it is from the first to the second: 0 to 1, with first and second derivative by
/// y. Level at every station, so that whatever follows the share has continuous slopes, and beyond the first and last.
/// `stations` rise strictly.
pub(super) fn share_between(stations: &[f64], y: f64) -> (usize, usize, [f64; 3]) {
    let after = stations.partition_point(|&station| station <= y);
    if after == 0 || after == stations.len() {
        let end = after.saturating_sub(1);
        return (end, end, [0.0; 3]);
    }
    let h = stations[after] - stations[after - 1];
    let t = (y - stations[after - 1]) / h;
    (after - 1, after, [t * t * (3.0 - 2.0 * t), 6.0 * t * (1.0 - t) / h, (6.0 - 12.0 * t) / (h * h)])
}

impl HalfArch {
    /// The arch a share of the way to another, at a place. Two of one family keep it, with its parameter on the way;
    /// otherwise the heights are mixed.
    pub(super) fn towards(&self, other: &HalfArch, share: f64, place: f64) -> OnWay {
        match (self, other) {
            (HalfArch::Cycloid(a), HalfArch::Cycloid(b)) => {
                let by = b.ratio() - a.ratio();
                let on = CurtateCycloid::from_ratio(a.ratio() + share * by).at(place);
                OnWay {
                    height: on.height,
                    slope: [on.slope[0], on.slope[1] * by],
                    bend: [on.bend[0], on.bend[1] * by, on.bend[2] * by * by],
                }
            }
            (HalfArch::Arcs(a), HalfArch::Arcs(b)) => a.towards(b, share, place),
            _ => {
                let (from, to) = (self.at(place), other.at(place));
                let mixed = |k: usize| from[k] + share * (to[k] - from[k]);
                OnWay { height: mixed(0), slope: [mixed(1), to[0] - from[0]], bend: [mixed(2), to[1] - from[1], 0.0] }
            }
        }
    }

    /// Where the arch a share of the way to another turns from convex to concave.
    pub(super) fn inflection_towards(&self, other: &HalfArch, share: f64) -> f64 {
        match (self, other) {
            (HalfArch::Cycloid(a), HalfArch::Cycloid(b)) => {
                CurtateCycloid::from_ratio(a.ratio() + share * (b.ratio() - a.ratio())).inflection()
            }
            (HalfArch::Arcs(a), HalfArch::Arcs(b)) => a.inflection() + share * (b.inflection() - a.inflection()),
            _ => {
                // Both are convex before the first turn and hollow after the last: between, halved to 1e-12.
                let turns = [self.inflection(), other.inflection()];
                let (mut low, mut high) = (turns[0].min(turns[1]), turns[0].max(turns[1]));
                for _ in 0..40 {
                    let middle = 0.5 * (low + high);
                    if self.towards(other, share, middle).bend[0] < 0.0 { low = middle } else { high = middle }
                }
                0.5 * (low + high)
            }
        }
    }
}
