//! Free edges shed twist in a layer thinner than the mesh.

use crate::mesh::Edges;

use super::plate::{Plate, spruce};

/// The twist of a free spruce plate on elements 8 mm wide, against that on elements 2 mm wide, which follow the layers
/// along its edges (1 mm and 4.4 mm thick) themselves. Without relief the coarse mesh is more than 0.5 % too high.
#[test]
fn a_coarse_mesh_with_free_edges_twists_as_a_fine_one_does() {
    let wood = spruce();
    let twist_hz = |cells: [u32; 2], free: bool| {
        let mut plate = Plate::new(120.0, 200.0, 3.0, cells);
        if free {
            let ends = Edges::of(plate.geometry.triangles()).at_the_end();
            plate.geometry = plate.geometry.with_free_edges(ends);
        }
        plate.modes(&wood, 1).frequencies_hz[0]
    };
    let fine = twist_hz([60, 100], false);
    let [relieved, kept] = [true, false].map(|free| twist_hz([15, 25], free) / fine - 1.0);
    assert!(kept > 0.005, "{kept} without relief");
    assert!(relieved.abs() < 0.5 * kept, "{relieved}, {kept} without relief");
    // On the fine mesh next to nothing is left to relieve.
    let left = twist_hz([60, 100], true) / fine - 1.0;
    assert!(left.abs() < 0.2 * kept, "{left}");
}
