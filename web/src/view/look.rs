//! How the top is coloured: the stage's theme, the motion's colours, the nodal lines.

use super::problem::ViewError;

/// The stage round the top.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// Pale neutral grey, #e4e2de: darker than a page, so that pale wood and the colour of rest stand out from it.
    #[default]
    Light,
    /// Near black, #1b1c1e.
    Dark,
}

impl Theme {
    /// The stage's colour as sRGB codes, [red, green, blue].
    #[must_use]
    pub const fn stage_srgb(self) -> [u8; 3] {
        match self {
            Self::Light => [0xe4, 0xe2, 0xde],
            Self::Dark => [0x1b, 0x1c, 0x1e],
        }
    }

    /// Light that the stage throws back on the wood from below, linear: by eye, a little less than a pale stage would
    /// throw back, so that slopes facing down the screen still read.
    pub const fn stage_glow(self) -> f32 {
        match self {
            Self::Light => 0.19,
            Self::Dark => 0.14,
        }
    }

    /// What ghosts are drawn in: red, green, blue as sRGB shares, and density.
    pub const fn ghost(self) -> [f32; 4] {
        match self {
            Self::Light => [0.10, 0.11, 0.13, GHOST_DENSITY],
            Self::Dark => [0.88, 0.88, 0.85, GHOST_DENSITY],
        }
    }
}

/// How dense a ghost is where it is seen edge on: plain beside the top, and the top still seen through three of them.
const GHOST_DENSITY: f32 = 0.55;

/// What covers the wood.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Colour {
    /// Bare wood.
    Wood,
    /// The signed motion over the wood.
    #[default]
    Motion,
    /// A number at each vertex, over the wood.
    Scalar,
}

impl Colour {
    /// The colour called `name`: "wood", "motion" or "scalar".
    pub fn named(name: &str) -> Result<Self, ViewError> {
        match name {
            "wood" => Ok(Self::Wood),
            "motion" => Ok(Self::Motion),
            "scalar" => Ok(Self::Scalar),
            _ => Err(ViewError::UnknownColour { name: name.to_owned() }),
        }
    }
}

/// Every setting of the picture that is not the camera's.
#[derive(Clone, Copy, Debug)]
pub struct Look {
    theme: Theme,
    colour: Colour,
    amount: f32,
    nodal_lines: bool,
    plain: bool,
}

impl Default for Look {
    /// Motion colours strong enough to be read off the bar, with the grain still showing through.
    fn default() -> Self {
        Self { theme: Theme::default(), colour: Colour::default(), amount: 0.9, nodal_lines: true, plain: false }
    }
}

impl Look {
    /// The stage round the top.
    #[must_use]
    pub const fn theme(&self) -> Theme {
        self.theme
    }

    /// Changes the stage.
    pub const fn set_theme(&mut self, theme: Theme) {
        self.theme = theme;
    }

    /// Changes what covers the wood.
    pub const fn set_colour(&mut self, colour: Colour) {
        self.colour = colour;
    }

    /// Share of the colours over the wood, held to 0..1; not a number leaves it as it is.
    pub const fn set_amount(&mut self, amount: f32) {
        if !amount.is_nan() {
            self.amount = amount.clamp(0.0, 1.0);
        }
    }

    /// Shows even grey in place of the wood's own colour, or the wood again.
    pub const fn set_plain(&mut self, plain: bool) {
        self.plain = plain;
    }

    /// Shows or hides the nodal lines.
    pub const fn set_nodal_lines(&mut self, shown: bool) {
        self.nodal_lines = shown;
    }

    /// Share of the colours that is drawn, 0..1.
    pub const fn colour_amount(&self) -> f32 {
        match self.colour {
            Colour::Wood => 0.0,
            Colour::Motion | Colour::Scalar => self.amount,
        }
    }

    /// 1 where the colours are a scalar's.
    pub const fn by_scalar(&self) -> f32 {
        if matches!(self.colour, Colour::Scalar) { 1.0 } else { 0.0 }
    }

    /// 1 for even grey in place of the wood's own colour.
    pub const fn plain(&self) -> f32 {
        if self.plain { 1.0 } else { 0.0 }
    }

    /// Half the width of a line on the wood in pixels for a canvas of this size: 1/450 of the shorter side in all, so that
    /// a line looks alike on a phone's dense canvas and a small one, and never thinner than an anti-aliased line of 1.8
    /// pixels.
    pub fn line_half_width_px(&self, viewport_px: [u32; 2]) -> f32 {
        (viewport_px[0].min(viewport_px[1]) as f32 / 900.0).clamp(0.9, 3.0)
    }

    /// The same of the nodal line, 0 when nodal lines are off.
    pub fn nodal_half_width_px(&self, viewport_px: [u32; 2]) -> f32 {
        if self.nodal_lines { self.line_half_width_px(viewport_px) } else { 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_stay_between_none_and_all() {
        let mut look = Look::default();
        for (asked, held) in [(0.3, 0.3), (-1.0, 0.0), (7.0, 1.0), (f32::NAN, 1.0)] {
            look.set_amount(asked);
            assert_eq!(look.colour_amount(), held);
        }
        look.set_colour(Colour::Scalar);
        assert_eq!((look.colour_amount(), look.by_scalar()), (1.0, 1.0));
        look.set_colour(Colour::Wood);
        assert_eq!((look.colour_amount(), look.by_scalar()), (0.0, 0.0));
    }

    #[test]
    fn an_unknown_colour_is_named_in_the_error() {
        assert_eq!(Colour::named("wood"), Ok(Colour::Wood));
        assert!(Colour::named("varnish").is_err_and(|error| error.to_string().contains("varnish")));
    }
}
