/**
 * Colours the top by a number at each place: of its shape, from the drawing board, or of the mode, from the worker that has it.
 */
/** @import { ColourKey } from "./colour_key.js" */
/** @import { Picture } from "./messages.js" */
/** @import { Bench } from "./sections.js" */
import { nodeCount, nodesOf, outsidePlaces } from "./picture_nodes.js";
import { rangeOf } from "./scalar_range.js";
import { sequentialColour } from "./sequential_colours.js";

/**
 * What can be shown: its unit and decimals, whether it has a middle from which it goes both ways, and whether its few largest
 * values are left beyond the scale's ends, where all others would look alike beside them.
 * @type {Record<string, { unit: string, decimals: number, signed?: [string, string], clipped?: boolean }>}
 */
const SCALARS = {
  height: { unit: "mm", decimals: 1 },
  thickness: { unit: "mm", decimals: 1 },
  slope: { unit: "°", decimals: 0 },
  curvature: { unit: "/m", decimals: 0, signed: ["round", "hollow"], clipped: true },
  strain_energy: { unit: "× mean", decimals: 1, clipped: true },
};

/** Follows what is shown with the colours of one number. */
export class ScalarColours {
  #bench;
  #key;
  #by = "";
  /** @type {Uint8Array} */
  #diverging = new Uint8Array();
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
    const moment = by === "strain_energy" ? "motion" : "picture";
    this.#listening = [this.#bench.stage.listen(moment, () => void this.#follow())];
    void this.#follow();
  }

  /** Leaves the colours to something else. */
  stop() {
    this.#by = "";
    for (const stop of this.#listening.splice(0)) {
      stop();
    }
  }

  async #follow() {
    const { stage } = this.#bench;
    const [by, picture] = [this.#by, stage.picture];
    const of_nodes = picture && (await this.#values(by, picture));
    // Something newer is on its way where the answer is late.
    if (picture !== undefined && of_nodes !== undefined && picture === stage.picture && by === this.#by) {
      this.#paint(by, picture, of_nodes);
    }
  }

  /**
   * @param {string} by
   * @param {Picture} picture
   * @returns {Promise<Float32Array | undefined>} (node)
   */
  #values(by, picture) {
    const { session, store, board } = this.#bench;
    return by === "strain_energy"
      ? session.strainEnergy()
      : board().askBeside("quantity", { design: store.text, what: by, places_mm: outsidePlaces(picture) });
  }

  /**
   * @param {string} by
   * @param {Picture} picture
   * @param {Float32Array} of_nodes
   */
  #paint(by, picture, of_nodes) {
    if (nodeCount(picture) !== of_nodes.length) {
      // The picture is of another mesh than the mode.
      return;
    }
    const { unit, decimals, signed, clipped } = SCALARS[by];
    const range = rangeOf(of_nodes, { signed: signed !== undefined, clipped: clipped === true });
    const span = Math.max(range.most - range.least, Number.MIN_VALUE);
    const shares = Float32Array.from(nodesOf(picture), (node) => {
      return Math.min(Math.max((of_nodes[node] - range.least) / span, 0), 1);
    });
    const steps = this.#diverging.length / 3;
    const colours = signed ? this.#diverging : sequential(steps);
    const with_alpha = new Uint8Array(4 * steps).fill(255);
    for (let step = 0; step < steps; step++) {
      with_alpha.set(colours.subarray(3 * step, 3 * step + 3), 4 * step);
    }
    // The numbers belong to this picture; a new view's picture brings its own.
    this.#bench.stage.look((view) => view.set_scalar(shares, with_alpha));
    this.#bench.stage.hold("colour", (view) => view.set_colour("scalar"));
    const end = (/** @type {number} */ value, /** @type {string} */ beyond, /** @type {string} */ word) =>
      [beyond, `${value.toFixed(decimals).replace("-", "−")}\u202f${unit}`, word].join(" ").trim();
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
