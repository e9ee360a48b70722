//! Breaking what the page stands on, from outside: the product has no hooks for it.

/// Before the page's own scripts: workers load their script inside a wrapper that listens on a channel of its own and
/// throws when told to, as a defect would.
pub(super) const WORKERS: &str = r#"
(() => {
  const Original = globalThis.Worker;
  globalThis.__workers_started = 0;
  globalThis.Worker = class extends Original {
    constructor(url, options) {
      const script = JSON.stringify(new URL(url, location.href).href);
      // Messages that come while the page's script loads must wait for its listener.
      const wrapper = `
        const early = [];
        const keep = (event) => { early.push(event.data); event.stopImmediatePropagation(); };
        self.addEventListener("message", keep);
        new BroadcastChannel("break-the-worker").onmessage = () => { throw new Error("broken by a check"); };
        await import(${script});
        self.removeEventListener("message", keep);
        for (const data of early) self.dispatchEvent(new MessageEvent("message", { data }));
      `;
      super(URL.createObjectURL(new Blob([wrapper], { type: "text/javascript" })), options);
      globalThis.__workers_started += 1;
    }
  };
})();
"#;

/// Makes every worker of the page throw.
pub(super) const BREAK_WORKERS: &str = r#"new BroadcastChannel("break-the-worker").postMessage("now");"#;

/// Holds once the page has started its workers: for following handles, for solving, for
/// judging how sure a figure is, and the drawing board's.
pub(super) const WORKERS_THERE: &str = "globalThis.__workers_started >= 4";

/// Holds once it has started another in place of each.
pub(super) const WORKERS_AGAIN: &str = "globalThis.__workers_started >= 8";

/// Before the page's own scripts: keeps the graphics devices that the page asks for.
pub(super) const DEVICES: &str = r#"
(() => {
  globalThis.__devices = [];
  const prototype = globalThis.GPUAdapter?.prototype;
  if (prototype === undefined) return;
  const request = prototype.requestDevice;
  prototype.requestDevice = async function (...parts) {
    const device = await request.apply(this, parts);
    globalThis.__devices.push(device);
    return device;
  };
})();
"#;

/// Takes the WebGPU devices away, as a driver's reset does.
pub(super) const LOSE_WEBGPU: &str = "for (const device of __devices.splice(0)) device.destroy();";

/// Takes the WebGL context away, as a driver's reset does; a canvas gives its one context to whoever asks.
pub(super) const LOSE_WEBGL2: &str =
    "document.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext();";
