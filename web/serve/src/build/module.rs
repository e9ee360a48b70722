//! The wasm modules the page is made of.

/// One wasm module: the web crate compiled with one of its features.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Module {
    /// The solver, run in a worker.
    Compute,
    /// The drawings, run in another.
    Board,
    /// What a force makes of a top, run in a third and loaded when it is asked for.
    Drive,
    /// The view for browsers with WebGPU.
    ViewWebGpu,
    /// The view for the others; some ten times larger, hence a module of its own.
    ViewWebGl2,
}

impl Module {
    /// Every module, in two lanes that are made side by side: linking a module keeps one core busy for most of a minute.
    pub const LANES: [&[Module]; 2] =
        [&[Module::ViewWebGl2, Module::ViewWebGpu, Module::Board], &[Module::Compute, Module::Drive]];

    /// The module's file name without its ending.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Module::Compute => "compute",
            Module::Board => "board",
            Module::Drive => "drive",
            Module::ViewWebGpu => "view_webgpu",
            Module::ViewWebGl2 => "view_webgl2",
        }
    }

    /// The feature of the web crate that selects the module.
    #[must_use]
    pub fn feature(self) -> &'static str {
        match self {
            Module::Compute => "compute",
            Module::Board => "board",
            Module::Drive => "drive",
            Module::ViewWebGpu => "view-webgpu",
            Module::ViewWebGl2 => "view-webgl2",
        }
    }

    /// The cargo profile: see the workspace's manifest for what each trades.
    pub(crate) fn profile(self) -> &'static str {
        match self {
            Module::Compute | Module::Board | Module::Drive => "wasm",
            Module::ViewWebGpu | Module::ViewWebGl2 => "wasm-view",
        }
    }

    /// What the optimiser aims for: solver and drawings are waited for while they run, the views while they are downloaded.
    /// The compiler has inlined what pays; more of it only makes the file larger (by a hundredth, at the same speed).
    pub(crate) fn optimiser_flags(self) -> &'static [&'static str] {
        match self {
            // A second round finds 1 kB of brotli more in what everybody waits for.
            Module::Compute => &["--no-inline=*", "-O3", "--simplify-globals-optimizing", "--dae-optimizing", "-O3"],
            Module::Board | Module::Drive => &["--no-inline=*", "-O3"],
            Module::ViewWebGpu | Module::ViewWebGl2 => &["-Oz"],
        }
    }
}
