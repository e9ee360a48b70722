//! Runs a plain loop with the widest registers of the machine.

use pulp::NullaryFnOnce;

/// Runs `kernel`, whose loops the compiler turns into SIMD: natively for what the machine is found to have, in wasm for the
/// one width that the module is built for. pulp would ask there too, and every kernel would be in the module twice.
pub(super) fn widest<K: NullaryFnOnce>(kernel: K) -> K::Output {
    #[cfg(target_arch = "wasm32")]
    return kernel.call();
    #[cfg(not(target_arch = "wasm32"))]
    pulp::Arch::new().dispatch(kernel)
}
