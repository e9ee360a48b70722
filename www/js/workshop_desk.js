/** @import { Exchange, MeshSize, Mode, Motion, Picture, Request, RequestKind, Solution } from "./messages.js" */
import { chosenMode } from "./mode_choice.js";

/**
 * The computing core's class, as the wasm module gives it. Every method may throw a Problem.
 * @typedef {object} WorkshopCore
 * @property {(json: string) => void} open_design
 * @property {() => string} design
 * @property {(size: MeshSize) => Picture} picture
 * @property {(size: MeshSize, count: number) => { modes: Mode[] }} solve
 * @property {(mode: number) => Omit<Motion, "mode">} motion of the last solve
 */

/** Answers requests from the core, which holds one design at a time and remembers its stages. */
export class WorkshopDesk {
  #core;
  /** The text of the design that the core holds; undefined when not known to be the page's. */
  #design = "";
  /** What the core's last solve was of. */
  #solved = "";
  /** @type {Mode[]} */
  #modes = [];

  /** @param {WorkshopCore} core freshly made: it holds the demonstration design */
  constructor(core) {
    this.#core = core;
  }

  /**
   * @param {Request} request
   * @returns {Exchange[RequestKind]["get"]}
   * @throws {import("./messages.js").Problem}
   */
  answer(request) {
    switch (request.kind) {
      case "demo":
        return this.#core.design();
      case "open":
        this.#hold(request.json);
        return this.#core.design();
      case "shape":
        this.#hold(request.design);
        return this.#core.picture(request.size);
      case "solve":
        return this.#solution(request);
      case "motion":
        this.#solve(request.design, request.size, request.count);
        return { mode: request.mode, ...this.#core.motion(request.mode) };
    }
  }

  /**
   * @param {{ design: string, size: MeshSize, count: number, wish: import("./messages.js").ModeWish }} request
   * @returns {Solution}
   */
  #solution({ design, size, count, wish }) {
    const begun_ms = performance.now();
    this.#solve(design, size, count);
    const solve_ms = performance.now() - begun_ms;
    const mode = chosenMode(this.#modes, wish).number;
    const motion = { mode, ...this.#core.motion(mode) };
    return { size, picture: this.#core.picture(size), modes: this.#modes, motion, solve_ms };
  }

  /** @param {string} design */
  #hold(design) {
    if (design !== this.#design) {
      this.#core.open_design(design);
      this.#design = design;
    }
  }

  /**
   * Leaves the core with the modes of this design on this mesh, solving only where they are not there already.
   * @param {string} design
   * @param {MeshSize} size
   * @param {number} count
   */
  #solve(design, size, count) {
    this.#hold(design);
    const wanted = `${size} ${count} ${design}`;
    if (wanted !== this.#solved) {
      this.#solved = "";
      this.#modes = this.#core.solve(size, count).modes;
      this.#solved = wanted;
    }
  }
}
