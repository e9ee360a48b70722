/**
 * The pairs of modes with their frequencies, and the figures of the pair that is shown.
 */
/** @import { Movement, Region } from "../messages.js" */
/** @import { ModePair, Shift } from "./mode_pairs.js" */

import { COMPARE_WORDS as WORDS } from "#words/compare.js";
import { hertzText, numberText } from "#words/page.js";
import { REGION_WORDS } from "#words/regions.js";
import { pairText, shiftText } from "./compare_text.js";
import { button } from "./fields.js";
import { assurance } from "./mode_pairs.js";
import { signedText } from "./signed_text.js";
import { namedRow, tableOf } from "./tables.js";

/**
 * @typedef {object} PairRow
 * @property {ModePair} pair
 * @property {(number | undefined)[]} hertz of a and b; the best that is known of one without a partner
 * @property {Shift | undefined} shift where both are there
 * @property {number | undefined} spread
 */

const NONE = "–";

/** Rows to choose from, one for each pair or mode without a partner. */
export class PairTable {
  table = tableOf([WORDS.shape, "a, Hz", "b, Hz", "b\u00a0−\u00a0a,\u00a0%", WORDS.cents, "MAC"]);
  #chosen;
  /** @type {HTMLButtonElement[]} */
  #buttons = [];
  /** @type {readonly PairRow[]} */
  #rows = [];

  /** @param {(pair: ModePair) => void} chosen one that b has a mode of */
  constructor(chosen) {
    this.#chosen = chosen;
    this.table.className = "regions-table pair-table";
    this.table.createCaption().textContent = WORDS.pairs;
  }

  /** @param {readonly PairRow[]} rows */
  show(rows) {
    const focused = this.#buttons.indexOf(/** @type {HTMLButtonElement} */ (document.activeElement));
    this.#rows = rows;
    const body = this.table.tBodies[0];
    body.replaceChildren();
    this.#buttons = rows.map(({ pair, hertz, shift, spread }) => {
      const row = namedRow(body, "");
      const choose = button(pairText(pair.a, pair.b), () => this.#chosen(pair));
      choose.disabled = pair.b === undefined;
      row.cells[0].append(choose);
      for (const text of [
        ...hertz.map((each_hz) => (each_hz === undefined ? NONE : hertzText(each_hz))),
        shift ? shiftText(shift.pct, spread) : NONE,
        shift ? signedText(shift.cents, 0) : NONE,
        shift ? numberText(assurance(pair.likeness), 2) : NONE,
      ]) {
        row.insertCell().textContent = text;
      }
      return choose;
    });
    this.#buttons[focused]?.focus({ preventScroll: true });
  }

  /** @param {number} number of b's mode that is shown */
  point(number) {
    this.#rows.forEach(({ pair }, at) => {
      const here = pair.b?.number === number;
      this.#buttons[at].setAttribute("aria-pressed", String(here));
      this.#buttons[at].closest("tr")?.classList.toggle("pointed", here);
    });
  }
}

/**
 * One design's side of the figures.
 * @typedef {object} SideFigures
 * @property {number} mass_g
 * @property {readonly Region[]} regions
 * @property {Movement} [movement] of the mode that is shown, where there is one
 */

/** @typedef {{ name: string, unit: string, a: number | undefined, b: number | undefined }} FigureRow */

/**
 * @param {SideFigures} a
 * @param {SideFigures} b
 * @returns {FigureRow[]}
 */
export function figureRows(a, b) {
  const pct = (/** @type {number | undefined} */ value) => (value === undefined ? undefined : 100 * value);
  const lift = (/** @type {SideFigures} */ { movement }) => pct(movement?.island_lift?.[0]);
  const flap = (/** @type {SideFigures} */ { movement }) => {
    const flaps = movement?.flaps.map(({ amplitude }) => amplitude[0]) ?? [];
    return flaps.length === 0
      ? undefined
      : pct(flaps.reduce((most, own) => (Math.abs(own) > Math.abs(most) ? own : most)));
  };
  const narrowest = (/** @type {SideFigures} */ { regions }, /** @type {string} */ key) =>
    regions.find((region) => region.key === key)?.narrowest_mm ?? undefined;
  const narrows = ["upper_narrows", "lower_narrows_bass", "lower_narrows_treble"].filter(
    (key) => narrowest(a, key) !== undefined || narrowest(b, key) !== undefined,
  );
  return [
    { name: WORDS.mass, unit: "g", a: a.mass_g, b: b.mass_g },
    { name: WORDS.lift, unit: "%", a: lift(a), b: lift(b) },
    { name: WORDS.flap, unit: "%", a: flap(a), b: flap(b) },
    ...narrows.map((key) => ({
      name: REGION_WORDS.name(key),
      unit: "mm",
      a: narrowest(a, key),
      b: narrowest(b, key),
    })),
  ];
}

export function figureTable() {
  const table = tableOf(["", "a", "b", "b\u00a0−\u00a0a"]);
  table.className = "regions-table figure-table";
  table.createCaption().textContent = WORDS.figures;
  return table;
}

/**
 * @param {HTMLTableElement} table
 * @param {readonly FigureRow[]} rows
 */
export function fillFigures(table, rows) {
  const body = table.tBodies[0];
  body.replaceChildren();
  for (const { name, unit, a, b } of rows) {
    const row = namedRow(body, `${name}, ${unit}`);
    const decimals = unit === "%" ? 0 : unit === "mm" ? 2 : 1;
    const one = (/** @type {number | undefined} */ value) => (value === undefined ? NONE : numberText(value, decimals));
    const change = a === undefined || b === undefined ? NONE : signedText(b - a, decimals);
    for (const text of [one(a), one(b), change]) {
      row.insertCell().textContent = text;
    }
  }
}
