/**
 * Chooses what draws: WebGPU where an adapter really answers, else WebGL 2, else nothing. The two are separate
 * downloads, because the WebGL 2 one is many times larger.
 */

/** @typedef {"webgpu" | "webgl2"} Backend */
/** @typedef {"outside" | "inside" | "bass_side" | "along_grain"} SetView */

/**
 * The drawing class of the view's wasm module. Once its device is lost, every method may throw.
 * @typedef {object} View
 * @property {() => Backend} backend
 * @property {(callback: (reason: string) => void) => void} on_lost
 * @property {(positions: Float32Array, normals: Float32Array, triangles: Uint32Array, kinds: Uint32Array) => void}
 * set_picture
 * @property {(re: Float32Array, im: Float32Array) => void} set_motion (vertex, 6)
 * @property {(width_px: number, height_px: number) => void} resize in physical pixels
 * @property {(dx_px: number, dy_px: number) => void} orbit in physical pixels, y down
 * @property {(dx_px: number, dy_px: number) => void} pan likewise
 * @property {(factor: number) => void} zoom above 1 goes nearer
 * @property {(name: SetView) => void} view
 * @property {() => void} fit
 * @property {() => Float32Array} pose where the viewer stands, the same on a canvas of any size: nine numbers
 * @property {(pose: Float32Array) => void} set_pose
 * @property {(dark: boolean) => void} set_theme
 * @property {(name: "motion" | "scalar" | "wood") => void} set_colour what covers the wood
 * @property {(values: Float32Array, colours: Uint8Array) => void} set_scalar (vertex) 0 to 1, and their colours: as many as the
 * motion has, red, green, blue, 255
 * @property {(surroundings: Float32Array) => void} set_surroundings (vertex, [mm from the outline, share of the sky hidden])
 * @property {(shown: boolean) => void} set_ghosts at rest and at both ends of the swing
 * @property {(shown: boolean) => void} set_nodal_lines
 * @property {(plain: boolean) => void} set_plain grey in place of the wood's own colour
 * @property {(across: boolean, at_mm: number) => void} set_cut marks a cut at y, or at x where it goes along; NaN marks none
 * @property {(x_mm: number, y_mm: number) => void} set_place marks a place in plan; NaN marks none
 * @property {(other: View) => void} make_room_for another of the same backend, whose top has to fit on the canvas as well
 * @property {(other: View) => void} look_along_with another of the same backend
 * @property {(x_px: number, y_px: number) => Float32Array} ray a point of the line of sight through a pixel, and its direction:
 * in the top's frame, mm
 * @property {(phase_rad: number, exaggeration_mm: number) => void} draw
 * @property {() => void} free
 */

/**
 * @typedef {object} ViewModule
 * @property {(options: { module_or_path: Promise<Response> }) => Promise<unknown>} default starts the module
 * @property {{ create: (canvas: HTMLCanvasElement) => Promise<View>, colour_bar: () => Uint8Array }} Stage
 */

/**
 * @typedef {object} OpenView
 * @property {View} view
 * @property {Uint8Array} colours of the motion, from full inward through rest to full outward: (step, rgb)
 */

/**
 * Opens the best view that works. A canvas that once had a context of one kind can't get another, so each try puts a
 * new canvas into the host.
 * @param {HTMLElement} host gets the canvas as its first child; an older canvas in it goes
 * @param {readonly Backend[]} backends to try, in order
 * @returns {Promise<OpenView | undefined>} undefined when none works
 */
export async function openView(host, backends) {
  for (const backend of backends) {
    try {
      if (await isThere(backend)) {
        return await open(host, backend);
      }
    } catch (reason) {
      console.warn(`${backend}: ${describe(reason)}`);
    }
  }
  host.querySelector(":scope > canvas")?.remove();
  return undefined;
}

/**
 * @param {HTMLElement} host
 * @param {Backend} backend
 */
async function open(host, backend) {
  const { module, wasm } = load(backend);
  const { default: start, Stage } = await module;
  await start({ module_or_path: wasm });
  host.querySelector(":scope > canvas")?.remove();
  const canvas = document.createElement("canvas");
  host.prepend(canvas);
  return { view: await Stage.create(canvas), colours: Stage.colour_bar() };
}

/** @type {Map<Backend, Download>} downloads under way or done; a module starts once however often it is opened */
const downloads = new Map();

/** @typedef {{ module: Promise<ViewModule>, wasm: Promise<Response> }} Download */

/**
 * Downloads a module's two files at the same time.
 * @param {Backend} backend
 * @returns {Download}
 */
function load(backend) {
  const known = downloads.get(backend);
  if (known !== undefined) {
    return known;
  }
  const wasm = fetch(new URL(`../wasm/view_${backend}_bg.wasm`, import.meta.url));
  const module = backend === "webgpu" ? import("../wasm/view_webgpu.js") : import("../wasm/view_webgl2.js");
  // Failures are met where the download is used, which may be never.
  wasm.catch(() => undefined);
  module.catch(() => undefined);
  const download = { module, wasm };
  downloads.set(backend, download);
  return download;
}

/**
 * Asks the browser before anything large is downloaded. The WebGPU module is small enough to load while its adapter is
 * being asked for.
 * @param {Backend} backend
 * @returns {Promise<boolean>}
 */
async function isThere(backend) {
  if (backend === "webgl2") {
    const context = document.createElement("canvas").getContext("webgl2");
    context?.getExtension("WEBGL_lose_context")?.loseContext();
    return context !== null;
  }
  if (navigator.gpu === undefined) {
    return false;
  }
  load(backend);
  return (await navigator.gpu.requestAdapter()) !== null;
}

/** @param {unknown} reason */
function describe(reason) {
  return typeof reason === "object" && reason !== null && "message" in reason ? String(reason.message) : String(reason);
}
