/**
 * A part of the design in numbers, one field for each measure of it.
 */
/** @import { Design } from "../design_store.js" */
/** @import { MeasureLimits } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
import { at, changed } from "./design_edits.js";
import { ChoiceField } from "./fields.js";
import { MeasureField } from "./measure_field.js";

/** The measures of one part, shown only where the design has it. */
export class PartFields {
  /** What is laid into the page. */
  rows = document.createElement("div");
  #path;
  /** @type {{ path: string, field: { show: (value: any) => void } }[]} */
  #fields = [];
  /** @type {unknown} what the part was when it was last there */
  #seen;

  /**
   * @param {string} path of the part in the design
   * @param {readonly MeasureLimits[]} measures all that there are; those below the path are shown
   * @param {Bench} bench
   * @param {string} [group] said before each label
   */
  constructor(path, measures, bench, group = "") {
    this.#path = path;
    this.rows.className = "part";
    for (const measure of measures.filter(({ path: own }) => own.startsWith(`${path}.`))) {
      const field = new MeasureField(measure, bench, { group });
      this.#fields.push({ path: measure.path, field });
      this.rows.append(field.row);
    }
  }

  /**
   * Adds the choice of the wood that the part is made of.
   * @param {string} label
   * @param {string} group
   * @param {Readonly<Record<string, string>>} species names by their keys
   * @param {Bench} bench
   */
  chooseWood(label, group, species, bench) {
    const path = `${this.#path}.wood.species`;
    const field = new ChoiceField(label, group, species, (word) => {
      void bench.settle(changed(bench.store.edited, path, word));
    });
    this.#fields.push({ path, field });
    this.rows.append(field.row);
  }

  /**
   * @param {Design} design
   * @returns {boolean} whether it has the part
   */
  show(design) {
    const part = at(design, this.#path);
    const there = part !== undefined;
    this.#seen = part ?? this.#seen;
    this.rows.hidden = !there;
    if (there) {
      for (const { path, field } of this.#fields) {
        field.show(at(design, path));
      }
    }
    return there;
  }

  /** The part as it was last in the design; undefined where it never was. */
  get seen() {
    return structuredClone(this.#seen);
  }
}
