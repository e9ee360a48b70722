/**
 * Bar, post and added masses: with or without, and where.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Bench } from "../sections.js" */

import { FITTING_WORDS as WORDS } from "#words/fittings.js";
import { AddedMasses } from "./added_masses.js";
import { changed } from "./design_edits.js";
import { BoxField, group, note } from "./fields.js";
import { PartFields } from "./part_fields.js";
import { allMeasures, speciesNames } from "./unchanging.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const measures = await allMeasures(bench);
  const species = await speciesNames(bench);
  const parts = /** @type {const} */ (["bar", "post"]).map((part) => {
    const title = WORDS[part];
    const fields = new PartFields(part, measures, bench, title);
    fields.chooseWood(WORDS.stick_wood, title, species, bench);
    const box = new BoxField(WORDS[`with_${part}`], "", (ticked) =>
      bench.attempt(async () => {
        const there = ticked ? (fields.seen ?? (await usual(part))) : undefined;
        await bench.settle(changed(bench.store.edited, part, there));
      }),
    );
    return { set: group(title, box.row, fields.rows), box, fields };
  });

  /** @param {"bar" | "post"} part */
  async function usual(part) {
    return (await bench.board().ask("usual_fittings", { design: bench.store.text }))[part];
  }

  const masses = new AddedMasses(measures, bench);
  host.append(note(WORDS.usual), ...parts.map(({ set }) => set), note(WORDS.rigid_back), masses.set);
  const show = (/** @type {Design} */ design) => {
    for (const { box, fields } of parts) {
      box.show(fields.show(design));
    }
    masses.show(design);
  };
  bench.store.subscribe(show);
  show(bench.store.design);
}
