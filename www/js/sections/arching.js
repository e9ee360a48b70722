/**
 * Long arch, cross arches and channel as numbers: the family of each curve, its fullness or where it turns, its points.
 */
/** @import { Arch } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { SECTION_WORDS } from "#words/sections.js";
import { ArchFields } from "./arch_fields.js";
import { at, withExtraArch } from "./design_edits.js";
import { button, group, measureOf, NumberField } from "./fields.js";
import { MeasureField } from "./measure_field.js";
import { allMeasures } from "./unchanging.js";

const HEIGHTS = ["edge_height_mm", "apex_height_mm", "apex_station_mm", "channel_depth_mm", "channel_distance_mm"];

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const words = SECTION_WORDS.arching;
  const measures = await allMeasures(bench);
  const heights = HEIGHTS.map((key) => {
    const path = `arching.${key}`;
    const absent = key === "apex_station_mm" ? words.apex_station_left_out : undefined;
    return { path, field: new MeasureField(measureOf(path, measures), bench, { absent }) };
  });
  const arches = document.createElement("div");
  arches.className = "arches";
  /** @type {number | undefined} */
  let station_mm;
  const station = new NumberField({ label: words.new_station, unit: "mm", absent: "" }, (value) => {
    station_mm = value;
    station.show(value);
  });
  const add = button(words.add_arch, () => {
    if (station_mm !== undefined) {
      void bench.settle(withExtraArch(bench.store.edited, station_mm));
    }
  });
  host.append(
    group(words.channel, ...heights.map(({ field }) => field.row)),
    arches,
    group(words.further, station.row, add),
  );

  /** @type {Map<string, ArchFields>} */
  const shown = new Map();
  /** @param {Arch[]} list */
  const showArches = (list) => {
    const before = new Map(shown);
    shown.clear();
    for (const arch of list) {
      const fields = before.get(arch.arch) ?? new ArchFields(arch.arch, bench);
      before.delete(arch.arch);
      shown.set(arch.arch, fields);
      fields.show(arch, bench.store.design);
    }
    for (const gone of before.values()) {
      gone.set.remove();
    }
    // Laid down again only where the order is another, so that what has the focus keeps it.
    const sets = [...shown.values()].map(({ set }) => set);
    if (sets.some((set, place) => arches.children[place] !== set)) {
      arches.append(...sets);
    }
  };
  const show = async (/** @type {unknown} */ design) => {
    for (const { path, field } of heights) {
      field.show(at(design, path));
    }
    const list = await bench.board().askBeside("arches", { design: bench.store.text });
    if (list !== undefined) {
      showArches(list);
    }
  };
  bench.store.subscribe((design) => void show(design));
  await show(bench.store.design);
}
