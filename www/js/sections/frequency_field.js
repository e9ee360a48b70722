import { paintRange } from "../shape_controls.js";
import { nearestNote } from "./pitch.js";

/** Steps of a semitone that one press of an arrow key goes by; Page Up goes by three semitones. */
const A_SEMITONE = 6;
const PAGE_SEMITONES = 3;

/** A frequency on a musical scale: even steps of the slider are even intervals. */
export class FrequencyField {
  row = document.createElement("label");
  least_hz = 100;
  most_hz = 6000;
  #input = document.createElement("input");
  #output = document.createElement("output");
  #text;

  /**
   * @param {string} label
   * @param {(hz: number, note: string, cents: number) => string} text of a frequency
   * @param {() => void} changed
   */
  constructor(label, text, changed) {
    this.#text = text;
    const input = this.#input;
    input.type = "range";
    input.min = "0";
    input.max = String(Math.ceil(12 * A_SEMITONE * Math.log2(this.most_hz / this.least_hz)));
    input.setAttribute("aria-label", label);
    input.addEventListener("input", () => {
      this.#show();
      changed();
    });
    input.addEventListener("keydown", (event) => {
      const page = { PageUp: 1, PageDown: -1 }[event.key];
      if (page !== undefined) {
        event.preventDefault();
        input.valueAsNumber += page * PAGE_SEMITONES * A_SEMITONE;
        this.#show();
        changed();
      }
    });
    const name = document.createElement("span");
    name.textContent = label;
    this.row.className = "range";
    this.row.append(name, this.#output, input);
    this.hz = 440;
  }

  get hz() {
    return Math.min(this.least_hz * 2 ** (this.#input.valueAsNumber / (12 * A_SEMITONE)), this.most_hz);
  }

  set hz(hz) {
    this.#input.valueAsNumber = Math.round(12 * A_SEMITONE * Math.log2(hz / this.least_hz));
    this.#show();
  }

  #show() {
    const { name, cents } = nearestNote(this.hz);
    this.#output.value = this.#text(this.hz, name, cents);
    this.#input.setAttribute("aria-valuetext", this.#output.value);
    paintRange(this.#input);
  }
}
