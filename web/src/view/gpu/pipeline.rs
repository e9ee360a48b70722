//! How the top is drawn: the compiled shader with what it reads.

use wgpu::{
    BindGroup, BindGroupDescriptor, BindGroupEntry, BindingResource, BlendState, Buffer, BufferDescriptor,
    BufferUsages, ColorTargetState, CompareFunction, DepthStencilState, Device, Extent3d, Face, FilterMode,
    FragmentState, MultisampleState, Origin3d, PipelineCompilationOptions, PrimitiveState, Queue, RenderPass,
    RenderPipeline, RenderPipelineDescriptor, SamplerDescriptor, ShaderModuleDescriptor, ShaderSource,
    TexelCopyBufferLayout, TexelCopyTextureInfo, Texture, TextureDescriptor, TextureDimension, TextureFormat,
    TextureUsages, TextureViewDescriptor, VertexAttribute, VertexBufferLayout, VertexFormat, VertexState,
    VertexStepMode,
};

use super::canvas::{DEPTH, SAMPLES};
use crate::view::frame::Frame;
use crate::view::layout::{Attribute, Holds, VERTEX_BUFFERS};
use crate::view::motion_colour::{COLOURS, MOTION_COLOURS};
use crate::view::shaders::TOP;

/// The pipeline, the frame's numbers and the colours.
pub(crate) struct TopPipeline {
    pipeline: RenderPipeline,
    frame: Buffer,
    colours: Texture,
    resources: BindGroup,
}

impl TopPipeline {
    /// Compiles the shader for canvases of `format`.
    pub(crate) fn new(device: &Device, queue: &Queue, format: TextureFormat) -> Self {
        let pipeline = compiled(device, format, "shade", None);
        let frame = frame_buffer(device);
        let colours = colour_maps(device);
        let resources = bound(device, &pipeline, &frame, &colours);
        let made = Self { pipeline, frame, colours, resources };
        made.set_map(queue, Map::Motion, bytemuck::cast_slice(&MOTION_COLOURS));
        made
    }

    /// Takes the colours of a map: (colour, [red, green, blue, 255]) sRGB, as many as the motion's.
    pub(crate) fn set_map(&self, queue: &Queue, map: Map, colours: &[u8]) {
        let origin = Origin3d { x: 0, y: map as u32, z: 0 };
        let layout = TexelCopyBufferLayout { offset: 0, bytes_per_row: None, rows_per_image: None };
        let size = Extent3d { width: COLOURS as u32, height: 1, depth_or_array_layers: 1 };
        queue.write_texture(TexelCopyTextureInfo { origin, ..self.colours.as_image_copy() }, colours, layout, size);
    }

    /// Tells the shader about the next frame.
    pub(crate) fn set_frame(&self, queue: &Queue, frame: &Frame) {
        queue.write_buffer(&self.frame, 0, bytemuck::bytes_of(frame));
    }

    /// Makes the pass draw with this pipeline.
    pub(crate) fn begin(&self, pass: &mut RenderPass<'_>) {
        pass.set_pipeline(&self.pipeline);
        pass.set_bind_group(0, &self.resources, &[]);
    }
}

/// The rows of the colours' texture.
#[derive(Clone, Copy)]
pub(crate) enum Map {
    Motion = 0,
    Scalar = 1,
}

/// Room for what the shader is told of one frame.
pub(super) fn frame_buffer(device: &Device) -> Buffer {
    device.create_buffer(&BufferDescriptor {
        label: Some("frame"),
        size: size_of::<Frame>() as u64,
        usage: BufferUsages::UNIFORM | BufferUsages::COPY_DST,
        mapped_at_creation: false,
    })
}

/// A pipeline that ends in `fragment`; what is blended hides nothing behind it.
pub(super) fn compiled(
    device: &Device,
    format: TextureFormat,
    fragment: &'static str,
    blend: Option<BlendState>,
) -> RenderPipeline {
    let shader = device
        .create_shader_module(ShaderModuleDescriptor { label: Some("top"), source: ShaderSource::Wgsl(TOP.into()) });
    let attributes = VERTEX_BUFFERS.map(|buffer| buffer.attributes.iter().map(described).collect::<Vec<_>>());
    let buffers: [_; VERTEX_BUFFERS.len()] = std::array::from_fn(|slot| {
        Some(VertexBufferLayout {
            array_stride: VERTEX_BUFFERS[slot].stride,
            step_mode: VertexStepMode::Vertex,
            attributes: &attributes[slot],
        })
    });
    device.create_render_pipeline(&RenderPipelineDescriptor {
        label: Some("top"),
        layout: None,
        vertex: VertexState {
            module: &shader,
            entry_point: Some("place"),
            compilation_options: PipelineCompilationOptions::default(),
            buffers: &buffers,
        },
        // Of wood that is closed all round, what faces away lies behind what doesn't; of glass it is seen.
        primitive: PrimitiveState { cull_mode: blend.is_none().then_some(Face::Back), ..PrimitiveState::default() },
        depth_stencil: Some(DepthStencilState {
            format: DEPTH,
            depth_write_enabled: Some(blend.is_none()),
            depth_compare: Some(CompareFunction::Less),
            stencil: wgpu::StencilState::default(),
            bias: wgpu::DepthBiasState::default(),
        }),
        multisample: MultisampleState { count: SAMPLES, ..MultisampleState::default() },
        fragment: Some(FragmentState {
            module: &shader,
            entry_point: Some(fragment),
            compilation_options: PipelineCompilationOptions::default(),
            targets: &[Some(ColorTargetState { blend, ..format.into() })],
        }),
        multiview_mask: None,
        cache: None,
    })
}

const fn described(attribute: &Attribute) -> VertexAttribute {
    VertexAttribute {
        format: match attribute.holds {
            Holds::Vector => VertexFormat::Float32x3,
            Holds::Number => VertexFormat::Float32,
            Holds::Index => VertexFormat::Uint32,
        },
        offset: attribute.offset,
        shader_location: attribute.location,
    }
}

fn colour_maps(device: &Device) -> Texture {
    device.create_texture(&TextureDescriptor {
        label: Some("colour maps"),
        size: Extent3d { width: COLOURS as u32, height: 2, depth_or_array_layers: 1 },
        mip_level_count: 1,
        sample_count: 1,
        dimension: TextureDimension::D2,
        format: TextureFormat::Rgba8UnormSrgb,
        usage: TextureUsages::TEXTURE_BINDING | TextureUsages::COPY_DST,
        view_formats: &[],
    })
}

fn bound(device: &Device, pipeline: &RenderPipeline, frame: &Buffer, colours: &Texture) -> BindGroup {
    let sampler = device.create_sampler(&SamplerDescriptor {
        label: Some("colour maps"),
        mag_filter: FilterMode::Linear,
        min_filter: FilterMode::Linear,
        ..SamplerDescriptor::default()
    });
    device.create_bind_group(&BindGroupDescriptor {
        label: Some("top"),
        layout: &pipeline.get_bind_group_layout(0),
        entries: &[
            BindGroupEntry { binding: 0, resource: frame.as_entire_binding() },
            BindGroupEntry {
                binding: 1,
                resource: BindingResource::TextureView(&colours.create_view(&TextureViewDescriptor::default())),
            },
            BindGroupEntry { binding: 2, resource: BindingResource::Sampler(&sampler) },
        ],
    })
}
