/**
 * What the section of lessons says, and a lesson's card. What a lesson itself says is in its file.
 */
/** @import { LessonOutcome } from "../../messages.js" */

import { surenessWith } from "../sureness.js";
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

const { sureText, wayOf } = surenessWith(numberText);

/** @type {Record<string, string>} */
const MODES = { twist: "the twist", x: "the X mode", ring: "the ring" };

/** @type {Record<string, string>} */
const FIGURES = {
  frequency: "Frequency",
  island_lift: "Lift of the island over the largest motion",
  wing_flap: "Flap of the wings over the largest motion",
  energy_share: "Share of the energy",
  island_mobility: "Mobility of the island, 100 to 800 Hz",
  wing_activity: "Activity of the wings, 1.5 to 5 kHz",
  bass_over_treble: "Bass foot over treble foot, 100 to 800 Hz",
  give: "Give for a newton",
  edge_stress: "Greatest stress along the holes’ edges",
  narrowest: "Narrowest wood",
  mass: "Mass of the wood",
};

/** @type {Record<string, string>} */
const PUSHES = {
  rocking: "foot against foot, rocked",
  both_feet: "both feet",
  bass_foot: "bass foot",
  treble_foot: "treble foot",
  lower_wing: "the lower wing’s point",
};

/** @type {Record<string, (value: string | number) => string>} */
const READ_BY = {
  mode: (mode) => MODES[mode] ?? `mode ${mode}`,
  hz: (hz) => `half an octave about ${hz} Hz`,
  region: (region) => (region === "wings" ? "the four wings" : REGION_WORDS.name(String(region)).toLowerCase()),
  push: (push) => PUSHES[push] ?? String(push),
};

/** @type {(key: string, value: string | number) => string} */
const readBy = (key, value) => READ_BY[key]?.(value) ?? String(value);

/** @typedef {Record<string, string | number>} ReadBy what of a figure is meant, by key */

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
  before_and_after: ["before", "after"],
  /** @type {(figure: string, by: ReadBy) => string} */
  figure: (figure, by) => {
    const parts = Object.entries(by).map(([key, value]) => readBy(key, value));
    return [FIGURES[figure] ?? figure, parts.join(", ")].filter((part) => part !== "").join(": ");
  },
  read_by: readBy,
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
  sure_apart:
    "±: what boards differ by, and the mesh. The tops are of different boards, each of which may be otherwise.",
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
