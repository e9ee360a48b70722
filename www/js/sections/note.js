/**
 * A bowed note: what its harmonics move, and the sum of them on the stage in slow motion.
 */
/** @import { DrivenNote } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { BridgeField } from "./bridge_field.js";
import { driven } from "./driven_client.js";
import { DrivenStage } from "./driven_stage.js";
import { button, ChoiceField, group, note } from "./fields.js";
import { nearestNote, noteHertz } from "./pitch.js";
import { barsOf, fillBars } from "./tables.js";
import { Waiting } from "./waiting.js";
import { whileOpen } from "./while_open.js";

/** From the open G string three octaves up, in semitones of MIDI. */
const LOWEST = 55;
const HIGHEST = 91;
/** Harmonics in the table; a low note has thirty, the last of them weak. */
const SHOWN = 16;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const client = driven(bench);
  const shown = new DrivenStage(bench);
  const waiting = new Waiting(WORDS.solving);
  const notes = Object.fromEntries(
    Array.from({ length: HIGHEST - LOWEST + 1 }, (_, step) => {
      const hz = noteHertz(LOWEST + step);
      return [String(LOWEST + step), `${nearestNote(hz).name}, ${hz.toFixed(0)} Hz`];
    }),
  );
  const choice = new ChoiceField(WORDS.note, "", notes, () => void ask());
  choice.show("69");
  const bridge = new BridgeField(() => void ask());
  const harmonics = barsOf(WORDS.harmonics, WORDS.harmonic_columns);
  const play = button(WORDS.play_note, () => {
    if (last !== undefined) {
      const hz = last.harmonics[0].hz;
      const { largest_um } = last;
      const [title, text] = [WORDS.note_title(hz), WORDS.note_text(largest_um)];
      const caption = { title, text, detail: WORDS.note_detail, largest_um };
      shown.play(last.motion, last.frames, caption);
    }
  });
  host.append(...waiting.parts, group(WORDS.note, choice.row, bridge.rows, play), harmonics, note(WORDS.note_about));

  /** @type {DrivenNote | undefined} */
  let last;
  const ask = () =>
    waiting.run(async () => {
      const running = shown.owns;
      const found = await client.ask("driven_note", {
        design: bench.store.text,
        bridge_hz: bridge.hz,
        hz: noteHertz(Number(choice.word)),
      });
      waiting.say("");
      last = found;
      fillBars(
        harmonics,
        found.harmonics.slice(0, SHOWN).map(({ hz, share }, index) => ({
          name: WORDS.harmonic(index + 1, hz),
          share,
          figures: [WORDS.percent(share)],
        })),
      );
      if (running) {
        play.click();
      }
    });
  host.closest("details")?.addEventListener("toggle", () => shown.stop());
  whileOpen(host, bench, () => void ask());
}
