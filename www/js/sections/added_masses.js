/** @import { Design } from "../design_store.js" */
/** @import { MeasureLimits } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { FITTING_WORDS as WORDS } from "#words/fittings.js";
import { at, bridgeStation, changed } from "./design_edits.js";
import { button, group, measureOf, note } from "./fields.js";
import { MeasureField } from "./measure_field.js";

const MASSES = "masses";
const KEYS = ["mass_g", "place.across_mm", "place.station_mm"];

/** Half of a bridge of 2.2 g (row V-BRIDGE-M of the reference values) under its treble foot. */
const FIRST_G = 1.1;
const FOOT_ACROSS_MM = 17;

/** Masses fixed to the top, as a list. */
export class AddedMasses {
  set;
  #list = document.createElement("ol");
  #measures;
  #bench;
  /** @type {MeasureField[][]} */
  #rows = [];

  /**
   * @param {readonly MeasureLimits[]} measures
   * @param {Bench} bench
   */
  constructor(measures, bench) {
    this.#measures = measures;
    this.#bench = bench;
    this.#list.className = "masses";
    const add = button(WORDS.add_mass, () => {
      const station_mm = bridgeStation(bench.store.edited);
      // A second one goes under the other foot.
      const across_mm = this.#rows.length % 2 === 0 ? FOOT_ACROSS_MM : -FOOT_ACROSS_MM;
      this.#settle([...this.#masses, { place: { across_mm, station_mm }, mass_g: FIRST_G }]);
    });
    this.set = group(WORDS.masses, note(WORDS.masses_about), this.#list, add);
  }

  /** @param {Design} design */
  show(design) {
    const masses = at(design, MASSES) ?? [];
    while (this.#rows.length > masses.length) {
      this.#rows.pop();
      this.#list.lastElementChild?.remove();
    }
    while (this.#rows.length < masses.length) {
      this.#rows.push(this.#build(this.#rows.length));
    }
    this.#rows.forEach((fields, index) => {
      fields.forEach((field, key) => {
        field.show(at(masses[index], KEYS[key]));
      });
    });
  }

  /** @param {number} index */
  #build(index) {
    const title = WORDS.mass(index + 1);
    const fields = KEYS.map((key) => {
      return new MeasureField(measureOf(`${MASSES}.*.${key}`, this.#measures), this.#bench, {
        group: title,
        edit: (design, value) => changed(design, `${MASSES}.${index}.${key}`, value),
      });
    });
    const remove = () => this.#settle(this.#masses.filter((/** @type {unknown} */ _, other) => other !== index));
    const item = document.createElement("li");
    item.append(...fields.map(({ row }) => row), button(WORDS.remove_mass, remove, `${title}: ${WORDS.remove_mass}`));
    this.#list.append(item);
    return fields;
  }

  /** @returns {object[]} */
  get #masses() {
    return at(this.#bench.store.edited, MASSES) ?? [];
  }

  /** @param {object[]} masses */
  #settle(masses) {
    void this.#bench.settle(changed(this.#bench.store.edited, MASSES, masses.length > 0 ? masses : undefined));
  }
}
