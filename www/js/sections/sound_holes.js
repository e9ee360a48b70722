/**
 * The sound holes: which pattern, its measures as numbers, and holes traced elsewhere.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Hole } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { Side } from "./f_holes.js" */

import { SECTION_WORDS } from "#words/sections.js";
import { at, changed } from "./design_edits.js";
import { FHoles } from "./f_holes.js";
import { BoxField, ChoiceField, chooser, group, measureOf, note } from "./fields.js";
import { SideFields } from "./hole_side.js";
import { MeasureField } from "./measure_field.js";
import { largestPathOfSvg } from "./svg_path.js";
import { allMeasures } from "./unchanging.js";
import { whileOpen } from "./while_open.js";

const WORDS = SECTION_WORDS.sound_holes;

const STOP = "sound_holes.stop_mm";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const measures = await allMeasures(bench);
  const f_holes = new FHoles();
  let alike = sidesAreAlike(bench.store.design);
  /** @type {(design: Design, side: Side, edit: (design: Design, side: Side) => Design) => Design} */
  const edited = (design, side, edit) => {
    const own = edit(design, side);
    return alike ? edit(own, side === "bass" ? "treble" : "bass") : own;
  };
  const settle = (/** @type {Side} */ side, /** @type {(design: Design, side: Side) => Design} */ edit) =>
    bench.settle(edited(bench.store.edited, side, edit));
  /**
   * @param {Side} side
   * @param {() => Promise<Hole>} made
   */
  const put = (side, made) =>
    bench.attempt(async () => {
      const hole = await made();
      await settle(side, (design, on) => changed(design, `sound_holes.${on}`, structuredClone(hole)));
    });

  const stop = new MeasureField(measureOf(STOP, measures), bench);
  const box = new BoxField(WORDS.alike, "", (ticked) => {
    alike = ticked;
    if (ticked) {
      const hole = at(bench.store.edited, "sound_holes.treble");
      void bench.settle(changed(bench.store.edited, "sound_holes.bass", structuredClone(hole)));
    }
    show(bench.store.design);
  });
  const sides = /** @type {const} */ (["treble", "bass"]).map(
    (side) =>
      new SideFields(side, measures, bench, {
        edited,
        settle,
        exchange: async (pattern) => {
          if (pattern === "traced") {
            bench.say(WORDS.choose_traced);
            show(bench.store.design);
          } else {
            await put(side, () => f_holes.instead(pattern, side, bench));
          }
        },
        lean: (lean_deg) => {
          const treble = side === "treble";
          return put(side, () => bench.board().ask("leaning_hole", { design: bench.store.text, treble, lean_deg }));
        },
      }),
  );

  const seen_as = new ChoiceField(WORDS.traced_side, "", WORDS.sides, () => {});
  seen_as.show("treble");
  const traced = chooser(WORDS.traced_file, ".svg,image/svg+xml", async (file) => {
    const found = largestPathOfSvg(await file.text());
    if (found === undefined) {
      bench.warn(WORDS.no_path);
      return;
    }
    const [a, b, c, d, e, f] = found.mm_from_path;
    // A design has its holes as on the treble side.
    const mm_from_path = seen_as.word === "bass" ? [-a, b, -c, d, -e, f] : found.mm_from_path;
    const side = alike ? "treble" : /** @type {Side} */ (seen_as.word);
    const request = { treble: side === "treble", d: found.d, mm_from_path };
    await put(side, () => bench.board().ask("traced_hole", { design: bench.store.text, ...request }));
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

  const elsewhere = group(WORDS.traced, traced, seen_as.row, note(WORDS.traced_about));
  host.append(note(WORDS.fair), stop.row, box.row, ...sides.map((fields) => fields.set), elsewhere);
  bench.store.subscribe(show);
  show(bench.store.design);
  whileOpen(host, bench, async () => {
    const holes = await bench.board().askBeside("holes", { design: bench.store.text });
    for (const fields of holes === undefined ? [] : sides) {
      fields.judge(holes ?? []);
    }
  });
}

/** @param {Design} design */
function sidesAreAlike(design) {
  const { bass, treble } = at(design, "sound_holes");
  return JSON.stringify(bass) === JSON.stringify(treble);
}
