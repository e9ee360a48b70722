/**
 * What the arching does, in words and figures.
 */
/** @import { Arching, FigureAt, HoleMeeting } from "./messages.js" */

import { DRAWING_WORDS } from "#words/drawings.js";
import { numberText } from "#words/page.js";
import { showFigures } from "./figure_list.js";

/**
 * @param {HTMLElement} list
 * @param {Arching} arching
 */
export function showArching(list, arching) {
  showFigures(list, archingLines(arching));
}

/**
 * @param {Arching} arching
 * @returns {[string, string, string?][]} term, figure, and where or what of it
 */
export function archingLines(arching) {
  const words = DRAWING_WORDS.arching;
  const place = (/** @type {FigureAt} */ { at }) => words.place(Math.round(at[1]), Math.round(Math.abs(at[0])));
  /** @type {[string, string, string?][]} */
  const lines = [
    [words.apex, mm(arching.apex_mm), words.above_edge(mm(arching.rise_mm))],
    [words.channel, mm(arching.channel_depth_mm)],
    [words.steepest, `${numberText(arching.steepest.value, 0)}°`, place(arching.steepest)],
  ];
  for (const [term, radius] of /** @type {const} */ ([
    [words.hollow, arching.hollow_radius],
    [words.round, arching.round_radius],
  ])) {
    if (radius) {
      lines.push([term, `${numberText(radius.value, 0)} mm`, place(radius)]);
    }
  }
  const holes = arching.holes.map((hole) => ({ side: words.sides[hole.treble_side ? 1 : 0], ...meeting(hole) }));
  const alike = holes.length === 2 && holes[0].text === holes[1].text;
  for (const { side, text, note } of alike ? [{ ...holes[0], side: words.both_sides }] : holes) {
    lines.push([`${words.turn} ${side}`, text, note]);
  }
  return lines;
}

/**
 * @param {HoleMeeting} hole
 * @returns {{ text: string, note?: string }}
 */
function meeting({ crossings, misses }) {
  const words = DRAWING_WORDS.arching;
  if (misses) {
    return { text: words.misses(mm(misses.by_mm), misses.inside), note: words.should_fall_within };
  }
  const text = crossings
    .map(({ from_nicks_mm, on_stem }) =>
      typeof from_nicks_mm === "number"
        ? words.crosses(mm(Math.abs(from_nicks_mm)), from_nicks_mm > 0, on_stem)
        : words.within,
    )
    .join("; ");
  return { text };
}

/** @param {number} length_mm */
function mm(length_mm) {
  return `${numberText(length_mm, 1)} mm`;
}
