//! Figures of a mode.

use super::figure::{Figure, ModeWish};
use super::{LessonError, Reading};
use crate::mesh::MeshSize;
use crate::modes::{ModesRequest, Sensitivity};
use crate::regions::Regions;
use crate::shell::DOFS_PER_NODE;
use crate::top::{NodeMotion, RegionMotion, Stages, kin};
use crate::wood::Scatter;

/// Twist, X and ring are among the lowest of any free top.
const FOR_NAMES: usize = 12;
/// Beyond a number, so that its shape is found again where it has risen.
const BEYOND: usize = 6;
/// What a standard mesh leaves open where the fine one has no mode of the same shape, %: the most that a hinged top was off (DEVELOPERS.md).
const UNMATCHED_PCT: f64 = 2.7;
/// Relative to the mean of the wood's constants, per cent to share.
const SHARE: f64 = 0.01;

/// The figure of the mode that `wish` means, before and after; `then` where it is another mode after it.
pub(super) fn readings(
    figure: Figure,
    [first, last]: [&mut Stages; 2],
    wish: ModeWish,
    then: Option<ModeWish>,
) -> Result<[Reading; 2], LessonError> {
    let mut sought = Sought { wish, signature: None };
    let before = sought.reading(figure, first, "the top before the change")?;
    if let Some(wish) = then {
        sought = Sought { wish, signature: None };
    }
    Ok([before, sought.reading(figure, last, "the top after the change")?])
}

/// A mode that is found again on other meshes and tops.
struct Sought {
    wish: ModeWish,
    /// Of the mode where it was found first, if it has no name.
    signature: Option<Vec<f32>>,
}

impl Sought {
    fn request(&self) -> ModesRequest {
        ModesRequest::lowest(match self.wish {
            ModeWish::Named(_) => FOR_NAMES,
            ModeWish::Number(number) => number + BEYOND,
        })
    }

    fn find(&mut self, top: &mut Stages, size: MeshSize, which: &'static str) -> Result<usize, LessonError> {
        let request = self.request();
        let modes = top.modes(size, &request)?;
        let found = match self.wish {
            ModeWish::Named(name) => modes.names.iter().position(|own| *own == Some(name)),
            ModeWish::Number(number) => {
                let count = modes.count();
                let signatures = top.signatures(size, false);
                match &self.signature {
                    Some(own) => kin(own, &signatures)[0],
                    None => (number <= count).then(|| {
                        let length = signatures.len() / count;
                        self.signature = Some(signatures[(number - 1) * length..number * length].to_vec());
                        number - 1
                    }),
                }
            }
        };
        found.ok_or_else(|| LessonError::NoMode { mode: self.wish.to_string(), which })
    }

    fn reading(&mut self, figure: Figure, top: &mut Stages, which: &'static str) -> Result<Reading, LessonError> {
        let mode = self.find(top, MeshSize::Standard, which)?;
        let request = self.request();
        if figure == Figure::Frequency {
            let own = top.certainty(MeshSize::Standard, &request)?[mode];
            let slopes = top.sensitivities(MeshSize::Standard, &request)?[mode];
            let value = own.best_hz();
            let left_open = own.numerical_hz().unwrap_or(SHARE * UNMATCHED_PCT * value);
            let scatter = top.design().wood.scatter();
            let wood = by_wood(&slopes, &scatter);
            return Ok(Reading::new(
                value,
                wood.map(|share| share * value).collect(),
                [own.frequency_hz - value, left_open],
            ));
        }
        let standard = of_shape(figure, top, MeshSize::Standard, &request, mode)?;
        let mode = self.find(top, MeshSize::Fine, which)?;
        let fine = of_shape(figure, top, MeshSize::Fine, &request, mode)?;
        // A shape's own change with the wood is not worked out; a region's motion over the largest hardly has any.
        Ok(Reading::new(fine, Vec::new(), [standard - fine, (standard - fine).abs()]))
    }
}

/// What one standard deviation of each figure of the wood does to a frequency, as a share of it.
fn by_wood(slopes: &Sensitivity, scatter: &Scatter) -> impl Iterator<Item = f64> {
    let constants = slopes.by_constant.into_iter().zip(scatter.by_constant_pct).map(|(slope, pct)| slope * pct);
    constants.chain([slopes.by_density * scatter.density_pct]).map(|pct| SHARE * pct)
}

/// Island or wings in one of the modes of `request`, per cent of the largest motion.
fn of_shape(
    figure: Figure,
    top: &mut Stages,
    size: MeshSize,
    request: &ModesRequest,
    mode: usize,
) -> Result<f64, LessonError> {
    let shape = top.shape()?;
    let regions = Regions::new(&shape.outline, &shape.holes);
    let (plan, carved) = top.carved(size)?;
    let (points, normals) = (plan.mesh.points_mm.clone(), carved.geometry.node_normals());
    let volumes = carved.geometry.node_volumes_m3();
    let shape = top.modes(size, request)?.shape(mode);
    let nodes: Vec<NodeMotion> = shape
        .chunks_exact(DOFS_PER_NODE)
        .enumerate()
        .map(|(node, u)| NodeMotion {
            place: points[node],
            mass: volumes[node],
            outward: [(0..3).map(|axis| u[axis] * normals[node][axis]).sum(), 0.0],
            squared: u[..3].iter().map(|part| part * part).sum(),
        })
        .collect();
    let largest = nodes.iter().map(|node| node.squared).fold(0.0, f64::max).sqrt();
    let motion = RegionMotion::new(&regions, &nodes);
    let there = || regions.regions.iter().map(|region| region.kind.key()).collect::<Vec<_>>().join(", ");
    let none = |region: &str| LessonError::NoRegion { region: region.to_owned(), there: there() };
    let moved = if figure == Figure::IslandLift {
        motion.island_lift.map(|[re, _]| re.abs()).ok_or_else(|| none("island"))?
    } else {
        let flaps = motion.flaps.iter().map(|(_, [re, _])| re.abs());
        flaps.reduce(f64::max).ok_or_else(|| none("wings"))?
    };
    Ok(100.0 * moved / largest.max(f64::MIN_POSITIVE))
}
