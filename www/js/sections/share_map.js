/**
 * Who moves at which frequency: the regions' shares as bands stacked over a musical scale.
 */
/** @import { WhoMoves } from "../messages.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { sequentialColour } from "../sequential_colours.js";
import { ChoiceField } from "./fields.js";
import { SVG, svgLine } from "./svg_line.js";

const WIDTH = 320;
const HEIGHT = 170;
const FOOT = 16;
/** Steps through the colours by which neighbours never come near each other. */
const GOLDEN = 0.618034;
/** Marked on the scale, Hz. */
const MARKS = [100, 200, 500, 1000, 2000, 5000];

export class ShareMap {
  figure = document.createElement("figure");
  choice;
  #sheet = document.createElementNS(SVG, "svg");
  #bands = document.createElementNS(SVG, "g");
  #marks = document.createElementNS(SVG, "g");
  #line = svgLine("pointer", "");
  #key = document.createElement("figcaption");
  /** @type {WhoMoves | undefined} */
  #who;

  /** @param {(hz: number) => void} pointed when a person points at a frequency */
  constructor(pointed) {
    this.choice = new ChoiceField(WORDS.map_of, "", WORDS.maps, () => this.#draw());
    this.#sheet.setAttribute("viewBox", `0 0 ${WIDTH} ${HEIGHT + FOOT}`);
    this.#sheet.setAttribute("role", "img");
    this.#sheet.setAttribute("aria-label", WORDS.map);
    this.#sheet.append(this.#bands, this.#marks, this.#line);
    this.#sheet.addEventListener("click", ({ clientX }) => {
      const box = this.#sheet.getBoundingClientRect();
      const hz = this.#who?.hz;
      if (hz !== undefined) {
        pointed(hz[0] * (hz[hz.length - 1] / hz[0]) ** ((clientX - box.left) / box.width));
      }
    });
    this.figure.className = "share-map";
    this.figure.append(this.#sheet, this.#key);
  }

  /** @param {WhoMoves} who */
  show(who) {
    this.#who = who;
    this.#draw();
  }

  /** @param {number} hz that the line stands at */
  point(hz) {
    if (this.#who !== undefined) {
      const x = this.#place(hz);
      this.#line.setAttribute("d", `M${x} 0V${HEIGHT}`);
    }
  }

  #draw() {
    const who = this.#who;
    if (who === undefined) {
      return;
    }
    const shares = this.choice.word === "volume" ? who.volume : who.energy;
    const { keys, hz } = who;
    const count = keys.length;
    const fills = keys.map((_, region) => `rgb(${sequentialColour((GOLDEN * region) % 1).join(" ")})`);
    const floor = new Float32Array(hz.length);
    const bands = keys.map((key, region) => {
      const lower = floor.slice();
      hz.forEach((_, point) => {
        floor[point] += shares[point * count + region];
      });
      const along = (/** @type {Float32Array} */ heights) =>
        Array.from(
          heights,
          (share, point) => `${this.#place(hz[point]).toFixed(1)} ${(HEIGHT * (1 - share)).toFixed(1)}`,
        );
      const band = svgLine("band", `M${along(floor).join("L")}L${along(lower).toReversed().join("L")}Z`);
      band.style.fill = fills[region];
      const title = document.createElementNS(SVG, "title");
      title.textContent = WORDS.region(key);
      band.append(title);
      return band;
    });
    this.#bands.replaceChildren(...bands);
    this.#marks.replaceChildren(
      ...MARKS.filter((mark) => mark >= hz[0] && mark <= hz[hz.length - 1]).flatMap((mark) => {
        const text = document.createElementNS(SVG, "text");
        text.setAttribute("x", String(this.#place(mark)));
        text.setAttribute("y", String(HEIGHT + FOOT - 4));
        text.textContent = mark < 1000 ? String(mark) : `${mark / 1000}k`;
        return [svgLine("tick", `M${this.#place(mark)} ${HEIGHT}v3`), text];
      }),
    );
    this.#sheet.setAttribute(
      "aria-label",
      WORDS.map_label(/** @type {Record<string, string>} */ (WORDS.maps)[this.choice.word]),
    );
    this.#key.replaceChildren(
      ...keys.map((key, region) => {
        const item = document.createElement("span");
        item.textContent = WORDS.region(key);
        item.style.setProperty("--stroke", fills[region]);
        return item;
      }),
    );
  }

  /** @param {number} hz */
  #place(hz) {
    const all = this.#who?.hz ?? [1, 2];
    return (WIDTH * Math.log(hz / all[0])) / Math.log(all[all.length - 1] / all[0]);
  }
}
