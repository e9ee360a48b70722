//! How the regions of a top move in a motion: where its kinetic energy is, how far the island lifts, how far the wings flap.

use nalgebra::{Matrix3, Vector3};

use crate::plan::Point;
use crate::regions::{RegionKind, Regions};

/// What one node of a mesh does, in a motion Re[(re + i im) e^{i phase}] of any unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NodeMotion {
    /// In plan, mm.
    pub place: Point,
    /// Its share of the wood, in any unit.
    pub mass: f64,
    /// Displacement along the outward normal, real and imaginary part.
    pub outward: [f64; 2],
    /// Squared length of the displacement, both parts together.
    pub squared: f64,
}

/// A complex amplitude, real and imaginary part, in the motion's unit.
pub type Amplitude = [f64; 2];

/// The regions in one motion.
#[derive(Debug, Clone, PartialEq)]
pub struct RegionMotion {
    /// Share of the kinetic energy of each region, in the regions' order; they add up to one where anything moves.
    pub shares: Vec<(RegionKind, f64)>,
    /// Mean outward motion of the island, by mass; none without an island.
    pub island_lift: Option<Amplitude>,
    /// What each wing does beyond going along with the island: its outward motion, where this is largest, less that of the
    /// rigid motion (lift, rocking, tilt) that fits the island's best.
    pub flaps: Vec<(RegionKind, Amplitude)>,
}

impl RegionMotion {
    /// Of `nodes`, all on the wood of `regions`.
    ///
    /// Cost: for each node a look at every region's border.
    #[must_use]
    pub fn new(regions: &Regions, nodes: &[NodeMotion]) -> Self {
        let kinds: Vec<Option<RegionKind>> =
            nodes.iter().map(|node| regions.at(node.place).map(|region| region.kind)).collect();
        let of = |kind| nodes.iter().zip(&kinds).filter(move |(_, own)| **own == Some(kind)).map(|(node, _)| node);
        let energy = |node: &NodeMotion| node.mass * node.squared;
        let whole: f64 = nodes.iter().map(energy).sum();
        let share = |kind| if whole > 0.0 { of(kind).map(energy).sum::<f64>() / whole } else { 0.0 };
        let island = Rigid::fitted(of(RegionKind::Island));
        let flap = |kind| {
            let island = island?;
            let beyond = of(kind).map(|node| {
                let along = island.at(node.place);
                [0, 1].map(|part| node.outward[part] - along[part])
            });
            Some((kind, beyond.max_by(|a, b| size(*a).total_cmp(&size(*b)))?))
        };
        let kinds = || regions.regions.iter().map(|region| region.kind);
        let wings = kinds().filter(|kind| kind.is_wing());
        Self {
            shares: kinds().map(|kind| (kind, share(kind))).collect(),
            island_lift: island.map(|island| island.lift),
            flaps: wings.filter_map(flap).collect(),
        }
    }
}

fn size([re, im]: Amplitude) -> f64 {
    re.hypot(im)
}

/// A rigid motion across the plan: lift, and slopes across and along.
#[derive(Debug, Clone, Copy)]
struct Rigid {
    middle: Point,
    lift: Amplitude,
    slopes: [Amplitude; 2],
}

