/**
 * Who moves at which frequency: the regions' shares as bands stacked over a musical scale.
 */
/** @import { WhoMoves } from "../messages.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { sequentialColour } from "../sequential_colours.js";
import { ChoiceField } from "./fields.js";
import { FOOT, FrequencyScale } from "./frequency_scale.js";
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
  #scale = new FrequencyScale(100, 6000, 0, WIDTH);

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
        pointed(this.#scale.at((clientX - box.left) / box.width));
      }
    });
    this.figure.className = "share-map";
    this.figure.append(this.#sheet, this.#key);
  }

  /** @param {WhoMoves} who */
  show(who) {
    this.#who = who;
    this.#scale = new FrequencyScale(who.hz[0], who.hz[who.hz.length - 1], 0, WIDTH);
    this.#draw();
  }

  /** @param {number} hz that the line stands at */
  point(hz) {
    if (this.#who !== undefined) {
      const x = this.#scale.place(hz);
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
          (share, point) => `${this.#scale.place(hz[point]).toFixed(1)} ${(HEIGHT * (1 - share)).toFixed(1)}`,
        );
      const band = svgLine("band", `M${along(floor).join("L")}L${along(lower).toReversed().join("L")}Z`);
      band.style.fill = fills[region];
      const title = document.createElementNS(SVG, "title");
      title.textContent = WORDS.region(key);
      band.append(title);
      return band;
    });
    this.#bands.replaceChildren(...bands);
    this.#marks.replaceChildren(...this.#scale.marks(HEIGHT, 0));
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
