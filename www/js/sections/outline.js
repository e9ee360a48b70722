/**
 * Every measure of the outline as a number.
 */
/** @import { Bench } from "../sections.js" */

import { SECTION_WORDS } from "#words/sections.js";
import { at, withBassSide } from "./design_edits.js";
import { BoxField, group, note } from "./fields.js";
import { MeasureField } from "./measure_field.js";
import { allMeasures } from "./unchanging.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const words = SECTION_WORDS.outline;
  const measures = await allMeasures(bench);
  /** @type {{ path: string, field: MeasureField }[]} */
  const fields = [];
  /** @param {(key: string) => boolean} belongs */
  const rows = (belongs) =>
    measures
      .filter(({ path }) => path.startsWith("outline.") && belongs(path.slice("outline.".length)))
      .map((measure) => {
        const field = new MeasureField(measure, bench);
        fields.push({ path: measure.path, field });
        return field.row;
      });
  const ofTop = (/** @type {RegExp} */ pattern) => rows((key) => !key.startsWith("bass.") && pattern.test(key));
  const own_bass = new BoxField(words.own_bass, "", (own) => {
    void bench.settle(withBassSide(bench.store.edited, own));
  });
  const bass = document.createElement("div");
  bass.append(note(words.widths_doubled), ...rows((key) => key.startsWith("bass.")));
  host.append(
    group(words.groups.widths, ...ofTop(/^(length|\w+_width)_mm$/)),
    group(words.groups.stations, ...ofTop(/^\w+_station_mm$/)),
    group(words.groups.upper_corner, ...ofTop(/^upper_corner\./)),
    group(words.groups.lower_corner, ...ofTop(/^lower_corner\./)),
    group(words.groups.ends, ...ofTop(/fullness$|^overhang/)),
    group(words.groups.bass, own_bass.row, bass),
  );
  const show = (/** @type {unknown} */ design) => {
    const differs = at(design, "outline.bass") !== undefined;
    own_bass.show(differs);
    bass.hidden = !differs;
    for (const { path, field } of fields) {
      field.show(at(design, path));
    }
  };
  bench.store.subscribe(show);
  show(bench.store.design);
}
