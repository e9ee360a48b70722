/**
 * Labelled numbers, choices and boxes of the sections. Each takes the number it shows from outside and says when a person
 * has changed it; none knows designs.
 */
/** @import { MeasureLimits } from "../messages.js" */

import { measureName } from "#words/measures.js";
import { WORDS } from "#words/page.js";

/**
 * Two decimals of a millimetre, three of a pure number, are what is shown; the design keeps what it has.
 * @param {number} value
 * @param {string} unit
 */
export function shown(value, unit) {
  return String(Number(value.toFixed(unit === "" ? 3 : 2)));
}

/** @param {string} unit */
export function stepOf(unit) {
  return unit === "" ? 0.01 : unit === "deg" ? 1 : 0.1;
}

/**
 * @typedef {object} NumberOptions
 * @property {string} label
 * @property {string} [group] what it belongs to, said before the label
 * @property {string} unit
 * @property {number} [step]
 * @property {string} [absent] what stands in the field where there is no number
 */

/**
 * @param {string} path
 * @param {readonly MeasureLimits[]} measures that the core knows; this is one of them
 * @returns {MeasureLimits}
 */
export function measureOf(path, measures) {
  const nameless = { path, what: path, unit: "", least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY };
  return measures.find((measure) => measure.path === path) ?? nameless;
}

/**
 * A measure of the design as a field shows it.
 * @param {{ path: string, what: string, unit: string }} measure
 * @returns {NumberOptions}
 */
export function ofMeasure({ path, what, unit }) {
  return { label: measureName(path, what), unit };
}

/** A number with its label and unit. */
export class NumberField {
  /** The row, to be laid into the page. */
  row = document.createElement("label");
  /** What a screen reader calls it. */
  name;
  #input = document.createElement("input");
  #sign = document.createElement("span");
  #unit;
  #value = "";

  /**
   * @param {NumberOptions} options
   * @param {(value: number | undefined) => void} changed undefined where the field was emptied
   */
  constructor({ label, group = "", unit, step, absent }, changed) {
    this.#unit = unit;
    const words = document.createElement("span");
    words.className = "name";
    words.textContent = label;
    this.#sign.className = "unit";
    this.#sign.textContent = unit === "deg" ? "°" : unit;
    const input = this.#input;
    input.type = "number";
    input.inputMode = "decimal";
    input.step = String(step ?? stepOf(unit));
    input.placeholder = absent ?? "";
    const whole = group === "" ? label : `${group}, ${label}`;
    this.name = unit === "" ? whole : WORDS.in_unit(whole, unit);
    input.setAttribute("aria-label", this.name);
    input.addEventListener("change", () => {
      if (Number.isFinite(input.valueAsNumber)) {
        changed(input.valueAsNumber);
      } else if (absent !== undefined && !input.validity.badInput) {
        changed(undefined);
      } else {
        input.value = this.#value;
      }
    });
    // A number being typed is the person's until it is done; then it is the design's.
    input.addEventListener("blur", () => {
      input.value = this.#value;
    });
    this.row.className = "field";
    this.row.append(words, input, this.#sign);
  }

  /** @param {string} unit where it depends on another choice */
  sayUnit(unit) {
    this.#sign.textContent = unit;
  }

  /** @param {number | undefined} value */
  show(value) {
    const typing = document.activeElement === this.#input && this.#input.value !== this.#value;
    this.#value = value === undefined ? "" : shown(value, this.#unit);
    if (!typing) {
      this.#input.value = this.#value;
    }
  }
}

/** One of a few, with its label. */
export class ChoiceField {
  row = document.createElement("label");
  #select = document.createElement("select");

  /**
   * @param {string} label
   * @param {string} group
   * @param {Readonly<Record<string, string>>} choices words and what is shown for them
   * @param {(word: string) => void} changed
   */
  constructor(label, group, choices, changed) {
    const name = document.createElement("span");
    name.textContent = label;
    for (const [word, text] of Object.entries(choices)) {
      this.#select.append(new Option(text, word));
    }
    this.#select.setAttribute("aria-label", group === "" ? label : `${group}, ${label}`);
    this.#select.addEventListener("change", () => changed(this.#select.value));
    this.row.className = "field";
    this.row.append(name, this.#select);
  }

  get word() {
    return this.#select.value;
  }

  /** @param {string} word */
  show(word) {
    this.#select.value = word;
  }
}

/** A box to tick, with its label. */
export class BoxField {
  row = document.createElement("label");
  #box = document.createElement("input");

  /**
   * @param {string} label
   * @param {string} group
   * @param {(ticked: boolean) => void} changed
   */
  constructor(label, group, changed) {
    this.#box.type = "checkbox";
    if (group !== "") {
      this.#box.setAttribute("aria-label", `${group}, ${label}`);
    }
    this.#box.addEventListener("change", () => changed(this.#box.checked));
    this.row.className = "box";
    this.row.append(this.#box, ` ${label}`);
  }

  get ticked() {
    return this.#box.checked;
  }

  /** @param {boolean} ticked */
  show(ticked) {
    this.#box.checked = ticked;
  }
}

/**
 * @param {string} text
 * @param {() => void} pressed
 * @param {string} [name] for a screen reader, where the text alone does not say enough
 */
export function button(text, pressed, name) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  if (name !== undefined) {
    made.setAttribute("aria-label", name);
  }
  made.addEventListener("click", pressed);
  return made;
}

/**
 * A named group of fields.
 * @param {string} title
 * @param {...(Node | string)} parts
 */
export function group(title, ...parts) {
  const set = document.createElement("fieldset");
  const legend = document.createElement("legend");
  legend.textContent = title;
  set.append(legend, ...parts);
  return set;
}

/** @param {string} text */
export function note(text) {
  const made = document.createElement("p");
  made.className = "note";
  made.textContent = text;
  return made;
}

/**
 * A file to be chosen, with its label.
 * @param {string} label
 * @param {string} accept
 * @param {(file: File) => void} chosen
 */
export function chooser(label, accept, chosen) {
  const row = document.createElement("label");
  row.className = "file";
  const input = document.createElement("input");
  input.type = "file";
  input.accept = accept;
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file !== undefined) {
      chosen(file);
      // Emptied, so that choosing the same file again is a change again.
      input.value = "";
    }
  });
  const name = document.createElement("span");
  name.textContent = label;
  row.append(name, input);
  return row;
}
