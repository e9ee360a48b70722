/**
 * The sentences of the graduation's section, in German.
 */
/** @import * as English from "../en/graduation.js" */
import { numberText } from "./page.js";

/** @type {typeof English.GRADUATION_WORDS} */
export const GRADUATION_WORDS = {
  zones: "Stärken nach Zonen",
  left_out: {
    upper_bout_mm: "Flanken",
    lower_bout_mm: "Flanken",
    channel_mm: "fließend",
    around_holes_mm: "keine",
    wings_mm: "keine",
  },
  map: (thin, thick) =>
    `Stärke über dem Grundriss, von ${numberText(thin, 1)} bis ${numberText(thick, 1)} mm, eine Linie alle 0,2 mm`,
  mass: (mass_g, density) =>
    `${numberText(mass_g, 1)} g Holz ohne den Balken, bei ${numberText(density, 0)} kg/m³. Bretter sind verschieden: das eigene wiegen.`,
  target: "Zu einer Masse hin",
  wish: "Gewünschte Masse, ohne den Balken",
  no_wish: "–",
  reach: "Alle Stärken gleich ändern",
  target_about:
    "Überall wird gleich viel zugegeben oder weggenommen, auch an Rand und Zonen. Rückgängig bringt die alten Stärken zurück.",
  reached: (change_mm, mass_g) =>
    `Überall um ${numberText(Math.abs(change_mm), 2)} mm ${change_mm < 0 ? "dünner" : "dicker"}: ${numberText(mass_g, 1)} g.`,
  paint: "Mit Punkten malen",
  paint_about:
    "Auf die Karte drücken, oder den Pinsel nach Zahlen aufsetzen. Er gilt ganz an seinem Punkt und verliert sich bis zu seiner Reichweite.",
  brush: {
    thickness_mm: "Stärke des Pinsels",
    reach_mm: "Seine Reichweite",
    across_mm: "Von der Mittellinie, Bassseite unter null",
    station_mm: "Von der Unterkante",
  },
  paint_there: "Dort malen",
  painted: (thickness, reach, across, station) =>
    `${numberText(thickness)} mm bei ${numberText(across)}; ${numberText(station)}, reicht ${numberText(reach)} mm weit`,
  remove: "Entfernen",
  measured: "Eine gemessene Karte",
  measured_file: "Gemessene Stärken, CSV",
  measured_stands: (count) => `${count} gemessene Stärken gelten statt aller Zonen; gemalte liegen darüber.`,
  measured_taken: (count) => `${count} gemessene Stärken übernommen.`,
  measured_drop: "Zurück zu den Zonen",
  measured_about:
    "Zeilen mit quer, längs, Stärke in mm (Mittellinie bei 0, Unterkante bei 0), oder ein Gitter. Mindestens 20 Punkte; von mehr als 500 bleibt jeder soundsovielte.",
  too_large: {
    kind: "file_too_large",
    message: "Die Datei ist größer als 2 MB, weit mehr als eine Tabelle von Stärken.",
    remedy: "Die Tabelle der Stärken wählen.",
  },
  caution:
    "Was weggenommen ist, kommt nicht zurück. Das eigene Holz entscheidet: mehr stehen lassen, klopfen, wiegen und nach und nach wegnehmen.",
};
