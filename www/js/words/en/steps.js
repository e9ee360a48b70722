/**
 * The words of the sections about workshop steps and targets.
 */
import { signedText } from "../../sections/signed_text.js";
import { numberText } from "./page.js";

export const STEP_WORDS = {
  restarted: "The computing of steps was started again.",
  solving: "Working out the top that the steps go from…",
  figure: "Figure",
  mass: "Mass of the wood",
  /** @param {string} place */
  narrows: (place) => `Width: ${place.toLowerCase()}`,
  island: "Island mobility, 100 to 800 Hz",
  wings: "Wing activity, 1.5 to 5 kHz",
  /** @type {Record<string, string>} */
  names: { "bar.*.across_mm": "The whole bar from the centreline" },
  /** @type {(done: number, count: number) => string} */
  progress: (done, count) => `${done} of ${count} steps worked out.`,
  /** @type {(count: number, none: number) => string} */
  done: (count, none) =>
    `${count} steps, the largest effect first.${none === 0 ? "" : ` ${none} can’t be made from here.`}`,
  caption: "What each step adds",
  columns: ["Step", "Effect"],
  /** @param {string} step */
  shown: (step) => `The stage shows the top with this step: ${step}.`,
  keep: "Keep this step",
  back: "Back to the top without it",
  kept: "The step is kept; it can be undone.",
  about:
    "One step each, all else as it is, to first order: they add up while they are small, and the other way they do the opposite. Choose a step to see the top move with it. ±: one standard deviation of what boards differ by and what the mesh leaves open (measured: a tenth of an effect on a free top, a quarter on a held one); for the response, of wood and losses alone.",
  // Toward a target.
  wanted: "What is to change",
  change: "By",
  limits: "On the way there",
  no_heavier: "no more mass than now",
  least_narrows: "Every narrow place at least",
  no_limit: "none",
  carved: "the top is carved: only take wood off",
  allowed: "What may change",
  /** @type {Record<string, string>} */
  groups: {
    outline: "outline",
    arching: "arching",
    sound_holes: "sound holes",
    graduation: "thickness",
    fittings: "bar and post",
    rim: "ribs",
  },
  steps: "Each by at most, in steps",
  propose: "Propose the smallest change",
  proposing: "Looking for the smallest change…",
  /** @type {(done: number, count: number) => string} */
  listening: (done, count) => `What each step does to the island: ${done} of ${count}.`,
  nothing: "Nothing that may change leads there.",
  /** @type {(wanted: number, reached: number, unit: string) => string} */
  reached: (wanted, reached, unit) =>
    `Worked out anew: ${signedText(reached, 1)} ${unit} of the ${signedText(wanted, 1)} ${unit} wanted.`,
  /** @type {(wanted: number, reached: number, unit: string) => string} */
  missed: (wanted, reached, unit) =>
    `It can’t be reached within these limits: ${signedText(reached, 1)} ${unit} of the ${signedText(wanted, 1)} ${unit} wanted. Allow more, or ask for less.`,
  lost: "The mode changes its shape on the way, so what was reached can’t be told. Ask for less.",
  changes: "The changes",
  change_columns: ["Measure", "now", "then"],
  /** @type {(before: number, after: number) => string} */
  mass_then: (before, after) => `Mass ${numberText(after, 1)} g, ${signedText(after - before, 1)} g.`,
  /** @param {readonly { name: string, width_mm: number }[]} narrows */
  narrows_then: (narrows) =>
    `${narrows.map(({ name, width_mm }) => `${name} ${numberText(width_mm, 1)} mm`).join("; ")}.`,
  wood: "Wood to take off",
  /** @param {number} most_mm */
  wood_map: (most_mm) => `Wood to take off over the plan, up to ${numberText(most_mm, 2)} mm`,
  face: "From",
  faces: { outside: "the outside", inside: "the inside" },
  /** @param {number} most_mm */
  wood_added: (most_mm) =>
    `Elsewhere up to ${numberText(most_mm, 2)} mm of wood would have to be added: only for a top that isn’t carved yet.`,
  show: "Show it on the stage",
  take: "Take it over",
  taken: "The proposal is taken over as one step; it can be undone.",
  target_about:
    "The smallest change, counted in the steps of the section above and squared, by their first-order effects, then worked out anew and corrected. It proposes numbers, no way of working: what is cut too thin can’t be mended, so go a part of the way, weigh and tap, and look again. For a valuable instrument ask a qualified restorer.",
};
