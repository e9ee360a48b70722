/**
 * The sentences of the sections that open below the main measures, in German.
 */
/** @import * as English from "../en/sections.js" */
import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const STATIONS = {
  long_arch: "Längswölbung",
  upper_bout: "Oberbug",
  upper_corners: "Obere Ecken",
  waist: "Mittelbug",
  lower_corners: "Untere Ecken",
  lower_bout: "Unterbug",
};

/** @type {Record<string, string>} */
const PRESETS = {
  violin: "Erfundene Geige, ganze Größe",
  violin_3_4: "Erfundene Geige, Dreiviertelgröße",
  violin_1_2: "Erfundene Geige, halbe Größe",
  violin_1_4: "Erfundene Geige, Viertelgröße",
  viola: "Erfundene Bratsche, mittelgroß",
  viola_large: "Erfundene Bratsche, groß",
  cello: "Erfundenes Cello",
};

/** @type {typeof English.SECTION_WORDS} */
export const SECTION_WORDS = {
  outline: {
    groups: {
      widths: "Länge und Breiten",
      stations: "Lage der Breiten",
      upper_corner: "Obere Ecken",
      lower_corner: "Untere Ecken",
      ends: "Enden und Rand",
      bass: "Bassseite",
    },
    own_bass: "Die Bassseite ist anders",
    widths_doubled: "Die Breiten oben sind dann das Doppelte der Diskantseite.",
  },
  sound_holes: {
    alike: "Beide Seiten gleich",
    sides: { bass: "Bassseite", treble: "Diskantseite" },
    both: "Beide Seiten",
    pattern: "Muster",
    patterns: {
      eyes_and_stem: "F-Loch",
      round: "rund",
      crescent: "Mondsichel",
      slot: "gerader Schlitz",
      traced: "anderswo gezeichnet",
      none: "keines",
    },
    fair: "Ein anderes Muster öffnet so viel Holz wie das F-Loch, für das es steht, damit der Vergleich gerecht ist.",
    ends: "Enden",
    cuts: { round: "gerundet", sharp: "scharf gelassen" },
    lean: "Schräge der Linie durch die Augen, gegen die Senkrechte",
    left_out: {
      stem_at_hooks_mm: "0,8 davon",
      stem_steeper_deg: "9",
      lower_wing_hollow_mm: "keine",
      lower_wing_hollow_reach: "0,8",
    },
    measures: (area_mm2, perimeter_mm) =>
      `Öffnet ${numberText(area_mm2 / 100, 2)} cm²; ${numberText(perimeter_mm, 0)} mm rund um den Rand.`,
    traced: "Ein anderswo gezeichnetes Loch",
    traced_file: "Seine Zeichnung, SVG",
    traced_side: "Die Zeichnung zeigt das Loch der",
    traced_about:
      "Die größte geschlossene Linie der Zeichnung wird in wahrer Größe geschnitten, ihre Mitte dort, wo sie das Loch dieser Seite hat. Hals oben, von außen gesehen.",
    choose_traced: "Die Zeichnung eines Lochs weiter unten wählen: „Ein anderswo gezeichnetes Loch“.",
    no_path: {
      kind: "no_path",
      message: "Die Zeichnung enthält keine Linie zum Schneiden.",
      remedy: "Das Loch als einen geschlossenen Pfad in einer SVG-Datei speichern.",
    },
  },
  presets: {
    invented: "Erfundene, glaubhafte Maße; kein wirkliches Instrument. Rückgängig bringt den eigenen Entwurf zurück.",
    name: (word, name) => PRESETS[word] ?? name,
    design: (design, word) => {
      const name = PRESETS[word];
      const note = `${name}: erfundene, glaubhafte Werkstattmaße. Kein wirkliches Instrument.`;
      return name === undefined ? design : { ...design, name, note };
    },
    choice: "Entwurf, mit dem begonnen wird",
    start: "Damit beginnen",
    started: (name) => `Begonnen mit „${name}“. Rückgängig bringt den eigenen Entwurf zurück.`,
  },
  arching: {
    channel: "Höhen und Hohlkehle",
    apex_station_left_out: "mittig",
    family: "Gezeichnet als",
    families: {
      curtate_cycloid: "verkürzte Zykloide",
      arc_with_reverse_arc: "Kreisbogen mit Gegenbogen",
      spline: "Spline durch Punkte",
    },
    fullness: "Völligkeit",
    turn: (long) => (long ? "Wird hohl, vom Scheitel aus" : "Wird hohl, von der Mittellinie aus"),
    own_bass: "Die Bassseite ist anders",
    points: "Punkte, mm",
    lower: "zur Unterkante hin",
    upper: "zum Halsende hin",
    place: (long) => (long ? "vom Scheitel" : "von der Mittellinie"),
    height: "über der Hohlkehle",
    point: (number) => `Punkt ${number}`,
    add_point: "Einen Punkt hinzufügen",
    remove_point: "Entfernen",
    further: "Weitere Querwölbungen",
    new_station: "Lage einer neuen Querwölbung, von der Unterkante",
    add_arch: "Eine Querwölbung hinzufügen",
    remove_arch: "Diese Wölbung entfernen",
    station: "Lage, von der Unterkante",
    title: (arch) => {
      const bass = arch.endsWith(".bass") ? ", Bassseite" : "";
      const name = arch.replace(/\.bass$/, "");
      const further = name.startsWith("extra.") ? `Weitere Wölbung ${Number(name.slice(6)) + 1}` : name;
      return (STATIONS[name] ?? further) + bass;
    },
  },
};
