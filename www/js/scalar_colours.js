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
 * @type {Record<string, { unit: string, decimals: number, signed?: [string, string], clipped?: boolean }>}
 */
const SCALARS = {
  height: { unit: "mm", decimals: 1 },
  thickness: { unit: "mm", decimals: 1 },
  slope: { unit: "°", decimals: 0 },
  curvature: { unit: "/m", decimals: 0, signed: COLOUR_WORDS.curvature, clipped: true },
  strain_energy: { unit: COLOUR_WORDS.times_mean, decimals: 1, clipped: true },
};

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
    const moment = by === "strain_energy" ? "motion" : "picture";
    this.#listening = [stage.listen("picture", () => this.#bridge()), stage.listen(moment, () => void this.#follow())];
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
    const shares = of_nodes.map((value) => Math.min(Math.max((value - range.least) / span, 0), 1));
    const steps = this.#diverging.length / 3;
    const colours = signed ? this.#diverging : sequential(steps);
    const with_alpha = new Uint8Array(4 * steps).fill(255);
    for (let step = 0; step < steps; step++) {
      with_alpha.set(colours.subarray(3 * step, 3 * step + 3), 4 * step);
    }
    // The numbers belong to this picture; a new view's picture brings its own.
    const of_vertices = Float32Array.from(nodesOf(picture), (node) => shares[node]);
    this.#bench.stage.look((view) => view.set_scalar(of_vertices, with_alpha));
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
