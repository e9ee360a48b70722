/**
 * The modal assurance criterion of the lowest modes of two designs as a table of shaded cells.
 */
/** @import { Mode } from "../messages.js" */

import { COMPARE_WORDS as WORDS } from "#words/compare.js";
import { modeName, numberText } from "#words/page.js";
import { assurance } from "./mode_pairs.js";

/** Modes of each design: as many as are followed under a moving handle, and as a narrow column has room for. */
const MOST = 12;

/** @type {Record<string, [number, number]>} rows and columns */
const KEYS = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  Home: [0, -MOST],
  End: [0, MOST],
};

export class AssuranceMatrix {
  table = document.createElement("table");
  #chosen;
  /** @type {HTMLButtonElement[][]} (mode of a, mode of b) */
  #cells = [];
  #at = [0, 0];

  /** @param {(a: number, b: number) => void} chosen the modes' places, counted from zero */
  constructor(chosen) {
    this.#chosen = chosen;
    this.table.className = "assurance";
    this.table.addEventListener("keydown", (event) => this.#key(event));
  }

  /**
   * @param {readonly Mode[]} a
   * @param {readonly Mode[]} b
   * @param {Float32Array} likeness (mode of a, mode of b)
   * @param {Float32Array} partners (mode of a) of b, from 1
   */
  show(a, b, likeness, partners) {
    const had_focus = this.table.contains(document.activeElement);
    const [rows, columns] = [a.slice(0, MOST), b.slice(0, MOST)];
    this.table.replaceChildren();
    this.table.createCaption().textContent = WORDS.matrix;
    const head = this.table.createTHead().insertRow();
    head.append(
      heading("a\u202f↓ b\u202f→", "col"),
      ...columns.map((mode) => heading(String(mode.number), "col", mode)),
    );
    const body = this.table.createTBody();
    this.#cells = rows.map((mode, row) => {
      const line = body.insertRow();
      line.append(heading(String(mode.number), "row", mode));
      return columns.map((other, column) => {
        const mac = assurance(likeness[row * b.length + column]);
        const cell = document.createElement("button");
        cell.type = "button";
        const hundredths = numberText(100 * mac, 0);
        cell.textContent = mac < 0.05 ? "·" : hundredths;
        cell.style.setProperty("--share", mac.toFixed(3));
        cell.classList.toggle("pair", partners[row] === other.number);
        const names = `a ${mode.number} ${modeName(mode)}, b ${other.number} ${modeName(other)}`;
        cell.title = `${names}: MAC ${hundredths}\u202f/\u202f100`;
        cell.setAttribute("aria-label", cell.title);
        cell.addEventListener("click", () => this.#choose(row, column));
        line.insertCell().append(cell);
        return cell;
      });
    });
    this.#at = [Math.min(this.#at[0], rows.length - 1), Math.min(this.#at[1], columns.length - 1)];
    this.#stop(had_focus);
  }

  /**
   * @param {number | undefined} a the pair that is shown, counted from zero
   * @param {number} b
   */
  point(a, b) {
    this.#cells.forEach((row, at) => {
      row.forEach((cell, column) => {
        cell.setAttribute("aria-pressed", String(at === a && column === b));
      });
    });
  }

  /**
   * @param {number} row
   * @param {number} column
   */
  #choose(row, column) {
    this.#at = [row, column];
    this.#stop(true);
    this.#chosen(row, column);
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    const step = KEYS[event.key];
    if (step !== undefined) {
      event.preventDefault();
      const within = (/** @type {number} */ at, /** @type {number} */ count) => Math.min(Math.max(at, 0), count - 1);
      this.#at = [
        within(this.#at[0] + step[0], this.#cells.length),
        within(this.#at[1] + step[1], this.#cells[0]?.length ?? 1),
      ];
      this.#stop(true);
    }
  }

  /** One cell is a stop on the way of the tab key. @param {boolean} focus */
  #stop(focus) {
    this.#cells.forEach((row, at) => {
      row.forEach((cell, column) => {
        const here = at === this.#at[0] && column === this.#at[1];
        cell.tabIndex = here ? 0 : -1;
        if (here && focus) {
          cell.focus({ preventScroll: true });
        }
      });
    });
  }
}

/**
 * @param {string} text
 * @param {"row" | "col"} scope
 * @param {Mode} [mode]
 */
function heading(text, scope, mode) {
  const made = document.createElement("th");
  made.scope = scope;
  made.textContent = text;
  if (mode !== undefined) {
    made.title = modeName(mode);
  }
  return made;
}
