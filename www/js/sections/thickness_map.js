/**
 * The thickness over the plan in colour, with lines of equal thickness.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Place, Thickness } from "../messages.js" */

import { GRADUATION_WORDS as WORDS } from "#words/graduation.js";
import { numberText } from "#words/page.js";
import { at } from "./design_edits.js";
import { PlanRaster } from "./plan_raster.js";
import { SVG, svgLine } from "./svg_line.js";

/** Shows a thickness map and says where it is pressed. */
export class ThicknessMap {
  figure;
  #raster = new PlanRaster();

  /** @param {(place: Place) => void} pressed across and station, mm */
  constructor(pressed) {
    const { figure, svg } = this.#raster;
    this.figure = figure;
    svg.addEventListener("click", (event) => {
      const from_page = svg.getScreenCTM()?.inverse();
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
    const { values, thinnest_mm, thickest_mm } = thickness;
    const range = Math.max(thickest_mm - thinnest_mm, 1e-9);
    /** @type {SVGElement[]} */
    const lines = [];
    for (const { thickness_mm, path, number_at } of thickness.contours) {
      lines.push(svgLine("contour", path));
      if (number_at) {
        lines.push(number(number_at, numberText(thickness_mm, 1)));
      }
    }
    /** @type {SVGElement[]} */
    const points = [];
    for (const [kind, list] of /** @type {const} */ ([
      ["measured", at(design, "graduation.measured")],
      ["painted", at(design, "graduation.painted")],
    ])) {
      for (const { place } of list ?? []) {
        points.push(svgLine(kind, `M${place.across_mm} ${-place.station_mm}h0`));
      }
    }
    this.#raster.show(
      thickness,
      values.map((value) => (value - thinnest_mm) / range),
      {
        ends: [`${numberText(thinnest_mm, 1)} mm`, `${numberText(thickest_mm, 1)} mm`],
        label: WORDS.map(thinnest_mm, thickest_mm),
      },
      lines,
    );
    this.#raster.svg.append(...points);
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
