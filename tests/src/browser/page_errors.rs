//! Everything that goes wrong on the page, whenever it does.

/// Run in every document before the page's own scripts: keeps what would otherwise be lost between two looks. Errors in
/// workers and failed downloads reach the browser's own log, which [`Session`](super::Session) reads too.
pub(super) const COLLECT: &str = r#"
(() => {
  const errors = [];
  Object.defineProperty(globalThis, "__page_errors", { value: errors });
  addEventListener("error", (event) => errors.push(`error: ${event.message ?? event.target?.src ?? event.type}`), true);
  addEventListener("unhandledrejection", (event) => errors.push(`unhandled rejection: ${event.reason?.stack ?? event.reason}`));
  const report = console.error;
  console.error = (...parts) => {
    errors.push(`console.error: ${parts.map(String).join(" ")}`);
    report.apply(console, parts);
  };
})();
"#;

/// Reads what was collected so far.
pub(super) const READ: &str = "return globalThis.__page_errors ?? [];";
