/**
 * What the page says from its first moment, in German: workshop words, nobody addressed.
 */
/** @import * as English from "../en/page.js" */
/** @import { MeshSize } from "../../messages.js" */
import { bestHertz, countText, numbersWith } from "../numbers.js";

export const { numberText, hertzText } = numbersWith(",");

/** @type {Record<string, [name: string, title: string]>} */
const MODE_NAMES = { twist: ["Torsion", "Torsionsmode"], x: ["X", "X-Mode"], ring: ["Ring", "Ringmode"] };

/** @type {typeof English.modeName} */
export const modeName = ({ name, number }) => MODE_NAMES[name]?.[0] ?? (name === "" ? `Mode ${number}` : name);

/** @type {Record<MeshSize, string>} */
const MESHES = { preview: "Vorschaunetz", standard: "Standardnetz", fine: "feines Netz" };

/** @type {typeof English.meshText} */
export const meshText = (size, nodes) => `${MESHES[size]}, ${countText(nodes)} Knoten`;

/** @type {typeof English.sourceText} */
export const sourceText = (mesh, mode, surety) => {
  if (typeof surety?.converged_hz === "number") {
    return `${mesh}, um seinen Fehler berichtigt`;
  }
  return surety === undefined && mode.foreseen_hz !== undefined ? `${mesh}, berichtigt wie zuvor` : mesh;
};

/** @type {typeof English.WORDS} */
export const WORDS = {
  play: "Abspielen",
  pause: "Anhalten",
  title: (mode) => MODE_NAMES[mode.name]?.[1] ?? modeName(mode),
  on_mesh: (mode) => `${hertzText(mode.frequency_hz)} Hz auf dem Netz, bevor dessen Fehler berichtigt ist`,
  hertz: (frequency_hz, spread = "") => `${hertzText(frequency_hz)} ${spread}${spread === "" ? "" : " "}Hz`,
  mass: (mass_g) => `${numberText(mass_g, 1)} g Holz`,
  basis: (rim, mesh) =>
    `${rim === "free" ? "Freie Decke" : "Decke am Rand gehalten"}, ${mesh}. ±: worin sich Bretter unterscheiden, und das Netz; Q: wie lange es nachklingt.`,
  following: (mesh, count, set_right) =>
    `Vorschau: die tiefsten ${count} Moden, ${mesh}, ${set_right ? "berichtigt nach den letzten Standardzahlen" : "bis zu etwa 5 % daneben"}. Erst das Standardnetz beweist, dass keine fehlt.`,
  time_left: (left_s) => (left_s === undefined ? "länger als geschätzt" : `noch etwa ${left_s} s`),
  settled: ({ modes }, mode, surety) =>
    `${modes.length} Moden berechnet. ${modeName(mode)}: ${hertzText(bestHertz(mode, surety))} Hz.`,
  drawn_scale: (exaggeration_mm) =>
    exaggeration_mm === 0
      ? "In Ruhe gezeichnet."
      : `Die Stelle, die sich am meisten bewegt, ist ${numberText(exaggeration_mm)} mm nach außen und innen gezeichnet, alle anderen im Verhältnis. Eine Mode hat keine wahre Größe: sie sagt, wie sich die Decke biegt, nicht wie weit.`,
  scale_ends: ["100 % nach innen", "100 % nach außen"],
  restarted: "Das Rechnen brach ab und wurde neu begonnen. Der Entwurf ist, wie er war.",
  opened: (name) => `„${name}“ geöffnet.`,
  saved: (file) => `Gespeichert als ${file}.`,
  undone: (left) => `Rückgängig gemacht.${left > 0 ? "" : " Das war der erste Schritt."}`,
  redone: (left) => `Wiederholt.${left > 0 ? "" : " Das war der letzte Schritt."}`,
  resumed: (name) => `„${name}“ ist, wie zuletzt verlassen. Zurücksetzen führt zur Vorführdecke.`,
  unread_design: "War beim letzten Besuch nicht zu lesen",
  demonstration: (design) => ({
    ...design,
    name: "Erfundene Vorführdecke",
    note: "Eine ganze Geigendecke mit erfundenen, glaubhaften Werkstattmaßen. Sie ist kein wirkliches Instrument.",
  }),
  reset: "Wieder die Vorführdecke. Rückgängig bringt den eigenen Entwurf zurück.",
  not_loaded:
    "Dieser Teil der Seite lässt sich nicht laden. Die Verbindung prüfen, dann schließen und noch einmal öffnen.",
  in_unit: (label, unit) => `${label} in ${unit === "deg" ? "Grad" : unit}`,
  measures: {
    "arch-height": { label: "Wölbungshöhe", meaning: "Höchster Punkt über der Leimfläche." },
    "lower-eye": { label: "Unteres Auge zum Rand", meaning: "Die Engstelle: Holz neben jedem unteren Auge." },
    thickness: { label: "Stärke in der Mitte", meaning: "Zwischen den F-Löchern; die Flanken bleiben, wie sie sind." },
  },
  sides_differ: "Bass- und Diskantseite sind hier verschieden; eine Änderung setzt beide.",
  design_kept: "Zu sehen ist weiter die Decke von vorher.",
  no_view:
    "Dieser Browser bietet weder WebGPU noch WebGL 2, daher ist die Decke hier nicht zu zeichnen. Die Moden und ihre Zahlen gehen wie sonst; ein neuer Browser mit eingeschalteter Grafikbeschleunigung zeichnet sie.",
  view_lost: "Die Grafikkarte war verloren gegangen; das Bild ist neu aufgebaut.",
  problems: {
    crashed: {
      kind: "crashed",
      message: "Das Rechnen ist an dieser Form gescheitert und wurde neu begonnen.",
      remedy: "Einen anderen Wert versuchen.",
    },
    no_compute: {
      kind: "no_compute",
      message: "Der rechnende Teil der Seite lässt sich nicht starten.",
      remedy: "Den Entwurf speichern, dann die Seite neu laden; nötig ist ein neuer Browser mit WebAssembly.",
    },
    file_too_large: (limit_mb) => ({
      kind: "file_too_large",
      message: `Diese Datei ist größer als ${limit_mb} MB; ein Entwurf hat einige Kilobyte.`,
      remedy: "Eine Datei wählen, die hier gespeichert wurde.",
    }),
    measured_file: {
      kind: "measured_file",
      message: "Das ist eine Datei mit Messwerten, kein Entwurf.",
      remedy: "Unter den Maßen „Gemessene Decke einlesen“ öffnen und sie dort wählen.",
    },
    file_unreadable: {
      kind: "file_unreadable",
      message: "Die Datei lässt sich nicht lesen.",
      remedy: "Prüfen, ob es sie noch gibt und ob sie gelesen werden darf.",
    },
    not_a_number: (label, unit) => ({ kind: "no_number", message: `${label}: hier gehört eine Zahl in ${unit} hin.` }),
  },
};
