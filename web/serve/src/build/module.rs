//! The wasm modules the page is made of.

/// One wasm module: the web crate compiled with one of its features.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Module {
    /// The solver, run in the worker.
    Compute,
    /// The reader of measured files, run in a worker of its own when there is one to be read.
    Measured,
    /// The view for browsers with WebGPU.
    ViewWebGpu,
    /// The view for the others; some ten times larger, hence a module of its own.
    ViewWebGl2,
}

impl Module {
    /// Every module. The slowest to compile comes first, so that its optimisation overlaps the others' compilation.
    pub const ALL: [Module; 4] = [Module::ViewWebGl2, Module::ViewWebGpu, Module::Compute, Module::Measured];

    /// The module's file name without its ending.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Module::Compute => "compute",
            Module::Measured => "measured",
            Module::ViewWebGpu => "view_webgpu",
            Module::ViewWebGl2 => "view_webgl2",
        }
    }

    /// The feature of the web crate that selects the module.
    #[must_use]
    pub fn feature(self) -> &'static str {
        match self {
            Module::Compute => "compute",
            Module::Measured => "measured",
            Module::ViewWebGpu => "view-webgpu",
            Module::ViewWebGl2 => "view-webgl2",
        }
    }

    /// The cargo profile: see the workspace's manifest for what each trades.
    pub(crate) fn profile(self) -> &'static str {
        match self {
            Module::Compute | Module::Measured => "wasm",
            Module::ViewWebGpu | Module::ViewWebGl2 => "wasm-view",
        }
    }

    /// What the optimiser aims for: the solver is waited for while it runs, the views while they are downloaded.
    pub(crate) fn optimiser_level(self) -> &'static str {
        match self {
            Module::Compute | Module::Measured => "-O3",
            Module::ViewWebGpu | Module::ViewWebGl2 => "-Oz",
        }
    }
}
