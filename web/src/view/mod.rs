//! The view: the lit, moving 3D top on the page's canvas.
//!
//! [`camera`] says where the viewer stands, [`look`] how things are coloured, [`marks`] what is drawn on the wood, [`arrays`] what a picture must satisfy, and
//! [`frame`] puts all of it into what the shader is told once a frame. These know no browser and are tested natively.
//! `gpu` holds the device, the canvas and the buffers; `stage` is the class that the page uses. Both exist only where
//! they can draw: in the browser, with one of the two backends built in.
//!
//! There is no loop in here: the page says when to draw and at which phase.

pub mod arrays;
pub mod bounds;
pub mod camera;
pub mod frame;
pub mod framing;
pub mod layout;
pub mod look;
pub mod marks;
pub mod motion_colour;
pub mod problem;
pub mod shaders;

#[cfg(all(target_arch = "wasm32", any(feature = "view-webgpu", feature = "view-webgl2")))]
mod gpu;
#[cfg(all(target_arch = "wasm32", any(feature = "view-webgpu", feature = "view-webgl2")))]
pub mod stage;
