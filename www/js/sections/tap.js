/**
 * The tap tone: its sound, its modes, and what the microphone hears of the plate in the hand over them.
 */
/** @import { TapTone } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { numberText } from "#words/page.js";
import { driven } from "./driven_client.js";
import { button, group, note } from "./fields.js";
import { Listening } from "./listening.js";
import { tableOf } from "./tables.js";
import { TapSheet } from "./tap_sheet.js";
import { TappedPlace } from "./tapped_place.js";
import { Waiting } from "./waiting.js";
import { whileOpen } from "./while_open.js";

const RATE_HZ = 44_100;
const PEAKS = 10;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const client = driven(bench);
  const waiting = new Waiting(WORDS.solving);
  const open = () => host.closest("details")?.open === true;
  const place = new TappedPlace(bench, WORDS.tap_title, WORDS, [0, 110], () => void ask(), open);
  const sheet = new TapSheet(WORDS.spectrum);
  const table = tableOf(WORDS.peak_columns);
  table.className = "peaks";
  const caption = table.createCaption();
  const hear = button(WORDS.hear, () => tone && sound(tone.samples));
  const listen = button(WORDS.listen, async () => {
    if (listening.on) {
      listening.stop();
    } else {
      try {
        await listening.start();
        waiting.say(WORDS.listening);
      } catch (reason) {
        console.warn("no microphone:", reason);
        bench.warn(WORDS.no_microphone);
      }
    }
    listen.textContent = listening.on ? WORDS.stop_listening : WORDS.listen;
  });
  const listening = new Listening((spectrum) => sheet.hear(spectrum));
  host.append(
    ...waiting.parts,
    group(WORDS.tap_title, place.rows, note(WORDS.tap_hint)),
    hear,
    listen,
    sheet.figure,
    table,
    note(WORDS.tap_about),
  );

  /** @type {TapTone | undefined} */
  let tone;
  const ask = () =>
    waiting.run(async () => {
      const request = { design: bench.store.text, place_mm: place.place_mm, rate_hz: RATE_HZ };
      tone = await client.ask("tap_tone", request);
      waiting.say("");
      sheet.show(tone.peaks);
      const strongest = tone.peaks.toSorted((one, other) => other.level_db - one.level_db).slice(0, PEAKS);
      caption.textContent = WORDS.peaks(strongest.length);
      const body = table.tBodies[0];
      body.replaceChildren();
      for (const { hz, level_db, ring_s } of strongest.toSorted((one, other) => one.hz - other.hz)) {
        const row = body.insertRow();
        for (const text of [hz.toFixed(0), numberText(level_db, 0), numberText(ring_s, 2)]) {
          row.insertCell().textContent = text;
        }
      }
    });
  host.closest("details")?.addEventListener("toggle", () => {
    if (!open()) {
      listening.stop();
      listen.textContent = WORDS.listen;
    }
  });
  whileOpen(host, bench, () => void ask());
}

/** @param {Float32Array} samples */
function sound(samples) {
  const audio = new AudioContext({ sampleRate: RATE_HZ });
  const buffer = audio.createBuffer(1, samples.length, RATE_HZ);
  buffer.copyToChannel(Float32Array.from(samples), 0);
  const source = new AudioBufferSourceNode(audio, { buffer });
  source.connect(audio.destination);
  source.addEventListener("ended", () => void audio.close());
  source.start();
}
