//! Getting a graphics device for a canvas.

use wgpu::{
    Adapter, Backends, Device, DeviceDescriptor, Instance, InstanceDescriptor, Limits, Queue, RequestAdapterOptions,
    Surface, SurfaceTarget,
};

use crate::view::problem::ViewError;

/// The one backend of this build.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Backend {
    /// The contract's word for it.
    pub(crate) word: &'static str,
    /// As people write it.
    pub(crate) name: &'static str,
    backends: Backends,
}

/// The backend built in; with both features on, WebGPU.
pub(crate) const BACKEND: Backend = if cfg!(feature = "view-webgpu") {
    Backend { word: "webgpu", name: "WebGPU", backends: Backends::BROWSER_WEBGPU }
} else {
    Backend { word: "webgl2", name: "WebGL2", backends: Backends::GL }
};

/// A device with the surface that it draws on.
pub(crate) struct OpenDevice {
    pub(crate) surface: Surface<'static>,
    pub(crate) adapter: Adapter,
    pub(crate) device: Device,
    pub(crate) queue: Queue,
}

impl OpenDevice {
    /// Asks the browser for a device that can draw on `canvas`.
    ///
    /// # Errors
    /// [`ViewError::NoGpu`] with the browser's reason.
    pub(crate) async fn on(canvas: web_sys::HtmlCanvasElement) -> Result<Self, ViewError> {
        let instance = Instance::new(InstanceDescriptor {
            backends: BACKEND.backends,
            ..InstanceDescriptor::new_without_display_handle()
        });
        let surface = instance.create_surface(SurfaceTarget::Canvas(canvas)).map_err(no_gpu)?;
        let options = RequestAdapterOptions { compatible_surface: Some(&surface), ..RequestAdapterOptions::default() };
        let adapter = instance.request_adapter(&options).await.map_err(no_gpu)?;
        // Both backends are held to the smaller one's limits, so that what works on one works on the other; only the
        // size of the canvas follows the adapter.
        let required_limits = Limits::downlevel_webgl2_defaults().using_resolution(adapter.limits());
        let descriptor = DeviceDescriptor { label: Some("stage"), required_limits, ..DeviceDescriptor::default() };
        let (device, queue) = adapter.request_device(&descriptor).await.map_err(no_gpu)?;
        Ok(Self { surface, adapter, device, queue })
    }
}

fn no_gpu(error: impl std::fmt::Display) -> ViewError {
    ViewError::NoGpu { backend: BACKEND.name, reason: error.to_string().trim_end_matches('.').to_owned() }
}
