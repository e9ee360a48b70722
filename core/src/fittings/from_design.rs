//! From a maker's measures to fittings in SI units.

use super::{Bar, BarWood, Block, ElasticRim, Fittings, PointMass, Post, Profile, Rib};
use crate::design::{BarMeasures, Design, OutlineMeasures, PlanPlace, PostMeasures, RibMeasures, Rim};
use crate::wood::WoodError;

const M_PER_MM: f64 = 1e-3;
const KG_PER_G: f64 = 1e-3;
const PA_PER_GPA: f64 = 1e9;

impl Fittings {
    /// What `design` fixes to its top. A rim that doesn't give way is a matter of supports, not of fittings.
    ///
    /// # Errors
    /// [`WoodError`] when the wood of bar or post cannot be.
    pub fn of_design(design: &Design) -> Result<Self, WoodError> {
        let masses = design
            .masses
            .iter()
            .map(|mass| PointMass { place_m: metres(&mass.place), mass_kg: mass.mass_g * KG_PER_G });
        Ok(Self {
            bar: design.bar.as_ref().map(bar).transpose()?,
            post: design.post.as_ref().map(post).transpose()?,
            rim: match &design.rim {
                Rim::Elastic(ribs) => Some(rim(ribs, &design.outline)),
                Rim::Free | Rim::Hinged | Rim::Clamped => None,
            },
            masses: masses.collect(),
        })
    }
}

fn metres(place: &PlanPlace) -> [f64; 2] {
    [place.across_mm * M_PER_MM, place.station_mm * M_PER_MM]
}

fn bar(measures: &BarMeasures) -> Result<Bar, WoodError> {
    let wood = measures.wood.wood()?;
    let (lower, upper) = (measures.lower_end.station_mm, measures.upper_end.station_mm);
    Ok(Bar {
        ends_m: [metres(&measures.lower_end), metres(&measures.upper_end)],
        width_m: measures.width_mm * M_PER_MM,
        profile: Profile {
            height_m: measures.height_mm * M_PER_MM,
            end_height_m: measures.end_height_mm * M_PER_MM,
            highest_share: (measures.highest_station_mm - lower) / (upper - lower),
        },
        wood: BarWood::of(&wood),
    })
}

fn post(measures: &PostMeasures) -> Result<Post, WoodError> {
    let wood = measures.wood.wood()?;
    Ok(Post::dowel(
        metres(&measures.place),
        measures.diameter_mm * M_PER_MM,
        measures.length_mm * M_PER_MM,
        wood.constants.e_l_gpa * PA_PER_GPA,
        wood.density_kg_m3,
    ))
}

fn rim(measures: &RibMeasures, outline: &OutlineMeasures) -> ElasticRim {
    let rib = Rib {
        height_m: measures.height_mm * M_PER_MM,
        thickness_m: measures.thickness_mm * M_PER_MM,
        lining_height_m: measures.lining_height_mm * M_PER_MM,
        lining_thickness_m: measures.lining_thickness_mm * M_PER_MM,
        across_pa: measures.across_gpa * PA_PER_GPA,
        shear_pa: measures.shear_gpa * PA_PER_GPA,
    };
    let block = |across_mm: f64, station_mm: f64, reach_mm: f64| Block {
        centre_m: metres(&PlanPlace { across_mm, station_mm }),
        reach_m: reach_mm * M_PER_MM,
    };
    let ends = [0.0, outline.length_mm].map(|station| block(0.0, station, measures.end_block_reach_mm));
    let corners = [&outline.lower_corner, &outline.upper_corner].into_iter().flat_map(|corner| {
        [-1.0, 1.0].map(|side| block(side * corner.reach_mm, corner.station_mm, measures.corner_block_reach_mm))
    });
    ElasticRim {
        stiffness: rib.stiffness(),
        blocks: ends.into_iter().chain(corners).collect(),
        block_factor: measures.block_factor,
    }
}
