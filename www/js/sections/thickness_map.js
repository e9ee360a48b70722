/**
 * The thickness over the plan in colour, with lines of equal thickness.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Place, Thickness } from "../messages.js" */

import { GRADUATION_WORDS as WORDS } from "#words/graduation.js";
import { numberText } from "#words/page.js";
import { sequentialColour, sequentialGradient } from "../sequential_colours.js";
import { at } from "./design_edits.js";
import { SVG, svgLine } from "./svg_line.js";

/** Shows a thickness map and says where it is pressed. */
export class ThicknessMap {
  figure = document.createElement("figure");
  #canvas = document.createElement("canvas");
  #svg = document.createElementNS(SVG, "svg");
  #thin = document.createElement("span");
  #thick = document.createElement("span");

  /** @param {(place: Place) => void} pressed across and station, mm */
  constructor(pressed) {
    this.figure.className = "thickness";
    const sheet = document.createElement("div");
    sheet.append(this.#canvas, this.#svg);
    const bar = document.createElement("span");
    bar.className = "bar";
    bar.style.background = sequentialGradient();
    const key = document.createElement("figcaption");
    key.append(this.#thin, bar, this.#thick);
    this.figure.append(sheet, key);
    this.#svg.addEventListener("click", (event) => {
      const from_page = this.#svg.getScreenCTM()?.inverse();
      if (from_page !== undefined) {
        const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(from_page);
        pressed([x, -y]);
      }
    });
  }

  /**
   * @param {Thickness} thickness
   * @param {Design} design
   */
  show(thickness, design) {
    const { low, step_mm, columns, values, thinnest_mm, thickest_mm } = thickness;
    const rows = values.length / columns;
    const image = new ImageData(columns, rows);
    const range = Math.max(thickest_mm - thinnest_mm, 1e-9);
    values.forEach((value, place) => {
      if (!Number.isNaN(value)) {
        image.data.set([...sequentialColour((value - thinnest_mm) / range), 255], 4 * place);
      }
    });
    this.#canvas.width = columns;
    this.#canvas.height = rows;
    this.#canvas.getContext("2d")?.putImageData(image, 0, 0);
    // The canvas' pixels have their middles on the values' places.
    const box = [low[0] - step_mm / 2, low[1] - step_mm / 2, columns * step_mm, rows * step_mm];
    this.#svg.setAttribute("viewBox", box.join(" "));
    this.#svg.setAttribute("role", "img");
    this.#svg.setAttribute("aria-label", WORDS.map(thinnest_mm, thickest_mm));
    this.#thin.textContent = `${numberText(thinnest_mm, 1)} mm`;
    this.#thick.textContent = `${numberText(thickest_mm, 1)} mm`;
    // All round the box first, so that what is no wood can be covered by the even-odd rule.
    const [u, v, width, height] = box;
    const lines = /** @type {SVGElement[]} */ ([
      svgLine("off", `M${u} ${v}h${width}v${height}h${-width}z${thickness.edges}`),
    ]);
    for (const { thickness_mm, path, number_at } of thickness.contours) {
      lines.push(svgLine("contour", path));
      if (number_at) {
        lines.push(number(number_at, numberText(thickness_mm, 1)));
      }
    }
    lines.push(svgLine("edge", thickness.edges));
    for (const [kind, list] of /** @type {const} */ ([
      ["measured", at(design, "graduation.measured")],
      ["painted", at(design, "graduation.painted")],
    ])) {
      for (const { place } of list ?? []) {
        lines.push(svgLine(kind, `M${place.across_mm} ${-place.station_mm}h0`));
      }
    }
    this.#svg.replaceChildren(...lines);
  }
}

/**
 * @param {Place} place
 * @param {string} words
 */
function number([u, v], words) {
  const text = document.createElementNS(SVG, "text");
  text.setAttribute("x", String(u));
  text.setAttribute("y", String(v));
  text.textContent = words;
  return text;
}
