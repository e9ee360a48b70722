/**
 * The words of the sections about the driven top, in German.
 */
/** @import * as English from "../en/drive.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

/** @param {number} hz */
const kilohertz = (hz) => numberText(hz / 1000, 2);

/** @type {typeof English.DRIVE_WORDS} */
export const DRIVE_WORDS = {
  restarted: "Das Rechnen an der angeregten Decke wurde neu gestartet.",
  solving: "Alle Moden bis 6 kHz werden berechnet…",
  about: ({ modes, complete_to_hz, nodes, free }) =>
    `${modes} Moden bis ${kilohertz(complete_to_hz)} kHz auf ${nodes} Knoten, und was alle höheren zusammen ausmachen.${
      free
        ? " Die Decke ist frei: für eine Decke auf Zargen das unter „Rand“ wählen und Balken und Stimme einsetzen."
        : ""
    }`,
  title: "Die Kraft",
  by: "Ein Newton",
  drives: { bow: "längs des Bogens", press: "hinab auf den Steg", tap: "an einer Stelle der Decke" },
  bridge: "Der Steg",
  bridges: { stiff: "ist starr", rocking: "kippt in seiner Taille" },
  bridge_alone: { label: "allein, Füße gehalten, mit", unit: "Hz" },
  frequency: "Frequenz",
  frequency_value: (hz, note, cents) =>
    `${hz.toFixed(0)} Hz, ${note}${cents === 0 ? "" : ` ${cents > 0 ? "+" : "−"}${Math.abs(cents)} Cent`}`,
  across: { label: "Von der Mittellinie, Bassseite unter null", unit: "mm" },
  along: { label: "Von der Unterkante", unit: "mm" },
  tap_hint: "Ein Klick auf die Decke der Bühne klopft dort.",
  stage_title: (hz) => `Angeregt mit ${hz.toFixed(0)} Hz`,
  stage_text: (um) => `höchstens ${micrometres(um)}`,
  stage_detail: (by) => `je Newton ${by}, aus allen Moden bis 6 kHz`,
  true_scale: (exaggeration_mm, largest_um) =>
    exaggeration_mm === 0
      ? "In Ruhe gezeichnet."
      : `× ${numberText(Number(((1000 * exaggeration_mm) / largest_um).toPrecision(2)))}: 1 mm der gezeichneten Decke ist ${micrometres(
          largest_um / exaggeration_mm,
        )} je Newton.`,
  level: (level_db) => `Geschätzt ${numberText(level_db, 0)} dB in 1 m Abstand je Newton, von dieser Decke allein.`,
  energy: "Wer sich bewegt: Bewegungsenergie",
  energy_columns: ["Bereich", "Anteil", "Phase"],
  region: (key) => REGION_WORDS.name(key),
  percent: (share) => `${numberText(100 * share, share < 0.1 ? 1 : 0)} %`,
  phase: (phase_deg) =>
    typeof phase_deg !== "number"
      ? ""
      : `${numberText(Math.round(phase_deg) + 0)}°${Math.abs(phase_deg) < 45 ? ", mit ihr" : Math.abs(phase_deg) > 135 ? ", gegen sie" : ""}`,
  phase_about:
    "Phase: der mittleren Bewegung des Bereichs gegen die der Insel. Pfeiltasten auf der Frequenz gehen um ein Sechstel eines Halbtons, Bild auf und ab um drei Halbtöne.",
  map: "Wer sich bei welcher Frequenz bewegt",
  map_label: (what) => `${what} nach Bereichen über der Frequenz, 100 Hz bis 6 kHz, auf 100 % gestapelt`,
  map_of: "Anteil",
  maps: { energy: "der Bewegungsenergie", volume: "des Schallflusses, jeder Bereich für sich" },
  map_about:
    "Jede Farbe ist ein Bereich; die Höhe ihres Bandes sagt, wie viel der Energie er hat oder wie viel Luft er schiebt. Die Linie steht bei der Frequenz von oben.",
  figures: "In drei Zahlen",
  figure: (value, within, unit) =>
    `${numberText(value, 1)} ± ${numberText(Math.max(within, 0.1), 1)}${unit === "" ? "" : ` ${unit}`}`,
  island_mobility: "Beweglichkeit der Insel, 100 bis 800 Hz",
  wing_activity: "Rührigkeit der Flügel, 1,5 bis 5 kHz",
  bass_over_treble: "Bassfuß über Diskantfuß",
  figures_about:
    "Beweglichkeit der Insel: Pegel ihrer Geschwindigkeit je Newton des Bogens, dB zu 1 m/s. Rührigkeit der Flügel: ihr Anteil an der Energie durch ihren Anteil am Holz; bei 1 bewegen sie sich wie der Rest. Bassfuß über Diskantfuß: welche Seite des Stegs sich mehr bewegt, dB. ±: eine Standardabweichung dessen, worin Bretter sich unterscheiden, in Frequenz und Dämpfung.",
  curves_title: "Was betrachtet wird",
  compare: "Diese Kurven zum Vergleich behalten",
  compared: (name) => `Gestrichelt: „${name}“, behalten.`,
  drop: "Behaltene Kurven weglassen",
  save_curves: "Zahlen speichern (CSV)",
  saved: (file) => `Gespeichert als ${file}.`,
  curves: {
    bass: "Beweglichkeit am Bassfuß",
    treble: "Beweglichkeit am Diskantfuß",
    transfer: "Von der Kraft zur betrachteten Stelle",
    volume: "Schallfluss",
    level: "Geschätzter Pegel in 1 m",
  },
  curve: "Kurve",
  units: {
    bass: "dB zu 1 (m/s)/N",
    treble: "dB zu 1 (m/s)/N",
    transfer: "dB zu 1 (m/s)/N",
    volume: "dB zu 1 (m³/s)/N",
    level: "dB zu 20 µPa je 1 N",
  },
  curve_label: (name, from, to) => `${name}, von ${numberText(from, 0)} Hz bis ${kilohertz(to)} kHz`,
  curve_table: "Die höchsten Spitzen der Kurve",
  curve_columns: ["Hz", "dB", "Mode Nr."],
  curves_about:
    "Die Zahlen über den Spitzen sind die ihrer Moden, wo Platz ist. Die Beweglichkeiten der beiden Füße sind die der Decke selbst, ohne Steg. Der Pegel ist eine Schätzung: bei tiefen Frequenzen eine einfache Quelle, darüber das Rayleigh-Integral über die Decke in einer weiten Schallwand; Boden, Zargen und die Luft im Korpus sind nicht dabei.",
  watched: "Die betrachtete Stelle",
  note: "Ton",
  play_note: "Seine Bewegung auf der Bühne zeigen",
  note_title: (hz) => `${hz.toFixed(0)} Hz, gestrichen`,
  note_text: (um) => `höchstens ${micrometres(um)}`,
  note_detail: "je Newton: die Summe seiner Teiltöne bis 6 kHz",
  harmonics: "Was seine Teiltöne bewegen",
  harmonic_columns: ["Teilton", "Anteil an den Füßen"],
  harmonic: (number, hz) => `${number}: ${hz.toFixed(0)} Hz`,
  note_about:
    "Eine gestrichene Saite zieht am Steg wie ein Sägezahn: ihr n-ter Teilton ist ein n-tel des ersten. In Zeitlupe, alle Teiltöne im Schritt, mit der Masse des Stegs.",
  tap_title: "Wo geklopft wird",
  hear: "Den Klopfton hören",
  peaks: (count) => `Seine ${count} stärksten Moden`,
  peak_columns: ["Hz", "dB", "klingt, s"],
  listen: "Mit der Platte in der Hand vergleichen",
  stop_listening: "Nicht mehr hören",
  listening:
    "Das Mikrofon hört. An die Platte klopfen: die Linie zeigt, was es hört. Nichts wird behalten oder gesendet.",
  no_microphone: {
    kind: "no_microphone",
    message: "Die Seite darf kein Mikrofon hören.",
    remedy: "Im Browser erlauben oder eines anschließen.",
  },
  spectrum: "Die Moden des Klopftons, darüber, was das Mikrofon hört",
  tap_about:
    "Die Platte oder Decke wie berechnet, mit dem Knöchel geklopft, als Summe von Moden, die klingen und durch die Dämpfung des Holzes ausklingen; gehört an der Luft, die sie schiebt. Die Luft selbst, die Hand und der Raum sind nicht dabei. Der lauteste Wert ist 40 % des Vollausschlags: zuerst leise stellen.",
};

/** @param {number} um */
function micrometres(um) {
  return `${numberText(Number(um.toPrecision(2)))} µm`;
}
