//! The wood: its regions, its thickness, and thicknesses that give a mass.

use bombatura_core::design::Design;
use bombatura_core::drawings::{closed, contour_on_plan, region_on_plan};
use bombatura_core::inside::{BarLine, Body, RegionWood, ThicknessContour, thickness_contours, uniform_change_mm};
use bombatura_core::measured::{ImportError, LengthUnit, read_csv};
use bombatura_core::mesh::{MeshSize, PlanMesh};
use bombatura_core::plan::Point;
use bombatura_core::regions::Throat;
use bombatura_core::sound_holes::SoundHole;
use bombatura_core::top::{Shape, TopError};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::{DrawingBoard, checked, measured::text};
use crate::page_values::{to_page, with_arrays};
use crate::problem::Problem;

/// Between lines of equal thickness, mm.
const CONTOUR_STEP_MM: f64 = 0.2;
/// Between the places of the map, mm: finer than a brush or a calliper.
const MAP_STEP_MM: f64 = 1.5;

/// One region of the top, or the strip under the bar.
#[derive(Serialize)]
struct RegionReply {
    key: &'static str,
    /// SVG path on the plan's sheet.
    path: String,
    area_mm2: f64,
    mass_g: f64,
    mean_thickness_mm: f64,
    narrowest_mm: Option<f64>,
    /// SVG path of the line along which it is narrowest.
    narrowest_path: Option<String>,
}

impl RegionReply {
    fn new(key: &'static str, path: String, area_mm2: f64, wood: RegionWood) -> RegionReply {
        let RegionWood { mass_g, mean_thickness_mm } = wood;
        RegionReply { key, path, area_mm2, mass_g, mean_thickness_mm, narrowest_mm: None, narrowest_path: None }
    }
}

/// The slot between a wing's point and the stem.
#[derive(Serialize)]
struct ThroatReply {
    /// Of the wing.
    key: &'static str,
    width_mm: f64,
}

#[derive(Serialize)]
struct RegionsReply {
    regions: Vec<RegionReply>,
    throats: Vec<ThroatReply>,
}

#[derive(Serialize)]
struct ContourReply {
    thickness_mm: f64,
    path: String,
    /// Where its number has room, on the sheet.
    number_at: Option<[f64; 2]>,
}

/// Thickness over the plan; the page gets it with `values`, (row, column) mm, NaN off the wood.
#[derive(Serialize)]
struct ThicknessReply {
    /// The first column's u and the first row's v on the plan's sheet.
    low: [f64; 2],
    step_mm: f64,
    columns: usize,
    thinnest_mm: f64,
    thickest_mm: f64,
    contours: Vec<ContourReply>,
    mass_g: f64,
    density_kg_m3: f64,
    /// SVG path of the edge and the holes.
    edges: String,
}

#[derive(Serialize)]
struct ChangeReply {
    change_mm: f64,
    design: String,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// The regions of the top and the strip under its bar, and how far the wings' points are from the stem:
    /// `{ regions: [{ key, path, area_mm2, mass_g, mean_thickness_mm, narrowest_mm?, narrowest_path? }], throats: [{ key, width_mm }] }`.
    ///
    /// # Errors
    /// Wood that can't be.
    pub fn regions(&self) -> Result<JsValue, Box<Problem>> {
        let Shape { surface, graduation, .. } = &self.shape;
        let density = self.density_kg_m3()?;
        let found = self.regions_of_top();
        let mut replies: Vec<RegionReply> = Vec::new();
        for region in &found.regions {
            let wood = RegionWood::of(region, surface, graduation, density);
            replies.push(RegionReply {
                narrowest_mm: region.narrowest.map(|narrowest| narrowest.width_mm),
                narrowest_path: region.narrowest.map(|narrowest| closed(&narrowest.ends)),
                ..RegionReply::new(region.kind.key(), region_on_plan(region), region.area_mm2, wood)
            });
        }
        if let Some(bar) = &self.design.bar {
            let line = BarLine::under(bar, surface, graduation, density);
            replies.push(RegionReply::new("bar_line", closed(&line.polygon), line.area_mm2, line.wood));
        }
        let throat = |throat: &Throat| ThroatReply { key: throat.wing.key(), width_mm: throat.across.width_mm };
        let throats = found.throats.iter().map(throat).collect();
        Ok(to_page(&RegionsReply { regions: replies, throats }))
    }

