/**
 * The sentences about measured files, in German.
 */
/** @import * as English from "../en/measured.js" */
import { countText } from "../numbers.js";
import { numberText } from "./page.js";

/** @type {typeof English.MEASURED_WORDS} */
export const MEASURED_WORDS = {
  outline: "Umriss",
  outline_file: "Punkte (CSV) oder eine Zeichnung (SVG)",
  outline_about:
    "Spalten x und y, oder die größte Linie einer Zeichnung. Sie darf beliebig liegen und irgendwo beginnen.",
  tolerance: "Genau auf",
  heights: "Höhen der Außenseite",
  heights_file: "Tabelle (CSV) oder Scan (STL)",
  heights_about:
    "Spalten x, y, z; oder ein Gitter; oder Ablesungen einer Messuhr, x in der ersten Spalte, die anderen überschrieben mit upper bout, upper corners, waist, lower corners, lower bout. x von der Mittellinie, y von der Unterkante. Ein Scan darf beliebig liegen. Zuerst den Umriss dieser Decke einlesen.",
  reading: (file) => `${file} wird gelesen …`,
  read: (file) => `${file} ist gelesen; übernommen ist noch nichts.`,
  stop: "Anhalten",
  result: "Was gelesen wurde",
  points: "Gelesene Punkte",
  fit: "Abstand von den Punkten, quadratisches Mittel",
  smooth: "Glatte Fläche durch die Punkte, quadratisches Mittel",
  drawn: "Die danach gezeichnete Wölbung, quadratisches Mittel",
  largest: "am größten",
  where: (number, across_mm, station_mm) =>
    `Punkt ${countText(number)}, ${across(across_mm)}, ${numberText(station_mm, 0)} mm von der Unterkante`,
  within: (within, tolerance_mm) =>
    within
      ? `Überall auf ${numberText(tolerance_mm)} mm genau, wie verlangt.`
      : `Nicht überall auf die verlangten ${numberText(tolerance_mm)} mm genau: Bögen zwischen Werkstattmaßen folgen diesem Umriss nicht näher. Nachsehen, wo, und urteilen.`,
  own_bass: "Bass- und Diskantseite unterscheiden sich um mehr als das; die Bassseite bekommt eigene Maße.",
  holes_scaled: (by) =>
    `Die F-Löcher passen so nicht in diesen Umriss; sie sind auf das ${numberText(by, 3)}-fache gebracht.`,
  outliers: (count) =>
    count === 0 ? "Keine Ausreißer." : `${countText(count)} Ausreißer, aus der Fläche weggelassen:`,
  more_outliers: (count) => `und ${countText(count)} weitere`,
  missing: (area_mm2, share) =>
    area_mm2 === 0
      ? "Kein Teil der Decke fehlt."
      : `${numberText(area_mm2 / 100, 0)} cm² der Decke (${numberText(100 * share, 1)} %) haben keinen Punkt im Umkreis von 10 mm; dort ist die Fläche fortgesetzt.`,
  turned_inwards: (share) =>
    `${numberText(100 * share, 0)} % der Dreiecke des Scans sehen nach innen. Das schadet nicht: seine Form sagt, welche Seite außen ist.`,
  laid: "Wie sie liegt",
  picture: "Die Punkte auf dem Umriss, von außen gesehen, Hals oben",
  key: {
    near: "nahe",
    above: "zu hoch, oder neben der Linie",
    below: "zu tief",
    outlier: "Ausreißer",
    largest: "größter Abstand",
  },
  end_for_end: "Halsende und Unterkante sind vertauscht",
  upside_down: "Außen und innen sind vertauscht",
  mirrored: "Bass- und Diskantseite sind vertauscht",
  turn: "Drehen, gegen den Uhrzeigersinn",
  shifts: ["Zur Diskantseite schieben", "Zum Halsende schieben", "Nach oben schieben"],
  take: "Übernehmen",
  leave: "Verwerfen",
  taken: (what) => `${what} übernommen. Rückgängig bringt das Vorige zurück.`,
  inches: "Zoll",
  millimetres: "Millimeter",
  too_large: (limit_mb) => ({
    kind: "file_too_large",
    message: `Diese Datei ist größer als ${limit_mb} MB, mehr als ein Browser verarbeiten kann.`,
    remedy: "Den Scan ausdünnen: ein Punkt je Millimeter ist reichlich. Einen Scan als binäres STL speichern.",
  }),
  failed: {
    kind: "reading_failed",
    message: "Die Datei ließ sich nicht lesen: das Lesen brach ab, meist aus Mangel an Speicher.",
    remedy: "Den Scan ausdünnen, oder andere Seiten schließen und es noch einmal versuchen.",
  },
  no_path: {
    kind: "no_path",
    message: "Diese Zeichnung enthält keine Linie.",
    remedy: "Ihre Formen in Pfade umwandeln, oder die Punkte des Umrisses als Tabelle geben.",
  },
};

/** @param {number} across_mm */
function across(across_mm) {
  const off = numberText(Math.abs(across_mm), 0);
  return off === "0" ? "auf der Mittellinie" : `${off} mm auf der ${across_mm < 0 ? "Bassseite" : "Diskantseite"}`;
}
