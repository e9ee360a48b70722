//! The shader held against naga (wgpu's own compiler, here without a device) and against the Rust that feeds it.

use std::collections::BTreeSet;
use std::mem::offset_of;

use naga::back::glsl;
use naga::valid::{Capabilities, ModuleInfo, ValidationFlags, Validator};
use naga::{Binding, Module, ScalarKind, ShaderStage, TypeInner, VectorSize};

use super::{TOP, bare};
use crate::view::frame::Frame;
use crate::view::layout::{Holds, VERTEX_BUFFERS};

fn validated() -> (Module, ModuleInfo) {
    let module = naga::front::wgsl::parse_str(TOP).unwrap_or_else(|error| panic!("{}", error.emit_to_string(TOP)));
    // No capability beyond the least: both backends have these.
    let info = Validator::new(ValidationFlags::all(), Capabilities::empty())
        .validate(&module)
        .unwrap_or_else(|error| panic!("{}", error.emit_to_string(TOP)));
    (module, info)
}

#[test]
fn the_shader_is_valid_and_translates_for_webgl2() {
    let (module, info) = validated();
    // GLSL ES 3.00 is WebGL2's language.
    let options = glsl::Options { version: glsl::Version::new_gles(300), ..glsl::Options::default() };
    for (stage, entry_point) in
        [(ShaderStage::Vertex, "place"), (ShaderStage::Fragment, "shade"), (ShaderStage::Fragment, "ghost")]
    {
        let pipeline =
            glsl::PipelineOptions { shader_stage: stage, entry_point: entry_point.to_owned(), multiview: None };
        let mut text = String::new();
        glsl::Writer::new(&mut text, &module, &info, &options, &pipeline, naga::proc::BoundsCheckPolicies::default())
            .and_then(|mut writer| writer.write())
            .unwrap_or_else(|error| panic!("{entry_point}: {error}"));
        assert!(text.contains("void main()"), "{entry_point}");
    }
}

/// Followed by empty lines, which leave nothing.
fn padded(text: &str) -> Vec<u8> {
    let mut bytes = text.as_bytes().to_vec();
    assert!(bytes.len() < 1 << 14, "a shader file is small");
    bytes.resize(1 << 14, b'\n');
    bytes
}

#[test]
fn comments_and_indentation_are_left_out() {
    let text = "// all of it\n\nfn f() {\n    a / b; // and this\n}\n";
    let (bytes, length) = bare::<{ 1 << 14 }>(&padded(text));
    assert_eq!(&bytes[..length], b"fn f() {\na / b; \n}\n");
    assert!(!TOP.contains("//") && !TOP.contains("\n "));
}

#[test]
fn every_shader_file_is_part_of_the_program() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/view/shaders");
    let mut found = 0;
    for entry in std::fs::read_dir(folder).expect("the folder of shaders") {
        let path = entry.expect("a readable folder").path();
        if path.extension().is_some_and(|extension| extension == "wgsl") {
            let text = std::fs::read_to_string(&path).expect("a readable shader");
            let (bytes, length) = bare::<{ 1 << 14 }>(&padded(&text));
            let bare = std::str::from_utf8(&bytes[..length]).expect("a shader without its comments is ASCII");
            assert!(TOP.contains(bare.trim_end()), "{} is not in the program", path.display());
            found += 1;
        }
    }
    assert!(found > 0, "no shader found in {folder}");
}

#[test]
fn the_frame_has_the_same_bytes_in_rust_and_shader() {
    let (module, _) = validated();
    let frame =
        module.types.iter().find_map(|(_, shape)| (shape.name.as_deref() == Some("Frame")).then_some(&shape.inner));
    let Some(TypeInner::Struct { members, span }) = frame else { panic!("the shader has a struct Frame") };
    let in_shader: Vec<(&str, usize)> =
        members.iter().map(|member| (member.name.as_deref().unwrap_or("?"), member.offset as usize)).collect();
    let in_rust = [
        ("clip_from_top", offset_of!(Frame, clip_from_top)),
        ("view_from_top", offset_of!(Frame, view_from_top)),
        ("swing", offset_of!(Frame, swing)),
        ("nodal_swing", offset_of!(Frame, nodal_swing)),
        ("exaggeration", offset_of!(Frame, exaggeration)),
        ("colour_amount", offset_of!(Frame, colour_amount)),
        ("nodal_half_width_px", offset_of!(Frame, nodal_half_width_px)),
        ("stage_glow", offset_of!(Frame, stage_glow)),
        ("cut", offset_of!(Frame, cut)),
        ("place", offset_of!(Frame, place)),
        ("by_scalar", offset_of!(Frame, by_scalar)),
        ("ghost", offset_of!(Frame, ghost)),
        ("plain", offset_of!(Frame, plain)),
    ];
    assert_eq!(in_shader, in_rust);
    assert_eq!(*span as usize, size_of::<Frame>());
}

#[test]
fn every_vertex_input_is_fed_with_its_own_kind_of_number() {
    let (module, _) = validated();
    let place = module.entry_points.iter().find(|entry| entry.name == "place").expect("entry point place");
    let vertex = &module.types[place.function.arguments[0].ty];
    let TypeInner::Struct { members, .. } = &vertex.inner else { panic!("place takes a struct") };
    let read: BTreeSet<(u32, Holds)> = members
        .iter()
        .map(|member| {
            let Some(Binding::Location { location, .. }) = member.binding else { panic!("every input has a location") };
            match module.types[member.ty].inner {
                TypeInner::Vector { size: VectorSize::Tri, scalar } if scalar.kind == ScalarKind::Float => {
                    (location, Holds::Vector)
                }
                TypeInner::Scalar(scalar) if scalar.kind == ScalarKind::Float => (location, Holds::Number),
                TypeInner::Scalar(scalar) if scalar.kind == ScalarKind::Uint => (location, Holds::Index),
                ref other => panic!("location {location} reads {other:?}"),
            }
        })
        .collect();
    let fed: BTreeSet<(u32, Holds)> = VERTEX_BUFFERS
        .iter()
        .flat_map(|buffer| buffer.attributes)
        .map(|attribute| (attribute.location, attribute.holds))
        .collect();
    assert_eq!(read, fed);
}

#[test]
fn attributes_fill_their_buffers_without_overlap() {
    for buffer in VERTEX_BUFFERS {
        let mut end = 0;
        for attribute in buffer.attributes {
            assert_eq!(attribute.offset, end, "location {}", attribute.location);
            end += if attribute.holds == Holds::Vector { 12 } else { 4 };
        }
        assert_eq!(end, buffer.stride);
    }
}
