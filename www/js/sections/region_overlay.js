/** @import { Region } from "../messages.js" */

import { REGION_WORDS as WORDS } from "#words/regions.js";
import { part } from "../page_parts.js";
import { SVG, svgLine } from "./svg_line.js";

/** The regions under the lines of the plan: quiet, named on hover, the pointed one filled. */
export class RegionOverlay {
  #layer = document.createElementNS(SVG, "g");
  #pointed;
  /** @type {Map<string, SVGGElement>} */
  #groups = new Map();

  /** @param {(key: string | undefined) => void} pointed at a region of the plan, or none */
  constructor(pointed) {
    this.#pointed = pointed;
    this.#layer.setAttribute("class", "regions");
    // The table says the same in words.
    this.#layer.setAttribute("aria-hidden", "true");
    part("#plan", SVGSVGElement).prepend(this.#layer);
  }

  /** @param {readonly Region[]} regions */
  show(regions) {
    this.#groups.clear();
    this.#layer.replaceChildren();
    for (const { key, path, narrowest_path } of regions) {
      const group = document.createElementNS(SVG, "g");
      group.setAttribute("class", key.replace(/_(bass|treble)$/, ""));
      const title = document.createElementNS(SVG, "title");
      title.textContent = WORDS.name(key);
      group.append(title);
      group.append(svgLine("region", path), svgLine("narrowest", narrowest_path ?? ""));
      group.addEventListener("pointerenter", () => this.#pointed(key));
      group.addEventListener("pointerleave", () => this.#pointed(undefined));
      this.#layer.append(group);
      this.#groups.set(key, group);
    }
  }

  /** @param {string | undefined} key */
  point(key) {
    for (const [own, group] of this.#groups) {
      group.classList.toggle("pointed", own === key);
    }
  }

  /** @param {boolean} shown */
  reveal(shown) {
    this.#layer.style.display = shown ? "" : "none";
  }
}
