/**
 * What the section of lessons says, and a lesson's card. What a lesson itself says is in its file.
 */
/** @import { LessonOutcome } from "../../messages.js" */

import { surenessWith } from "../sureness.js";
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

const { sureText, wayOf } = surenessWith(numberText);

/** @type {Record<string, string>} */
const MODES = { twist: "twist", x: "X mode", ring: "ring" };

/** @type {Record<string, string>} */
const PUSHES = {
  rocking: "The feet’s motion against each other, rocked by a newton",
  both_feet: "Give under both feet, for a newton",
  bass_foot: "Give under the bass foot, for a newton",
  treble_foot: "Give under the treble foot, for a newton",
  lower_wing: "Bending of the lower wing’s point, for a newton",
};

/** @param {string | number | undefined} mode */
const modeText = (mode) => (typeof mode === "number" ? `mode ${mode}` : `the ${MODES[mode ?? ""] ?? mode}`);

/** @typedef {{ mode?: string | number, hz?: number, region?: string, push?: string }} ReadBy */

/** @type {Record<string, (by: ReadBy) => string>} */
const FIGURES = {
  frequency: ({ mode }) => `Frequency of ${modeText(mode)}`,
  island_lift: ({ mode }) => `Lift of the island in ${modeText(mode)}, over the largest motion`,
  wing_flap: ({ mode }) => `Flap of the wings in ${modeText(mode)}, over the largest motion`,
  energy_share: ({ region, hz }) => `Share of the energy: ${regionText(region)}, half an octave about ${hz} Hz`,
  island_mobility: () => "Mobility of the island, 100 to 800 Hz",
  wing_activity: () => "Activity of the wings, 1.5 to 5 kHz",
  bass_over_treble: () => "Bass foot over treble foot, 100 to 800 Hz",
  give: ({ push = "" }) => PUSHES[push] ?? push,
  edge_stress: () => "Greatest stress along the holes’ edges",
  narrowest: ({ region }) => `Narrowest wood: ${regionText(region)}`,
  mass: () => "Mass of the wood",
};

/** @param {string | undefined} region */
function regionText(region = "") {
  return region === "wings" ? "the four wings" : REGION_WORDS.name(region).toLowerCase();
}

/** @type {Record<string, string>} */
const UNITS = { points: "percentage points" };

/** @type {(text: string, unit: string) => string} */
const inUnit = (text, unit) => `${text}${unit === "" ? "" : `\u00a0${unit}`}`;

export const LESSON_WORDS = {
  about:
    "Twelve short demonstrations on an invented top: look, guess, see what the model makes of it. Your own design is kept and comes back at the end.",
  list: "Lessons",
  open_file: "Open a lesson of your own",
  file_about:
    "A lesson is a text file; “Save its file” on any lesson gives one to begin with. The guide is among the program’s sources.",
  big: "Show it big",
  big_stage: "Show the stage big",
  loading: "Getting the lesson ready…",
  restarted: "The lesson’s computing was started again.",
  /** @type {(number: number, count: number, step: number, steps: number) => string} */
  place: (number, count, step, steps) =>
    number === 0
      ? `Your own lesson, step ${step} of ${steps}`
      : `Lesson ${number} of ${count}, step ${step} of ${steps}`,
  back: "Back",
  /** by step */
  next: ["To the question", "Show what happens", "Next lesson"],
  end: "End the lesson",
  save: "Save its file",
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
  choices: "Your guess",
  right: "Right.",
  /** @param {string} choice */
  wrong: (choice) => `Not quite. What happens: ${choice}.`,
  /** @param {string} choice */
  unguessed: (choice) => `What happens: ${choice}.`,
  working: "The model works the figures out…",
  columns: ["", "before", "after"],
  /** @type {(figure: string, by: ReadBy) => string} */
  figure: (figure, by) => FIGURES[figure]?.(by) ?? figure,
  /** @type {(value: number, within: number, unit: string) => string} */
  value: (value, within, unit) => inUnit(sureText(value, within), unit),
  /** @param {LessonOutcome} outcome */
  change: ({ change, change_within, change_unit }) => {
    const way = wayOf(change, change_within);
    const by = inUnit(sureText(Math.abs(change), change_within), UNITS[change_unit] ?? change_unit);
    return way === 0 ? "It does not change." : `${way > 0 ? "Up" : "Down"} by ${by}.`;
  },
  sure_about:
    "±: what boards differ by, and the mesh. Both tops are of one board, so that the change is surer than either figure.",
  not_shown: "The model does not show what this lesson expects. Trust the figures, not the text.",
  edited: "You changed the lesson’s top. Your own design from before is under “Designs”.",
  /** @type {(name: string, own: string) => string} */
  kept_as: (name, own) => `${name === "" ? own : name}, before a lesson`,
  nameless: "Design",
  lesson_note: "The demonstration top as a lesson changes it; invented.",
  /** @param {string} name */
  ended: (name) => `The lesson is over. “${name}” is back.`,
  presenting: "Presentation",
  leave: "Leave (Esc)",
  keys: "Page Down and Page Up, or the arrows of a clicker, go on and back; Escape leaves.",
};
