/**
 * The points of a spline, in millimetres. The design holds them as shares of half span and rise, so that a curve goes with
 * its arch.
 */

import { SECTION_WORDS } from "#words/sections.js";
import { button, group, NumberField } from "./fields.js";

/** @typedef {{ place: number, height: number }} ArchPoint as the design has it */

/** A list of points that can be changed, added and removed. */
export class PointList {
  set;
  /** Where the points stand in the design. */
  path;
  #title;
  #long;
  #changed;
  #list = document.createElement("ol");
  /** @type {{ place: NumberField, height: NumberField }[]} */
  #rows = [];
  /** @type {readonly ArchPoint[]} */
  #points = [];
  #span_mm = 1;
  #rise_mm = 1;

  /**
   * @param {string} title of the arch
   * @param {string} name of the list, where an arch has two
   * @param {boolean} long whether it is the long arch
   * @param {(points: ArchPoint[]) => void} changed
   * @param {string} path
   */
  constructor(title, name, long, changed, path) {
    const words = SECTION_WORDS.arching;
    this.path = path;
    this.#title = name === "" ? title : `${title} ${name}`;
    this.#long = long;
    this.#changed = changed;
    this.#list.className = "points";
    const add = button(words.add_point, () => changed(withOneMore(this.#points)), `${this.#title}: ${words.add_point}`);
    const heading = document.createElement("p");
    heading.className = "points-heading";
    heading.append(...[words.place(long), words.height].map(span));
    this.set = group(name === "" ? words.points : `${words.points}, ${name}`, heading, this.#list, add);
  }

  /**
   * @param {readonly ArchPoint[]} points none where the arch is no spline
   * @param {number} span_mm
   * @param {number} rise_mm
   */
  show(points, span_mm, rise_mm) {
    this.set.hidden = points.length === 0;
    [this.#points, this.#span_mm, this.#rise_mm] = [points, span_mm, rise_mm];
    while (this.#rows.length > points.length) {
      this.#rows.pop();
      this.#list.lastElementChild?.remove();
    }
    while (this.#rows.length < points.length) {
      this.#rows.push(this.#build(this.#rows.length));
    }
    points.forEach(({ place, height }, index) => {
      this.#rows[index].place.show(place * span_mm);
      this.#rows[index].height.show(height * rise_mm);
    });
  }

  /** @param {number} index */
  #build(index) {
    const words = SECTION_WORDS.arching;
    const point = `${this.#title}, ${words.point(index + 1)}`;
    const place = new NumberField({ label: words.place(this.#long), group: point, unit: "mm" }, (value) => {
      this.#change(index, { place: (value ?? 0) / this.#span_mm });
    });
    const height = new NumberField({ label: words.height, group: point, unit: "mm" }, (value) => {
      this.#change(index, { height: (value ?? 0) / this.#rise_mm });
    });
    const remove = () => this.#changed(this.#points.filter((_, other) => other !== index));
    const item = document.createElement("li");
    item.append(place.row, height.row, button("×", remove, `${point}: ${words.remove_point}`));
    this.#list.append(item);
    return { place, height };
  }

  /**
   * @param {number} index
   * @param {Partial<ArchPoint>} change
   */
  #change(index, change) {
    this.#changed(this.#points.map((point, other) => (other === index ? { ...point, ...change } : point)));
  }
}

/**
 * One point more, in the middle of the widest gap.
 * @param {readonly ArchPoint[]} points
 * @returns {ArchPoint[]}
 */
export function withOneMore(points) {
  const all = [{ place: 0, height: 1 }, ...points, { place: 1, height: 0 }];
  const gaps = all.slice(1).map((point, index) => point.place - all[index].place);
  const widest = gaps.indexOf(Math.max(...gaps));
  const [a, b] = [all[widest], all[widest + 1]];
  const middle = { place: (a.place + b.place) / 2, height: (a.height + b.height) / 2 };
  return [...points.slice(0, widest), middle, ...points.slice(widest)];
}

/** @param {string} text */
function span(text) {
  const made = document.createElement("span");
  made.textContent = text;
  return made;
}
