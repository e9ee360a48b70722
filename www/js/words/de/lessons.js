/**
 * Was der Abschnitt der Lektionen sagt, und die Karte einer Lektion. Was eine Lektion selbst sagt, steht in ihrer Datei.
 */
/** @import { LessonOutcome } from "../../messages.js" */
/** @import * as English from "../en/lessons.js" */

import { surenessWith } from "../sureness.js";
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

const { sureText, wayOf } = surenessWith(numberText);

/** @type {Record<string, string>} */
const MODES = { twist: "Torsionsmode", x: "X-Mode", ring: "Ringmode" };

/** @type {Record<string, string>} */
const FIGURES = {
  frequency: "Frequenz",
  island_lift: "Hub der Insel zur größten Bewegung",
  wing_flap: "Schlag der Flügel zur größten Bewegung",
  energy_share: "Anteil an der Energie",
  island_mobility: "Beweglichkeit der Insel, 100 bis 800 Hz",
  wing_activity: "Rührigkeit der Flügel, 1,5 bis 5 kHz",
  bass_over_treble: "Bassfuß über Diskantfuß, 100 bis 800 Hz",
  give: "Nachgeben je Newton",
  edge_stress: "Größte Spannung am Rand der Löcher",
  narrowest: "Schmalstes Holz",
  mass: "Masse des Holzes",
};

/** @type {Record<string, string>} */
const PUSHES = {
  rocking: "Fuß gegen Fuß, gewippt",
  both_feet: "beide Füße",
  bass_foot: "Bassfuß",
  treble_foot: "Diskantfuß",
  lower_wing: "Spitze des unteren Flügels",
};

/** @type {Record<string, (value: string | number) => string>} */
const READ_BY = {
  mode: (mode) => MODES[mode] ?? `Mode ${mode}`,
  hz: (hz) => `eine halbe Oktave um ${hz} Hz`,
  region: (region) => (region === "wings" ? "die vier Flügel" : REGION_WORDS.name(String(region))),
  push: (push) => PUSHES[push] ?? String(push),
};

/** @type {(key: string, value: string | number) => string} */
const readBy = (key, value) => READ_BY[key]?.(value) ?? String(value);

/** @type {Record<string, string>} */
const UNITS = { points: "Prozentpunkte" };

/** @type {(text: string, unit: string) => string} */
const inUnit = (text, unit) => `${text}${unit === "" ? "" : `\u00a0${unit}`}`;

/** @type {typeof English.LESSON_WORDS} */
export const LESSON_WORDS = {
  about:
    "Zwölf kurze Vorführungen an einer erfundenen Decke: hinsehen, raten, sehen, was das Modell daraus macht. Der eigene Entwurf wird verwahrt und kommt am Ende wieder.",
  list: "Lektionen",
  open_file: "Eine eigene Lektion öffnen",
  file_about:
    "Eine Lektion ist eine Textdatei; „Ihre Datei speichern“ gibt bei jeder Lektion eine für den Anfang. Die Anleitung liegt bei den Quellen des Programms.",
  big: "Groß zeigen",
  big_stage: "Die Bühne groß zeigen",
  loading: "Die Lektion wird vorbereitet …",
  restarted: "Die Rechnung der Lektion wurde neu begonnen.",
  place: (number, count, step, steps) =>
    number === 0
      ? `Eigene Lektion, Schritt ${step} von ${steps}`
      : `Lektion ${number} von ${count}, Schritt ${step} von ${steps}`,
  back: "Zurück",
  next: ["Zur Frage", "Zeigen, was geschieht", "Nächste Lektion"],
  end: "Lektion beenden",
  save: "Ihre Datei speichern",
  saved: (file) => `Als ${file} gespeichert.`,
  choices: "Geraten",
  right: "Richtig.",
  wrong: (choice) => `Nicht ganz. Es geschieht: ${choice}.`,
  unguessed: (choice) => `Es geschieht: ${choice}.`,
  working: "Das Modell rechnet die Zahlen aus …",
  before_and_after: ["vorher", "nachher"],
  figure: (figure, by) => {
    const parts = Object.entries(by).map(([key, value]) => readBy(key, value));
    return [FIGURES[figure] ?? figure, parts.join(", ")].filter((part) => part !== "").join(": ");
  },
  read_by: readBy,
  value: (value, within, unit) => inUnit(sureText(value, within), unit),
  change: ({ change, change_within, change_unit }) => {
    const way = wayOf(change, change_within);
    const by = inUnit(sureText(Math.abs(change), change_within), UNITS[change_unit] ?? change_unit);
    return way === 0 ? "Es ändert sich nichts." : `Um ${by} ${way > 0 ? "mehr" : "weniger"}.`;
  },
  sure_about:
    "±: worin Bretter sich unterscheiden, und das Netz. Beide Decken sind aus einem Brett, darum ist die Änderung sicherer als jede der beiden Zahlen.",
  sure_apart:
    "±: worin Bretter sich unterscheiden, und das Netz. Die Decken sind aus verschiedenen Brettern, von denen jedes anders sein kann.",
  not_shown: "Das Modell zeigt nicht, was diese Lektion erwartet. Den Zahlen trauen, nicht dem Text.",
  edited: "Die Decke der Lektion wurde geändert. Der eigene Entwurf von vorher liegt unter „Entwürfe“.",
  kept_as: (name, own) => `${name === "" ? own : name}, vor einer Lektion`,
  nameless: "Entwurf",
  lesson_note: "Die Vorführdecke, wie eine Lektion sie ändert; erfunden.",
  ended: (name) => `Die Lektion ist zu Ende. „${name}“ ist wieder da.`,
  presenting: "Vorführung",
  leave: "Verlassen (Esc)",
  keys: "Bild ab und Bild auf oder die Pfeile eines Presenters gehen weiter und zurück; Escape verlässt die Vorführung.",
};
