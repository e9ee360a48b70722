//! Runs a kernel with the widest registers of the machine.

use pulp::WithSimd;

/// Runs `kernel` with the registers that the machine is found to have, in wasm with those the module is built for.
pub(super) fn widest<K: WithSimd>(kernel: K) -> K::Output {
    pulp::Arch::new().dispatch(kernel)
}
