/**
 * The dialogue of the designs kept in this browser.
 */
/** @import { Kept, KeptDesigns } from "./kept_designs.js" */
/** @import { Bench } from "./sections.js" */
import { KEPT_WORDS } from "#words/kept.js";
import { part } from "./page_parts.js";
import { button } from "./sections/fields.js";
import { namedRow } from "./sections/tables.js";
import { styleSheet } from "./style_sheet.js";

/** @type {KeptDialogue | undefined} */
let dialogue;

/**
 * @param {KeptDesigns} kept
 * @param {Bench} bench
 */
export async function openKept(kept, bench) {
  await styleSheet("kept");
  dialogue ??= new KeptDialogue(kept, bench);
  await dialogue.open();
}

class KeptDialogue {
  #kept;
  #bench;
  #dialogue = document.createElement("dialog");
  /** @type {Kept | undefined} the last one removed */
  #removed;

  /**
   * @param {KeptDesigns} kept
   * @param {Bench} bench
   */
  constructor(kept, bench) {
    this.#kept = kept;
    this.#bench = bench;
    this.#dialogue.className = "kept";
    this.#dialogue.setAttribute("aria-labelledby", "kept-title");
    this.#dialogue.innerHTML = KEPT_WORDS.dialogue;
    document.body.append(this.#dialogue);
    this.#part("form", HTMLFormElement).addEventListener("submit", (event) => {
      event.preventDefault();
      void this.#keep();
    });
    this.#part(".kept-close", HTMLButtonElement).addEventListener("click", () => this.#dialogue.close());
    this.#part(".kept-back", HTMLButtonElement).addEventListener("click", () => this.#bringBack());
  }

  async open() {
    this.#part("input", HTMLInputElement).value = this.#bench.store.name;
    this.#say("");
    await this.#fill();
    this.#dialogue.showModal();
  }

  /** Keeps the design under the name that is typed, which becomes its own. */
  async #keep() {
    const { store, settle } = this.#bench;
    const name = this.#part("input", HTMLInputElement).value.trim();
    if (name !== "" && (name === store.name || (await settle({ ...store.edited, name })))) {
      await this.#change(() => this.#kept.keep(name, store.text), KEPT_WORDS.kept(name));
    }
  }

  /** @param {Kept} kept */
  async #open(kept) {
    this.#dialogue.close();
    if (await this.#bench.session.open(kept.text)) {
      this.#bench.say(KEPT_WORDS.opened(kept.name));
    }
  }

  /** @param {Kept} kept */
  async #remove(kept) {
    await this.#change(() => this.#kept.remove(kept.id), KEPT_WORDS.removed(kept.name));
    this.#removed = kept;
    const back = this.#part(".kept-back", HTMLButtonElement);
    back.hidden = false;
    back.focus();
  }

  async #bringBack() {
    const removed = this.#removed;
    if (removed !== undefined) {
      await this.#change(() => this.#kept.putBack(removed), KEPT_WORDS.back(removed.name));
      this.#part(".kept-close", HTMLButtonElement).focus();
    }
  }

  /**
   * @param {() => Promise<unknown>} change
   * @param {string} done
   */
  async #change(change, done) {
    try {
      await change();
      this.#say(done);
    } catch {
      this.#say(KEPT_WORDS.impossible);
    }
    await this.#fill();
  }

  /** @param {string} text */
  #say(text) {
    this.#part(".kept-said", HTMLElement).textContent = text;
    this.#part(".kept-back", HTMLButtonElement).hidden = true;
  }

  async #fill() {
    const list = await this.#kept.list().catch(() => {
      this.#say(KEPT_WORDS.impossible);
      return [];
    });
    this.#part("table", HTMLTableElement).hidden = list.length === 0;
    this.#part(".kept-none", HTMLElement).hidden = list.length > 0;
    const body = this.#part("tbody", HTMLTableSectionElement);
    body.replaceChildren();
    for (const kept of list) {
      this.#addRow(body, kept);
    }
  }

  /**
   * @param {HTMLTableSectionElement} body
   * @param {Kept} kept
   */
  #addRow(body, kept) {
    const row = namedRow(body, kept.name);
    const time = document.createElement("time");
    time.textContent = KEPT_WORDS.time(kept.kept_ms);
    time.dateTime = new Date(kept.kept_ms).toISOString();
    row.cells[0].append(time);
    row.insertCell().append(
      button(KEPT_WORDS.open, () => void this.#open(kept), KEPT_WORDS.label(KEPT_WORDS.open, kept)),
      button(KEPT_WORDS.remove, () => void this.#remove(kept), KEPT_WORDS.label(KEPT_WORDS.remove, kept)),
    );
  }

  /**
   * @template {Element} T
   * @param {string} selector
   * @param {new () => T} kind
   */
  #part(selector, kind) {
    return part(selector, kind, this.#dialogue);
  }
}
