/**
 * How well a measured file fits, in words and as a picture.
 */
/** @import { ImportFit, ImportKind, PointOff } from "./import_messages.js" */

import { MEASURED_WORDS } from "#words/measured.js";
import { numberText } from "#words/page.js";
import { showFigures } from "../figure_list.js";
import { countText } from "../words/numbers.js";
import { note } from "./fields.js";
import { SVG, svgLine } from "./svg_line.js";

/** A height that is off by more than this is shown so: what a gauge read carefully can be off. */
const GAUGE_MM = 0.1;

/**
 * @param {ImportKind} kind
 * @param {ImportFit} fit
 * @param {number} tolerance_mm of an outline
 * @returns {HTMLElement[]}
 */
export function fitReport(kind, fit, tolerance_mm) {
  const words = MEASURED_WORDS;
  const list = document.createElement("dl");
  list.className = "figures";
  /** @type {[string, string, string?][]} */
  const lines = [
    [words.points, countText(fit.points)],
    [kind === "outline" ? words.fit : words.smooth, mm(fit.rms_mm), farthest(fit.largest)],
  ];
  if (fit.drawn_rms_mm !== undefined && fit.drawn_largest !== undefined) {
    lines.push([words.drawn, mm(fit.drawn_rms_mm), farthest(fit.drawn_largest)]);
  }
  showFigures(list, lines);
  return [list, ...remarks(kind, fit, tolerance_mm).map(note), ...outliers(kind, fit)];
}

/**
 * @param {ImportKind} kind
 * @param {ImportFit} fit
 * @param {number} tolerance_mm
 * @returns {string[]}
 */
export function remarks(kind, fit, tolerance_mm) {
  const words = MEASURED_WORDS;
  /** @type {string[]} */
  const said = [];
  if (kind === "outline") {
    said.push(words.within(fit.largest.off_mm <= tolerance_mm, tolerance_mm));
    if (fit.own_bass) {
      said.push(words.own_bass);
    }
    if (fit.holes_scaled !== undefined && fit.holes_scaled !== 1) {
      said.push(words.holes_scaled(fit.holes_scaled));
    }
  }
  if (fit.scan) {
    said.push(words.missing(fit.scan.missing_mm2, fit.scan.missing_share));
    if (fit.scan.turned_inwards > 0.01) {
      said.push(words.turned_inwards(fit.scan.turned_inwards));
    }
  }
  return said;
}

/**
 * @param {ImportKind} kind
 * @param {ImportFit} fit
 */
function outliers(kind, fit) {
  if (kind === "outline") {
    return [];
  }
  const heading = note(MEASURED_WORDS.outliers(fit.outlier_count));
  if (fit.outlier_count === 0) {
    return [heading];
  }
  const list = document.createElement("ul");
  list.className = "outliers";
  for (const outlier of fit.outliers) {
    const item = document.createElement("li");
    item.textContent = `${signed(outlier.off_mm)}, ${place(outlier)}`;
    list.append(item);
  }
  if (fit.outlier_count > fit.outliers.length) {
    const more = document.createElement("li");
    more.textContent = MEASURED_WORDS.more_outliers(fit.outlier_count - fit.outliers.length);
    list.append(more);
  }
  return [heading, list];
}

/**
 * The points on the outline.
 * @param {ImportKind} kind
 * @param {ImportFit} fit
 * @param {number} tolerance_mm
 * @returns {HTMLElement}
 */
export function fitPicture(kind, fit, tolerance_mm) {
  const words = MEASURED_WORDS;
  const limit_mm = kind === "outline" ? tolerance_mm : GAUGE_MM;
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", words.picture);
  const [low, high] = extent(fit);
  svg.setAttribute("viewBox", [low[0], -high[1], high[0] - low[0], high[1] - low[1]].map(Math.round).join(" "));
  /** @type {Record<string, string>} */
  const dots = { near: "", above: "", below: "" };
  for (let i = 0; i < fit.shown.length; i += 3) {
    const [x, y, off_mm] = fit.shown.subarray(i, i + 3);
    dots[Math.abs(off_mm) <= limit_mm ? "near" : off_mm > 0 ? "above" : "below"] += `M${spot([x, y])}h0`;
  }
  const ring = (/** @type {PointOff} */ { at: [x, y] }) => `M${spot([x - 5, y])}a5 5 0 1 0 10 0a5 5 0 1 0-10 0`;
  const cross = (/** @type {PointOff} */ { at: [x, y] }) => `M${spot([x - 3, y - 3])}l6-6m0 6l-6-6`;
  /** @type {Record<string, string>} */
  const paths = {
    centreline: `M0 ${-high[1]}V${-low[1]}`,
    edge: outlinePath(fit.outline),
    ...dots,
    outlier: fit.outliers.map(cross).join(""),
    largest: ring(fit.largest),
  };
  for (const [name, d] of Object.entries(paths)) {
    svg.append(svgLine(name, d));
  }
  const key = document.createElement("figcaption");
  const named = /** @type {(keyof typeof words.key)[]} */ (Object.keys(words.key));
  for (const name of named.filter((name) => paths[name] !== "")) {
    const entry = document.createElement("span");
    entry.className = name;
    entry.textContent = words.key[name];
    key.append(entry);
  }
  const figure = document.createElement("figure");
  figure.className = "fit";
  figure.append(svg, key);
  return figure;
}

/** @param {ImportFit} fit */
function extent({ outline, shown }) {
  const low = [0, 0];
  const high = [0, 0];
  for (const [values, step] of /** @type {const} */ ([
    [outline, 2],
    [shown, 3],
  ])) {
    for (let i = 0; i < values.length; i += step) {
      for (const k of [0, 1]) {
        low[k] = Math.min(low[k], values[i + k] - 6);
        high[k] = Math.max(high[k], values[i + k] + 6);
      }
    }
  }
  return [low, high];
}

/** @param {Float32Array} outline */
function outlinePath(outline) {
  let d = "";
  for (let i = 0; i < outline.length; i += 2) {
    d += `${i === 0 ? "M" : "L"}${spot([outline[i], outline[i + 1]])}`;
  }
  return `${d}Z`;
}

/** @param {readonly [number, number]} at */
function spot([x, y]) {
  return `${x.toFixed(1)} ${(-y).toFixed(1)}`;
}

/** @param {PointOff} point */
function farthest(point) {
  return `${MEASURED_WORDS.largest} ${mm(Math.abs(point.off_mm))}: ${place(point)}`;
}

/** @param {PointOff} point */
function place({ number, at: [x, y] }) {
  return MEASURED_WORDS.where(number, x, y);
}

/** @param {number} length_mm */
function mm(length_mm) {
  return `${numberText(length_mm, length_mm < 0.1 ? 3 : 2)} mm`;
}

/** @param {number} length_mm */
function signed(length_mm) {
  return `${length_mm < 0 ? "−" : "+"}${mm(Math.abs(length_mm))}`;
}
