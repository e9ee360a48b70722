//! The nine constants one by one, for what is done to each in turn.

use super::OrthotropicConstants;

/// One of the nine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WoodConstant {
    /// Young's modulus along the grain.
    EL,
    /// Young's modulus across the rings.
    ER,
    /// Young's modulus tangential to the rings.
    ET,
    /// Shear modulus in the grain-radial plane.
    GLR,
    /// Shear modulus in the grain-tangential plane.
    GLT,
    /// Rolling-shear modulus.
    GRT,
    /// Poisson's ratio, stress along L, strain along R.
    NuLR,
    /// Poisson's ratio, stress along L, strain along T.
    NuLT,
    /// Poisson's ratio, stress along R, strain along T.
    NuRT,
}

impl WoodConstant {
    /// How many there are.
    pub const COUNT: usize = 9;

    /// All of them: the six moduli, then the three ratios.
    pub const ALL: [Self; Self::COUNT] =
        [Self::EL, Self::ER, Self::ET, Self::GLR, Self::GLT, Self::GRT, Self::NuLR, Self::NuLT, Self::NuRT];

    /// The symbol for people.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::EL => "E_L",
            Self::ER => "E_R",
            Self::ET => "E_T",
            Self::GLR => "G_LR",
            Self::GLT => "G_LT",
            Self::GRT => "G_RT",
            Self::NuLR => "nu_LR",
            Self::NuLT => "nu_LT",
            Self::NuRT => "nu_RT",
        }
    }
}

impl OrthotropicConstants {
    /// The same wood with `constant` multiplied by `factor`; not checked.
    #[must_use]
    pub fn scaled(&self, constant: WoodConstant, factor: f64) -> Self {
        let mut scaled = *self;
        let value = match constant {
            WoodConstant::EL => &mut scaled.e_l_gpa,
            WoodConstant::ER => &mut scaled.e_r_gpa,
            WoodConstant::ET => &mut scaled.e_t_gpa,
            WoodConstant::GLR => &mut scaled.g_lr_gpa,
            WoodConstant::GLT => &mut scaled.g_lt_gpa,
            WoodConstant::GRT => &mut scaled.g_rt_gpa,
            WoodConstant::NuLR => &mut scaled.nu_lr,
            WoodConstant::NuLT => &mut scaled.nu_lt,
            WoodConstant::NuRT => &mut scaled.nu_rt,
        };
        *value *= factor;
        scaled
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wood::Species;

    #[test]
    fn each_constant_has_a_place_and_a_symbol_of_its_own() {
        let wood = Species::SitkaSpruce.record().constants;
        for constant in WoodConstant::ALL {
            let scaled = wood.scaled(constant, 1.1);
            assert_ne!(scaled, wood, "{}", constant.symbol());
            let others = WoodConstant::ALL.iter().filter(|other| wood.scaled(**other, 1.1) == scaled);
            assert_eq!(others.count(), 1, "{}", constant.symbol());
        }
        let mut symbols = WoodConstant::ALL.map(WoodConstant::symbol).to_vec();
        symbols.sort_unstable();
        symbols.dedup();
        assert_eq!(symbols.len(), WoodConstant::COUNT);
    }
}
