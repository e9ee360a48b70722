/**
 * What the core answers alike however often it is asked. Asked once for all sections: of two requests of one kind only the newer is
 * answered.
 */
/** @import { Bench } from "../sections.js" */

export const allMeasures = once((bench) => bench.board().ask("measures", {}));

export const allPresets = once((bench) => bench.board().ask("presets", {}));

/**
 * @template T
 * @param {(bench: Bench) => Promise<T>} ask
 * @returns {(bench: Bench) => Promise<T>} the same answer each time; a failed request may be tried again
 */
function once(ask) {
  /** @type {Promise<T> | undefined} */
  let asked;
  return (bench) => {
    if (asked === undefined) {
      asked = ask(bench);
      asked.catch(() => {
        asked = undefined;
      });
    }
    return asked;
  };
}
