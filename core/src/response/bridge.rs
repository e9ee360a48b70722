//! The bridge: a force at its top becomes forces on its two feet.

use nalgebra::{Matrix3, Vector3};

use super::{Complex, ModalBasis, Patch, Port, Resonators, ResponseError, RockingHead, ShellSurface};
use crate::statics::PointLoad;

/// A bridge standing on two feet, stiff or rocking at its waist; x runs from the bass foot to the treble foot, z outwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bridge {
    /// From the feet to where the strings press, m.
    pub height_m: f64,
    /// From the middle of one foot to that of the other, m.
    pub feet_apart_m: f64,
    /// A foot across the top and along it, m.
    pub foot_m: [f64; 2],
    /// Mass, kg; zero for a bridge that only leads the force on.
    pub mass_kg: f64,
    /// Height of its centre of mass over the feet, m.
    pub centre_height_m: f64,
    /// Moment of inertia about the axis through its centre of mass along the strings, kg·m².
    pub inertia_kg_m2: f64,
    /// Its upper half, where that rocks on the lower; none for a stiff bridge.
    pub head: Option<RockingHead>,
}

/// Where its feet stand.
#[derive(Debug, Clone, PartialEq)]
pub struct BridgeFeet {
    /// Bass, treble: a newton outwards (z), spread over the foot.
    pub outward: [Port; 2],
    /// A newton towards the treble side (x), half of it on each foot.
    pub sideways: Port,
}

/// Forces on the shell of a bridge's feet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FeetForces {
    /// Bass, treble: outwards, N.
    pub outward_n: [Complex; 2],
    /// Towards the treble side, on both feet together, N.
    pub sideways_n: Complex,
}

/// The loads that a bridge standing on `patches` (bass, treble) puts on a shell, each of one newton: outwards under the bass foot, outwards
/// under the treble foot, and towards the treble side, half under each.
///
/// They act on the mid-surface: half a thickness beside the wood's face, a twentieth of the bridge's height.
#[must_use]
pub fn unit_loads([bass, treble]: &[Patch; 2]) -> [Vec<PointLoad>; 3] {
    let loads = |patch: &Patch, force: [f64; 3]| -> Vec<PointLoad> {
        let load =
            |&(node, share): &(u32, f64)| PointLoad { node: node as usize, force_n: force.map(|part| part * share) };
        patch.iter().map(load).collect()
    };
    let (outwards, half_sideways) = ([0.0, 0.0, 1.0], [0.5, 0.0, 0.0]);
    let sideways = [loads(bass, half_sideways), loads(treble, half_sideways)].concat();
    [loads(bass, outwards), loads(treble, outwards), sideways]
}

impl BridgeFeet {
    /// The ports of feet on `patches` (bass, treble).
    ///
    /// # Errors
    /// [`ResponseError::NoSuchNode`] for patches of another surface.
    pub fn on(basis: &ModalBasis, patches: &[Patch; 2]) -> Result<Self, ResponseError> {
        let [bass, treble, sideways] = unit_loads(patches);
        let port = |loads: &[PointLoad]| Port::new(basis, loads);
        Ok(Self { outward: [port(&bass)?, port(&treble)?], sideways: port(&sideways)? })
    }

    /// The feet's forces at their ports, to move the shell with.
    #[must_use]
    pub fn loaded(&self, forces: &FeetForces) -> [(Complex, &Port); 3] {
        let [bass, treble] = &self.outward;
        let [bass_n, treble_n] = forces.outward_n;
        [(bass_n, bass), (treble_n, treble), (forces.sideways_n, &self.sideways)]
    }
}

impl Bridge {
    /// A violin's bridge, for a top whose stop (from the neck-end edge to the line the bridge stands on) is `stop_m`; all lengths
    /// go with the stop, the mass with its cube.
    ///
    /// For 195 mm of stop: 33 mm high, feet 12 mm by 4.5 mm (common practice, no source); 42 mm over all and 2.2 g (rows V-BRIDGE-W and
    /// V-BRIDGE-M of `tests/reference/violin.csv`, from memory), so that the feet's middles are 30 mm apart. The inertia is that of an even
    /// plate as wide and high as the bridge, its centre at 14 mm, since the upper half is narrow: an estimate.
    #[must_use]
    pub fn of_stop(stop_m: f64) -> Self {
        let scale = stop_m / 0.195;
        let (height_m, width_m, mass_kg) = (0.033 * scale, 0.042 * scale, 2.2e-3 * scale.powi(3));
        Self {
            height_m,
            feet_apart_m: 0.030 * scale,
            foot_m: [0.012 * scale, 0.0045 * scale],
            mass_kg,
            centre_height_m: 0.014 * scale,
            inertia_kg_m2: mass_kg * (height_m * height_m + width_m * width_m) / 12.0,
            head: None,
        }
    }

    /// The same with an upper half that rocks at `alone_hz` when the feet are held, see [`RockingHead::of`].
    ///
    /// # Errors
    /// [`ResponseError::Outside`] for a frequency outside 500 to 10 000 Hz.
    pub fn rocking(self, alone_hz: f64) -> Result<Self, ResponseError> {
        Ok(Self { head: Some(RockingHead::of(&self, alone_hz)?), ..self })
    }

    /// The same without mass, and so without anything that could swing by itself.
    #[must_use]
    pub fn weightless(self) -> Self {
        Self { mass_kg: 0.0, inertia_kg_m2: 0.0, head: None, ..self }
    }

