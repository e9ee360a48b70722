//! Replies as the page gets them: plain objects, and arrays beside what they hold.

use js_sys::{Float32Array, Reflect};
use serde::Serialize;
use wasm_bindgen::JsValue;

pub(crate) fn to_page(reply: &impl Serialize) -> JsValue {
    serde_wasm_bindgen::to_value(reply).unwrap_or_else(Into::into)
}

/// A fresh plain object with arrays beside what it holds.
pub(crate) fn with_arrays<const N: usize>(object: JsValue, arrays: [(&str, &[f32]); N]) -> JsValue {
    for (key, values) in arrays {
        // Setting a property of a fresh plain object cannot fail.
        let _ = Reflect::set(&object, &key.into(), &Float32Array::from(values));
    }
    object
}
