/** @import { Exchange, MeshSize, Mode, ModeWish, Motion, Picture, Request, RequestKind, Solution, Surety } from "./messages.js" */
import { chosenMode } from "./mode_choice.js";

/**
 * The computing core's class, as the wasm module gives it. Every method may throw a Problem. What it has computed it
 * keeps until the design changes, so that asking again is cheap.
 * @typedef {object} WorkshopCore
 * @property {(json: string) => void} open_design
 * @property {(size: MeshSize) => Picture} picture
 * @property {(size: MeshSize, count: number) => { modes: Mode[] }} solve
 * @property {() => Surety[]} surety of the last solve
 * @property {(mode: number) => Omit<Motion, "mode">} motion on the mesh of the last solve
 */

/** Answers requests from the core, which holds one design at a time. */
export class WorkshopDesk {
  #core;
  #demo;
  /** The text of the design that the core holds, as a request gave it; empty while that is not known. */
  #design = "";

  /**
   * @param {WorkshopCore} core
   * @param {string} demo the demonstration design
   */
  constructor(core, demo) {
    this.#core = core;
    this.#demo = demo;
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
        return request.json;
      case "shape":
        this.#hold(request.design);
        return this.#core.picture(request.size);
      case "solve":
        this.#hold(request.design);
        return this.#solution(request);
      case "motion":
        this.#hold(request.design);
        this.#core.solve(request.size, request.count);
        return { mode: request.mode, ...this.#core.motion(request.mode) };
      case "surety":
        this.#hold(request.design);
        this.#core.solve(request.size, request.count);
        return this.#core.surety();
      default:
        throw new TypeError(`the workshop knows no "${request.kind}"`);
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
