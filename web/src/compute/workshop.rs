//! The class that the compute worker owns.

use bombatura_core::design::Design;
use bombatura_core::mesh::MeshSize;
use bombatura_core::modes::ModesRequest;
use bombatura_core::top::{Stages, kin};
use wasm_bindgen::prelude::*;

use crate::problem::Problem;

use super::arrays::{mode_object, picture_object};
use super::refusals::{unknown_mode, unknown_size};
use super::replies::{ModeList, Surety};

/// One design at work. Whatever was computed is kept until the design changes under it, so that asking again costs
/// little. Problems are thrown as plain objects `{kind, message, path?, value?, limits?, remedy?}`.
#[wasm_bindgen]
#[derive(Debug)]
pub struct Workshop {
    stages: Stages,
    solved: Option<(MeshSize, ModesRequest)>,
    followed: Option<(MeshSize, usize)>,
}

#[wasm_bindgen]
impl Workshop {
    /// A workshop with the demonstration design on the bench.
    #[wasm_bindgen(constructor)]
    #[must_use]
    #[expect(clippy::new_without_default, reason = "made by JavaScript's `new` only")]
    pub fn new() -> Workshop {
        console_error_panic_hook::set_once();
        Workshop { stages: Stages::demo(), solved: None, followed: None }
    }

    /// The demonstration design as JSON.
    #[must_use]
    pub fn demo_design() -> String {
        Design::DEMO_JSON.into()
    }

    /// Puts the design of a JSON document on the bench.
    ///
    /// # Errors
    /// What is wrong with the document or the measures in it; the previous design stays.
    pub fn open_design(&mut self, json: &str) -> Result<(), Box<Problem>> {
        Ok(self.stages.open(json)?)
    }

    /// The top as triangles on the "preview", "standard" or "fine" mesh, or on the one of that size that [`Workshop::follow`] moves
    /// along: `{ positions, normals, triangles, kinds, nodes, mass_g }`, lengths in mm.
    ///
    /// # Errors
    /// An unknown size, or a top that can't be meshed.
    pub fn picture(&mut self, size: &str, followed: bool) -> Result<JsValue, Box<Problem>> {
        let (size, stages) = (mesh_size(size)?, &mut self.stages);
        let (plan, carved) = if followed { stages.followed_carved(size)? } else { stages.carved(size)? };
        let (nodes, mass_g) = (plan.mesh.points_mm.len(), carved.mass_g());
        let picture = if followed { stages.followed_picture(size)? } else { stages.picture(size)? };
        Ok(picture_object(picture, nodes, mass_g))
    }

    /// Solves for the lowest `count` elastic modes, proven complete:
    /// `{ modes: [{ number, name, frequency_hz, residual }], rigid_hz }`.
    ///
    /// # Errors
    /// An unknown size, a count that can't be had, or a top that can't be meshed or solved.
    pub fn solve(&mut self, size: &str, count: usize) -> Result<JsValue, Box<Problem>> {
        let size = mesh_size(size)?;
        let request = ModesRequest::lowest(count);
        let list = ModeList::from(self.stages.modes(size, &request)?);
        self.solved = Some((size, request));
        Ok(serde_wasm_bindgen::to_value(&list).unwrap_or_else(Into::into))
    }

    /// Follows the lowest `count` elastic modes from where they were when this was last asked for on the same size: quick
    /// while the design changes little by little, not proven complete. The form is that of [`Workshop::solve`], each mode with its
    /// `identity`, the number that goes on with its shape.
    ///
    /// # Errors
    /// What [`Workshop::solve`] reports.
    pub fn follow(&mut self, size: &str, count: usize) -> Result<JsValue, Box<Problem>> {
        let size = mesh_size(size)?;
        let list = ModeList::from(self.stages.follow(size, count)?);
        self.followed = Some((size, count));
        Ok(serde_wasm_bindgen::to_value(&list).unwrap_or_else(Into::into))
    }

