//! What can go wrong on the stage, for the page to explain.

use thiserror::Error;

/// A reason why the stage cannot do what it was asked. Each says the value, the limit and what to do.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum ViewError {
    /// No graphics device could be had.
    #[error("The browser gave no {backend} graphics device: {reason}.")]
    NoGpu {
        /// "WebGPU" or "WebGL2".
        backend: &'static str,
        /// The browser's own words.
        reason: String,
    },
    /// The graphics device went away.
    #[error("The graphics device was lost: {reason}.")]
    Lost {
        /// The browser's own words.
        reason: String,
    },
    /// The device cannot hold the picture.
    #[error("The picture needs a buffer of {bytes} bytes; this graphics device allows {limit}.")]
    TooLarge {
        /// Size needed.
        bytes: u64,
        /// Size allowed.
        limit: u64,
    },
    /// An array does not have the length that the others call for.
    #[error("The {array} hold {got} numbers, but {expected} are needed.")]
    Length {
        /// Which array.
        array: &'static str,
        /// Its length.
        got: usize,
        /// What the length must be.
        expected: String,
    },
    /// A number is not finite.
    #[error("The {array} hold {value} at index {index}; every number must be finite.")]
    NotFinite {
        /// Which array.
        array: &'static str,
        /// Where.
        index: usize,
        /// "NaN" or "an infinity".
        value: &'static str,
    },
    /// A triangle names a vertex that is not there.
    #[error("Triangle {triangle} names vertex {vertex}; the picture has {vertices} vertices.")]
    NoSuchVertex {
        /// Which triangle.
        triangle: usize,
        /// The vertex it names.
        vertex: u32,
        /// How many there are.
        vertices: usize,
    },
    /// The points of the picture span no space.
    #[error("The picture's points all lie in one place.")]
    NoExtent,
    /// A view that is not known.
    #[error("There is no view called \"{name}\"; there are outside, inside, bass_side and along_grain.")]
    UnknownView {
        /// What was asked.
        name: String,
    },
    /// What says where the viewer stands does not.
    #[error("Where the viewer stands is nine finite numbers; these {numbers} are not that.")]
    WrongPose {
        /// How many there were.
        numbers: usize,
    },
    /// A colour that is not known.
    #[error("There is no colour called \"{name}\"; there are wood, motion and scalar.")]
    UnknownColour {
        /// What was asked.
        name: String,
    },
}

impl ViewError {
    /// A stable word for the page to choose its explanation by.
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::NoGpu { .. } => "no_gpu",
            Self::Lost { .. } => "gpu_lost",
            Self::TooLarge { .. } => "picture_too_large",
            Self::Length { .. } | Self::NotFinite { .. } | Self::NoSuchVertex { .. } | Self::NoExtent => "bad_picture",
            Self::UnknownView { .. } => "unknown_view",
            Self::WrongPose { .. } => "wrong_pose",
            Self::UnknownColour { .. } => "unknown_colour",
        }
    }

    /// What to do about it.
    pub const fn remedy(&self) -> &'static str {
        match self {
            Self::NoGpu { .. } => {
                "Switch on hardware acceleration in the browser's settings, or use a current browser. The mode table \
                 works without the picture."
            }
            Self::Lost { .. } => "Make a new stage on a new canvas; the design is not affected.",
            Self::TooLarge { .. } => "Choose a coarser mesh.",
            Self::Length { .. } | Self::NotFinite { .. } | Self::NoSuchVertex { .. } | Self::NoExtent => {
                "Compute the top again; if it happens again, please report it with the design's file."
            }
            Self::WrongPose { .. } => "Give the numbers as the stage gave them.",
            Self::UnknownView { .. } | Self::UnknownColour { .. } => "Choose one of those named.",
        }
    }
}

#[cfg(target_arch = "wasm32")]
impl From<ViewError> for wasm_bindgen::JsValue {
    /// A plain object `{kind, message, remedy}`.
    fn from(error: ViewError) -> Self {
        let problem = js_sys::Object::new();
        for (key, value) in
            [("kind", error.kind()), ("message", error.to_string().as_str()), ("remedy", error.remedy())]
        {
            // Setting a property of a fresh plain object cannot fail.
            let _ = js_sys::Reflect::set(&problem, &key.into(), &value.into());
        }
        problem.into()
    }
}
