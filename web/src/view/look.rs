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
}

/// What covers the wood.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Colour {
    /// Bare wood.
    Wood,
    /// The signed motion over the wood.
    #[default]
    Motion,
}

impl Colour {
    /// The colour called `name`: "wood" or "motion".
    pub fn named(name: &str) -> Result<Self, ViewError> {
        match name {
            "wood" => Ok(Self::Wood),
            "motion" => Ok(Self::Motion),
            _ => Err(ViewError::UnknownColour { name: name.to_owned() }),
        }
    }
}

/// Every setting of the picture that is not the camera's.
#[derive(Clone, Copy, Debug)]
pub struct Look {
    theme: Theme,
    colour: Colour,
    motion_amount: f32,
    nodal_lines: bool,
}

impl Default for Look {
    /// Motion colours strong enough to be read off the bar, with the grain still showing through.
    fn default() -> Self {
        Self { theme: Theme::default(), colour: Colour::default(), motion_amount: 0.9, nodal_lines: true }
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

    /// Share of the motion's colour over the wood, held to 0..1; not a number leaves it as it is.
    pub const fn set_motion_amount(&mut self, amount: f32) {
        if !amount.is_nan() {
            self.motion_amount = amount.clamp(0.0, 1.0);
        }
    }

    /// Shows or hides the nodal lines.
    pub const fn set_nodal_lines(&mut self, shown: bool) {
        self.nodal_lines = shown;
    }

    /// Share of the motion's colour that is drawn, 0..1.
    pub const fn colour_amount(&self) -> f32 {
        match self.colour {
            Colour::Wood => 0.0,
            Colour::Motion => self.motion_amount,
        }
    }

    /// Half the nodal line's width in pixels for a canvas of this size, 0 when lines are off: 1/450 of the shorter
    /// side in all, so that a line looks alike on a phone's dense canvas and a small one, and never thinner than an
    /// anti-aliased line of 1.8 pixels.
    pub fn nodal_half_width_px(&self, viewport_px: [u32; 2]) -> f32 {
        if self.nodal_lines { (viewport_px[0].min(viewport_px[1]) as f32 / 900.0).clamp(0.9, 3.0) } else { 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_stay_between_none_and_all() {
        let mut look = Look::default();
        for (asked, held) in [(0.3, 0.3), (-1.0, 0.0), (7.0, 1.0), (f32::NAN, 1.0)] {
            look.set_motion_amount(asked);
            assert_eq!(look.colour_amount(), held);
        }
        look.set_colour(Colour::Wood);
        assert_eq!(look.colour_amount(), 0.0);
    }

    #[test]
    fn an_unknown_colour_is_named_in_the_error() {
        assert_eq!(Colour::named("wood"), Ok(Colour::Wood));
        assert!(Colour::named("varnish").is_err_and(|error| error.to_string().contains("varnish")));
    }
}
