//! Flat arrays as JavaScript objects that can be handed over from the worker to the page.

use bombatura_core::top::{MotionField, Picture};
use js_sys::{Float32Array, Object, Reflect, Uint32Array};
use wasm_bindgen::JsValue;

/// `{ positions, normals, triangles, kinds, nodes, mass_g }`.
pub(super) fn picture_object(picture: &Picture, nodes: usize, mass_g: f64) -> JsValue {
    object([
        ("positions", Float32Array::from(picture.positions.as_slice()).into()),
        ("normals", Float32Array::from(picture.normals.as_slice()).into()),
        ("triangles", Uint32Array::from(picture.triangles.as_slice()).into()),
        ("kinds", Uint32Array::from(picture.kinds.as_slice()).into()),
        ("nodes", JsValue::from_f64(nodes as f64)),
        ("mass_g", JsValue::from_f64(mass_g)),
    ])
}

/// `{ re, im, scale_mm_per_m }` of a mode, whose places all move in step: im is zero.
pub(super) fn mode_object(motion: &MotionField) -> JsValue {
    let length = motion.values.len() as u32;
    object([
        ("re", Float32Array::from(motion.values.as_slice()).into()),
        ("im", Float32Array::new_with_length(length).into()),
        ("scale_mm_per_m", JsValue::from_f64(motion.scale_mm_per_m)),
    ])
}

fn object<const N: usize>(entries: [(&str, JsValue); N]) -> JsValue {
    let object = Object::new();
    for (key, value) in entries {
        // Setting a property of a fresh plain object cannot fail.
        let _ = Reflect::set(&object, &key.into(), &value);
    }
    object.into()
}