    /// What bears each foot, bass and treble, of a bridge whose middle stands at `middle_m` in plan; none where a foot doesn't stand
    /// wholly on the wood.
    #[must_use]
    pub fn patches(&self, surface: &ShellSurface, [x, y]: [f64; 2]) -> Option<[Patch; 2]> {
        let under = |side: f64| surface.under_rectangle([x + side * 0.5 * self.feet_apart_m, y], self.foot_m);
        Some([under(-1.0)?, under(1.0)?])
    }

    /// Its feet on the surface of `basis`, its middle at `middle_m` in plan.
    ///
    /// # Errors
    /// [`ResponseError::OffTheSurface`] where a foot doesn't stand wholly on the wood.
    pub fn feet(&self, basis: &ModalBasis, middle_m: [f64; 2]) -> Result<BridgeFeet, ResponseError> {
        let patches = self.patches(basis.surface(), middle_m);
        BridgeFeet::on(basis, &patches.ok_or(ResponseError::OffTheSurface { place_m: middle_m })?)
    }

    /// Checks every measure.
    ///
    /// # Errors
    /// [`ResponseError::Outside`] naming the first out of its limits.
    pub fn check(&self) -> Result<(), ResponseError> {
        let lengths =
            [("the bridge's height in m", self.height_m), ("the distance of its feet in m", self.feet_apart_m)];
        lengths.iter().try_for_each(|&(what, value)| ResponseError::limit(what, value, 0.0, 1.0))?;
        let others = [
            ("the bridge's mass in kg", self.mass_kg),
            ("the height of its centre in m", self.centre_height_m),
            ("its inertia in kg m²", self.inertia_kg_m2),
        ];
        // None at all is fine.
        others.iter().try_for_each(|&(what, value)| ResponseError::limit(what, value, -f64::MIN_POSITIVE, 1.0))
    }

    /// What a force at the bridge's top, [x, z] in N, does to the shell when nothing has mass: F sideways on the feet together, and the
    /// couple F·H as a force of F·H/d, down on the treble foot and up on the bass foot for an F towards the treble side.
    #[must_use]
    pub fn weightless_forces(&self, [sideways_n, outward_n]: [Complex; 2]) -> FeetForces {
        self.on_feet([sideways_n, sideways_n * self.height_m, outward_n])
    }

    /// What a force of frequency `hz` at the bridge's top, [x, z] in N, does to the shell when the bridge's inertia takes its part.
    ///
    /// The bridge moves in its plane as the shell under its feet lets it: sideways u, turning θ, outwards w. With G the shell's
    /// receptance for those three and D the bridge's dynamic stiffness (−ω² times its inertia, and what a rocking head changes of it),
    /// x = G f and D x = Q − f, so that f = (1 + D G)⁻¹ Q (receptance coupling: Ewins 2000, Modal Testing, ch. 6; from memory). Cost:
    /// six receptances.
    #[must_use]
    pub fn forces(&self, feet: &BridgeFeet, resonators: &Resonators, at_top_n: [Complex; 2], hz: f64) -> FeetForces {
        let [sideways_n, outward_n] = at_top_n;
        let square = (std::f64::consts::TAU * hz).powi(2);
        let mut applied = Vector3::new(sideways_n, sideways_n * self.height_m, outward_n);
        let mut stiffness = self.inertia().map(|own| Complex::from(-square * own));
        if let Some(head) = &self.head {
            let swung = head.swung(square, sideways_n * (self.height_m - head.waist_height_m));
            stiffness += swung.stiffness;
            applied += swung.applied;
        }
        let ports = self.ports(feet);
        let receptance = Matrix3::from_fn(|i, j| resonators.receptance(&ports[i], &ports[j], hz));
        // Losses keep it from being singular; without any, at its own resonance, the forces have no limit.
        let forces = (Matrix3::identity() + stiffness * receptance).lu().solve(&applied).unwrap_or(applied);
        self.on_feet([forces[0], forces[1], forces[2]])
    }

    /// Sideways, turning (about y: the top of the bridge towards the treble side) and outwards: the shell's ports for a stiff bridge.
    fn ports(&self, BridgeFeet { outward: [bass, treble], sideways }: &BridgeFeet) -> [Port; 3] {
        let arm = 1.0 / self.feet_apart_m;
        [
            sideways.clone(),
            Port::combined(&[(arm, bass), (-arm, treble)]),
            Port::combined(&[(0.5, bass), (0.5, treble)]),
        ]
    }

    /// About the middle between the feet, for sideways, turning, outwards.
    pub(super) fn inertia(&self) -> Matrix3<f64> {
        let (mass, height) = (self.mass_kg, self.centre_height_m);
        let (coupled, turning) = (mass * height, self.inertia_kg_m2 + mass * height * height);
        Matrix3::new(mass, coupled, 0.0, coupled, turning, 0.0, 0.0, 0.0, mass)
    }

    /// Force sideways (N), couple (N·m) and force outwards (N) as forces on the feet.
    fn on_feet(&self, [sideways_n, couple, outward_n]: [Complex; 3]) -> FeetForces {
        let pair = couple / self.feet_apart_m;
        FeetForces { outward_n: [outward_n * 0.5 + pair, outward_n * 0.5 - pair], sideways_n }
    }
}
