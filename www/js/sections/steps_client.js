/** @import { Bench } from "../sections.js" */
/** @import { Steps, WorkshopStep } from "../messages.js" */

import { measureName } from "#words/measures.js";
import { hertzText, modeName } from "#words/page.js";
import { REGION_WORDS } from "#words/regions.js";
import { STEP_WORDS as WORDS } from "#words/steps.js";
import { WorkshopClient } from "../workshop_client.js";
import { allMeasures } from "./unchanging.js";

/** @type {WorkshopClient | undefined} */
let client;

/**
 * The worker that knows what steps do; one for all sections, started by the first that asks. It is busy for a minute at a time, so it is none
 * of the others.
 * @param {Bench} bench
 */
export function stepBench({ say }) {
  client ??= new WorkshopClient(
    new URL("../steps_worker.js", import.meta.url),
    new URL("../../wasm/drive_bg.wasm", import.meta.url),
    () => say(WORDS.restarted),
  );
  return client;
}

/**
 * @param {Bench} bench
 * @returns {Promise<(step: WorkshopStep) => { name: string, unit: string }>}
 */
export async function stepNames(bench) {
  const measures = await allMeasures(bench);
  return ({ measure }) => {
    const known = measures.find(({ path }) => path === measure);
    const name = WORDS.names[measure] ?? measureName(measure, known?.what ?? measure);
    return { name, unit: known?.unit ?? "mm" };
  };
}

/** @type {Record<string, string>} by the first word of a figure */
const UNITS = { mode: "Hz", mass: "g", narrows: "mm", island: "dB" };

/** @param {string | undefined} figure as {@link figuresOf} has it */
export function unitOf(figure) {
  return UNITS[figure?.split(" ")[0] ?? ""] ?? "";
}

/**
 * The ring mode, by its name or, where no shape was recognised as a ring, by the number that free-plate work gives it.
 * @param {Steps} steps
 */
export function firstFigure({ modes }) {
  const ring = modes.findIndex(({ name }) => name === "ring");
  return `mode ${ring < 0 ? Math.min(4, modes.length - 1) : ring}`;
}

/**
 * What can be chosen as a figure, by words: `mode 4`, counted from zero, `mass`, `narrows 0`, `island`, `wings`.
 * @param {Steps} steps
 * @returns {Record<string, string>}
 */
export function figuresOf({ modes, narrows }) {
  const of_modes = modes.map(({ hz, name }, mode) => {
    const shape = modeName({ name: name ?? "", number: mode + 1 });
    return [`mode ${mode}`, `${shape}, ${hertzText(hz)} Hz`];
  });
  const of_narrows = narrows.map(({ key }, place) => [`narrows ${place}`, WORDS.narrows(REGION_WORDS.name(key))]);
  return Object.fromEntries([
    ...of_modes,
    ["mass", WORDS.mass],
    ...of_narrows,
    ["island", WORDS.island],
    ["wings", WORDS.wings],
  ]);
}
