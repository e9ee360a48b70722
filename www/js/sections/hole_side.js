/**
 * One side's sound hole in fields: its pattern, its measures, and what it measures by them.
 */
/** @import { Design } from "../design_store.js" */
/** @import { HoleFigures, MeasureLimits } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { Side } from "./f_holes.js" */

import { SECTION_WORDS } from "#words/sections.js";
import { at, changed } from "./design_edits.js";
import { ChoiceField, group, NumberField, note } from "./fields.js";
import { MeasureField } from "./measure_field.js";

const WORDS = SECTION_WORDS.sound_holes;

/** Patterns whose ends can be left sharp. */
const WITH_ENDS = new Set(["eyes_and_stem", "crescent", "slot"]);

/** Measures of f-holes that a design may leave out, and what stands for them then. */
const LEFT_OUT = /** @type {Readonly<Record<string, string>>} */ (WORDS.left_out);

/**
 * @typedef {object} SideEvents
 * @property {(design: Design, side: Side, edit: (design: Design, side: Side) => Design) => Design} edited on both sides where they are alike
 * @property {(side: Side, edit: (design: Design, side: Side) => Design) => Promise<boolean>} settle
 * @property {(pattern: string) => Promise<void>} exchange
 * @property {(lean_deg: number) => Promise<void>} lean
 */

/** The fields of one side. */
export class SideFields {
  /** What is laid into the page. */
  set;
  #side;
  #legend;
  #pattern;
  #ends;
  #lean;
  #numbers;
  #figures = note("");

  /**
   * @param {Side} side
   * @param {readonly MeasureLimits[]} measures
   * @param {Bench} bench
   * @param {SideEvents} events
   */
  constructor(side, measures, bench, { edited, settle, exchange, lean }) {
    const title = WORDS.sides[side];
    this.#side = side;
    this.#pattern = new ChoiceField(WORDS.pattern, title, WORDS.patterns, (pattern) => void exchange(pattern));
    this.#ends = new ChoiceField(WORDS.ends, title, WORDS.cuts, (cut) => {
      const ends = cut === "sharp" ? cut : undefined;
      void settle(side, (design, on) => changed(design, `sound_holes.${on}.ends`, ends));
    });
    this.#lean = new NumberField({ label: WORDS.lean, group: title, unit: "deg" }, (value) => {
      if (value !== undefined) {
        void lean(value);
      }
    });
    this.#numbers = measures
      .filter(({ path }) => path.startsWith("sound_holes.*."))
      .map((measure) => {
        const key = measure.path.slice("sound_holes.*.".length);
        const field = new MeasureField(measure, bench, {
          group: title,
          absent: LEFT_OUT[key],
          edit: (design, value) => edited(design, side, (own, on) => changed(own, `sound_holes.${on}.${key}`, value)),
        });
        return { key, field };
      });
    const rows = this.#numbers.map(({ field }) => field.row);
    this.set = group(title, this.#pattern.row, ...rows, this.#lean.row, this.#ends.row, this.#figures);
    this.#legend = this.set.querySelector("legend");
  }

  /**
   * @param {Design} design
   * @param {boolean} alike
   */
  show(design, alike) {
    const hole = at(design, `sound_holes.${this.#side}`);
    this.set.hidden = alike && this.#side === "bass";
    if (this.#legend !== null) {
      this.#legend.textContent = alike ? WORDS.both : WORDS.sides[this.#side];
    }
    this.#pattern.show(hole?.kind);
    this.#ends.row.hidden = !WITH_ENDS.has(hole?.kind);
    this.#ends.show(hole?.ends ?? "round");
    this.#lean.row.hidden = hole?.kind !== "eyes_and_stem";
    for (const { key, field } of this.#numbers) {
      const may_be_left_out = hole?.kind === "eyes_and_stem" && key in LEFT_OUT;
      field.row.hidden = hole?.[key] === undefined && !may_be_left_out;
      field.show(hole?.[key]);
    }
  }

  /** @param {readonly HoleFigures[]} holes */
  judge(holes) {
    const own = holes.find(({ treble_side }) => treble_side === (this.#side === "treble"));
    this.#figures.textContent = own === undefined ? "" : WORDS.measures(own.area_mm2, own.perimeter_mm);
    this.#lean.show(own?.lean_deg ?? undefined);
  }
}
