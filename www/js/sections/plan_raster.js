/**
 * A number in colour over the plan, cell by cell, with its scale below and room for lines above.
 */
/** @import { Thickness } from "../messages.js" */

import { sequentialColour, sequentialGradient } from "../sequential_colours.js";
import { SVG, svgLine } from "./svg_line.js";

/** A figure to be laid into the page, and the sheet of lines over it. */
export class PlanRaster {
  figure = document.createElement("figure");
  svg = document.createElementNS(SVG, "svg");
  #canvas = document.createElement("canvas");
  #ends = [document.createElement("span"), document.createElement("span")];

  constructor() {
    this.figure.className = "thickness";
    const sheet = document.createElement("div");
    sheet.append(this.#canvas, this.svg);
    const bar = document.createElement("span");
    bar.className = "bar";
    bar.style.background = sequentialGradient();
    const key = document.createElement("figcaption");
    key.append(this.#ends[0], bar, this.#ends[1]);
    this.figure.append(sheet, key);
  }

  /**
   * @param {Pick<Thickness, "low" | "step_mm" | "columns" | "edges">} grid
   * @param {Float32Array} shares (row, column) of the scale, 0 to 1; NaN leaves the paper
   * @param {object} said
   * @param {[string, string]} said.ends of the scale
   * @param {string} said.label for a screen reader
   * @param {readonly SVGElement[]} [lines] over the colours, under the edges
   */
  show({ low, step_mm, columns, edges }, shares, { ends, label }, lines = []) {
    const rows = shares.length / columns;
    const image = new ImageData(columns, rows);
    shares.forEach((share, place) => {
      if (!Number.isNaN(share)) {
        image.data.set([...sequentialColour(share), 255], 4 * place);
      }
    });
    this.#canvas.width = columns;
    this.#canvas.height = rows;
    this.#canvas.getContext("2d")?.putImageData(image, 0, 0);
    // The canvas' pixels have their middles on the values' places.
    const [u, v] = [low[0] - step_mm / 2, low[1] - step_mm / 2];
    const [width, height] = [columns * step_mm, rows * step_mm];
    this.svg.setAttribute("viewBox", [u, v, width, height].join(" "));
    // A picture only now: one without a name would say nothing.
    this.svg.setAttribute("role", "img");
    this.svg.setAttribute("aria-label", label);
    this.#ends.forEach((end, at) => {
      end.textContent = ends[at];
    });
    // All round the box first, so that what is no wood can be covered by the even-odd rule.
    const off = svgLine("off", `M${u} ${v}h${width}v${height}h${-width}z${edges}`);
    this.svg.replaceChildren(off, ...lines, svgLine("edge", edges));
  }
}
