/**
 * What the regions are called, and the sentences of their section, in German.
 */
/** @import * as English from "../en/regions.js" */
import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const REGIONS = {
  island: "Insel",
  upper_wing: "Oberer Flügel",
  lower_wing: "Unterer Flügel",
  upper_narrows: "Obere Engstelle",
  lower_narrows: "Untere Engstelle",
  flank: "Flanke",
  upper_bout: "Oberbug",
  middle_bout: "Mittelbug",
  lower_bout: "Unterbug",
  bar_line: "Unter dem Balken",
};

/** @type {typeof English.REGION_WORDS} */
export const REGION_WORDS = {
  caption: "Bereiche der Decke",
  columns: ["Bereich", "cm²", "g", "Mittel mm", "min. mm"],
  overlay: "Im Grundriss zeigen",
  throats: (throats) => {
    const each = throats.map(({ key, width_mm }) => `${REGION_WORDS.name(key)} ${numberText(width_mm, 1)} mm`);
    return `Von den Spitzen der Flügel zum Schaft: ${each.join("; ")}.`;
  },
  about:
    "Aus Umriss und F-Löchern gefunden. Flächen im Grundriss, Massen ohne Balken und Lack. Mittel: der Stärke. Min.: das schmalste Holz, bei einem Flügel seine Wurzel, bei Insel, Engstellen und Flanken der kürzeste Weg von Rand zu Rand.",
  name: (key) => {
    const side = /_(bass|treble)$/.exec(key)?.[1];
    const region = REGIONS[key.replace(/_(bass|treble)$/, "")] ?? key;
    return side === undefined ? region : `${region}, ${side === "bass" ? "Bass" : "Diskant"}`;
  },
};
