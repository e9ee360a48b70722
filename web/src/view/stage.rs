//! The class that the page draws with.

use glam::Vec2;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;
use wgpu::{
    Color, CommandEncoderDescriptor, Device, LoadOp, Operations, Queue, RenderPassColorAttachment,
    RenderPassDepthStencilAttachment, RenderPassDescriptor, StoreOp,
};

use super::arrays::{MotionArrays, PictureArrays, check_colours, check_numbers};
use super::camera::{Camera, Direction};
use super::frame::{Frame, Moment};
use super::gpu::buffers::TopBuffers;
use super::gpu::canvas::Canvas;
use super::gpu::context_loss::ContextLoss;
use super::gpu::device::{BACKEND, OpenDevice};
use super::gpu::ghosts::Ghosts;
use super::gpu::loss::Loss;
use super::gpu::pipeline::{Map, TopPipeline};
use super::layout::SURROUNDINGS;
use super::look::{Colour, Look, Theme};
use super::marks::Marks;
use super::motion_colour;
use super::problem::ViewError;

/// The lit stage with one top on one canvas. Problems are thrown as plain objects `{kind, message, remedy}`.
#[wasm_bindgen]
pub struct Stage {
    device: Device,
    queue: Queue,
    canvas: Canvas,
    pipeline: TopPipeline,
    /// While they are shown.
    ghosts: Option<Ghosts>,
    top: Option<TopBuffers>,
    camera: Camera,
    look: Look,
    marks: Marks,
    loss: Loss,
    _context_loss: ContextLoss,
}

#[wasm_bindgen]
impl Stage {
    /// Opens a stage on a canvas that has no other context. Give it a size with `resize` before drawing.
    ///
    /// # Errors
    /// Kind `no_gpu` when the browser gives no device.
    pub async fn create(canvas: HtmlCanvasElement) -> Result<Stage, JsValue> {
        console_error_panic_hook::set_once();
        let open = OpenDevice::on(canvas.clone()).await?;
        let loss = Loss::of(&open.device);
        let context_loss = ContextLoss::watch(canvas, loss.clone());
        let canvas = Canvas::new(open.surface, &open.adapter, &open.device)?;
        let pipeline = TopPipeline::new(&open.device, &open.queue, canvas.format());
        Ok(Self {
            device: open.device,
            queue: open.queue,
            canvas,
            pipeline,
            ghosts: None,
            top: None,
            camera: Camera::new(),
            look: Look::default(),
            marks: Marks::default(),
            loss,
            _context_loss: context_loss,
        })
    }

    /// "webgpu" or "webgl2".
    #[must_use]
    pub fn backend(&self) -> String {
        BACKEND.word.to_owned()
    }

    /// Calls `callback(reason)` once if the graphics device is lost, at once if it already is. Every later call that
    /// needs the device then throws kind `gpu_lost`: make a new stage on a new canvas element.
    pub fn on_lost(&self, callback: js_sys::Function) {
        let loss = self.loss.clone();
        wasm_bindgen_futures::spawn_local(async move {
            if let Some(reason) = loss.reason().await {
                // An exception in the page's callback is the page's own to report.
                let _ = callback.call1(&JsValue::UNDEFINED, &reason.into());
            }
        });
    }

    /// Shows a picture of the top: positions (vertex, xyz) mm, normals (vertex, xyz), triangles (triangle, corner),
    /// kinds (vertex) 0 outside, 1 inside, 2 wall. The first picture is fitted to the canvas; later ones leave the
    /// viewer where it is. The motion stays if the size is the same and is at rest otherwise.
    ///
    /// # Errors
    /// Kinds `bad_picture`, `picture_too_large`, `gpu_lost`; the previous picture stays.
    pub fn set_picture(
        &mut self,
        positions: &[f32],
        normals: &[f32],
        triangles: &[u32],
        kinds: &[u32],
    ) -> Result<(), JsValue> {
        self.loss.check()?;
        let picture = PictureArrays::new(positions, normals, triangles, kinds)?;
        let first = self.top.is_none();
        if !self.top.as_mut().is_some_and(|top| top.take(&self.queue, &picture)) {
            self.top = Some(TopBuffers::new(&self.device, &self.queue, &picture)?);
        }
        self.camera.set_bounds(picture.bounds);
        if first {
            self.camera.fit();
        }
        Ok(())
    }

    /// Gives the picture a motion: re and im (vertex, [ux, uy, uz, nx, ny, nz]), displacement in mm and change of the
    /// normal per unit amplitude, the largest displacement 1 mm.
    ///
    /// # Errors
    /// Kinds `bad_picture`, `gpu_lost`; the previous motion stays.
    pub fn set_motion(&mut self, re: &[f32], im: &[f32]) -> Result<(), JsValue> {
        self.loss.check()?;
        let vertices = self.top.as_ref().map_or(0, TopBuffers::vertices);
        let motion = MotionArrays::new(re, im, vertices)?;
        if let Some(top) = &mut self.top {
            top.take_motion(&self.queue, &motion);
        }
        Ok(())
    }