    /// The thickness over the plan, with lines of equal thickness and the wood's mass: `{ low, step_mm, columns, values, thinnest_mm,
    /// thickest_mm, contours: [{ thickness_mm, path, number_at? }], mass_g, density_kg_m3, edges }`.
    ///
    /// # Errors
    /// Wood that can't be, or a top that can't be meshed.
    pub fn thickness(&self) -> Result<JsValue, Box<Problem>> {
        let Shape { outline, holes, surface, graduation } = &self.shape;
        let density_kg_m3 = self.density_kg_m3()?;
        let mesh = self.mesh()?;
        let (low, high) = outline.boundary().bounds_mm();
        let count = |axis: usize| ((high[axis] - low[axis]) / MAP_STEP_MM).ceil() as usize + 1;
        let (columns, rows) = (count(0), count(1));
        let mut values = vec![f32::NAN; columns * rows];
        let (mut thinnest_mm, mut thickest_mm) = (f64::INFINITY, f64::NEG_INFINITY);
        for (place, value) in values.iter_mut().enumerate() {
            // Rows go down the sheet, from the neck end.
            let along = |axis: usize, index: usize| low[axis] + MAP_STEP_MM * index as f64;
            let p = [along(0, place % columns), high[1] - MAP_STEP_MM * (place / columns) as f64];
            if outline.contains(p) {
                let thickness = graduation.thickness_mm(p);
                (thinnest_mm, thickest_mm) = (thinnest_mm.min(thickness), thickest_mm.max(thickness));
                *value = thickness as f32;
            }
        }
        let contours = thickness_contours(&mesh, graduation, CONTOUR_STEP_MM);
        let contour = |line: &ThicknessContour| ContourReply {
            thickness_mm: line.thickness_mm,
            path: contour_on_plan(line),
            number_at: place_of_number(line, &contours).map(|[x, y]| [x, -y]),
        };
        let edges = std::iter::once(outline.boundary()).chain(holes.iter().map(SoundHole::boundary));
        let reply = ThicknessReply {
            low: [low[0], -high[1]],
            step_mm: MAP_STEP_MM,
            columns,
            thinnest_mm,
            thickest_mm,
            contours: contours.iter().map(contour).collect(),
            mass_g: Body::new(&mesh, surface, graduation).mass_g(density_kg_m3),
            density_kg_m3,
            edges: edges.map(|boundary| closed(&boundary.polyline(0.05))).collect(),
        };
        Ok(with_arrays(to_page(&reply), [("values", &values)]))
    }

    /// The design with every thickness changed alike until the top's wood weighs `mass_g`: `{ change_mm, design }`.
    ///
    /// # Errors
    /// A mass that can't be reached so.
    pub fn to_mass(&self, mass_g: f64) -> Result<JsValue, Box<Problem>> {
        let Shape { surface, graduation, .. } = &self.shape;
        let mesh = self.mesh()?;
        let change_mm =
            uniform_change_mm(&mesh, surface, graduation, self.density_kg_m3()?, mass_g).map_err(|error| {
                let message = format!("The mass can't be reached by changing every thickness alike: {error}.");
                Problem::said("mass_out_of_reach", message)
            })?;
        let graduation = self.design.graduation.thicker_by(change_mm);
        let design = checked(&Design { graduation, ..self.design.clone() })?;
        Ok(to_page(&ChangeReply { change_mm, design }))
    }

    /// The design with the thicknesses of a table (x, y, thickness) for its map.
    ///
    /// # Errors
    /// What is wrong with the table, or with the thicknesses in it.
    pub fn with_thicknesses(&self, file: &[u8]) -> Result<String, Box<Problem>> {
        let readings = read_csv(text(file)?, &self.shape.outline, LengthUnit::Millimetre).map_err(ImportError::from)?;
        let mut design = self.design.clone();
        design.graduation.measure(&readings);
        Ok(checked(&design)?)
    }

    fn density_kg_m3(&self) -> Result<f64, Box<Problem>> {
        Ok(self.design.wood.wood().map_err(TopError::from)?.density_kg_m3)
    }

    /// As fine as what the page gives its mass from.
    fn mesh(&self) -> Result<PlanMesh, Box<Problem>> {
        let Shape { outline, holes, .. } = &self.shape;
        Ok(PlanMesh::new(outline, holes, MeshSize::Standard).map_err(TopError::from)?)
    }
}

/// A number stands at least this far from other lines, mm: as high as it is written.
const ROOM_MM: f64 = 5.0;

/// The place of a line that is farthest from all others; none where they are too near everywhere.
fn place_of_number(line: &ThicknessContour, all: &[ThicknessContour]) -> Option<Point> {
    let others = || all.iter().filter(|other| !std::ptr::eq(*other, line)).flat_map(|other| &other.points);
    let room = |p: Point| others().map(|q| (p[0] - q[0]).hypot(p[1] - q[1])).fold(f64::INFINITY, f64::min);
    // A line is a point each few millimetres: every third is near enough to the best.
    let roomiest = line.points.iter().step_by(3).map(|&p| (room(p), p)).max_by(|a, b| a.0.total_cmp(&b.0));
    roomiest.filter(|(room, _)| *room > ROOM_MM).map(|(_, p)| p)
}
