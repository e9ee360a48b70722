/** @import { Arch, Arching, Drawings, Exchange, MeasureLimits, MeshSize, Mode, ModeWish, Motion, Picture, Preset, Request, RequestKind, Solution } from "./messages.js" */
import { chosenMode } from "./mode_choice.js";

/**
 * The computing core's class, as the wasm module gives it. Every method may throw a Problem. What it has computed it
 * keeps until the design changes, so that asking again is cheap.
 * @typedef {object} WorkshopCore
 * @property {(json: string) => void} open_design
 * @property {() => string} design
 * @property {(size: MeshSize) => Picture} picture
 * @property {() => Drawings} drawings
 * @property {() => Arching} arching
 * @property {() => MeasureLimits[]} measures
 * @property {() => Preset[]} presets
 * @property {() => Arch[]} arches
 * @property {(arch: string, inflection_mm: number) => string} with_inflection
 * @property {(arch: string, family: string) => string} with_family
 * @property {(size: MeshSize, count: number) => { modes: Mode[] }} solve
 * @property {(mode: number) => Omit<Motion, "mode">} motion on the mesh of the last solve
 */

/** Answers requests from the core, which holds one design at a time. */
export class WorkshopDesk {
  #core;
  /** The demonstration design, kept for when the core holds another. */
  #demo;
  /** The text of the design that the core holds, as a request gave it; empty while that is not known. */
  #design = "";

  /** @param {WorkshopCore} core freshly made: it holds the demonstration design */
  constructor(core) {
    this.#core = core;
    this.#demo = core.design();
  }

  /**
   * @param {Request} request
   * @returns {Exchange[RequestKind]["get"]}
   * @throws {import("./messages.js").Problem}
   */
  answer(request) {
    switch (request.kind) {
      case "demo":
        return this.#demo;
      case "open":
        this.#hold(request.json);
        return this.#core.design();
      case "shape":
        this.#hold(request.design);
        return this.#core.picture(request.size);
      case "drawings":
        this.#hold(request.design);
        return this.#core.drawings();
      case "arching":
        this.#hold(request.design);
        return this.#core.arching();
      case "measures":
        return this.#core.measures();
      case "presets":
        return this.#core.presets();
      case "arches":
        this.#hold(request.design);
        return this.#core.arches();
      case "reshape": {
        this.#hold(request.design);
        const { arch, change } = request;
        return "family" in change
          ? this.#core.with_family(arch, change.family)
          : this.#core.with_inflection(arch, change.inflection_mm);
      }
      case "solve":
        this.#hold(request.design);
        return this.#solution(request);
      case "motion":
        this.#hold(request.design);
        this.#core.solve(request.size, request.count);
        return { mode: request.mode, ...this.#core.motion(request.mode) };
    }
  }

  /**
   * @param {{ size: MeshSize, count: number, wish: ModeWish }} request
   * @returns {Solution}
   */
  #solution({ size, count, wish }) {
    const begun_ms = performance.now();
    const { modes } = this.#core.solve(size, count);
    const solve_ms = performance.now() - begun_ms;
    const mode = chosenMode(modes, wish).number;
    const motion = { mode, ...this.#core.motion(mode) };
    return { size, picture: this.#core.picture(size), modes, motion, solve_ms };
  }

  /** @param {string} design */
  #hold(design) {
    if (design !== this.#design) {
      this.#core.open_design(design);
      this.#design = design;
    }
  }
}
