/**
 * The graduation: thicknesses by zones, painted or measured, as a map, and the mass they give.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Bench } from "../sections.js" */

import { GRADUATION_WORDS as WORDS } from "#words/graduation.js";
import { at, changed } from "./design_edits.js";
import { button, chooser, group, NumberField, note } from "./fields.js";
import { MeasureField } from "./measure_field.js";
import { Painted } from "./painted.js";
import { ThicknessMap } from "./thickness_map.js";
import { allMeasures } from "./unchanging.js";
import { whileOpen } from "./while_open.js";

const MEASURED = "graduation.measured";

/** Larger than any table of thicknesses. */
const MOST_BYTES = 2_000_000;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const measures = await allMeasures(bench);
  const zones = measures
    .filter(({ path }) => /^graduation\.\w+$/.test(path))
    .map((measure) => {
      const key = measure.path.slice("graduation.".length);
      const absent = /** @type {Readonly<Record<string, string>>} */ (WORDS.left_out)[key];
      return { path: measure.path, field: new MeasureField(measure, bench, { absent }) };
    });
  const painted = new Painted(bench);
  const map = new ThicknessMap((place) => painted.paint(place));
  const mass = note("");
  mass.setAttribute("role", "status");

  const file = chooser(WORDS.measured_file, ".csv,.txt,.tsv,text/csv", async (chosen) => {
    await bench.attempt(async () => {
      if (chosen.size > MOST_BYTES) {
        bench.warn(WORDS.too_large);
        return;
      }
      const request = { design: bench.store.text, file: await chosen.arrayBuffer() };
      const design = JSON.parse(await bench.board().ask("with_thicknesses", request));
      if (await bench.settle(changed(bench.store.edited, MEASURED, at(design, MEASURED)))) {
        bench.say(WORDS.measured_taken(at(design, MEASURED).length));
      }
    });
  });
  const measured = note("");
  const drop = button(WORDS.measured_drop, () => {
    void bench.settle(changed(bench.store.edited, MEASURED, undefined));
  });

  let wished_g = 0;
  const wish = new NumberField({ label: WORDS.wish, unit: "g", step: 0.5, absent: WORDS.no_wish }, (value) => {
    wished_g = value ?? 0;
    wish.show(value);
  });
  const reach = button(WORDS.reach, () =>
    bench.attempt(async () => {
      const { change_mm, design } = await bench.board().ask("to_mass", { design: bench.store.text, mass_g: wished_g });
      if (await bench.settle(changed(bench.store.edited, "graduation", at(JSON.parse(design), "graduation")))) {
        bench.say(WORDS.reached(change_mm, wished_g));
      }
    }),
  );

  const show = (/** @type {Design} */ design) => {
    for (const { path, field } of zones) {
      field.show(at(design, path));
    }
    const count = at(design, MEASURED)?.length ?? 0;
    measured.textContent = WORDS.measured_stands(count);
    measured.hidden = drop.hidden = count === 0;
    painted.show(design);
  };

  host.append(
    map.figure,
    mass,
    group(WORDS.zones, ...zones.map(({ field }) => field.row)),
    group(WORDS.target, wish.row, reach, note(WORDS.target_about)),
    painted.set,
    group(WORDS.measured, file, measured, drop, note(WORDS.measured_about)),
    note(WORDS.caution),
  );
  bench.store.subscribe(show);
  show(bench.store.design);
  whileOpen(host, bench, async (design) => {
    const thickness = await bench.board().askBeside("thickness", { design: JSON.stringify(design) });
    if (thickness !== undefined) {
      map.show(thickness, design);
      mass.textContent = WORDS.mass(thickness.mass_g, thickness.density_kg_m3);
    }
  });
}
