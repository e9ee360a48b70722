//! A mesh that goes with its boundaries while these move a little.
//!
//! Nodes on a boundary keep their places on its pieces, those inside follow as springs along the edges have it, and the triangles
//! stay the same ones: what depends on these alone (equations, their order, the factor's pattern) need not be made again,
//! modes pass from node to node, and frequencies change as smoothly as the design does, where new meshes scatter them by half a per
//! cent. Every move starts from the mesh as it was made, never from one already moved, so that it depends on two designs only and
//! not on what lay between. That is good enough for following a handle; what is settled is meshed anew, for its figures
//! must depend on one design alone.

use super::{
    PlanMesh,
    anchors::{Anchors, curves},
    boundary_tolerance_mm,
    domain::is_symmetric,
    harmonic::Harmonic,
};
use crate::{
    outline::Outline,
    plan::{
        Point,
        vector::{add, cross, dot, mirrored, sub},
    },
    sound_holes::SoundHole,
};

/// The sharpest corner that a triangle may get, degrees.
const SHARPEST_DEG: f64 = 20.0;
/// What a triangle that was sharp to begin with, as in the point of a wing cut sharp, must keep of its corner's tangent.
const KEPT_OF_SHARP: f64 = 0.9;
/// How many times longer or shorter an edge may become. Nine of ten edges of a new preview are 0.70 to 1.46 times as long as
/// the size field asks; moved ones should not stand out from them.
const STRETCH: f64 = 1.4;

/// Why a mesh can't go along; a new one is then made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unmoved {
    /// The boundaries are others than the mesh's: more or fewer of them, or made of other pieces.
    OtherBoundaries,
    /// A chord would leave its curve by more than [`boundary_tolerance_mm`].
    Stray {
        /// How far.
        stray_mm: f64,
    },
    /// A triangle would get a corner sharper than 20 degrees, or than it was where that is sharper.
    Sharp {
        /// Its tangent.
        tangent: f64,
    },
    /// An edge would become more than 1.4 times longer or shorter than it was made.
    Stretched {
        /// Its length over what it was.
        ratio: f64,
    },
}

/// A mesh as it was made, with what moving it takes.
#[derive(Clone, Debug)]
pub struct MovableMesh {
    made: PlanMesh,
    anchors: Anchors,
    harmonic: Harmonic,
    /// Whether one half was meshed and mirrored.
    is_symmetric: bool,
    /// (triangle) tangent of the sharpest corner it may get.
    sharpest: Vec<f64>,
}

impl MovableMesh {
    /// Takes a mesh with the boundaries that it was made for.
    #[must_use]
    pub fn new(made: PlanMesh, outline: &Outline, holes: &[SoundHole]) -> Self {
        let limit = SHARPEST_DEG.to_radians().tan();
        let sharpest =
            sharpest_tangents(&made).map(|own| if own < limit { KEPT_OF_SHARP * own } else { limit }).collect();
        Self {
            anchors: Anchors::of(&made, &curves(outline, holes)),
            harmonic: Harmonic::of(&made),
            is_symmetric: is_symmetric(outline, holes),
            sharpest,
            made,
        }
    }

    /// The same triangles on other boundaries. A top whose sides mirrored each other, and still do, keeps an exactly symmetric mesh.
    ///
    /// # Errors
    /// [`Unmoved`] where the mesh would no longer be as good as one made for these boundaries.
    pub fn moved(&self, outline: &Outline, holes: &[SoundHole]) -> Result<PlanMesh, Unmoved> {
        let curves = curves(outline, holes);
        if !self.anchors.hold_on(&curves) {
            return Err(Unmoved::OtherBoundaries);
        }
        let stray_mm = self.anchors.stray_mm(&curves);
        if stray_mm > boundary_tolerance_mm(outline.length_mm()) {
            return Err(Unmoved::Stray { stray_mm });
        }
        let made = &self.made.points_mm;
        let mut shifts = vec![[0.0; 2]; made.len()];
        for (node, place) in self.anchors.laid(&curves) {
            shifts[node as usize] = sub(place, made[node as usize]);
        }
        self.harmonic.fill(&mut shifts);
        let points_mm = made.iter().zip(&shifts).map(|(&p, &shift)| add(p, shift)).collect();
        let mut mesh = PlanMesh { points_mm, ..self.made.clone() };
        if self.is_symmetric && is_symmetric(outline, holes) {
            self.mirror(&mut mesh.points_mm);
        }
        self.check(&mesh)?;
        Ok(mesh)
    }

    /// The mesh as it was made.
    #[cfg(test)]
    pub(super) fn made(&self) -> &PlanMesh {
        &self.made
    }

    /// Takes rounding out of what must be symmetric.
    fn mirror(&self, points_mm: &mut [Point]) {
        let on_centreline = points_mm.iter_mut().zip(&self.made.points_mm).filter(|(_, made)| made[0] == 0.0);
        on_centreline.for_each(|(p, _)| p[0] = 0.0);
        for (node, image) in self.made.images() {
            points_mm[image] = mirrored(points_mm[node]);
        }
    }

    fn check(&self, mesh: &PlanMesh) -> Result<(), Unmoved> {
        let mut ratios = mesh.edge_lengths_mm().zip(self.made.edge_lengths_mm()).map(|(now, made)| now / made);
        if let Some(ratio) = ratios.find(|ratio| !(1.0 / STRETCH..=STRETCH).contains(ratio)) {
            return Err(Unmoved::Stretched { ratio });
        }
        let mut corners = sharpest_tangents(mesh).zip(&self.sharpest);
        corners.find(|(own, least)| own < *least).map_or(Ok(()), |(tangent, _)| Err(Unmoved::Sharp { tangent }))
    }
}

/// (triangle): the tangent of its sharpest corner, not positive where it is turned over. Tangents rise with the angle up to a right
/// one, and no sharpest corner is blunt.
fn sharpest_tangents(mesh: &PlanMesh) -> impl Iterator<Item = f64> {
    mesh.triangles.iter().map(|triangle| {
        let p = triangle.map(|node| mesh.points_mm[node as usize]);
        let mut least = f64::INFINITY;
        for i in 0..3 {
            let (u, v) = (sub(p[(i + 1) % 3], p[i]), sub(p[(i + 2) % 3], p[i]));
            let (across, on) = (cross(u, v), dot(u, v));
            if on > 0.0 && across < least * on {
                least = across / on;
            }
        }
        least
    })
}
