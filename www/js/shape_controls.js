/**
 * One slider and one number for each measure. While a control moves, the change is offered as a trial; when it is let
 * go, it is settled.
 */
/** @import { Design } from "./design_store.js" */
/** @import { Measure } from "./measures.js" */

import { numberText, WORDS } from "#words/page.js";
import { valueAt, withValueAt } from "./design_store.js";
import { MEASURES } from "./measures.js";
import { part } from "./page_parts.js";
import { styleSheet } from "./style_sheet.js";

/**
 * @typedef {object} ShapeEvents
 * @property {() => Design} current the design that a change starts from
 * @property {(design: Design, measure: Measure) => void} trial while a control is moved
 * @property {(design: Design, measure: Measure) => void} settle when it is let go
 * @property {(measure: Measure) => void} not_a_number what was typed can't be read
 */

/** Builds the controls and keeps them showing the design. */
export class ShapeControls {
  #events;
  /** @type {{ measure: Measure, group: HTMLElement, slider: HTMLInputElement, number: HTMLInputElement }[]} */
  #controls = [];

  /**
   * @param {HTMLElement} host
   * @param {ShapeEvents} events
   */
  constructor(host, events) {
    this.#events = events;
    for (const measure of MEASURES) {
      this.#controls.push(this.#build(host, measure));
    }
  }

  /**
   * Sets every control to the design's values.
   * @param {Design} design
   */
  show(design) {
    for (const { measure, group, slider, number } of this.#controls) {
      const values = measure.paths.map((path) => valueAt(design, path));
      const value = values[0];
      const there = typeof value === "number";
      slider.disabled = number.disabled = !there;
      if (there) {
        slider.value = String(value);
        // A number being typed is the person's until it is done.
        if (document.activeElement !== number || number.value === number.defaultValue) {
          number.value = String(value);
        }
        number.defaultValue = String(value);
      }
      part(".differ", HTMLElement, group).hidden = values.every((other) => other === value);
      paintRange(slider);
    }
  }

  /** Puts a tiny drawing beside each label. */
  async sketch() {
    const { sketchOf } = await import("./sketches.js");
    await styleSheet("sketches");
    for (const { measure, group } of this.#controls) {
      group.prepend(sketchOf(measure.paths[0].join(".").replace(".bass.", ".*.")) ?? "");
    }
  }

  /**
   * Marks the control whose value was refused, or none.
   * @param {Measure | undefined} refused
   */
  mark(refused) {
    for (const { measure, slider, number } of this.#controls) {
      for (const input of [slider, number]) {
        input.toggleAttribute("aria-invalid", measure === refused);
      }
    }
  }

  /**
   * @param {HTMLElement} host
   * @param {Measure} measure
   */
  #build(host, measure) {
    const template = part("#measure", HTMLTemplateElement);
    const group = part("div", HTMLDivElement, /** @type {DocumentFragment} */ (template.content.cloneNode(true)));
    const slider = part("input[type=range]", HTMLInputElement, group);
    const number = part("input[type=number]", HTMLInputElement, group);
    const label = part("label", HTMLLabelElement, group);
    const words = WORDS.measures[measure.id];
    slider.id = measure.id;
    label.htmlFor = measure.id;
    label.textContent = words.label;
    number.setAttribute("aria-label", WORDS.in_unit(words.label, measure.unit));
    part(".unit", HTMLElement, group).textContent = measure.unit;
    part(".least", HTMLElement, group).textContent = numberText(measure.least);
    part(".most", HTMLElement, group).textContent = numberText(measure.most);
    part(".differ", HTMLElement, group).textContent = WORDS.sides_differ;
    const meaning = part(".meaning", HTMLElement, group);
    meaning.textContent = words.meaning;
    meaning.id = `${measure.id}-meaning`;
    for (const input of [slider, number]) {
      input.setAttribute("aria-describedby", meaning.id);
      input.step = String(measure.step);
    }
    slider.min = String(measure.least);
    slider.max = String(measure.most);
    // A step is a convenience of the arrows; a workshop measure between two steps is as good as any.
    number.step = "any";
    slider.addEventListener("input", () => {
      number.value = slider.value;
      paintRange(slider);
      this.#change(measure, slider.valueAsNumber, this.#events.trial);
    });
    slider.addEventListener("change", () => this.#change(measure, slider.valueAsNumber, this.#events.settle));
    number.addEventListener("change", () => {
      if (Number.isFinite(number.valueAsNumber)) {
        this.#change(measure, number.valueAsNumber, this.#events.trial);
        this.#change(measure, number.valueAsNumber, this.#events.settle);
      } else {
        this.#events.not_a_number(measure);
        this.show(this.#events.current());
      }
    });
    number.addEventListener("blur", () => this.show(this.#events.current()));
    host.append(group);
    return { measure, group, slider, number };
  }

  /**
   * @param {Measure} measure
   * @param {number} value
   * @param {(design: Design, measure: Measure) => void} offer
   */
  #change(measure, value, offer) {
    const current = this.#events.current();
    const design = measure.paths.reduce((changed, path) => withValueAt(changed, path, value), current);
    offer(design, measure);
  }
}

/**
 * Tells the style sheet how much of the slider's track lies left of its thumb.
 * @param {HTMLInputElement} slider
 */
export function paintRange(slider) {
  const share = (slider.valueAsNumber - Number(slider.min)) / (Number(slider.max) - Number(slider.min));
  slider.style.setProperty("--share", share.toFixed(4));
}
