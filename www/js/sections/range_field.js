import { WORDS } from "#words/page.js";
import { paintRange } from "../shape_controls.js";

/** A slider in millimetres with its label and value. */
export class RangeField {
  row = document.createElement("label");
  #name = document.createElement("span");
  #input = document.createElement("input");
  #output = document.createElement("output");

  /** @param {(value: number) => void} changed */
  constructor(changed) {
    this.#input.type = "range";
    this.#input.step = "1";
    this.#input.addEventListener("input", () => changed(this.#input.valueAsNumber));
    this.row.className = "range";
    this.row.append(this.#name, this.#output, this.#input);
  }

  /** @param {{ label: string, least: number, most: number, value: number }} state */
  show({ label, least, most, value }) {
    this.#name.textContent = label;
    this.#input.setAttribute("aria-label", WORDS.in_unit(label, "mm"));
    [this.#input.min, this.#input.max, this.#input.value] = [least, most, value].map(String);
    this.#output.value = `${this.#input.value} mm`;
    paintRange(this.#input);
  }
}