    /// Sets the canvas to this many physical pixels. Without area nothing is drawn until it has some again.
    ///
    /// # Errors
    /// Kind `gpu_lost`.
    pub fn resize(&mut self, width_px: u32, height_px: u32) -> Result<(), JsValue> {
        self.loss.check()?;
        if let Some(size) = self.canvas.resize(&self.device, width_px, height_px) {
            self.camera.set_viewport_px(size);
        }
        Ok(())
    }

    /// Turns the top under a drag of (dx, dy) physical pixels, y down.
    pub fn orbit(&mut self, dx: f32, dy: f32) {
        self.camera.orbit(Vec2::new(dx, dy));
    }

    /// Shifts the picture by (dx, dy) physical pixels, y down.
    pub fn pan(&mut self, dx: f32, dy: f32) {
        self.camera.pan(Vec2::new(dx, dy));
    }

    /// Enlarges the picture by `factor`; below 1 makes it smaller.
    pub fn zoom(&mut self, factor: f32) {
        self.camera.zoom(factor);
    }

    /// Turns to a named view and fits it: "outside", "inside", "bass_side" or "along_grain".
    ///
    /// # Errors
    /// Kind `unknown_view`.
    pub fn view(&mut self, name: &str) -> Result<(), JsValue> {
        self.camera.turn_to(Direction::named(name)?);
        Ok(())
    }

    /// Brings the whole top into the picture without turning it.
    pub fn fit(&mut self) {
        self.camera.fit();
    }

    /// Where the viewer stands, for `set_pose` on a canvas of any size: nine numbers.
    #[must_use]
    pub fn pose(&self) -> Vec<f32> {
        self.camera.pose().to_vec()
    }

    /// Stands where `pose` said. The first picture fits the top, so give it one before.
    ///
    /// # Errors
    /// Kind `wrong_pose`; the viewer stays.
    pub fn set_pose(&mut self, pose: &[f32]) -> Result<(), JsValue> {
        Ok(self.camera.take_pose(pose)?)
    }

    /// Takes care that both tops are in the picture when it is next fitted, of the same size in it; until another picture comes.
    pub fn make_room_for(&mut self, other: &Stage) {
        self.camera.set_bounds(self.camera.bounds().and(other.camera.bounds()));
    }

    /// Looks from where the viewer of `other` stands, on a canvas of the same shape.
    pub fn look_along_with(&mut self, other: &Stage) {
        self.camera.stand_with(&other.camera);
    }

    /// Dark or light stage.
    pub fn set_theme(&mut self, dark: bool) {
        self.look.set_theme(if dark { Theme::Dark } else { Theme::Light });
    }

    /// Gives each vertex a number from 0 to 1, and the colours that stand for them from 0 to 1: red, green, blue, 255, as many as
    /// the bar of the motion has. Shown by the colour "scalar"; another picture's are 0 until they are given.
    ///
    /// # Errors
    /// Kinds `bad_picture`, `gpu_lost`; the previous numbers stay.
    pub fn set_scalar(&mut self, values: &[f32], colours: &[u8]) -> Result<(), JsValue> {
        self.loss.check()?;
        check_numbers(values, self.top.as_ref().map_or(0, TopBuffers::vertices))?;
        check_colours(colours)?;
        if let Some(top) = &mut self.top {
            top.take_scalar(&self.queue, values);
        }
        self.pipeline.set_map(&self.queue, Map::Scalar, colours);
        Ok(())
    }

    /// Gives each vertex its distance from the outline, mm, for the purfling, and the share of the sky that the wood round it hides,
    /// 0 to 1, for the shade in hollows. A picture of other vertices has neither until they are given.
    ///
    /// # Errors
    /// Kinds `bad_picture`, `gpu_lost`.
    pub fn set_surroundings(&mut self, surroundings: &[f32]) -> Result<(), JsValue> {
        self.loss.check()?;
        check_numbers(surroundings, SURROUNDINGS * self.top.as_ref().map_or(0, TopBuffers::vertices))?;
        if let Some(top) = &mut self.top {
            top.take_surroundings(&self.queue, surroundings);
        }
        Ok(())
    }

    /// Covers the wood with the signed motion's colours ("motion", the start), with a scalar's ("scalar") or not ("wood").
    ///
    /// # Errors
    /// Kind `unknown_colour`.
    pub fn set_colour(&mut self, name: &str) -> Result<(), JsValue> {
        self.look.set_colour(Colour::named(name)?);
        Ok(())
    }

