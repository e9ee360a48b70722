/**
 * A measure of the design in a section: its tiny drawing and its number; while it has the focus, a slider round its value and what it
 * may be at most.
 */
/** @import { Design } from "../design_store.js" */
/** @import { MeasureLimits } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
import { measureRange } from "#words/measures.js";
import { numberText } from "#words/page.js";
import { paintRange } from "../shape_controls.js";
import { sketchOf } from "../sketches.js";
import { changed } from "./design_edits.js";
import { NumberField, ofMeasure, shown, stepOf } from "./fields.js";

/** How far the slider reaches to both sides of the value: a share of it, and at least so many of its unit. */
const REACH = 0.25;
/** @type {Record<string, number>} */
const LEAST_REACH = { mm: 2, deg: 15, g: 2, "": 0.1, GPa: 0.5 };

/**
 * @typedef {object} MeasureOptions
 * @property {string} [group] said before the label
 * @property {string} [absent] what stands in the field where the design has no number
 * @property {(design: Design, value: number | undefined) => Design} [edit] how the design gets it; at the measure's path, if not told
 */

/** One measure's number with its slider. */
export class MeasureField {
  /** What is laid into the page. */
  row = document.createElement("div");
  #measure;
  #number;
  #slider = document.createElement("input");
  #ends = [document.createElement("span"), document.createElement("span")];
  /** @type {number | undefined} */
  #value;

  /**
   * @param {MeasureLimits} measure
   * @param {Pick<Bench, "store" | "settle" | "trial">} bench
   * @param {MeasureOptions} [options]
   */
  constructor(measure, bench, { group, absent, edit = (design, value) => changed(design, measure.path, value) } = {}) {
    this.#measure = measure;
    const options = { ...ofMeasure(measure), group, absent };
    this.#number = new NumberField(options, (value) => void bench.settle(edit(bench.store.edited, value)));
    const sketch = sketchOf(measure.path);
    if (sketch !== undefined) {
      this.#number.row.prepend(sketch);
    }
    const slider = this.#slider;
    slider.type = "range";
    slider.step = String(stepOf(measure.unit));
    slider.setAttribute("aria-label", this.#number.name);
    slider.addEventListener("input", () => {
      paintRange(slider);
      this.#number.show(slider.valueAsNumber);
      bench.trial(edit(bench.store.edited, slider.valueAsNumber));
    });
    slider.addEventListener("change", () => void bench.settle(edit(bench.store.edited, slider.valueAsNumber)));
    const slide = document.createElement("div");
    slide.className = "slide";
    for (const end of this.#ends) {
      end.setAttribute("aria-hidden", "true");
    }
    slide.append(this.#ends[0], slider, this.#ends[1]);
    this.row.className = "measure-field";
    const { least, most, unit } = measure;
    this.row.title = measureRange(numberText(least), numberText(most), unit);
    this.row.append(this.#number.row, slide);
    // Laid round the value once, so that the thumb stays under the hand.
    this.row.addEventListener("focusin", ({ target, relatedTarget }) => {
      if (target !== slider || !this.row.contains(/** @type {Node | null} */ (relatedTarget))) {
        this.#layRound();
      }
    });
  }

  /** @param {number | undefined} value */
  show(value) {
    this.#value = value;
    this.#number.show(value);
    this.#slider.parentElement?.toggleAttribute("hidden", value === undefined);
    if (value !== undefined) {
      if (value < Number(this.#slider.min) || value > Number(this.#slider.max)) {
        this.#layRound();
      }
      this.#slider.value = String(value);
      paintRange(this.#slider);
    }
  }

  #layRound() {
    const value = this.#value;
    if (value === undefined) {
      return;
    }
    const { least, most, unit } = this.#measure;
    const reach = Math.max(REACH * Math.abs(value), LEAST_REACH[unit] ?? 1);
    const bounds = [Math.max(value - reach, least), Math.min(value + reach, most)].map((end) => shown(end, unit));
    [this.#slider.min, this.#slider.max] = bounds;
    this.#slider.value = String(value);
    this.#ends.forEach((end, index) => {
      end.textContent = numberText(Number(bounds[index]));
    });
    paintRange(this.#slider);
  }
}
