/** @import { Arch, Arching, Code, Drawings, Exchange, Fittings, Hole, HoleFigures, MeasureLimits, Movement } from "./messages.js" */
/** @import { PlaceFigures, Preset, Regions, RegionsAt, Request, RequestKind, ShapeLikeness, Species } from "./messages.js" */
/** @import { Thickness, WoodFigures } from "./messages.js" */

/**
 * The drawing board's class, as the wasm module gives it: one design, drawn. Making one may throw a Problem.
 * @typedef {object} Board
 * @property {() => Drawings} drawings
 * @property {() => Arching} arching
 * @property {() => Arch[]} arches
 * @property {() => Fittings} usual_fittings
 * @property {() => WoodFigures} wood
 * @property {(arch: string, inflection_mm: number) => string} with_inflection
 * @property {(arch: string, family: string) => string} with_family
 * @property {(treble: boolean, pattern: string) => Hole} equal_hole
 * @property {() => HoleFigures[]} holes
 * @property {(treble: boolean, lean_deg: number) => Hole} leaning_hole
 * @property {(treble: boolean, d: string, mm_from_path: Float64Array) => Hole} traced_hole
 * @property {() => Regions} regions
 * @property {() => Thickness} thickness
 * @property {(what: string, places_mm: Float32Array) => Float32Array} quantity
 * @property {(x_mm: number, y_mm: number) => PlaceFigures | undefined} place
 * @property {(places_mm: Float32Array) => RegionsAt} regions_at
 * @property {(nodes: Float32Array, re: Float32Array, im: Float32Array) => Movement} movement
 * @property {(mass_g: number) => { change_mm: number, design: string }} to_mass
 * @property {(file: Uint8Array) => string} with_thicknesses
 * @property {() => void} free
 */

/**
 * The class itself.
 * @typedef {object} BoardClass
 * @property {() => MeasureLimits[]} measures
 * @property {() => Preset[]} presets
 * @property {() => Species[]} species
 * @property {(text: string) => Code} qr_code may throw a Problem
 * @property {(a: Float32Array, b: Float32Array, modes_of_b: number) => ShapeLikeness} compare_shapes
 */

/** Answers requests about drawings; keeps the board of the design it was asked about last. */
export class BoardDesk {
  #Board;
  /** @type {Board | undefined} */
  #board;
  #design = "";

  /** @param {BoardClass & (new (json: string) => Board)} board_class */
  constructor(board_class) {
    this.#Board = board_class;
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
      case "measures":
        return this.#Board.measures();
      case "presets":
        return this.#Board.presets();
      case "species":
        return this.#Board.species();
      case "qr_code":
        return this.#Board.qr_code(request.text);
      case "usual_fittings":
        return this.#with(request.design).usual_fittings();
      case "wood":
        return this.#with(request.design).wood();
      case "arches":
        return this.#with(request.design).arches();
      case "reshape": {
        const { arch, change } = request;
        const board = this.#with(request.design);
        return "family" in change
          ? board.with_family(arch, change.family)
          : board.with_inflection(arch, change.inflection_mm);
      }
      case "equal_hole":
        return this.#with(request.design).equal_hole(request.treble, request.pattern);
      case "holes":
        return this.#with(request.design).holes();
      case "leaning_hole":
        return this.#with(request.design).leaning_hole(request.treble, request.lean_deg);
      case "traced_hole":
        return this.#with(request.design).traced_hole(
          request.treble,
          request.d,
          Float64Array.from(request.mm_from_path),
        );
      case "regions":
        return this.#with(request.design).regions();
      case "thickness":
        return this.#with(request.design).thickness();
      case "quantity":
        return this.#with(request.design).quantity(request.what, request.places_mm);
      case "place":
        return this.#with(request.design).place(request.x_mm, request.y_mm);
      case "regions_at":
        return this.#with(request.design).regions_at(request.places_mm);
      case "movement":
        return this.#with(request.design).movement(request.nodes, request.re, request.im);
      case "compare_shapes":
        return this.#Board.compare_shapes(request.a, request.b, request.modes_of_b);
      case "to_mass":
        return this.#with(request.design).to_mass(request.mass_g);
      case "with_thicknesses":
        return this.#with(request.design).with_thicknesses(new Uint8Array(request.file));
      default:
        throw new TypeError(`the drawing board knows no "${request.kind}"`);
    }
  }

  /** @param {string} design */
  #with(design) {
    if (this.#board === undefined || design !== this.#design) {
      const board = new this.#Board(design);
      this.#board?.free();
      this.#board = board;
      this.#design = design;
    }
    return this.#board;
  }
}
