/**
 * The words of the section about how the top looks on the stage, in German.
 */
/** @import * as English from "../en/looks.js" */

/** @type {typeof English.LOOKS_WORDS} */
export const LOOKS_WORDS = {
  title: "Auf der Bühne zu sehen",
  nodal_lines: "Knotenlinien",
  plain: "Gleichmäßiges Grau statt der Farbe des Holzes",
  about: "Bloßes Holz oder Grau zeigt die Form am besten, mit „Farbe zeigt: nichts“.",
};
