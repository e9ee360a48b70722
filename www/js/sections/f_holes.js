/** @import { Design } from "../design_store.js" */
/** @import { Hole } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
import { at, changed } from "./design_edits.js";
import { allPresets } from "./unchanging.js";

/** @typedef {"bass" | "treble"} Side */

/** Remembers the f-hole that each side had, for other patterns to be compared with it and for the way back. */
export class FHoles {
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
      return f_hole ?? at(JSON.parse((await allPresets(bench))[0].design), `sound_holes.${side}`);
    }
    const design =
      f_hole === undefined ? bench.store.design : changed(bench.store.design, `sound_holes.${side}`, f_hole);
    return bench.board().ask("equal_hole", { design: JSON.stringify(design), treble: side === "treble", pattern });
  }
}
