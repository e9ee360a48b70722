/**
 * Who moves at which frequency: the regions' shares as bands stacked over a musical scale.
 */
/** @import { WhoMoves } from "../messages.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { area, stack } from "../plotting.js";
import { sequentialColour } from "../sequential_colours.js";
import { ChoiceField } from "./fields.js";
import { FOOT, frequencyMarks, frequencyScale } from "./frequency_scale.js";
import { SVG, svgLine } from "./svg_line.js";

const WIDTH = 320;
const HEIGHT = 170;
/** Steps through the colours by which neighbours never come near each other. */
const GOLDEN = 0.618034;

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
  #x = frequencyScale(100, 6000, 0, WIDTH);

  /** @param {(hz: number) => void} pointed when a person points at a frequency */
  constructor(pointed) {
    this.choice = new ChoiceField(WORDS.map_of, "", WORDS.maps, () => this.#draw());
    this.#sheet.setAttribute("viewBox", `0 0 ${WIDTH} ${HEIGHT + FOOT}`);
    this.#sheet.setAttribute("role", "img");
    this.#sheet.setAttribute("aria-label", WORDS.map);
    this.#sheet.append(this.#bands, this.#marks, this.#line);
    this.#sheet.addEventListener("click", ({ clientX }) => {
      const box = this.#sheet.getBoundingClientRect();
      if (this.#who !== undefined) {
        pointed(this.#x.invert((WIDTH * (clientX - box.left)) / box.width));
      }
    });
    this.figure.className = "share-map";
    this.figure.append(this.#sheet, this.#key);
  }

  /** @param {WhoMoves} who */
  show(who) {
    this.#who = who;
    this.#x = frequencyScale(who.hz[0], who.hz[who.hz.length - 1], 0, WIDTH);
    this.#draw();
  }

  /** @param {number} hz that the line stands at */
  point(hz) {
    if (this.#who !== undefined) {
      this.#line.setAttribute("d", `M${this.#x(hz)} 0V${HEIGHT}`);
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
    const stacked = stack()
      .keys(keys)
      .value((_, key, point) => shares[point * count + keys.indexOf(key)]);
    const outline = area(
      (_, point) => this.#x(hz[point]),
      ([from]) => HEIGHT * (1 - from),
      ([, to]) => HEIGHT * (1 - to),
    ).digits(1);
    const bands = stacked(Array.from(hz, () => ({}))).map((series, region) => {
      const { key } = series;
      const ends = Array.from(series, ([from, to]) => /** @type {[number, number]} */ ([from, to]));
      const band = svgLine("band", outline(ends) ?? "");
      band.style.fill = fills[region];
      const title = document.createElementNS(SVG, "title");
      title.textContent = WORDS.region(key);
      band.append(title);
      return band;
    });
    this.#bands.replaceChildren(...bands);
    this.#marks.replaceChildren(...frequencyMarks(this.#x, HEIGHT, 0));
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
}
