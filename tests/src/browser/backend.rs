//! What a browser is given to draw with, and the Chromium switches that give it.

/// What Chromium is allowed to draw with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Backend {
    /// WebGPU, in software.
    WebGpu,
    /// WebGL 2, in software, and no WebGPU.
    WebGl2,
    /// Neither of them.
    Nothing,
}

/// Always: no sandbox, because CI runs as root, and nothing that talks to the network on its own.
const QUIET: [&str; 7] = [
    "--headless",
    "--no-sandbox",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

/// Only together: with fewer of these the device is lost at its first frame, without an error and with a blank canvas.
const SOFTWARE_WEBGPU: [&str; 5] = [
    "--enable-unsafe-webgpu",
    "--use-webgpu-adapter=swiftshader",
    "--enable-features=Vulkan",
    "--use-vulkan=swiftshader",
    "--use-angle=swiftshader",
];

/// WebGL off, and WebGPU with it.
const NO_DRAWING: [&str; 2] = ["--disable-gpu", "--disable-3d-apis"];

impl Backend {
    /// The two that draw.
    pub const DRAWING: [Backend; 2] = [Backend::WebGpu, Backend::WebGl2];

    /// The word that the page and file names use.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Backend::WebGpu => "webgpu",
            Backend::WebGl2 => "webgl2",
            Backend::Nothing => "none",
        }
    }

    /// Chromium's switches.
    pub(super) fn switches(self) -> Vec<&'static str> {
        let own: &[&str] = match self {
            Backend::WebGpu => &SOFTWARE_WEBGPU,
            Backend::WebGl2 => &[],
            Backend::Nothing => &NO_DRAWING,
        };
        QUIET.iter().chain(own).copied().collect()
    }
}
