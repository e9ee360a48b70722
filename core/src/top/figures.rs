//! What is told about the modes of a top beside frequency and shape.

use super::{Carved, Plan, Stages, TopError};
use crate::design::Design;
use crate::fittings::{Bare, Fittings};
use crate::mesh::MeshSize;
use crate::modes::{Certainty, Damping, ModesRequest, Sensitivity, certainty, damping, sensitivities};
use crate::shell::{ElementOptions, EnergySlopes, StrainEnergy};

impl Stages {
    /// (node): where the wood works in mode `mode`, counted from zero, of the last modes of `size`, those followed or else those
    /// solved: strain energy per volume over its mean. None before there are any. What is fixed to the wood stores its own share,
    /// which isn't counted.
    #[must_use]
    pub fn strain_energy(&self, size: MeshSize, mode: usize, followed: bool) -> Option<Vec<f64>> {
        let (_, on_mesh, modes) = self.last_modes(size, followed)?;
        let carved = on_mesh.carved.last()?;
        let wood = self.design().wood.wood().ok()?;
        let of = |shape| StrainEnergy::new(&carved.geometry, &wood, ElementOptions::default(), shape).over_mean();
        (mode < modes.count()).then(|| of(modes.shape(mode)))
    }

    /// (mode): how the wood damps each mode of [`Stages::modes`].
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn damping(&mut self, size: MeshSize, request: &ModesRequest) -> Result<Vec<Damping>, TopError> {
        let losses = self.design().wood.loss_factors();
        Ok(damping(self.slopes(size, request)?, &losses))
    }

    /// (mode): how each frequency follows wood and thickness.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn sensitivities(&mut self, size: MeshSize, request: &ModesRequest) -> Result<Vec<Sensitivity>, TopError> {
        Ok(sensitivities(self.slopes(size, request)?))
    }

    /// (mode): how sure each frequency is, by the fine mesh (which is itself judged by the standard one) and by the wood's scatter.
    ///
    /// Cost: a second solve, on the other mesh; kept like any other. The preview costs a tenth and won't do: errors on it are of
    /// either sign and say nothing of those on finer meshes.
    ///
    /// # Errors
    /// [`TopError`] of the stage that failed.
    pub fn certainty(&mut self, size: MeshSize, request: &ModesRequest) -> Result<Vec<Certainty>, TopError> {
        let other = match size {
            MeshSize::Preview | MeshSize::Standard => MeshSize::Fine,
            MeshSize::Fine => MeshSize::Standard,
        };
        // A few more, so that modes that change places at the end have their partners; those asked for are proven complete.
        let wider = ModesRequest { most: (request.most + 2).min(ModesRequest::LIMIT), prove: false, ..*request };
        let scatter = self.design().wood.scatter();
        let slopes = sensitivities(self.slopes(size, request)?);
        self.modes(other, &wider)?;
        let solved = |size: MeshSize| {
            let on = &self.sizes[size as usize];
            on.wood.carved.last().zip(on.modes.last()).map(|(carved, modes)| (&carved.geometry, modes))
        };
        let made = "both were solved just before";
        Ok(certainty(solved(size).expect(made), solved(other).expect(made), &slopes, &scatter))
    }

    fn slopes(&mut self, size: MeshSize, request: &ModesRequest) -> Result<&EnergySlopes, TopError> {
        self.modes(size, request)?;
        let design = &self.design;
        let on = &mut self.sizes[size as usize];
        let made = "all were made just before";
        let (plan, carved, modes) =
            (on.plan.last().expect(made), on.wood.carved.last().expect(made), on.modes.last().expect(made));
        on.slopes.get((on.wood.carved.number(), *request), || energy_slopes(design, plan, carved, &modes.shapes))
    }
}

/// How the energies of `shapes`, as many as there are whole ones, follow the wood of `design` and all that is fixed to it.
pub(crate) fn energy_slopes(
    design: &Design,
    plan: &Plan,
    carved: &Carved,
    shapes: &[f64],
) -> Result<EnergySlopes, TopError> {
    let (wood, fittings) = (design.wood.wood()?, Fittings::of_design(design)?);
    let (geometry, options) = (&carved.geometry, ElementOptions::default());
    let mut slopes = EnergySlopes::new(geometry, &wood, options, shapes)?;
    let bare = Bare { geometry, wood: &wood, equations: &plan.equations, options };
    fittings.add_slopes(&bare, &plan.mesh.rim_nodes, shapes, &mut slopes)?;
    Ok(slopes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;

    #[test]
    fn the_wood_works_in_modes_that_are_there() {
        let mut stages = Stages::new(Design::demo());
        let size = MeshSize::Preview;
        assert_eq!(stages.strain_energy(size, 0, false), None);
        stages.modes(size, &ModesRequest { prove: false, ..ModesRequest::lowest(2) }).unwrap();
        let nodes = stages.carved(size).unwrap().0.mesh.points_mm.len();
        let works = stages.strain_energy(size, 1, false).unwrap();
        assert_eq!(works.len(), nodes);
        assert!(works.iter().all(|density| *density > 0.0), "no part of a bent top is quite without strain");
        assert_eq!(stages.strain_energy(size, 2, false), None);
        assert_eq!(stages.strain_energy(size, 0, true), None);
    }

    #[test]
    fn figures_are_made_once_and_follow_the_design() {
        let mut stages = Stages::new(Design::demo());
        let request = ModesRequest::lowest(4);
        let before = stages.certainty(MeshSize::Preview, &request).unwrap();
        assert_eq!(before.len(), 4);
        stages.damping(MeshSize::Preview, &request).unwrap();
        stages.sensitivities(MeshSize::Preview, &request).unwrap();
        assert_eq!((stages.runs().slopes, stages.runs().modes), (1, 2));
        let mut thicker = Design::demo();
        thicker.graduation.centre_mm += 0.5;
        stages.set_design(thicker).unwrap();
        let after = stages.certainty(MeshSize::Preview, &request).unwrap();
        assert_eq!((stages.runs().slopes, stages.runs().modes), (2, 4));
        assert!(after[0].frequency_hz > before[0].frequency_hz);
    }
}
