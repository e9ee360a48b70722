/**
 * How the rim is held.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Bench } from "../sections.js" */

import { FITTING_WORDS as WORDS } from "#words/fittings.js";
import { at, changed } from "./design_edits.js";
import { ChoiceField, group, note } from "./fields.js";
import { PartFields } from "./part_fields.js";
import { allMeasures } from "./unchanging.js";

const RIBS = "rim.elastic";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const ribs = new PartFields(RIBS, await allMeasures(bench), bench, WORDS.ribs);
  const choice = new ChoiceField(WORDS.rim, "", WORDS.rims, (word) =>
    bench.attempt(async () => {
      const usual = async () => (await bench.board().ask("usual_fittings", { design: bench.store.text })).ribs;
      const rim = word === "elastic" ? { elastic: ribs.seen ?? (await usual()) } : word;
      await bench.settle(changed(bench.store.edited, "rim", rim));
    }),
  );
  const set = group(WORDS.ribs, ribs.rows, note(WORDS.ribs_about));
  host.append(choice.row, set);
  const show = (/** @type {Design} */ design) => {
    const there = ribs.show(design);
    choice.show(there ? "elastic" : at(design, "rim"));
    set.hidden = !there;
  };
  bench.store.subscribe(show);
  show(bench.store.design);
}
