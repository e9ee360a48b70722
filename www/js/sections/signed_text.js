/**
 * Numbers that say which way something goes, the same in every language.
 */
import { numberText } from "#words/page.js";

/** @type {(value: number, decimals: number) => string} with its sign; what rounds to nothing has none */
export function signedText(value, decimals) {
  const text = numberText(value, decimals);
  return Number(value.toFixed(decimals)) === 0 ? numberText(0, decimals) : value > 0 ? `+${text}` : text;
}

/** @type {(name: string, change: number, unit: string) => string} a workshop step */
export function stepText(name, change, unit) {
  return withUnit(`${name} ${signedText(change, Math.abs(change) < 0.05 ? 2 : 1)}`, unit);
}

/** @type {(value: number, within: number | undefined, unit: string) => string} what a step adds, and how sure that is */
export function effectText(value, within, unit) {
  const decimals = Math.abs(value) < 1 ? 2 : 1;
  const spread = within === undefined ? "" : ` ± ${numberText(within, decimals)}`;
  return withUnit(`${signedText(value, decimals)}${spread}`, unit);
}

/** @type {(text: string, unit: string) => string} */
function withUnit(text, unit) {
  return unit === "" ? text : `${text} ${unit}`;
}