    /// What tells the modes of the last [`Workshop::solve`] or, where they were `followed`, of the last [`Workshop::follow`] from each
    /// other on any mesh, of this design or another; empty before it.
    #[must_use]
    pub fn signatures(&self, followed: bool) -> Vec<f32> {
        let size = if followed { self.followed.map(|(size, _)| size) } else { self.solved.map(|(size, _)| size) };
        size.map_or_else(Vec::new, |size| self.stages.signatures(size, followed))
    }

    /// (mode of the last solve): which of the modes with `signatures` has its shape, from 1; 0 where none has.
    #[must_use]
    pub fn kin(&self, signatures: &[f32]) -> Vec<u32> {
        kin(&self.signatures(false), signatures)
            .into_iter()
            .map(|partner| partner.map_or(0, |mode| mode as u32 + 1))
            .collect()
    }

    /// What the last solve's frequencies are without the mesh's error, how sure that is, and how the wood damps each mode:
    /// (mode) `{ converged_hz?, mesh_hz?, wood_hz, wood_parts_pct, q }`.
    ///
    /// Cost: a solve on the fine mesh, where that isn't there yet.
    ///
    /// # Errors
    /// What [`Workshop::solve`] reports; none solved yet gives an empty list.
    pub fn surety(&mut self) -> Result<JsValue, Box<Problem>> {
        let mut sureties = Vec::new();
        if let Some((size, request)) = self.solved {
            let certainties = self.stages.certainty(size, &request)?;
            let dampings = self.stages.damping(size, &request)?;
            sureties
                .extend(certainties.iter().zip(&dampings).map(|(certainty, damping)| Surety::new(certainty, damping)));
        }
        Ok(serde_wasm_bindgen::to_value(&sureties).unwrap_or_else(Into::into))
    }

    /// How mode `mode`, 1 for the lowest, moves the vertices of the picture of the last solve or, where it was `followed`, of the
    /// last follow: `{ re, im, scale_mm_per_m }`, each field (vertex, [ux, uy, uz, nx, ny, nz]), the largest displacement 1 mm; the scale is
    /// what the shape of unit modal mass was multiplied by.
    ///
    /// Belongs to the design on the bench: where that has changed since, its modes are found again.
    ///
    /// # Errors
    /// A mode that there isn't, or what [`Workshop::solve`] reports.
    pub fn motion(&mut self, mode: usize, followed: bool) -> Result<JsValue, Box<Problem>> {
        let (size, index) = self.ready(mode, followed)?;
        let motion = self.stages.motion(size, index, followed);
        motion.map(|motion| mode_object(&motion)).ok_or_else(|| unknown_mode(mode, true))
    }

    /// (node): where the wood works in that mode, strain energy per volume over its mean.
    ///
    /// # Errors
    /// As for [`Workshop::motion`].
    pub fn strain_energy(&mut self, mode: usize, followed: bool) -> Result<Vec<f32>, Box<Problem>> {
        let (size, index) = self.ready(mode, followed)?;
        let energy = self.stages.strain_energy(size, index, followed).ok_or_else(|| unknown_mode(mode, true))?;
        Ok(energy.into_iter().map(|density| density as f32).collect())
    }
}

impl Workshop {
    /// Makes the picture and the modes of the last solve or follow, where they aren't there; their mesh and the mode's index.
    fn ready(&mut self, mode: usize, followed: bool) -> Result<(MeshSize, usize), Box<Problem>> {
        let size = match (followed, self.solved, self.followed) {
            (false, Some((size, request)), _) => {
                self.stages.picture(size)?;
                self.stages.modes(size, &request)?;
                size
            }
            (true, _, Some((size, count))) => {
                self.stages.followed_picture(size)?;
                self.stages.follow(size, count)?;
                size
            }
            _ => return Err(unknown_mode(mode, false)),
        };
        let index = mode.checked_sub(1).ok_or_else(|| unknown_mode(mode, true))?;
        Ok((size, index))
    }
}

fn mesh_size(word: &str) -> Result<MeshSize, Box<Problem>> {
    match word {
        "preview" => Ok(MeshSize::Preview),
        "standard" => Ok(MeshSize::Standard),
        "fine" => Ok(MeshSize::Fine),
        _ => Err(unknown_size(word)),
    }
}
