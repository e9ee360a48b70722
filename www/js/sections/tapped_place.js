/**
 * A place in plan: in numbers, or by a click on the stage.
 */
/** @import { Bench } from "../sections.js" */
import { part } from "../page_parts.js";
import { NumberField } from "./fields.js";
import { pickedPlace } from "./picked_place.js";

/** A click moves less than this between press and release, pixels; more turns the top. */
const STILL_PX = 4;

export class TappedPlace {
  /** What is laid into the page. */
  rows = document.createElement("div");
  /** @type {[number, number]} mm */
  place_mm;
  #fields;
  #chosen;

  /**
   * @param {Bench} bench
   * @param {string} group said before the labels
   * @param {{ across: { label: string, unit: string }, along: { label: string, unit: string } }} words
   * @param {[number, number]} place_mm at first
   * @param {() => void} chosen after it was moved by a person
   * @param {() => boolean} listens whether a click on the stage is meant for this
   */
  constructor(bench, group, words, place_mm, chosen, listens) {
    this.place_mm = place_mm;
    this.#chosen = chosen;
    this.#fields = [words.across, words.along].map((options, axis) => {
      return new NumberField({ ...options, group, step: 1 }, (value) => {
        const moved = /** @type {[number, number]} */ ([...this.place_mm]);
        moved[axis] = value ?? moved[axis];
        this.#go(moved);
      });
    });
    this.rows.className = "part";
    this.rows.append(...this.#fields.map(({ row }) => row));
    this.#show();

    const view = part("#stage-view", HTMLElement);
    /** @type {[number, number]} */
    let pressed = [0, 0];
    view.addEventListener("pointerdown", ({ clientX, clientY }) => {
      pressed = [clientX, clientY];
    });
    view.addEventListener("pointerup", ({ clientX, clientY }) => {
      if (!listens() || Math.hypot(clientX - pressed[0], clientY - pressed[1]) > STILL_PX) {
        return;
      }
      const { stage } = bench;
      const box = view.getBoundingClientRect();
      const ray = stage.ray(clientX - box.left, clientY - box.top);
      const { picture, motion, phase_rad, exaggeration_mm } = stage;
      const found = ray && picture && pickedPlace(picture, motion, phase_rad, exaggeration_mm, ray);
      if (found !== undefined) {
        this.#go([Math.round(found[0]), Math.round(found[1])]);
      }
    });
  }

  /** @param {[number, number]} place_mm */
  #go(place_mm) {
    this.place_mm = place_mm;
    this.#show();
    this.#chosen();
  }

  #show() {
    this.#fields.forEach((field, axis) => {
      field.show(this.place_mm[axis]);
    });
  }
}
