/**
 * Invented designs to start from, from a quarter-size violin to a cello.
 */
/** @import { Bench } from "../sections.js" */

import { SECTION_WORDS } from "#words/sections.js";
import { button, ChoiceField, note } from "./fields.js";
import { allPresets } from "./unchanging.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const words = SECTION_WORDS.presets;
  const presets = await allPresets(bench);
  const names = Object.fromEntries(presets.map(({ word, name }) => [word, words.name(word, name)]));
  const choice = new ChoiceField(words.choice, "", names, () => {});
  const start = button(words.start, async () => {
    const preset = presets.find(({ word }) => word === choice.word);
    if (preset !== undefined && (await bench.settle(words.design(JSON.parse(preset.design), preset.word)))) {
      bench.say(words.started(bench.store.name));
    }
  });
  host.append(choice.row, start, note(words.invented));
}
