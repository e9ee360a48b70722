/**
 * Thicknesses painted over the map: one at a time, each with its reach.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Place } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { GRADUATION_WORDS as WORDS } from "#words/graduation.js";
import { at, changed } from "./design_edits.js";
import { button, group, NumberField, note } from "./fields.js";

const PAINTED = "graduation.painted";

/** The brush, where it is set down by numbers, and what has been painted. */
export class Painted {
  set;
  #bench;
  #list = document.createElement("ul");
  #brush = { thickness_mm: 2.5, reach_mm: 25, across_mm: 0, station_mm: 100 };

  /** @param {Bench} bench */
  constructor(bench) {
    this.#bench = bench;
    this.#list.className = "painted-list";
    const number = (/** @type {keyof typeof this.brush} */ key) => {
      const field = new NumberField({ label: WORDS.brush[key], group: WORDS.paint, unit: "mm" }, (value) => {
        this.#brush[key] = value ?? this.#brush[key];
        field.show(this.#brush[key]);
      });
      field.show(this.#brush[key]);
      return field.row;
    };
    this.set = group(
      WORDS.paint,
      note(WORDS.paint_about),
      number("thickness_mm"),
      number("reach_mm"),
      number("across_mm"),
      number("station_mm"),
      button(WORDS.paint_there, () => this.paint([this.#brush.across_mm, this.#brush.station_mm])),
      this.#list,
    );
  }

  /** @type {{ thickness_mm: number, reach_mm: number, across_mm: number, station_mm: number }} */
  get brush() {
    return this.#brush;
  }

  /** @param {Place} place across and station, mm */
  paint([across_mm, station_mm]) {
    const { thickness_mm, reach_mm } = this.#brush;
    const place = { across_mm: tenths(across_mm), station_mm: tenths(station_mm) };
    const before = at(this.#bench.store.edited, PAINTED) ?? [];
    this.#take([...before, { place, thickness_mm, reach_mm }]);
  }

  /** @param {Design} design */
  show(design) {
    const painted = at(design, PAINTED) ?? [];
    const items = painted.map((/** @type {any} */ { place, thickness_mm, reach_mm }, /** @type {number} */ index) => {
      const item = document.createElement("li");
      const what = WORDS.painted(thickness_mm, reach_mm, place.across_mm, place.station_mm);
      const others = () => painted.filter((/** @type {unknown} */ _, /** @type {number} */ other) => other !== index);
      item.append(
        what,
        button(WORDS.remove, () => this.#take(others()), `${WORDS.remove}: ${what}`),
      );
      return item;
    });
    this.#list.replaceChildren(...items);
  }

  /** @param {unknown[]} painted */
  #take(painted) {
    const { edited } = this.#bench.store;
    void this.#bench.settle(changed(edited, PAINTED, painted.length > 0 ? painted : undefined));
  }
}

/** @param {number} value */
function tenths(value) {
  return Math.round(value * 10) / 10;
}
