/**
 * The words of the section with the sand picture, in German.
 */
/** @import * as English from "../en/sand.js" */

/** @type {typeof English.SAND_WORDS} */
export const SAND_WORDS = {
  picture: (mode) => `${mode}: Sand liegt entlang der Knotenlinien`,
  turn: "Von innen gesehen",
  back: "Von außen gesehen",
  about:
    "Nach der berechneten Bewegung gezeichnet, wie Sand auf einer flachen Platte liegen bleibt: dicht, wo sich das Holz kaum nach außen oder innen bewegt. Auf einer gewölbten Decke würden wirkliche Körner auch rollen.",
};
