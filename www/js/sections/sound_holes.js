/**
 * The sound holes: which pattern, and its measures as numbers.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Hole, MeasureLimits } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
import { at, changed } from "./design_edits.js";
import { BoxField, ChoiceField, group, measureOf, NumberField, note, ofMeasure } from "./fields.js";
import { SECTION_WORDS } from "./section_words.js";

/** @typedef {"bass" | "treble"} Side */

const WORDS = SECTION_WORDS.sound_holes;

const STOP = "sound_holes.stop_mm";

/** Patterns whose ends can be left sharp. */
const WITH_ENDS = new Set(["eyes_and_stem", "crescent", "slot"]);

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const measures = await bench.board().ask("measures", {});
  const f_holes = new FHoles();
  let alike = sidesAreAlike(bench.store.design);
  const settle = (/** @type {Side} */ side, /** @type {(design: Design, side: Side) => Design} */ edit) => {
    const edited = edit(bench.store.design, side);
    return bench.settle(alike ? edit(edited, side === "bass" ? "treble" : "bass") : edited);
  };
  const stop = new NumberField(ofMeasure(measureOf(STOP, measures)), (value) => {
    void bench.settle(changed(bench.store.design, STOP, value));
  });
  const box = new BoxField(WORDS.alike, "", (ticked) => {
    alike = ticked;
    if (ticked) {
      const hole = at(bench.store.design, "sound_holes.treble");
      void bench.settle(changed(bench.store.design, "sound_holes.bass", structuredClone(hole)));
    }
    show(bench.store.design);
  });
  const sides = /** @type {const} */ (["treble", "bass"]).map(
    (side) => new SideFields(side, measures, settle, (pattern) => exchange(side, pattern)),
  );

  const exchange = (/** @type {Side} */ side, /** @type {string} */ pattern) =>
    bench.attempt(async () => {
      const hole = await f_holes.instead(pattern, side, bench);
      await settle(side, (design, on) => changed(design, `sound_holes.${on}`, structuredClone(hole)));
    });

  function show(/** @type {Design} */ design) {
    f_holes.see(design);
    alike &&= sidesAreAlike(design);
    box.show(alike);
    stop.show(at(design, STOP));
    for (const fields of sides) {
      fields.show(design, alike);
    }
  }

  host.append(note(WORDS.fair), stop.row, box.row, ...sides.map((fields) => fields.set));
  bench.store.subscribe(show);
  show(bench.store.design);
}

/** Remembers the f-hole that each side had, for other patterns to be compared with it and for the way back. */
class FHoles {
  /** @type {Partial<Record<Side, Hole>>} */
  #seen = {};

  /** @param {Design} design */
  see(design) {
    for (const side of /** @type {const} */ (["bass", "treble"])) {
      const hole = at(design, `sound_holes.${side}`);
      if (hole?.kind === "eyes_and_stem") {
        this.#seen[side] = hole;
      }
    }
  }

  /**
   * The hole of a pattern that stands for the side's f-hole; for the hole that is there where none was seen.
   * @param {string} pattern
   * @param {Side} side
   * @param {Bench} bench
   * @returns {Promise<Hole>}
   */
  async instead(pattern, side, bench) {
    const f_hole = this.#seen[side] ?? this.#seen.treble ?? this.#seen.bass;
    if (pattern === "none") {
      return { kind: "none" };
    }
    if (pattern === "eyes_and_stem") {
      return f_hole ?? at(JSON.parse((await bench.board().ask("presets", {}))[0].design), `sound_holes.${side}`);
    }
    const design =
      f_hole === undefined ? bench.store.design : changed(bench.store.design, `sound_holes.${side}`, f_hole);
    return bench.board().ask("equal_hole", { design: JSON.stringify(design), treble: side === "treble", pattern });
  }
}

/** One side's pattern and measures. */
class SideFields {
  /** What is laid into the page. */
  set;
  #side;
  #legend;
  #pattern;
  #ends;
  #numbers;

  /**
   * @param {Side} side
   * @param {readonly MeasureLimits[]} measures
   * @param {(side: Side, edit: (design: Design, side: Side) => Design) => Promise<boolean>} settle
   * @param {(pattern: string) => Promise<void>} exchange
   */
  constructor(side, measures, settle, exchange) {
    const title = WORDS.sides[side];
    this.#side = side;
    this.#pattern = new ChoiceField(WORDS.pattern, title, WORDS.patterns, (pattern) => void exchange(pattern));
    this.#ends = new ChoiceField(WORDS.ends, title, WORDS.cuts, (cut) => {
      const ends = cut === "sharp" ? cut : undefined;
      void settle(side, (design, on) => changed(design, `sound_holes.${on}.ends`, ends));
    });
    this.#numbers = measures
      .filter(({ path }) => path.startsWith("sound_holes.*."))
      .map((measure) => {
        const key = measure.path.slice("sound_holes.*.".length);
        const field = new NumberField({ ...ofMeasure(measure), group: title }, (value) => {
          void settle(side, (design, on) => changed(design, `sound_holes.${on}.${key}`, value));
        });
        return { key, field };
      });
    this.set = group(title, this.#pattern.row, ...this.#numbers.map(({ field }) => field.row), this.#ends.row);
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
    for (const { key, field } of this.#numbers) {
      field.row.hidden = hole?.[key] === undefined;
      field.show(hole?.[key]);
    }
  }
}

/** @param {Design} design */
function sidesAreAlike(design) {
  const { bass, treble } = at(design, "sound_holes");
  return JSON.stringify(bass) === JSON.stringify(treble);
}
