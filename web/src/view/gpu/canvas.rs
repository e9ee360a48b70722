//! The canvas as something to draw on: its format, size, and the multisampled colour and depth behind it.

use wgpu::{
    CurrentSurfaceTexture, Device, Extent3d, Surface, SurfaceConfiguration, SurfaceTexture, TextureDescriptor,
    TextureDimension, TextureFormat, TextureUsages, TextureView, TextureViewDescriptor,
};

use super::device::BACKEND;
use crate::view::problem::ViewError;

/// Samples a pixel: the most that every device offers.
pub(crate) const SAMPLES: u32 = 4;
/// Depth format that every device offers with multisampling.
pub(crate) const DEPTH: TextureFormat = TextureFormat::Depth24Plus;

/// The canvas of one stage. While it has no area there are no targets and nothing can be drawn.
pub(crate) struct Canvas {
    surface: Surface<'static>,
    configuration: SurfaceConfiguration,
    largest_side: u32,
    targets: Option<Targets>,
}

struct Targets {
    colour: TextureView,
    depth: TextureView,
}

/// One frame's worth of canvas.
pub(crate) struct FrameTarget<'a> {
    pub(crate) texture: SurfaceTexture,
    /// View of the canvas that the samples are resolved to.
    pub(crate) resolved: TextureView,
    pub(crate) colour: &'a TextureView,
    pub(crate) depth: &'a TextureView,
}

impl Canvas {
    /// Takes a surface; no size yet.
    ///
    /// # Errors
    /// [`ViewError::NoGpu`] if the device offers no format for the canvas.
    pub(crate) fn new(surface: Surface<'static>, adapter: &wgpu::Adapter, device: &Device) -> Result<Self, ViewError> {
        let no_format = || ViewError::NoGpu {
            backend: BACKEND.name,
            reason: "it offers no 8 bit colour format for this canvas".to_owned(),
        };
        let mut configuration = surface.get_default_config(adapter, 1, 1).ok_or_else(no_format)?;
        // Of a format and its sRGB twin the plain one is taken and the shader encodes. The twin would do it in the
        // device, but WebGPU's canvas has none, and a resolve into an sRGB view of it stores linear light in software
        // WebGPU; this way both backends do the same sums.
        configuration.format = surface
            .get_capabilities(adapter)
            .formats
            .into_iter()
            .find(|format| matches!(format, TextureFormat::Rgba8Unorm | TextureFormat::Bgra8Unorm))
            .ok_or_else(no_format)?;
        let largest_side = device.limits().max_texture_dimension_2d;
        Ok(Self { surface, configuration, largest_side, targets: None })
    }

    /// The format drawn in: plain, so what is written are sRGB codes.
    pub(crate) const fn format(&self) -> TextureFormat {
        self.configuration.format
    }

    /// Takes a new size in pixels and gives the size drawn: a side beyond the device's limit shrinks both, so that the
    /// picture keeps its shape; a size without area stops drawing and is given as None.
    pub(crate) fn resize(&mut self, device: &Device, width_px: u32, height_px: u32) -> Option<[u32; 2]> {
        if width_px == 0 || height_px == 0 {
            self.targets = None;
            return None;
        }
        let shrink = (f64::from(self.largest_side) / f64::from(width_px.max(height_px))).min(1.0);
        let size = [width_px, height_px].map(|side| ((f64::from(side) * shrink) as u32).max(1));
        if self.targets.is_none() || size != [self.configuration.width, self.configuration.height] {
            [self.configuration.width, self.configuration.height] = size;
            self.configure(device);
        }
        Some(size)
    }

    fn configure(&mut self, device: &Device) {
        self.surface.configure(device, &self.configuration);
        let [width, height] = [self.configuration.width, self.configuration.height];
        let target = |format| {
            let descriptor = TextureDescriptor {
                label: Some("canvas samples"),
                size: Extent3d { width, height, depth_or_array_layers: 1 },
                mip_level_count: 1,
                sample_count: SAMPLES,
                dimension: TextureDimension::D2,
                format,
                usage: TextureUsages::RENDER_ATTACHMENT,
                view_formats: &[],
            };
            device.create_texture(&descriptor).create_view(&TextureViewDescriptor::default())
        };
        self.targets = Some(Targets { colour: target(self.configuration.format), depth: target(DEPTH) });
    }

    /// The canvas for the next frame; None while there is none to draw on (no area, hidden page).
    ///
    /// # Errors
    /// [`ViewError::Lost`] if the canvas can no longer be drawn on.
    pub(crate) fn next_frame(&mut self, device: &Device) -> Result<Option<FrameTarget<'_>>, ViewError> {
        if self.targets.is_none() {
            return Ok(None);
        }
        let mut current = self.surface.get_current_texture();
        if matches!(current, CurrentSurfaceTexture::Outdated) {
            self.configure(device);
            current = self.surface.get_current_texture();
        }
        let texture = match current {
            CurrentSurfaceTexture::Success(texture) | CurrentSurfaceTexture::Suboptimal(texture) => texture,
            CurrentSurfaceTexture::Timeout | CurrentSurfaceTexture::Occluded => return Ok(None),
            CurrentSurfaceTexture::Outdated | CurrentSurfaceTexture::Lost | CurrentSurfaceTexture::Validation => {
                return Err(ViewError::Lost { reason: "the canvas can no longer be drawn on".to_owned() });
            }
        };
        let resolved = texture.texture.create_view(&TextureViewDescriptor::default());
        Ok(self.targets.as_ref().map(|targets| FrameTarget {
            texture,
            resolved,
            colour: &targets.colour,
            depth: &targets.depth,
        }))
    }
}
