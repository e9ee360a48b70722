/**
 * Mobilities, volume velocity and level over frequency: one curve at a time, its peaks with their modes, another design's kept beside it.
 */
/** @import { Drive, DrivenCurves } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { numberText } from "#words/page.js";
import { download, fileName } from "../design_files.js";
import { BridgeField } from "./bridge_field.js";
import { CurveSheet } from "./curve_sheet.js";
import { bridgeStation } from "./design_edits.js";
import { driven } from "./driven_client.js";
import { button, ChoiceField, group, note } from "./fields.js";
import { highestPeaks, nearestMode } from "./peaks.js";
import { tableOf } from "./tables.js";
import { TappedPlace } from "./tapped_place.js";
import { Waiting } from "./waiting.js";
import { whileOpen } from "./while_open.js";

const SPAN = { from_hz: 100, to_hz: 6000, points: 500 };
const PEAKS = 10;

/** @typedef {keyof typeof WORDS.curves} CurveName */

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const client = driven(bench);
  const waiting = new Waiting(WORDS.solving);
  const curve = new ChoiceField(WORDS.curve, "", WORDS.curves, () => show());
  const by = new ChoiceField(WORDS.by, "", { bow: WORDS.drives.bow, press: WORDS.drives.press }, () => void ask());
  const bridge = new BridgeField(() => void ask());
  const place = new TappedPlace(
    bench,
    WORDS.watched,
    WORDS,
    [0, bridgeStation(bench.store.design)],
    () => void ask(),
    () => curve.word === "transfer" && host.closest("details")?.open === true,
  );
  const sheet = new CurveSheet(WORDS.curve);
  const kept_text = note("");
  const peaks = tableOf(WORDS.curve_columns);
  peaks.className = "peaks";
  peaks.createCaption().textContent = WORDS.curve_table;
  const compare = button(WORDS.compare, () => {
    kept = last && { name: bench.store.name, curves: last };
    show();
  });
  const drop = button(WORDS.drop, () => {
    kept = undefined;
    show();
  });
  const save = button(WORDS.save_curves, () => {
    if (last !== undefined) {
      const name = fileName(`${bench.store.name} curves`, ".csv");
      download(name, csv(last), "text/csv");
      bench.say(WORDS.saved(name));
    }
  });
  host.append(
    ...waiting.parts,
    group(WORDS.curves_title, curve.row, by.row, bridge.rows, place.rows),
    sheet.figure,
    kept_text,
    compare,
    drop,
    save,
    peaks,
    note(WORDS.curves_about),
  );

  /** @type {DrivenCurves | undefined} */
  let last;
  /** @type {{ name: string, curves: DrivenCurves } | undefined} another design's, or this one's before a change */
  let kept;
  /** @type {readonly number[]} */
  let modes_hz = [];

  const ask = () =>
    waiting.run(async () => {
      const text = bench.store.text;
      const top = await client.ask("driven", { design: text });
      modes_hz = top.elastic_hz;
      waiting.say(WORDS.about(top));
      /** @type {Drive} */
      const drive = { by: /** @type {Drive["by"]} */ (by.word), place_mm: [0, 0], bridge_hz: bridge.hz };
      last = await client.ask("driven_curves", { design: text, drive, to_mm: place.place_mm, ...SPAN });
      show();
    });

  const show = () => {
    place.rows.hidden = curve.word !== "transfer";
    drop.hidden = kept === undefined;
    kept_text.textContent = kept === undefined ? "" : WORDS.compared(kept.name);
    if (last === undefined) {
      return;
    }
    const name = /** @type {CurveName & keyof DrivenCurves} */ (curve.word);
    const of = (/** @type {DrivenCurves} */ curves) => ({ hz: hertzOf(curves, name), db: curves[name] });
    const own = of(last);
    const found = highestPeaks(own.hz, own.db, PEAKS).map((peak) => ({
      ...peak,
      name: String(nearestMode(modes_hz, peak.hz) ?? "–"),
    }));
    sheet.show({
      own,
      kept: kept && of(kept.curves),
      peaks: found,
      label: WORDS.curve_label(WORDS.curves[name], SPAN.from_hz, SPAN.to_hz),
      unit: WORDS.units[name],
    });
    const body = peaks.tBodies[0];
    body.replaceChildren();
    for (const { hz, db, name: mode } of found) {
      const row = body.insertRow();
      for (const text of [hz.toFixed(0), numberText(db, 1), mode]) {
        row.insertCell().textContent = text;
      }
    }
  };
  whileOpen(host, bench, () => void ask());
}

/**
 * @param {DrivenCurves} curves
 * @param {string} name
 */
function hertzOf(curves, name) {
  return name === "level" ? curves.level_hz : curves.hz;
}

/** @param {DrivenCurves} curves */
function csv(curves) {
  const names = /** @type {const} */ (["bass", "treble", "transfer", "volume"]);
  const level = new Map(Array.from(curves.level_hz, (hz, index) => [hz, curves.level[index]]));
  const lines = Array.from(curves.hz, (hz, index) =>
    [hz.toFixed(2), ...names.map((name) => curves[name][index].toFixed(2)), level.get(hz)?.toFixed(1) ?? ""].join(","),
  );
  const units = names.map((name) => `${name} (${WORDS.units[name]})`);
  return [`"Hz",${[...units, `level (${WORDS.units.level})`].map((head) => `"${head}"`).join(",")}`, ...lines, ""].join(
    "\n",
  );
}
