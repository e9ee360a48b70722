/**
 * What is said of newer editions of the page, in German.
 */
/** @import * as English from "../en/offline.js" */

/** @type {typeof English.OFFLINE_WORDS} */
export const OFFLINE_WORDS = {
  newer: "Eine neuere Fassung dieser Seite ist bereit: sie kommt mit dem nächsten Neuladen, der Entwurf bleibt.",
};
