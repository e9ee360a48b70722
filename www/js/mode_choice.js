/** @import { Mode, ModeWish } from "./messages.js" */

/**
 * What is looked at first: the ring mode, by its name. Free-plate work numbers it 5, which serves where no shape was
 * recognised as a ring.
 * @type {ModeWish}
 */
export const FIRST_WISH = { name: "ring", number: 5 };

/**
 * The mode that answers a wish: the one with that shape, else the one of that name, else the one of that number, else the
 * highest there is.
 * @param {readonly Mode[]} modes in rising order, at least one
 * @param {ModeWish} wish
 * @returns {Mode}
 */
export function chosenMode(modes, wish) {
  const same = modes.find((mode) => mode.identity !== 0 && mode.identity === wish.identity);
  const named = wish.name === "" ? undefined : modes.find((mode) => mode.name === wish.name);
  const numbered = modes.find((mode) => mode.number === wish.number);
  return same ?? named ?? numbered ?? modes[modes.length - 1];
}
