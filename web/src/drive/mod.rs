//! The driven top's side: what a force of any frequency makes of one design.
//!
//! A module and a worker of its own, loaded when somebody first asks how the top answers a force: it solves for a hundred modes and more,
//! keeps them where they are summed, and hands the page nothing but motions and curves.

mod curves;
mod driven_top;
mod forces;
mod motions;
mod sounds;

pub use driven_top::DrivenTop;

use js_sys::{Float32Array, Object, Reflect};
use serde::Serialize;
use wasm_bindgen::JsValue;

fn to_page(reply: &impl Serialize) -> JsValue {
    serde_wasm_bindgen::to_value(reply).unwrap_or_else(Into::into)
}

/// `reply` with arrays beside what it holds.
fn with_arrays<const N: usize>(reply: &impl Serialize, arrays: [(&str, &[f32]); N]) -> JsValue {
    let object = to_page(reply);
    let object = if object.is_object() { object } else { Object::new().into() };
    for (key, values) in arrays {
        // Setting a property of a fresh plain object cannot fail.
        let _ = Reflect::set(&object, &key.into(), &Float32Array::from(values));
    }
    object
}
