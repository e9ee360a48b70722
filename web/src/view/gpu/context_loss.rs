//! WebGL2's own sign of loss: an event on the canvas, which the backend does not pass on. On WebGPU it never comes.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::HtmlCanvasElement;

use super::loss::Loss;

const EVENT: &str = "webglcontextlost";

/// Listens as long as it lives.
pub(crate) struct ContextLoss {
    canvas: HtmlCanvasElement,
    listener: Closure<dyn FnMut()>,
}

impl ContextLoss {
    /// Reports to `loss` when `canvas` loses its context.
    pub(crate) fn watch(canvas: HtmlCanvasElement, loss: Loss) -> Self {
        let listener = Closure::new(move || {
            loss.report("the browser took the canvas's WebGL2 context back");
        });
        // Adding a listener fails for no event name and function.
        let _ = canvas.add_event_listener_with_callback(EVENT, listener.as_ref().unchecked_ref());
        Self { canvas, listener }
    }
}

impl Drop for ContextLoss {
    fn drop(&mut self) {
        let _ = self.canvas.remove_event_listener_with_callback(EVENT, self.listener.as_ref().unchecked_ref());
    }
}
