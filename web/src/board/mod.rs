//! The drawing board's side: the drawings of one design, what its arching does and how it is changed, measured files read
//! into a design.
//!
//! A module and a worker of its own: the page loads it once the first figures are there, and a drawing never waits for a
//! solve.

mod arches;
mod drawing_board;
mod fittings;
mod holes;
mod measured;
mod movement;
mod places;
mod replies;
mod wood;

pub use drawing_board::DrawingBoard;
pub use measured::{read_heights, read_outline};

use bombatura_core::design::{Design, DesignError};
use js_sys::{Float32Array, Reflect};
use serde::Serialize;
use wasm_bindgen::JsValue;

fn to_page(reply: &impl Serialize) -> JsValue {
    serde_wasm_bindgen::to_value(reply).unwrap_or_else(Into::into)
}

/// The same with arrays beside what the reply holds.
fn to_page_with<const N: usize>(reply: &impl Serialize, arrays: [(&str, Vec<f32>); N]) -> JsValue {
    let object = to_page(reply);
    for (key, values) in arrays {
        // Setting a property of a fresh plain object cannot fail.
        let _ = Reflect::set(&object, &key.into(), &Float32Array::from(values.as_slice()));
    }
    object
}

fn checked(design: &Design) -> Result<String, DesignError> {
    design.check()?;
    Ok(design.to_json())
}
