/**
 * Levels over frequency on a sheet: a musical scale across, decibels upwards.
 */
import { line, scaleLinear } from "../plotting.js";
import { FOOT, frequencyMarks, frequencyScale } from "./frequency_scale.js";
import { SVG, svgLine } from "./svg_line.js";

const WIDTH = 320;
const HEIGHT = 200;
const LEFT = 30;
/** About as many lines of equal level. */
const LEVELS = 8;
/** Room for a number of three digits over a peak. */
const WORD_WIDTH = 15;
const WORD_HEIGHT = 8;

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
    const y = scaleLinear([Math.min(...levels), Math.max(...levels)], [HEIGHT, 0]).nice(LEVELS);
    const x = frequencyScale(own.hz[0], own.hz[own.hz.length - 1], LEFT, WIDTH);
    const path = (/** @type {Curve} */ { hz, db }, /** @type {string} */ name) => {
      const along = line(
        (_, point) => x(hz[point]),
        (/** @type {number} */ level) => y(level),
      );
      return svgLine(name, along.digits(1)(Array.from(db)) ?? "");
    };
    const parts = [
      ...y.ticks(LEVELS).flatMap((db) => [
        svgLine("grid", `M${LEFT} ${y(db)}H${WIDTH}`),
        // At the ends half of a number would be cut off.
        text(LEFT - 3, Math.min(Math.max(y(db) + 3, 7), HEIGHT), y.tickFormat(LEVELS)(db), "end"),
      ]),
      ...frequencyMarks(x, HEIGHT, HEIGHT),
    ];
    if (kept !== undefined) {
      parts.push(path(kept, "kept"));
    }
    const names = apart(peaks.map(({ hz, db, name }) => ({ x: x(hz), y: y(db) - 3, name })));
    this.#sheet.replaceChildren(
      ...parts,
      path(own, "own"),
      ...names.map((own) => text(own.x, own.y, own.name, "middle")),
    );
  }
}

/**
 * Without those that would run into one that stands higher.
 * @template {{ x: number, y: number }} T
 * @param {readonly T[]} names
 * @returns {T[]}
 */
function apart(names) {
  /** @type {T[]} */
  const kept = [];
  for (const own of names.toSorted((one, other) => one.y - other.y)) {
    if (kept.every(({ x, y }) => Math.abs(x - own.x) > WORD_WIDTH || Math.abs(y - own.y) > WORD_HEIGHT)) {
      kept.push(own);
    }
  }
  return kept;
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
