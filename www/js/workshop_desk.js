/** @import { Exchange, Kin, MeshSize, Mode, ModeWish, Motion, Picture, Request, RequestKind, Solution, Step, Surety } from "./messages.js" */
import { chosenMode } from "./mode_choice.js";

/**
 * The computing core's class, as the wasm module gives it. Every method may throw a Problem. What it has computed it
 * keeps until the design changes, so that asking again is cheap.
 * @typedef {object} WorkshopCore
 * @property {(json: string) => void} open_design
 * @property {(size: MeshSize, followed: boolean) => Picture} picture settled, or on the mesh that a follow moves along
 * @property {(size: MeshSize, count: number) => { modes: Mode[] }} solve
 * @property {(size: MeshSize, count: number) => { modes: Mode[] }} follow from where the modes were last
 * @property {(followed: boolean) => Float32Array} signatures of the modes solved or followed last
 * @property {(signatures: Float32Array) => Uint32Array} kin (mode of the last solve) which of those has its shape, from 1, or 0
 * @property {() => Surety[]} surety of the last solve
 * @property {(mode: number, followed: boolean) => Omit<Motion, "mode">} motion on the mesh of the last solve or follow
 * @property {(mode: number, followed: boolean) => Float32Array} strain_energy (node) of that mesh
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
        return this.#core.picture(request.size, true);
      case "solve":
        this.#hold(request.design);
        return this.#solution(request);
      case "follow":
        this.#hold(request.design);
        return this.#step(request);
      case "motion":
        this.#find(request);
        return { mode: request.mode, ...this.#core.motion(request.mode, !request.proven) };
      case "strain_energy":
        this.#find(request);
        return this.#core.strain_energy(request.mode, !request.proven);
      case "signatures":
        this.#find(request);
        return this.#core.signatures(!request.proven);
      case "surety":
        this.#hold(request.design);
        this.#core.solve(request.size, request.count);
        return this.#core.surety();
      default:
        throw new TypeError(`the workshop knows no "${request.kind}"`);
    }
  }

  /**
   * @param {{ size: MeshSize, count: number, wish: ModeWish, kin?: Kin }} request
   * @returns {Solution}
   */
  #solution({ size, count, wish, kin }) {
    const begun_ms = performance.now();
    const { modes } = this.#core.solve(size, count);
    const solve_ms = performance.now() - begun_ms;
    if (kin !== undefined) {
      for (const [index, partner] of this.#core.kin(kin.signatures).entries()) {
        modes[index].identity = kin.identities[partner - 1] ?? 0;
      }
    }
    const mode = chosenMode(modes, wish).number;
    const motion = { mode, ...this.#core.motion(mode, false) };
    return { size, picture: this.#core.picture(size, false), modes, motion, solve_ms, proven: true };
  }

  /**
   * @param {{ size: MeshSize, count: number, wish: ModeWish }} request
   * @returns {Step}
   */
  #step({ size, count, wish }) {
    const begun_ms = performance.now();
    const { modes } = this.#core.follow(size, count);
    const solve_ms = performance.now() - begun_ms;
    const mode = chosenMode(modes, wish).number;
    const motion = { mode, ...this.#core.motion(mode, true) };
    const [picture, signatures] = [this.#core.picture(size, true), this.#core.signatures(true)];
    return { size, picture, modes, motion, signatures, solve_ms, proven: false };
  }

  /**
   * Makes sure that the modes are there which a request about one of them speaks of.
   * @param {{ design: string, size: MeshSize, count: number, proven: boolean }} request
   */
  #find({ design, size, count, proven }) {
    this.#hold(design);
    if (proven) {
      this.#core.solve(size, count);
    } else {
      this.#core.follow(size, count);
    }
  }

  /** @param {string} design */
  #hold(design) {
    if (design !== this.#design) {
      this.#core.open_design(design);
      this.#design = design;
    }
  }
}
