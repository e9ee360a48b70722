//! Names follow the shape through every change of order.

use super::plate::{Plate, isotropic, spruce};
use crate::design::{Design, Rim};
use crate::mesh::MeshSize;
use crate::modes::{ModeName, ModesRequest};
use crate::top::Stages;
use crate::wood::{OrthotropicConstants, Wood};

/// Names of the lowest modes of a plate 3 mm thick, by their words.
fn words(across_mm: f64, along_mm: f64, wood: &Wood) -> Vec<&'static str> {
    let modes = Plate::new(across_mm, along_mm, 3.0, [8, 8]).modes(wood, 5);
    modes.names.iter().map(|name| name.map_or("", ModeName::word)).collect()
}

/// Leissa 1973 (J. Sound Vib. 31, 257): twist, X, ring are the first three of a free square plate.
#[test]
fn a_square_plate_has_all_three_in_their_order() {
    assert_eq!(words(300.0, 300.0, &isotropic(0.3)), ["twist", "x", "ring", "", ""]);
}

/// Leissa 1973: at twice the length plain bending, λ 21.5, comes before the twist, λ 26.6; the bend has no name.
#[test]
fn the_twist_of_a_long_plate_is_found_behind_its_bend() {
    assert_eq!(words(150.0, 300.0, &isotropic(0.3))[..2], ["", "twist"]);
    assert_eq!(words(300.0, 150.0, &isotropic(0.3))[..2], ["", "twist"]);
}

/// Poisson's coupling parts the X from the ring, and its sign says which is lower (McIntyre & Woodhouse 1988, Acta
/// Metallurgica 36, 1397; Rayleigh, Theory of Sound, § 228): a material that widens when stretched has the ring below the X.
#[test]
fn ring_and_x_trade_places_with_the_sign_of_poissons_ratio() {
    let words = words(300.0, 300.0, &isotropic(-0.3));
    let place = |name| words.iter().position(|word| *word == name).unwrap();
    assert!(place("ring") < place("x"), "{words:?}");
}

/// Sides as the fourth root of the moduli make the two bends of spruce as high as each other, and they join to an X and a
/// ring (McIntyre & Woodhouse 1988). The square of 300 mm has its twist first, then plain bends
/// along x and, far above, y; the plate of 400 × 200 mm likewise (own Ritz solution, 14 × 14 polynomials).
#[test]
fn spruce_has_x_and_ring_only_where_its_bends_are_as_high() {
    let wood = spruce();
    let across = 300.0 * (wood.constants.e_r_gpa / wood.constants.e_l_gpa).powf(0.25);
    assert_eq!(words(across, 300.0, &wood)[..3], ["twist", "x", "ring"]);
    assert_eq!(words(300.0, 300.0, &wood), ["twist", "", "", "", ""]);
    assert_eq!(words(200.0, 400.0, &wood), ["twist", "", "", "", ""]);
}

/// The twist rises as the root of `G_LR` while bends hardly do: eight times stiffer in shear it passes from first to third.
#[test]
fn wood_stiff_in_shear_has_its_twist_later() {
    let spruce = spruce();
    let constants = OrthotropicConstants { g_lr_gpa: 8.0 * spruce.constants.g_lr_gpa, ..spruce.constants };
    let words = words(200.0, 400.0, &Wood { constants, ..spruce });
    assert_eq!(words[..3], ["", "", "twist"]);
}

/// A plate whose sides are held bends with one half wave: much like a ring, which it isn't.
#[test]
fn a_top_has_its_names_in_the_hand_and_none_on_the_ribs() {
    let mut stages = Stages::new(Design::demo());
    let request = ModesRequest::lowest(6);
    let names = &stages.modes(MeshSize::Preview, &request).unwrap().names;
    // Free-plate work numbers them 1, 2 and 5 (Hutchins 1981, Scientific American 245, no. 4).
    let [twist, x, ring] = [Some(ModeName::Twist), Some(ModeName::X), Some(ModeName::Ring)];
    assert_eq!(names[..], [twist, x, None, None, ring, None]);
    let mut on_ribs = Design::demo();
    on_ribs.rim = Rim::Hinged;
    stages.set_design(on_ribs).unwrap();
    assert_eq!(stages.modes(MeshSize::Preview, &request).unwrap().names, [None; 6]);
}
