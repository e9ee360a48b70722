/**
 * A tap tone's modes as strokes over frequency, and a heard spectrum over them.
 */
/** @import { TapTone } from "../messages.js" */
/** @import { Spectrum } from "./listening.js" */
import { line } from "../plotting.js";
import { FOOT, frequencyMarks, frequencyScale } from "./frequency_scale.js";
import { SVG, svgLine } from "./svg_line.js";

const WIDTH = 320;
const HEIGHT = 120;
const LEAST_HZ = 50;
const MOST_HZ = 2000;
/** From the strongest down. */
const RANGE_DB = 50;
const SCALE = frequencyScale(LEAST_HZ, MOST_HZ, 0, WIDTH);

export class TapSheet {
  figure = document.createElement("figure");
  #sheet = document.createElementNS(SVG, "svg");
  #strokes = document.createElementNS(SVG, "g");
  #heard = svgLine("kept", "");

  /** @param {string} label */
  constructor(label) {
    this.figure.className = "curve-sheet";
    this.#sheet.setAttribute("viewBox", `0 0 ${WIDTH} ${HEIGHT + FOOT}`);
    this.#sheet.setAttribute("role", "img");
    this.#sheet.setAttribute("aria-label", label);
    this.#sheet.append(...frequencyMarks(SCALE, HEIGHT, HEIGHT), this.#strokes, this.#heard);
    this.figure.append(this.#sheet);
  }

  /** @param {TapTone["peaks"]} peaks */
  show(peaks) {
    const strokes = peaks
      .filter(({ hz, level_db }) => hz >= LEAST_HZ && hz <= MOST_HZ && level_db > -RANGE_DB)
      .map(({ hz, level_db }) => `M${SCALE(hz).toFixed(1)} ${HEIGHT}V${((-HEIGHT * level_db) / RANGE_DB).toFixed(1)}`);
    this.#strokes.replaceChildren(svgLine("stroke", strokes.join("")));
  }

  /** @param {Spectrum} spectrum its loudest at the top of the sheet */
  hear({ db, step_hz }) {
    const [first, last] = [Math.ceil(LEAST_HZ / step_hz), Math.min(Math.floor(MOST_HZ / step_hz), db.length - 1)];
    const loudest = db.subarray(first, last + 1).reduce((most, own) => Math.max(most, own), Number.NEGATIVE_INFINITY);
    const along = line(
      (_, index) => SCALE((first + index) * step_hz),
      (/** @type {number} */ level) => (HEIGHT * Math.min(loudest - level, RANGE_DB)) / RANGE_DB,
    ).digits(1);
    const heard = Number.isFinite(loudest) ? along(Array.from(db.subarray(first, last + 1))) : null;
    this.#heard.setAttribute("d", heard ?? "");
  }
}
