//! What is meshed: closed rings of smooth chains.

use crate::{
    outline::Outline,
    plan::{
        Line, Piece, Point,
        vector::{cross, dot},
    },
    sound_holes::SoundHole,
};

/// Which ring is the outline.
pub(super) const RIM: usize = 0;

/// A ring's chains, laid end to end.
#[derive(Clone, Debug)]
pub(super) struct Ring {
    pub(super) chains: Vec<Chain>,
}

/// Pieces between two corners: nodes stand on the corners and are spread freely between.
#[derive(Clone, Debug)]
pub(super) struct Chain {
    pub(super) pieces: Vec<Piece>,
    /// Part of the centreline, along which half a top is cut: no boundary of the wood.
    pub(super) is_centreline: bool,
}

/// Rings that enclose the wood: the first counter-clockwise, holes clockwise.
#[derive(Clone, Debug)]
pub(super) struct Domain {
    pub(super) rings: Vec<Ring>,
    /// True when only the treble half is meshed, closed by the centreline.
    pub(super) is_half: bool,
}

impl Domain {
    pub(super) fn new(outline: &Outline, holes: &[SoundHole]) -> Domain {
        let is_half = is_symmetric(outline, holes);
        let rim = if is_half { treble_rim(outline) } else { Ring::of(outline.boundary().pieces()) };
        let wanted = holes.iter().filter(|hole| !is_half || hole.is_treble());
        let rings = std::iter::once(rim).chain(wanted.map(|hole| Ring::of(hole.boundary().pieces()))).collect();
        Domain { rings, is_half }
    }

    /// All chains with the number of their ring.
    pub(super) fn chains(&self) -> impl Iterator<Item = (usize, &Chain)> {
        self.rings.iter().enumerate().flat_map(|(index, ring)| ring.chains.iter().map(move |chain| (index, chain)))
    }
}

impl Ring {
    /// Cuts a closed run of pieces into chains at its corners.
    fn of(pieces: &[Piece]) -> Ring {
        let n = pieces.len();
        let corner_before = |i: usize| {
            let arriving = pieces[(i + n - 1) % n].tangent(1.0);
            let leaving = pieces[i % n].tangent(0.0);
            // Construction leaves kinks of rounding only; a real corner turns by many degrees.
            cross(arriving, leaving).atan2(dot(arriving, leaving)).abs() > 0.05
        };
        let Some(first) = (0..n).find(|&i| corner_before(i)) else {
            return Ring { chains: vec![Chain { pieces: pieces.to_vec(), is_centreline: false }] };
        };
        let mut chains: Vec<Chain> = Vec::new();
        for i in first..first + n {
            if corner_before(i) {
                chains.push(Chain { pieces: Vec::new(), is_centreline: false });
            }
            if let Some(chain) = chains.last_mut() {
                chain.pieces.push(pieces[i % n]);
            }
        }
        Ring { chains }
    }
}

/// Treble half of the outline from the bottom edge to the neck end, closed by the centreline.
fn treble_rim(outline: &Outline) -> Ring {
    let half = outline.half(true);
    let chain = |pieces: Vec<Piece>| Chain { pieces, is_centreline: false };
    let centreline = Piece::Line(Line { start: [0.0, outline.length_mm()], end: [0.0, 0.0] });
    Ring {
        chains: vec![
            chain(half.lower_bout.clone()),
            chain(vec![half.lower_tip]),
            chain(half.waist.clone()),
            chain(vec![half.upper_tip]),
            chain(half.upper_bout.clone()),
            Chain { pieces: vec![centreline], is_centreline: true },
        ],
    }
}

/// True for a top whose sides mirror each other, of which one half is meshed.
pub(super) fn is_symmetric(outline: &Outline, holes: &[SoundHole]) -> bool {
    outline.is_symmetric() && mirror_each_other(holes)
}

/// True when the holes are none, or one on each side that mirrors the other and stays off the centreline.
fn mirror_each_other(holes: &[SoundHole]) -> bool {
    match holes {
        [] => true,
        [bass, treble] => bass.mirrors(treble) && treble.boundary().bounds_mm().0[0] > 0.0,
        _ => false,
    }
}

impl Chain {
    /// Length of the chain, mm.
    pub(super) fn length_mm(&self) -> f64 {
        self.pieces.iter().map(Piece::length_mm).sum()
    }

    /// Points and outward data of the chain at steps no longer than `step_mm`, piece by piece, start included, end not.
    pub(super) fn stations(&self, step_mm: f64) -> Vec<Station> {
        let mut stations = Vec::new();
        for piece in &self.pieces {
            let length = piece.length_mm();
            let steps = (length / step_mm).ceil().max(2.0) as usize;
            for i in 0..steps {
                let t = piece.parameter_at_mm(length * (i as f64 + 0.5) / steps as f64);
                stations.push(Station {
                    point: piece.point(t),
                    tangent: piece.tangent(t),
                    curvature_per_mm: piece.curvature_per_mm(t).abs(),
                    length_mm: length / steps as f64,
                });
            }
        }
        stations
    }
}

/// A place on a chain.
#[derive(Clone, Copy, Debug)]
pub(super) struct Station {
    pub(super) point: Point,
    pub(super) tangent: Point,
    /// Not signed.
    pub(super) curvature_per_mm: f64,
    /// Length of chain it stands for.
    pub(super) length_mm: f64,
}
