//! As many modes as may be asked for, of a whole top.

use crate::design::{Design, Rim};
use crate::mesh::MeshSize;
use crate::modes::ModesRequest;
use crate::top::Stages;

/// All that may be asked for, and all up to 6 kHz: accurate, and as many as inertia counts. High modes lie 20 Hz apart and in
/// pairs, which is where a search could end early.
#[test]
fn the_most_modes_and_all_up_to_6_khz_are_had() {
    for (rim, rigid) in [(Rim::Free, 6), (Rim::Hinged, 0)] {
        let mut stages = Stages::new(Design { rim, ..Design::demo() });
        for below_hz in [None, Some(6000.0)] {
            let request = ModesRequest { most: ModesRequest::LIMIT, below_hz, prove: true };
            let modes = stages.modes(MeshSize::Standard, &request).unwrap();
            assert!(below_hz.is_some() || modes.count() == ModesRequest::LIMIT, "{}", modes.count());
            assert_eq!(modes.counted, Some(modes.count() + rigid), "{below_hz:?}");
            // Six digits of a frequency need no more.
            assert!(modes.residuals.iter().all(|residual| *residual < 1e-6), "{:?}", modes.residuals);
            let last_hz = modes.frequencies_hz[modes.count() - 1];
            assert!(last_hz > 5800.0 && below_hz.is_none_or(|below_hz| last_hz < below_hz), "{last_hz} Hz");
        }
    }
}
