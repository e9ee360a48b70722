//! Whether the page still waits for what a worker is busy with.

use bombatura_core::patience::depends_on;
use js_sys::Function;
use wasm_bindgen::prelude::*;

/// From now on everything that takes long asks `wanted` now and then, and throws a problem of the kind `given_up` when it says no.
#[wasm_bindgen]
pub fn work_while(wanted: Function) {
    depends_on(move || wanted.call0(&JsValue::NULL).is_ok_and(|answer| answer.is_truthy()));
}
