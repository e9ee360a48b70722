/**
 * The top driven at any frequency: the running motion on the stage, who moves at this frequency and at all others, and three figures
 * that sum it up.
 */
/** @import { Drive, DrivenFigures, DrivenMotion } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { BridgeField } from "./bridge_field.js";
import { bridgeStation } from "./design_edits.js";
import { driven } from "./driven_client.js";
import { DrivenStage } from "./driven_stage.js";
import { ChoiceField, group, note } from "./fields.js";
import { FrequencyField } from "./frequency_field.js";
import { ShareMap } from "./share_map.js";
import { barsOf, fillBars, namedRow, tableOf } from "./tables.js";
import { TappedPlace } from "./tapped_place.js";
import { Waiting } from "./waiting.js";
import { whileOpen } from "./while_open.js";

/** Points of the map. */
const POINTS = 160;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const client = driven(bench);
  const shown = new DrivenStage(bench);
  const waiting = new Waiting(WORDS.solving);

  const by = new ChoiceField(WORDS.by, "", WORDS.drives, () => {
    place.rows.hidden = hint.hidden = by.word !== "tap";
    bridge.rows.hidden = by.word === "tap";
    void everything();
  });
  const bridge = new BridgeField(() => void everything());
  const place = new TappedPlace(
    bench,
    WORDS.title,
    WORDS,
    [0, bridgeStation(bench.store.design)],
    () => void everything(),
    () => by.word === "tap" && host.closest("details")?.open === true,
  );
  const hint = note(WORDS.tap_hint);
  place.rows.hidden = hint.hidden = true;
  const frequency = new FrequencyField(WORDS.frequency, WORDS.frequency_value, () => {
    map.point(frequency.hz);
    void move();
  });
  const level = note("");
  const energy = barsOf(WORDS.energy, WORDS.energy_columns);
  const map = new ShareMap((hz) => {
    frequency.hz = hz;
    map.point(hz);
    void move();
  });
  const figures = tableOf(["", ""]);
  figures.className = "constants";
  figures.tHead?.remove();
  host.append(
    ...waiting.parts,
    group(WORDS.title, by.row, bridge.rows, place.rows, hint, frequency.row, level),
    energy,
    note(WORDS.phase_about),
    group(WORDS.map, map.choice.row, map.figure, note(WORDS.map_about)),
    group(WORDS.figures, figures, note(WORDS.figures_about)),
  );

  /** @returns {{ design: string, drive: Drive }} */
  const asked = () => ({
    design: bench.store.text,
    drive: { by: /** @type {Drive["by"]} */ (by.word), place_mm: place.place_mm, bridge_hz: bridge.hz },
  });

  /** The motion at the frequency that is chosen now; of several moves of the slider the newest is answered. */
  const move = async () => {
    const { hz } = frequency;
    await waiting.tell(async () => {
      const motion = await client.ask("driven_motion", { ...asked(), hz });
      show(motion, hz);
    });
  };

  /**
   * @param {DrivenMotion} motion
   * @param {number} hz
   */
  const show = ({ re, im, largest_um, level_db, regions }, hz) => {
    const drive = /** @type {Record<string, string>} */ (WORDS.drives)[by.word];
    const [title, text] = [WORDS.stage_title(hz), WORDS.stage_text(largest_um)];
    const caption = { title, text, detail: WORDS.stage_detail(drive), largest_um };
    shown.show({ re, im }, caption);
    level.textContent = WORDS.level(level_db);
    const sorted = regions.toSorted((one, other) => other.energy - one.energy);
    fillBars(
      energy,
      sorted.map(({ key, energy: share, phase_deg }) => ({
        name: WORDS.region(key),
        share,
        figures: [WORDS.percent(share), WORDS.phase(phase_deg)],
      })),
    );
  };

  /** All that follows from design and drive. */
  const everything = () =>
    waiting.run(async () => {
      waiting.say(WORDS.about(await client.ask("driven", { design: bench.store.text })));
      await move();
      const span = { from_hz: frequency.least_hz, to_hz: frequency.most_hz, points: POINTS };
      const who = await client.askBeside("who_moves", { ...asked(), ...span });
      if (who !== undefined) {
        map.show(who);
        map.point(frequency.hz);
      }
      const three = await client.askBeside("driven_figures", { design: bench.store.text });
      if (three !== undefined) {
        fill(figures.tBodies[0], three);
      }
    });
  whileOpen(host, bench, () => void everything());
}

/**
 * @param {HTMLTableSectionElement} body
 * @param {DrivenFigures} figures
 */
function fill(body, { island_mobility_db, wing_activity, bass_over_treble_db }) {
  body.replaceChildren();
  for (const [name, figure, unit] of /** @type {const} */ ([
    [WORDS.island_mobility, island_mobility_db, "dB"],
    [WORDS.wing_activity, wing_activity, ""],
    [WORDS.bass_over_treble, bass_over_treble_db, "dB"],
  ])) {
    const text = figure ? WORDS.figure(figure.value, figure.sure_within, unit) : "–";
    namedRow(body, name).insertCell().textContent = text;
  }
}
