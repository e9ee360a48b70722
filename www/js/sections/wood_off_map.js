/**
 * Where wood is to be taken off, in colour over the plan.
 */
/** @import { Thickness } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { numberText } from "#words/page.js";
import { STEP_WORDS as WORDS } from "#words/steps.js";
import { ChoiceField, note } from "./fields.js";
import { PlanRaster } from "./plan_raster.js";

/** Less is below what a gouge takes. */
const NOTHING_MM = 0.01;

/** @typedef {keyof typeof WORDS.faces} Face */

/** The difference between a top and what it is to become. */
export class WoodOffMap {
  figure;
  #bench;
  #raster = new PlanRaster();
  #added = note("");
  #face = new ChoiceField(WORDS.face, "", WORDS.faces, () => this.#draw());
  /** @type {{ grid: Thickness, outside: Float32Array, inside: Float32Array } | undefined} (place) mm to take off */
  #off;

  /** @param {Bench} bench */
  constructor(bench) {
    this.#bench = bench;
    this.figure = this.#raster.figure;
    this.figure.prepend(this.#face.row);
    this.figure.append(this.#added);
  }

  /**
   * @param {string} before the design
   * @param {string} after
   */
  async show(before, after) {
    const board = this.#bench.board();
    const [one, other] = [
      await board.ask("thickness", { design: before }),
      await board.ask("thickness", { design: after }),
    ];
    const places = new Float32Array(2 * one.values.length);
    one.values.forEach((_, place) => {
      const [column, row] = [place % one.columns, Math.floor(place / one.columns)];
      // The sheet's v goes down, the top's y up.
      places.set([one.low[0] + column * one.step_mm, -(one.low[1] + row * one.step_mm)], 2 * place);
    });
    const height = { what: "height", places_mm: places };
    const [was, becomes] = [
      await board.ask("quantity", { design: before, ...height, places_mm: places.slice() }),
      await board.ask("quantity", { design: after, ...height, places_mm: places.slice() }),
    ];
    const outside = was.map((own, place) => own - becomes[place]);
    // Thickness goes along the normal; on the flanks this is a few hundredths of it off.
    const inside = outside.map((off, place) => one.values[place] - other.values[place] - off);
    this.#off = { grid: one, outside, inside };
    this.#draw();
  }

  #draw() {
    if (this.#off === undefined) {
      return;
    }
    const { grid } = this.#off;
    const off = this.#off[/** @type {Face} */ (this.#face.word)];
    const known = off.filter((own) => !Number.isNaN(own));
    const most = known.reduce((most, own) => Math.max(most, own), NOTHING_MM);
    const added = known.reduce((most, own) => Math.max(most, -own), 0);
    this.#raster.show(
      grid,
      off.map((own) => (own > NOTHING_MM ? own / most : Number.NaN)),
      { ends: ["0", `${numberText(most, 2)} mm`], label: WORDS.wood_map(most) },
    );
    this.#added.textContent = WORDS.wood_added(added);
    this.#added.hidden = added < 5 * NOTHING_MM;
  }
}
