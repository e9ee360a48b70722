/**
 * Levels over frequency on a sheet: a musical scale across, decibels upwards.
 */
import { FOOT, FrequencyScale } from "./frequency_scale.js";
import { SVG, svgLine } from "./svg_line.js";

const WIDTH = 320;
const HEIGHT = 200;
const LEFT = 30;
const STEP_DB = 10;

/** @typedef {{ hz: ArrayLike<number>, db: ArrayLike<number> }} Curve */

export class CurveSheet {
  figure = document.createElement("figure");
  #sheet = document.createElementNS(SVG, "svg");
  #unit = document.createElement("figcaption");

  /** @param {string} label until there is a curve */
  constructor(label) {
    this.figure.className = "curve-sheet";
    this.#sheet.setAttribute("viewBox", `0 0 ${WIDTH} ${HEIGHT + FOOT}`);
    this.#sheet.setAttribute("role", "img");
    this.#sheet.setAttribute("aria-label", label);
    this.figure.append(this.#sheet, this.#unit);
  }

  /**
   * @param {object} shown
   * @param {Curve} shown.own
   * @param {Curve} [shown.kept] drawn dashed
   * @param {readonly { hz: number, db: number, name: string }[]} shown.peaks of its own, each with what stands over it
   * @param {string} shown.label
   * @param {string} shown.unit
   */
  show({ own, kept, peaks, label, unit }) {
    this.#sheet.setAttribute("aria-label", label);
    this.#unit.textContent = unit;
    const levels = [...Array.from(own.db), ...Array.from(kept?.db ?? [])].filter(Number.isFinite);
    const [low, high] = [
      STEP_DB * Math.floor(Math.min(...levels) / STEP_DB),
      STEP_DB * Math.ceil(Math.max(...levels) / STEP_DB),
    ];
    const scale = new FrequencyScale(own.hz[0], own.hz[own.hz.length - 1], LEFT, WIDTH - LEFT);
    const y = (/** @type {number} */ db) => (HEIGHT * (high - db)) / (high - low);
    const path = (/** @type {Curve} */ { hz, db }, /** @type {string} */ name) =>
      svgLine(name, `M${Array.from(hz, (at, k) => `${scale.place(at).toFixed(1)} ${y(db[k]).toFixed(1)}`).join("L")}`);
    /** @type {SVGElement[]} */
    const parts = [];
    for (let db = low; db <= high; db += STEP_DB) {
      parts.push(svgLine("grid", `M${LEFT} ${y(db)}H${WIDTH}`));
      if (db % (2 * STEP_DB) === 0) {
        parts.push(text(LEFT - 3, y(db) + 3, String(db).replace("-", "−"), "end"));
      }
    }
    parts.push(...scale.marks(HEIGHT, HEIGHT));
    if (kept !== undefined) {
      parts.push(path(kept, "kept"));
    }
    const names = peaks.map(({ hz, db, name }) => text(scale.place(hz), y(db) - 3, name, "middle"));
    this.#sheet.replaceChildren(...parts, path(own, "own"), ...names);
  }
}

/**
 * @param {number} x
 * @param {number} y
 * @param {string} words
 * @param {string} anchor
 */
function text(x, y, words, anchor) {
  const made = document.createElementNS(SVG, "text");
  made.setAttribute("x", String(x));
  made.setAttribute("y", String(y));
  made.setAttribute("text-anchor", anchor);
  made.textContent = words;
  return made;
}
