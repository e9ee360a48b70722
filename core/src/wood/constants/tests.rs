use proptest::prelude::*;

use super::*;
use crate::wood::Species;

#[test]
fn a_message_names_the_constant_its_value_and_the_limit() {
    let sitka = Species::SitkaSpruce.record().constants;
    let bad = OrthotropicConstants { g_rt_gpa: -0.03, ..sitka };
    assert_eq!(bad.check().unwrap_err().to_string(), "G_RT is -0.03; it must be a finite number greater than zero");
    let bad = OrthotropicConstants { nu_rt: 2.0, ..sitka };
    let message = bad.check().unwrap_err().to_string();
    assert!(message.contains("nu_RT is 2") && message.contains("1.347"), "{message}");
    let bad = OrthotropicConstants { nu_lr: f64::NAN, ..sitka };
    assert!(matches!(bad.check(), Err(WoodError::PoissonTooLarge { name: "nu_LR", .. })));
}

#[test]
fn ratios_possible_singly_but_not_together_are_refused() {
    let bad = OrthotropicConstants { nu_lr: 0.8, nu_lt: 0.8, nu_rt: 0.8, ..OrthotropicConstants::isotropic(1.0, 0.3) };
    assert!(matches!(bad.check(), Err(WoodError::PoissonsTogether { .. })));
}

proptest! {
    /// Lempriere's conditions against the definition: the compliance is positive definite (nalgebra's Cholesky).
    #[test]
    fn admissible_means_positive_definite(
        e in prop::array::uniform3(0.1_f64..20.0),
        nu in prop::array::uniform3(-2.0_f64..2.0),
    ) {
        let constants = OrthotropicConstants {
            e_l_gpa: e[0], e_r_gpa: e[1], e_t_gpa: e[2],
            g_lr_gpa: 1.0, g_lt_gpa: 1.0, g_rt_gpa: 1.0,
            nu_lr: nu[0], nu_lt: nu[1], nu_rt: nu[2],
        };
        let definite = nalgebra::Cholesky::new(constants.compliance_per_pa() * 1e9).is_some();
        prop_assert_eq!(constants.check().is_ok(), definite);
    }
}
