/**
 * The table of modes: a real table whose rows are chosen by click, touch or arrow keys. One row's button takes the tab
 * stop (roving tabindex), so that the table is a single step on the way through the page.
 */
/** @import { Mode, Surety } from "./messages.js" */

import { hertzText, modeName, WORDS } from "#words/page.js";
import { part } from "./page_parts.js";
import { bestHertz, spreadText } from "./words/numbers.js";

/** @type {Record<string, (at: number, last: number) => number>} */
const KEY_STEPS = {
  ArrowDown: (at, last) => Math.min(at + 1, last),
  ArrowUp: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

/** Shows modes and says which one was chosen. */
export class ModeTable {
  #body;
  #on_choose;
  /** @type {readonly Mode[]} */
  #modes = [];
  /** @type {HTMLTableRowElement[]} */
  #rows = [];

  /**
   * @param {HTMLTableElement} table with a head and one empty body
   * @param {(mode: Mode) => void} on_choose
   */
  constructor(table, on_choose) {
    this.#body = part("tbody", HTMLTableSectionElement, table);
    this.#on_choose = on_choose;
    this.#body.addEventListener("click", (event) => this.#clicked(event));
    this.#body.addEventListener("keydown", (event) => this.#keyed(event));
  }

  /**
   * @param {readonly Mode[]} modes in rising order
   * @param {Mode} chosen
   */
  show(modes, chosen) {
    this.#modes = modes;
    while (this.#rows.length > modes.length) {
      this.#rows.pop()?.remove();
    }
    while (this.#rows.length < modes.length) {
      this.#rows.push(this.#newRow());
    }
    const highest_hz = modes[modes.length - 1].frequency_hz;
    for (const [index, mode] of modes.entries()) {
      fillRow(this.#rows[index], mode, placeInRange(mode, modes[0].frequency_hz, highest_hz));
    }
    this.choose(chosen);
  }

  /**
   * Corrects the figures and says how sure they are; new figures wipe it out until it is known of them.
   * @param {readonly Surety[]} sureties (mode)
   */
  judge(sureties) {
    for (const [index, surety] of sureties.entries()) {
      const row = this.#rows[index];
      if (row !== undefined) {
        part(".hertz", HTMLElement, row).textContent = hertzText(bestHertz(this.#modes[index], surety));
        part(".spread", HTMLElement, row).textContent = spreadText(surety);
        part(".quality", HTMLElement, row).textContent = surety.q.toFixed(0);
      }
    }
  }

  /** @param {Mode} chosen */
  choose(chosen) {
    this.#modes.forEach((mode, index) => {
      const is_chosen = mode.number === chosen.number;
      const button = part("button", HTMLButtonElement, this.#rows[index]);
      this.#rows[index].classList.toggle("chosen", is_chosen);
      button.setAttribute("aria-pressed", String(is_chosen));
      button.tabIndex = is_chosen ? 0 : -1;
    });
  }

  /** Brings the chosen row into the visible part of the table without moving the page; the table's head stays in sight if it can. */
  reveal() {
    const row = this.#rows.find((candidate) => candidate.classList.contains("chosen"));
    const frame = this.#body.closest(".mode-list");
    if (row !== undefined && frame instanceof HTMLElement) {
      const head_px = frame.querySelector("thead")?.clientHeight ?? 0;
      const [top, bottom] = [row.offsetTop - head_px, row.offsetTop + row.offsetHeight];
      if (bottom <= frame.clientHeight) {
        frame.scrollTop = 0;
      } else if (top < frame.scrollTop) {
        frame.scrollTop = top;
      } else if (bottom > frame.scrollTop + frame.clientHeight) {
        frame.scrollTop = bottom - frame.clientHeight;
      }
    }
  }

  #newRow() {
    const template = part("#mode-row", HTMLTemplateElement);
    const row = part("tr", HTMLTableRowElement, /** @type {DocumentFragment} */ (template.content.cloneNode(true)));
    this.#body.append(row);
    return row;
  }

  /** @param {MouseEvent} event */
  #clicked(event) {
    const row = event.target instanceof Element ? event.target.closest("tr") : null;
    if (row !== null) {
      this.#take(this.#rows.indexOf(row));
    }
  }

  /** @param {KeyboardEvent} event */
  #keyed(event) {
    const at = this.#rows.findIndex((row) => row.contains(document.activeElement));
    const step = KEY_STEPS[event.key];
    if (step !== undefined && at >= 0) {
      event.preventDefault();
      this.#take(step(at, this.#rows.length - 1));
    }
  }

  /** @param {number} index of the row */
  #take(index) {
    const mode = this.#modes[index];
    if (mode !== undefined) {
      this.choose(mode);
      part("button", HTMLButtonElement, this.#rows[index]).focus({ preventScroll: true });
      this.reveal();
      this.#on_choose(mode);
    }
  }
}

/**
 * @param {HTMLTableRowElement} row
 * @param {Mode} mode
 * @param {number} place 0 to 1
 */
function fillRow(row, mode, place) {
  part(".number", HTMLElement, row).textContent = String(mode.number);
  part("button", HTMLButtonElement, row).textContent = modeName(mode);
  const hertz = part(".hertz", HTMLElement, row);
  hertz.textContent = hertzText(bestHertz(mode, undefined));
  hertz.title = WORDS.on_mesh(mode);
  for (const later of [".spread", ".quality"]) {
    part(later, HTMLElement, row).textContent = "";
  }
  part(".pitch", HTMLElement, row).style.setProperty("--place", place.toFixed(3));
}

/**
 * Where a mode lies between the lowest and the highest by ear, that is by ratio of frequencies.
 * @param {Mode} mode
 * @param {number} lowest_hz
 * @param {number} highest_hz
 * @returns {number} 0 to 1
 */
function placeInRange(mode, lowest_hz, highest_hz) {
  const range = Math.log(highest_hz / lowest_hz);
  return range > 0 ? Math.log(mode.frequency_hz / lowest_hz) / range : 0;
}