impl Rigid {
    /// The one that fits `nodes` best by their mass; none of fewer than three nodes, or of nodes in a line.
    fn fitted<'a>(nodes: impl Iterator<Item = &'a NodeMotion> + Clone) -> Option<Rigid> {
        let mass: f64 = nodes.clone().map(|node| node.mass).sum();
        let mean = |of: fn(&NodeMotion) -> f64| nodes.clone().map(|node| node.mass * of(node)).sum::<f64>() / mass;
        let middle = [mean(|node| node.place[0]), mean(|node| node.place[1])];
        // About the middle the lift is the mean, and the slopes follow alone.
        let mut moments = Matrix3::zeros();
        let mut sums = [Vector3::zeros(); 2];
        for node in nodes {
            let arm = Vector3::new(1.0, node.place[0] - middle[0], node.place[1] - middle[1]);
            moments += arm * arm.transpose() * node.mass;
            for (sum, outward) in sums.iter_mut().zip(node.outward) {
                *sum += arm * (node.mass * outward);
            }
        }
        let inverse = moments.try_inverse()?;
        let [re, im] = sums.map(|sum| inverse * sum);
        Some(Rigid { middle, lift: [re[0], im[0]], slopes: [[re[1], im[1]], [re[2], im[2]]] })
    }

    fn at(&self, p: Point) -> Amplitude {
        let arm = [p[0] - self.middle[0], p[1] - self.middle[1]];
        [0, 1].map(|part| self.lift[part] + self.slopes[0][part] * arm[0] + self.slopes[1][part] * arm[1])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::Design;
    use crate::mesh::{MeshSize, PlanMesh};
    use crate::top::Shape;

    /// The demonstration top's nodes, moving outwards as `outward` says of their places.
    fn moving(outward: impl Fn(Point) -> Amplitude) -> RegionMotion {
        let Shape { outline, holes, .. } = Shape::new(&Design::demo()).unwrap();
        let mesh = PlanMesh::new(&outline, &holes, MeshSize::Preview).unwrap();
        let node = |(at, &place): (usize, &Point)| {
            let outward = outward(place);
            NodeMotion { place, mass: 1.0 + (at % 3) as f64, outward, squared: size(outward).powi(2) }
        };
        let nodes: Vec<NodeMotion> = mesh.points_mm.iter().enumerate().map(node).collect();
        RegionMotion::new(&Regions::new(&outline, &holes), &nodes)
    }

    #[test]
    fn shares_add_up_to_one() {
        let shares = moving(|[x, y]| [(0.03 * x).sin() + 0.2, (0.02 * y).cos()]).shares;
        assert_eq!(shares.len(), 12);
        assert!((shares.iter().map(|(_, share)| share).sum::<f64>() - 1.0).abs() < 1e-12);
        assert!(shares.iter().all(|(_, share)| *share > 0.0), "{shares:?}");
    }

    /// A rigid motion takes the wings along: lift, rocking about the centreline and tilt, with any phases.
    #[test]
    fn wings_do_not_flap_in_a_rigid_motion() {
        let rigid = moving(|[x, y]| [0.7 + 0.004 * x - 0.002 * (y - 190.0), 0.1 - 0.003 * x]);
        assert_eq!(rigid.flaps.len(), 4);
        assert!(rigid.flaps.iter().all(|(_, flap)| size(*flap) < 1e-9), "{:?}", rigid.flaps);
        let lifted = moving(|_| [0.7, -0.2]);
        let lift = lifted.island_lift.unwrap();
        assert!((lift[0] - 0.7).abs() < 1e-12 && (lift[1] + 0.2).abs() < 1e-12, "{lift:?}");
    }

    /// Only one wing moves: it flaps by all of it, it has all the energy, and no other does.
    #[test]
    fn a_wing_that_moves_alone_flaps_alone() {
        let Shape { outline, holes, .. } = Shape::new(&Design::demo()).unwrap();
        let regions = Regions::new(&outline, &holes);
        let kind =
            regions.regions.iter().map(|region| region.kind).find(|kind| kind.key() == "upper_wing_treble").unwrap();
        let alone = moving(|p| [if regions.at(p).is_some_and(|region| region.kind == kind) { -0.4 } else { 0.0 }, 0.0]);
        for (own, [flap, _]) in alone.flaps {
            assert_eq!(flap, if own == kind { -0.4 } else { 0.0 }, "{}", own.key());
        }
        assert!(alone.shares.iter().all(|(own, share)| (share - f64::from(u8::from(*own == kind))).abs() < 1e-12));
    }

    #[test]
    fn at_rest_nothing_has_a_share() {
        let rest = moving(|_| [0.0; 2]);
        assert!(rest.shares.iter().all(|(_, share)| *share == 0.0));
        assert_eq!(rest.island_lift, Some([0.0; 2]));
    }
}