    /// Share of the motion's colours over the wood, 0..1.
    pub fn set_colour_amount(&mut self, amount: f32) {
        self.look.set_amount(amount);
    }

    /// Shows or hides the top at rest and at both ends of its swing, as ghosts.
    pub fn set_ghosts(&mut self, shown: bool) {
        self.ghosts = shown.then(|| Ghosts::new(&self.device, self.canvas.format()));
    }

    /// Shows even grey in place of the wood's own colour, or the wood again.
    pub fn set_plain(&mut self, plain: bool) {
        self.look.set_plain(plain);
    }

    /// Marks a cut across the top at y = `at_mm`, or along it at x = `at_mm`; not a number marks none.
    pub fn set_cut(&mut self, across: bool, at_mm: f32) {
        self.marks.set_cut(across, at_mm);
    }

    /// Marks a place in plan, mm; not a number marks none.
    pub fn set_place(&mut self, x_mm: f32, y_mm: f32) {
        self.marks.set_place(x_mm, y_mm);
    }

    /// The line of sight through a pixel of the canvas (y down): a point on it, mm, and its unit direction, in the top's frame:
    /// six numbers.
    #[must_use]
    pub fn ray(&self, x_px: f32, y_px: f32) -> Vec<f32> {
        let (from, along) = self.camera.ray(Vec2::new(x_px, y_px));
        [from.to_array(), along.to_array()].concat()
    }

    /// Shows or hides the nodal lines.
    pub fn set_nodal_lines(&mut self, shown: bool) {
        self.look.set_nodal_lines(shown);
    }

    /// The motion's colours from full motion inward through rest to full motion outward: red, green, blue, sRGB,
    /// again and again.
    #[must_use]
    pub fn colour_bar() -> Vec<u8> {
        motion_colour::colour_bar()
    }

    /// Draws one frame: every point at position + exaggeration * Re[(re + i im) e^{i phase}], which for motion fields
    /// of at most 1 mm makes `exaggeration_mm` the largest displacement.
    ///
    /// # Errors
    /// Kind `gpu_lost`.
    pub fn draw(&mut self, phase_rad: f32, exaggeration_mm: f32) -> Result<(), JsValue> {
        self.loss.check()?;
        self.drawn(phase_rad, exaggeration_mm).inspect_err(|error| {
            if let ViewError::Lost { reason } = error {
                self.loss.report(reason);
            }
        })?;
        Ok(())
    }
}

impl Stage {
    fn drawn(&mut self, phase_rad: f32, exaggeration_mm: f32) -> Result<(), ViewError> {
        let Some(target) = self.canvas.next_frame(&self.device)? else {
            return Ok(());
        };
        let moment = Moment {
            phase_rad,
            exaggeration: exaggeration_mm,
            standing: self.top.as_ref().is_none_or(TopBuffers::standing),
        };
        let frame = |moment| Frame::new(&self.camera, &self.look, &self.marks, moment);
        self.pipeline.set_frame(&self.queue, &frame(moment));
        if let Some(ghosts) = &self.ghosts {
            let furthest_rad = self.top.as_ref().map_or(0.0, TopBuffers::furthest_rad);
            ghosts.set_frames(&self.queue, &moment.ghosts(furthest_rad).map(frame));
        }
        // The canvas holds sRGB codes, so the stage's are taken as they are.
        let [r, g, b] = self.look.theme().stage_srgb().map(|code| f64::from(code) / 255.0);
        let mut encoder = self.device.create_command_encoder(&CommandEncoderDescriptor::default());
        {
            let mut pass = encoder.begin_render_pass(&RenderPassDescriptor {
                label: Some("stage"),
                color_attachments: &[Some(RenderPassColorAttachment {
                    view: target.colour,
                    depth_slice: None,
                    resolve_target: Some(&target.resolved),
                    ops: Operations { load: LoadOp::Clear(Color { r, g, b, a: 1.0 }), store: StoreOp::Discard },
                })],
                depth_stencil_attachment: Some(RenderPassDepthStencilAttachment {
                    view: target.depth,
                    depth_ops: Some(Operations { load: LoadOp::Clear(1.0), store: StoreOp::Discard }),
                    stencil_ops: None,
                }),
                ..RenderPassDescriptor::default()
            });
            if let Some(top) = &self.top {
                self.pipeline.begin(&mut pass);
                top.draw(&mut pass);
                if let Some(ghosts) = &self.ghosts {
                    ghosts.draw(&mut pass, top);
                }
            }
        }
        self.queue.submit([encoder.finish()]);
        self.queue.present(target.texture);
        Ok(())
    }
}

impl Drop for Stage {
    fn drop(&mut self) {
        self.loss.put_away();
    }
}
