/**
 * The words of the sections about the driven top.
 */
/** @import { Driven } from "../../messages.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

/** @param {number} hz */
const kilohertz = (hz) => numberText(hz / 1000, 2);

export const DRIVE_WORDS = {
  restarted: "The driven top’s computing was started again.",
  solving: "Working out every mode up to 6 kHz…",
  /** @param {Driven} driven */
  about: ({ modes, complete_to_hz, nodes, free }) =>
    `${modes} modes up to ${kilohertz(complete_to_hz)} kHz on ${nodes} nodes, and what all higher ones give together.${
      free ? " The top is free: for a top on its ribs choose so under “Rim”, and add bar and post." : ""
    }`,
  title: "The force",
  by: "A newton",
  drives: {
    bow: "along the bow",
    press: "down on the bridge",
    tap: "at a place of the top",
  },
  bridge: "The bridge",
  bridges: { stiff: "is stiff", rocking: "rocks on its waist" },
  bridge_alone: { label: "by itself, feet held, at", unit: "Hz" },
  frequency: "Frequency",
  /** @type {(hz: number, note: string, cents: number) => string} */
  frequency_value: (hz, note, cents) =>
    `${hz.toFixed(0)} Hz, ${note}${cents === 0 ? "" : ` ${cents > 0 ? "+" : "−"}${Math.abs(cents)} cents`}`,
  across: { label: "From the centreline, bass side below zero", unit: "mm" },
  along: { label: "From the bottom edge", unit: "mm" },
  tap_hint: "Click the top on the stage to tap it there.",
  /** @param {number} hz */
  stage_title: (hz) => `Driven at ${hz.toFixed(0)} Hz`,
  /** @param {number} um */
  stage_text: (um) => `${micrometres(um)} at most`,
  /** @param {string} by */
  stage_detail: (by) => `for a newton ${by}, by all modes up to 6 kHz`,
  /** @type {(exaggeration_mm: number, largest_um: number) => string} */
  true_scale: (exaggeration_mm, largest_um) =>
    exaggeration_mm === 0
      ? "Drawn at rest."
      : `× ${numberText(Number(((1000 * exaggeration_mm) / largest_um).toPrecision(2)))}: 1 mm on the drawn top is ${micrometres(
          largest_um / exaggeration_mm,
        )} for a newton.`,
  /** @param {number} level_db */
  level: (level_db) => `Estimated ${numberText(level_db, 0)} dB at 1 m for a newton, from this top alone.`,
  energy: "Who moves: kinetic energy",
  energy_columns: ["Region", "share", "phase"],
  /** @param {string} key */
  region: (key) => REGION_WORDS.name(key),
  /** @param {number} share */
  percent: (share) => `${numberText(100 * share, share < 0.1 ? 1 : 0)} %`,
  /** @param {number | null | undefined} phase_deg against the island */
  phase: (phase_deg) =>
    typeof phase_deg !== "number"
      ? ""
      : `${numberText(Math.round(phase_deg) + 0)}°${Math.abs(phase_deg) < 45 ? ", with it" : Math.abs(phase_deg) > 135 ? ", against it" : ""}`,
  phase_about:
    "Phase: of the region’s mean motion against the island’s. Arrow keys on the frequency go by a sixth of a semitone, Page Up and Down by three semitones.",
  map: "Who moves at which frequency",
  /** @param {string} what */
  map_label: (what) => `${what} by region against frequency, 100 Hz to 6 kHz, stacked to 100 %`,
  map_of: "Share of",
  maps: { energy: "kinetic energy", volume: "volume velocity, each region by itself" },
  map_about:
    "Each colour is a region; how high its band is says how much of the energy it has, or of the air it pushes. The line is the frequency above.",
  figures: "In three figures",
  /** @type {(value: number, within: number, unit: string) => string} */
  figure: (value, within, unit) =>
    `${numberText(value, 1)} ± ${numberText(Math.max(within, 0.1), 1)}${unit === "" ? "" : ` ${unit}`}`,
  island_mobility: "Island mobility, 100 to 800 Hz",
  wing_activity: "Wing activity, 1.5 to 5 kHz",
  bass_over_treble: "Bass foot over treble foot",
  figures_about:
    "Island mobility: level of the island’s velocity for a newton of the bow, dB re 1 m/s. Wing activity: the wings’ share of the energy over their share of the wood; at 1 they move like the rest. Bass foot over treble foot: which side of the bridge moves more, dB. ±: one standard deviation of what boards differ by, in frequency and in losses.",
  curves_title: "What is watched",
  compare: "Keep these curves to compare with",
  /** @param {string} name */
  compared: (name) => `Dashed: “${name}”, kept.`,
  drop: "Drop the kept curves",
  save_curves: "Save the figures (CSV)",
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
  /** @type {Record<string, string>} */
  curves: {
    bass: "Mobility at the bass foot",
    treble: "Mobility at the treble foot",
    transfer: "From the force to the place watched",
    volume: "Volume velocity",
    level: "Estimated level at 1 m",
  },
  curve: "Curve",
  /** @type {Record<string, string>} */
  units: {
    bass: "dB re 1 (m/s)/N",
    treble: "dB re 1 (m/s)/N",
    transfer: "dB re 1 (m/s)/N",
    volume: "dB re 1 (m³/s)/N",
    level: "dB re 20 µPa for 1 N",
  },
  /** @type {(name: string, from: number, to: number) => string} */
  curve_label: (name, from, to) => `${name}, from ${numberText(from, 0)} Hz to ${kilohertz(to)} kHz`,
  curve_table: "The curve’s highest peaks",
  curve_columns: ["Hz", "dB", "Mode"],
  curves_about:
    "The numbers over the peaks are those of their modes, where there is room. The two feet’s mobilities are the top’s own, without the bridge. The level is an estimate: a simple source at low frequency, Rayleigh’s integral over the top in a wide baffle above; back, ribs and the air in the body are left out.",
  watched: "The place watched",
  note: "Note",
  play_note: "Show its motion on the stage",
  /** @param {number} hz */
  note_title: (hz) => `${hz.toFixed(0)} Hz, bowed`,
  /** @param {number} um */
  note_text: (um) => `${micrometres(um)} at most`,
  note_detail: "for a newton: the sum of its harmonics up to 6 kHz",
  harmonics: "What its harmonics move",
  harmonic_columns: ["Harmonic", "share at the feet"],
  /** @type {(number: number, hz: number) => string} */
  harmonic: (number, hz) => `${number}: ${hz.toFixed(0)} Hz`,
  note_about:
    "A bowed string pulls the bridge like a sawtooth: its n-th harmonic is an n-th of the first. Shown in slow motion, all harmonics in step, with the bridge’s mass.",
  tap_title: "Where it is tapped",
  hear: "Hear the tap",
  /** @param {number} count */
  peaks: (count) => `Its ${count} strongest modes`,
  peak_columns: ["Hz", "dB", "rings, s"],
  listen: "Hold it against the plate in your hand",
  stop_listening: "Stop listening",
  listening: "Listening. Tap the plate: the line shows what the microphone hears. Nothing is kept or sent.",
  no_microphone: {
    kind: "no_microphone",
    message: "The page may not listen to a microphone.",
    remedy: "Allow it in the browser, or plug one in.",
  },
  spectrum: "The tap tone’s modes, and over them what the microphone hears",
  tap_about:
    "The plate or top as computed, tapped by a knuckle, as a sum of modes that ring and die away by the wood’s losses; heard by the air it pushes. The air itself, your hand and the room are not in it. The loudest sample is at 40 % of full scale: set the volume low first.",
};

/** @param {number} um */
function micrometres(um) {
  return `${numberText(Number(um.toPrecision(2)))} µm`;
}
