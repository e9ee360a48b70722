/** @import { Arching, Drawings, Exchange, Request, RequestKind } from "./messages.js" */

/**
 * The drawing board's class, as the wasm module gives it: one design, drawn. Making one may throw a Problem.
 * @typedef {object} Board
 * @property {() => Drawings} drawings
 * @property {() => Arching} arching
 * @property {() => void} free
 */

/** Answers requests about drawings; keeps the board of the design it was asked about last. */
export class BoardDesk {
  #make;
  /** @type {Board | undefined} */
  #board;
  #design = "";

  /** @param {new (json: string) => Board} make */
  constructor(make) {
    this.#make = make;
  }

  /**
   * @param {Request} request
   * @returns {Exchange[RequestKind]["get"]}
   * @throws {import("./messages.js").Problem}
   */
  answer(request) {
    switch (request.kind) {
      case "drawings":
        return this.#with(request.design).drawings();
      case "arching":
        return this.#with(request.design).arching();
      default:
        throw new TypeError(`the drawing board knows no "${request.kind}"`);
    }
  }

  /** @param {string} design */
  #with(design) {
    if (this.#board === undefined || design !== this.#design) {
      const board = new this.#make(design);
      this.#board?.free();
      this.#board = board;
      this.#design = design;
    }
    return this.#board;
  }
}
