/**
 * How the figures of a comparison are written.
 */
/** @import { Mode } from "../messages.js" */
import { modeName, numberText } from "#words/page.js";
import { signedText } from "./signed_text.js";

/**
 * @param {number} pct
 * @param {number | undefined} spread one deviation, where it is known
 */
export function shiftText(pct, spread) {
  const known = spread === undefined ? "" : ` ±\u2009${numberText(Math.max(spread, 0.1), 1)}`;
  return `${signedText(pct, 1)}${known}`;
}

/**
 * @param {Mode | undefined} a
 * @param {Mode | undefined} b one of both is there
 */
export function pairText(a, b) {
  const mode = b ?? a;
  const moved = a !== undefined && b !== undefined && a.number !== b.number;
  return `${mode === undefined ? "" : modeName(mode)}${moved ? ` (${a.number}\u202f→\u202f${b.number})` : ""}`;
}

/**
 * @param {readonly (readonly (string | number | undefined)[])[]} rows
 * @returns {string} RFC 4180 but for the ends of lines
 */
export function csvText(rows) {
  const cell = (/** @type {string | number | undefined} */ value) =>
    typeof value === "string" ? `"${value.replaceAll('"', '""')}"` : String(value ?? "");
  return `${rows.map((row) => row.map(cell).join(",")).join("\n")}\n`;
}
