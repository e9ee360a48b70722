/**
 * What the top is coloured by, chosen by something else than the hand.
 */
import { part } from "./page_parts.js";

/** @param {string} word one that isn't offered changes nothing */
export function colourBy(word) {
  const choice = part("#colour-by", HTMLSelectElement);
  if (choice.value !== word && [...choice.options].some(({ value }) => value === word)) {
    choice.value = word;
    choice.dispatchEvent(new Event("change"));
  }
}
