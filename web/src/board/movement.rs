//! How the regions move in a motion that the page has.

use bombatura_core::regions::RegionKind;
use bombatura_core::top::{Amplitude, NodeMotion, RegionMotion};
use serde::Serialize;
use wasm_bindgen::prelude::*;

use super::DrawingBoard;
use crate::page_values::to_page;

#[derive(Serialize)]
struct Share {
    key: &'static str,
    share: f64,
}

#[derive(Serialize)]
struct Moved {
    key: &'static str,
    amplitude: Amplitude,
}

#[derive(Serialize)]
struct MovementReply {
    shares: Vec<Share>,
    island_lift: Option<Amplitude>,
    flaps: Vec<Moved>,
}

#[wasm_bindgen]
impl DrawingBoard {
    /// The regions in a motion: `{ shares: [{ key, share }], island_lift?, flaps: [{ key, amplitude }] }`, amplitudes [re, im] in the
    /// motion's unit. `nodes` (node, [x, y, volume]) mm and any unit, `re` and `im` (node, [outward, x, y, z]).
    #[must_use]
    pub fn movement(&self, nodes: &[f32], re: &[f32], im: &[f32]) -> JsValue {
        let moving: Vec<NodeMotion> =
            nodes.chunks_exact(3).zip(re.chunks_exact(4).zip(im.chunks_exact(4))).map(node_motion).collect();
        let RegionMotion { shares, island_lift, flaps } = RegionMotion::new(self.regions_of_top(), &moving);
        let moved = |(kind, amplitude): (RegionKind, Amplitude)| Moved { key: kind.key(), amplitude };
        to_page(&MovementReply {
            shares: shares.into_iter().map(|(kind, share)| Share { key: kind.key(), share }).collect(),
            island_lift,
            flaps: flaps.into_iter().map(moved).collect(),
        })
    }
}

fn node_motion((node, (re, im)): (&[f32], (&[f32], &[f32]))) -> NodeMotion {
    let [x, y, mass] = [0, 1, 2].map(|k| f64::from(node[k]));
    let outward = [re[0], im[0]].map(f64::from);
    let squared = re[1..].iter().chain(&im[1..]).map(|part| f64::from(*part).powi(2)).sum();
    NodeMotion { place: [x, y], mass, outward, squared }
}
