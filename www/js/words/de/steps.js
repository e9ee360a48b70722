/**
 * The words of the sections about workshop steps and targets, in German.
 */
/** @import * as English from "../en/steps.js" */
import { signedText } from "../../sections/signed_text.js";
import { numberText } from "./page.js";

/** @type {typeof English.STEP_WORDS} */
export const STEP_WORDS = {
  restarted: "Das Rechnen an den Schritten wurde neu gestartet.",
  solving: "Die Decke, von der die Schritte ausgehen, wird berechnet…",
  figure: "Kennzahl",
  mass: "Masse des Holzes",
  narrows: (place) => `Breite: ${place}`,
  island: "Beweglichkeit der Insel, 100 bis 800 Hz",
  wings: "Rührigkeit der Flügel, 1,5 bis 5 kHz",
  names: { "bar.*.across_mm": "Der ganze Balken von der Mittellinie" },
  progress: (done, count) => `${done} von ${count} Schritten berechnet.`,
  done: (count, none) =>
    `${count} Schritte, die größte Wirkung zuerst.${none === 0 ? "" : ` ${none} sind von hier nicht möglich.`}`,
  caption: "Was jeder Schritt hinzufügt",
  columns: ["Schritt", "Wirkung"],
  shown: (step) => `Die Bühne zeigt die Decke mit diesem Schritt: ${step}.`,
  keep: "Diesen Schritt behalten",
  back: "Zurück zur Decke ohne ihn",
  kept: "Der Schritt ist übernommen; er lässt sich widerrufen.",
  about:
    "Je ein Schritt, alles andere wie es ist, in erster Näherung: solange sie klein sind, zählen sie zusammen, in Gegenrichtung bewirken sie das Gegenteil. Einen Schritt wählen, um die Decke damit schwingen zu sehen. ±: eine Standardabweichung dessen, worin Bretter sich unterscheiden und was das Netz offen lässt (gemessen: ein Zehntel der Wirkung an einer freien Decke, ein Viertel an einer gehaltenen); bei der Antwort auf Kräfte nur von Holz und Dämpfung.",
  wanted: "Was sich ändern soll",
  change: "Um",
  limits: "Auf dem Weg dorthin",
  no_heavier: "nicht mehr Masse als jetzt",
  least_narrows: "Jede Engstelle mindestens",
  no_limit: "keine",
  carved: "die Decke ist gewölbt: nur Holz wegnehmen",
  allowed: "Was sich ändern darf",
  groups: {
    outline: "Umriss",
    arching: "Wölbung",
    sound_holes: "Schalllöcher",
    graduation: "Stärke",
    fittings: "Balken und Stimme",
    rim: "Zargen",
  },
  steps: "Jedes um höchstens, in Schritten",
  propose: "Die kleinste Änderung vorschlagen",
  proposing: "Die kleinste Änderung wird gesucht…",
  listening: (done, count) => `Was jeder Schritt an der Insel bewirkt: ${done} von ${count}.`,
  nothing: "Nichts, was sich ändern darf, führt dorthin.",
  reached: (wanted, reached, unit) =>
    `Neu berechnet: ${signedText(reached, 1)} ${unit} von gewünschten ${signedText(wanted, 1)} ${unit}.`,
  missed: (wanted, reached, unit) =>
    `In diesen Grenzen nicht zu erreichen: ${signedText(reached, 1)} ${unit} von gewünschten ${signedText(wanted, 1)} ${unit}. Mehr erlauben oder weniger verlangen.`,
  lost: "Die Mode ändert unterwegs ihre Form, so dass nicht zu sagen ist, was erreicht wurde. Weniger verlangen.",
  changes: "Die Änderungen",
  change_columns: ["Maß", "jetzt", "dann"],
  mass_then: (before, after) => `Masse ${numberText(after, 1)} g, ${signedText(after - before, 1)} g.`,
  narrows_then: (narrows) =>
    `${narrows.map(({ name, width_mm }) => `${name} ${numberText(width_mm, 1)} mm`).join("; ")}.`,
  wood: "Holz, das wegzunehmen ist",
  wood_map: (most_mm) => `Holz, das wegzunehmen ist, über dem Grundriss, bis ${numberText(most_mm, 2)} mm`,
  face: "Von",
  faces: { outside: "außen", inside: "innen" },
  wood_added: (most_mm) =>
    `Anderswo müssten bis zu ${numberText(most_mm, 2)} mm Holz dazukommen: nur für eine Decke, die noch nicht gewölbt ist.`,
  show: "Auf der Bühne zeigen",
  take: "Übernehmen",
  taken: "Der Vorschlag ist als ein Schritt übernommen; er lässt sich widerrufen.",
  target_about:
    "Die kleinste Änderung, gezählt in den Schritten des Abschnitts darüber und im Quadrat, nach deren Wirkung in erster Näherung, dann neu berechnet und berichtigt. Vorgeschlagen werden Zahlen, keine Arbeitsweise: was zu dünn geschnitten ist, lässt sich nicht mehr richten; also einen Teil des Wegs gehen, wiegen und klopfen und wieder hinsehen. Bei einem wertvollen Instrument einen ausgebildeten Restaurator fragen.",
};
