/**
 * Colours the top by a number at each place: of its shape, from the drawing board, or of the mode, from the worker that has it.
 */
/** @import { ColourKey } from "./colour_key.js" */
/** @import { Picture } from "./messages.js" */
/** @import { Bench } from "./sections.js" */
import { COLOUR_WORDS } from "#words/colours.js";
import { numberText } from "#words/page.js";
import { nearestNodes, nodeCount, nodesOf, outsidePlaces } from "./picture_nodes.js";
import { rangeOf } from "./scalar_range.js";
import { sequentialColour } from "./sequential_colours.js";

/**
 * What can be shown: its unit and decimals, whether it has a middle from which it goes both ways, and whether its few largest
 * values are left beyond the scale's ends, where all others would look alike beside them.
 * @typedef {object} Scalar
 * @property {string} unit
 * @property {number} decimals
 * @property {[string, string]} [signed]
 * @property {boolean} [clipped]
 * @property {number} [least] that the scale of what is signed reaches to: less is nothing
 * @property {"picture" | "motion"} [moment] after which there are others, "picture" where nothing is said
 * @property {(picture: Picture) => Promise<Float32Array | undefined>} [values] (node) where the board doesn't know them
 */

/** @type {Record<string, Scalar>} */
const SCALARS = {
  height: { unit: "mm", decimals: 1 },
  thickness: { unit: "mm", decimals: 1 },
  slope: { unit: "°", decimals: 0 },
  curvature: { unit: "/m", decimals: 0, signed: COLOUR_WORDS.curvature, clipped: true },
  strain_energy: { unit: COLOUR_WORDS.times_mean, decimals: 1, clipped: true, moment: "motion" },
};

/**
 * Makes something else known that can be shown.
 * @param {string} by
 * @param {Scalar} scalar
 */
export function offerScalar(by, scalar) {
  SCALARS[by] = scalar;
}

/** Follows what is shown with the colours of one number. */
export class ScalarColours {
  #bench;
  #key;
  #by = "";
  /** @type {Uint8Array} */
  #diverging = new Uint8Array();
  /** @type {{ places_mm: Float32Array, shares: Float32Array, colours: Uint8Array } | undefined} (node) as painted last */
  #painted;
  /** @type {(() => void)[]} */
  #listening = [];

  /**
   * @param {Bench} bench
   * @param {ColourKey} key
   */
  constructor(bench, key) {
    this.#bench = bench;
    this.#key = key;
  }

  /**
   * @param {string} by
   * @param {Uint8Array} diverging colours for what goes both ways, (step, rgb)
   */
  show(by, diverging) {
    this.stop();
    this.#by = by;
    this.#diverging = diverging;
    const { stage } = this.#bench;
    const follow = () => void this.#follow();
    this.#listening = [
      stage.listen("picture", () => this.#bridge()),
      stage.listen(SCALARS[by].moment ?? "picture", follow),
      stage.listen("beside", follow),
    ];
    void this.#follow();
  }

  /** Leaves the colours to something else. */
  stop() {
    this.#by = "";
    this.#painted = undefined;
    for (const stop of this.#listening.splice(0)) {
      stop();
    }
  }

  /** Until the new picture's numbers are there it has the last ones' colours at the same places: without any it would flash. */
  #bridge() {
    const { stage } = this.#bench;
    if (this.#painted !== undefined && stage.picture !== undefined) {
      const { places_mm, shares, colours } = this.#painted;
      const near = nearestNodes(outsidePlaces(stage.picture), places_mm);
      const bridged = Float32Array.from(nodesOf(stage.picture), (node) => shares[near[node]]);
      stage.look((view) => view.set_scalar(bridged, colours));
    }
  }

  async #follow() {
    const { stage } = this.#bench;
    const [by, picture, beside, other] = [this.#by, stage.picture, stage.beside, stage.beside?.picture];
    const of_nodes = picture && (await this.#values(by, picture));
    const of_other = other && (await beside?.scalar(by));
    // Something newer is on its way where the answer is late.
    const current = picture === stage.picture && other === stage.beside?.picture && by === this.#by;
    if (picture !== undefined && of_nodes !== undefined && current) {
      this.#paint(by, picture, of_nodes, other && of_other && { picture: other, of_nodes: of_other });
    }
  }

  /**
   * @param {string} by
   * @param {Picture} picture
   * @returns {Promise<Float32Array | undefined>} (node)
   */
  #values(by, picture) {
    const { session, store, board } = this.#bench;
    const { values } = SCALARS[by];
    if (values !== undefined) {
      return values(picture);
    }
    return by === "strain_energy"
      ? session.strainEnergy()
      : board().askBeside("quantity", { design: store.text, what: by, places_mm: outsidePlaces(picture) });
  }

  /**
   * Both tops on one scale.
   * @param {string} by
   * @param {Picture} picture
   * @param {Float32Array} of_nodes
   * @param {{ picture: Picture, of_nodes: Float32Array }} [other] of the top beside it
   */
  #paint(by, picture, of_nodes, other) {
    if (nodeCount(picture) !== of_nodes.length) {
      // The picture is of another mesh than the mode.
      return;
    }
    const { unit, decimals, signed, clipped, least = 0 } = SCALARS[by];
    const all = other === undefined ? of_nodes : Float32Array.from([...of_nodes, ...other.of_nodes]);
    const found = rangeOf(all, { signed: signed !== undefined, clipped: clipped === true });
    const range = signed && found.most < least ? { least: -least, most: least } : found;
    const span = Math.max(range.most - range.least, Number.MIN_VALUE);
    const share = (/** @type {number} */ value) => Math.min(Math.max((value - range.least) / span, 0), 1);
    const shares = of_nodes.map(share);
    const steps = this.#diverging.length / 3;
    const colours = signed ? this.#diverging : sequential(steps);
    const with_alpha = new Uint8Array(4 * steps).fill(255);
    for (let step = 0; step < steps; step++) {
      with_alpha.set(colours.subarray(3 * step, 3 * step + 3), 4 * step);
    }
    // The numbers belong to this picture; a new view's picture brings its own.
    const of_vertices = Float32Array.from(nodesOf(picture), (node) => shares[node]);
    this.#bench.stage.look((view) => view.set_scalar(of_vertices, with_alpha));
    if (other !== undefined && nodeCount(other.picture) === other.of_nodes.length) {
      const of_others = Float32Array.from(nodesOf(other.picture), (node) => share(other.of_nodes[node]));
      this.#bench.stage.beside?.tell((view) => view.set_scalar(of_others, with_alpha));
    }
    this.#painted = { places_mm: outsidePlaces(picture), shares, colours: with_alpha };
    this.#bench.stage.hold("colour", (view) => view.set_colour("scalar"));
    const end = (/** @type {number} */ value, /** @type {string} */ beyond, /** @type {string} */ word) =>
      [beyond, `${numberText(value, decimals)}\u202f${unit}`, word].join(" ").trim();
    this.#key.show(colours, [
      end(range.least, clipped && signed ? "≤" : "", signed?.[0] ?? ""),
      end(range.most, clipped ? "≥" : "", signed?.[1] ?? ""),
    ]);
  }
}

/**
 * @param {number} steps
 * @returns {Uint8Array} (step, rgb)
 */
function sequential(steps) {
  return Uint8Array.from(Array.from({ length: steps }, (_, step) => sequentialColour(step / (steps - 1))).flat());
}
