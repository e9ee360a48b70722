/**
 * Levels over frequency on a sheet: a musical scale across, decibels upwards.
 */
import { SVG, svgLine } from "./svg_line.js";

const WIDTH = 320;
const HEIGHT = 200;
const LEFT = 30;
const FOOT = 16;
const STEP_DB = 10;
const MARKS = [100, 200, 500, 1000, 2000, 5000];

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

  /** @param {{ own: Curve, kept?: Curve, label: string, unit: string }} shown */
  show({ own, kept, label, unit }) {
    this.#sheet.setAttribute("aria-label", label);
    this.#unit.textContent = unit;
    const levels = [...Array.from(own.db), ...Array.from(kept?.db ?? [])].filter(Number.isFinite);
    const [low, high] = [
      STEP_DB * Math.floor(Math.min(...levels) / STEP_DB),
      STEP_DB * Math.ceil(Math.max(...levels) / STEP_DB),
    ];
    const [first, last] = [own.hz[0], own.hz[own.hz.length - 1]];
    const x = (/** @type {number} */ hz) => LEFT + ((WIDTH - LEFT) * Math.log(hz / first)) / Math.log(last / first);
    const y = (/** @type {number} */ db) => (HEIGHT * (high - db)) / (high - low);
    const path = (/** @type {Curve} */ { hz, db }, /** @type {string} */ name) =>
      svgLine(name, `M${Array.from(hz, (at, k) => `${x(at).toFixed(1)} ${y(db[k]).toFixed(1)}`).join("L")}`);
    const parts = [];
    for (let db = low; db <= high; db += STEP_DB) {
      parts.push(svgLine("grid", `M${LEFT} ${y(db)}H${WIDTH}`));
      if (db % (2 * STEP_DB) === 0) {
        parts.push(text(LEFT - 3, y(db) + 3, String(db).replace("-", "−"), "end"));
      }
    }
    for (const hz of MARKS.filter((mark) => mark >= first && mark <= last)) {
      parts.push(svgLine("grid", `M${x(hz)} 0V${HEIGHT}`));
      parts.push(text(x(hz), HEIGHT + FOOT - 4, hz < 1000 ? String(hz) : `${hz / 1000}k`, "middle"));
    }
    if (kept !== undefined) {
      parts.push(path(kept, "kept"));
    }
    this.#sheet.replaceChildren(...parts, path(own, "own"));
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
