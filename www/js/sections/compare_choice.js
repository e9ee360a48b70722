/**
 * Which design is compared with: one of this visit, a kept one, or a file's.
 */
/** @import { Design, DesignStore } from "../design_store.js" */
/** @import { Kept } from "../kept_designs.js" */

import { COMPARE_WORDS as WORDS } from "#words/compare.js";
import { KeptDesigns } from "../kept_designs.js";

/** @typedef {{ name: string, text: string }} Choice a design by the name it is called by here, and its document */

export class CompareChoice {
  row = document.createElement("label");
  #store;
  #select = document.createElement("select");
  #group = document.createElement("optgroup");
  #kept = new KeptDesigns();
  /** @type {readonly Kept[]} */
  #list = [];
  /** @type {Choice | undefined} one that stays as it is while the store's goes on */
  #held;
  /** What was chosen when the last design turned out to be one. */
  #good = { word: "none", held: /** @type {Choice | undefined} */ (undefined) };

  /**
   * @param {DesignStore} store
   * @param {() => void} changed
   */
  constructor(store, changed) {
    this.#store = store;
    const name = document.createElement("span");
    name.textContent = WORDS.with;
    for (const [word, text] of Object.entries(WORDS.choices)) {
      this.#select.append(new Option(text, word));
    }
    this.#select.setAttribute("aria-label", WORDS.with);
    this.#group.label = WORDS.kept;
    this.#select.append(this.#group);
    this.#select.addEventListener("focus", () => void this.list());
    this.#select.addEventListener("change", () => {
      this.#held = this.#picked();
      changed();
    });
    this.row.className = "field";
    this.row.append(name, this.#select);
  }

  /** Reads what is kept anew. */
  async list() {
    // A browser that keeps nothing has none.
    this.#list = await this.#kept.list().catch(() => []);
    const chosen = this.#select.value;
    this.#group.replaceChildren(...this.#list.map((kept) => new Option(WORDS.kept_of(kept), `kept-${kept.id}`)));
    this.#group.hidden = this.#list.length === 0;
    if (this.#option(chosen) !== undefined) {
      this.#select.value = chosen;
    }
  }

  /** What is chosen as it is now: nothing for none. */
  get now() {
    switch (this.#select.value) {
      case "none":
        return undefined;
      case "before":
        return named(WORDS.choices.before, this.#store.before);
      case "first":
        return named(WORDS.choices.first, this.#store.first);
      default:
        return this.#held;
    }
  }

  get word() {
    return this.#select.value;
  }

  /** Notes that what is chosen can be compared with. */
  confirm() {
    this.#good = { word: this.word, held: this.#held };
  }

  /** Goes back to what could be compared with last. */
  goBack() {
    const { word, held } = this.#good;
    if (word === "other" && held !== undefined) {
      this.hold(held);
    } else {
      this.#held = held;
      this.#select.value = word;
    }
  }

  /**
   * Takes a design that none of the choices names.
   * @param {Choice} choice
   */
  hold(choice) {
    this.#held = choice;
    this.#option("other")?.remove();
    this.#group.before(new Option(choice.name, "other", false, true));
  }

  /** @param {string} word */
  #option(word) {
    return [...this.#select.options].find((option) => option.value === word);
  }

  /** @returns {Choice | undefined} */
  #picked() {
    const word = this.#select.value;
    if (word === "other") {
      return this.#held;
    }
    const kept = this.#list.find(({ id }) => word === `kept-${id}`);
    return kept === undefined
      ? { name: WORDS.choices.held, text: this.#store.text }
      : { name: kept.name, text: kept.text };
  }
}

/**
 * @param {string} name
 * @param {Design | undefined} design
 * @returns {Choice | undefined}
 */
function named(name, design) {
  return design && { name, text: JSON.stringify(design) };
}
