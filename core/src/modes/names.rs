//! The names that free-plate work gives to three modes, told from their shapes.
//!
//! The motion along the surface's normal, less its rigid part, is compared with what the names stand for: the twist is xy;
//! the X bends along and across the opposite ways, αx² − βy², so that its nodal lines cross or nearly do; the ring
//! bends both the same way, αx² + βy², so that its nodal line closes. Order tells nothing: twist, X and ring trade
//! places with proportion, wood and thickness. Nor do counts of nodal lines, which break up at the least lopsidedness.
//!
//! Measured on a violin top (86, 122 and 290 Hz) over arches of 11 to 20 mm, thickness of 2 to 5 mm, three species, rings
//! up to 20° off, with and without holes: correlation at least 0.98, 0.97 and 0.83; the next best 0.46.

use nalgebra::Vector3;

use super::Modes;
use super::archetypes::Archetypes;
use crate::shell::{ShellGeometry, Supports};

/// A name of the trade for a mode of the free plate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ModeName {
    /// Mode 1: opposite corners move together.
    Twist,
    /// Mode 2: the ends move against the sides.
    X,
    /// Mode 5: the middle moves against the whole edge.
    Ring,
}

impl ModeName {
    /// Every name.
    pub const ALL: [Self; 3] = [Self::Twist, Self::X, Self::Ring];

    /// A stable word for files and messages between programs.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Twist => "twist",
            Self::X => "x",
            Self::Ring => "ring",
        }
    }
}

/// An archetype must make up more than half of the motion's mean square. The archetypes and the modes being orthogonal over
/// the mass (nearly, since an arch moves a little sideways too), no two modes can hold more than half of the same
/// one (Bessel's inequality). Measured tops hold 0.69 or more, the next best mode 0.21.
const LEAST_SHARE: f64 = 0.5;

/// The lesser of the two bends of an X or a ring, each measured at one standard deviation of x or y, must be this share of
/// the greater; below it the mode is a plain bend. At a third, the nodal line of αx² + βy² reaches to two standard
/// deviations: a violin's outline reaches to 2.1, a rectangle to 1.7, so the ring is still closed or just opening.
/// Measured tops have 0.47 or more, plates known for bending the plain way 0.27 or less.
const LEAST_BALANCE: f64 = 1.0 / 3.0;

/// (mode): the name its shape has, each name given once at most, to the mode most like it.
///
/// None has one unless the shell is free: held at the edge it moves in other shapes. Expects x across and y along the
/// grain, and a shell that can be seen from z. Cost: linear in nodes and modes.
#[must_use]
pub fn name_modes(geometry: &ShellGeometry, supports: &Supports, modes: &Modes) -> Vec<Option<ModeName>> {
    let mut names = vec![None; modes.count()];
    if !supports.is_free() {
        return names;
    }
    let normals = geometry.node_normals();
    let Some(archetypes) = Archetypes::new(geometry.nodes_m(), &geometry.node_volumes_m3()) else {
        return names;
    };
    let likeness: Vec<_> = (0..modes.count())
        .map(|mode| {
            let (moved, _) = modes.shape(mode).as_chunks::<6>();
            let along_normal: Vec<f64> =
                moved.iter().zip(&normals).map(|(u, n)| Vector3::new(u[0], u[1], u[2]).dot(n)).collect();
            candidate(&archetypes, &along_normal)
        })
        .collect();
    for name in ModeName::ALL {
        let of_name = likeness.iter().enumerate().filter_map(|(mode, found)| match found {
            Some((own, share)) if *own == name => Some((mode, *share)),
            _ => None,
        });
        if let Some((mode, _)) = of_name.max_by(|a, b| a.1.total_cmp(&b.1)) {
            names[mode] = Some(name);
        }
    }
    names
}

/// The name that a motion (node) may have, and the archetype's share of its mean square.
fn candidate(archetypes: &Archetypes, motion: &[f64]) -> Option<(ModeName, f64)> {
    let parts = archetypes.parts(motion);
    if parts.twist_share > LEAST_SHARE {
        return Some((ModeName::Twist, parts.twist_share));
    }
    let (lesser, greater) = (parts.across.abs().min(parts.along.abs()), parts.across.abs().max(parts.along.abs()));
    if parts.bend_share > LEAST_SHARE && lesser > LEAST_BALANCE * greater {
        let name = if parts.across * parts.along < 0.0 { ModeName::X } else { ModeName::Ring };
        return Some((name, parts.bend_share));
    }
    None
}
