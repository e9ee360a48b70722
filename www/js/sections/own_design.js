/**
 * The person's own design while a lesson's stands in its place: kept, and brought back.
 */
/** @import { Bench } from "../sections.js" */

import { LESSON_WORDS as WORDS } from "#words/lessons.js";
import { KeptDesigns } from "../kept_designs.js";

/** One design at a time. */
export class OwnDesign {
  #bench;
  #edited;
  /** @type {{ text: string, name: string } | undefined} */
  #own;
  /** @type {Set<string>} designs that the lesson itself put there */
  #expected = new Set();
  /** How much of the lesson's own doing is under way. */
  #changing = 0;

  /**
   * @param {Bench} bench
   * @param {() => void} edited told once when the person changes the lesson's design
   */
  constructor(bench, edited) {
    this.#bench = bench;
    this.#edited = edited;
    bench.store.subscribe(() => this.#look());
  }

  /** Whether something stands in its place. */
  get away() {
    return this.#own !== undefined;
  }

  /**
   * Puts a lesson's designs there.
   * @param {() => Promise<void>} change
   * @param {readonly string[]} designs those that it may leave there, as texts
   */
  async change(change, designs) {
    const { store } = this.#bench;
    this.#own ??= { text: store.text, name: store.name };
    // A reload in the middle of a lesson goes on with it.
    store.own_text = this.#own.text;
    for (const design of designs) {
      this.#expected.add(design);
    }
    this.#changing += 1;
    await change().finally(() => {
      this.#changing -= 1;
    });
  }

  /** @returns {Promise<string>} the name of what is there again */
  async bringBack() {
    const own = this.#own;
    this.#own = undefined;
    this.#expected.clear();
    this.#bench.store.own_text = undefined;
    if (own !== undefined) {
      await this.#bench.settle(JSON.parse(own.text));
    }
    return this.#bench.store.name;
  }

  /** What the person does to a lesson's design is theirs: it is what is kept from now on, and their own goes under a name. */
  #look() {
    const { store } = this.#bench;
    const own = this.#own;
    const known = this.#changing > 0 || store.text === own?.text || this.#expected.has(store.text);
    if (own !== undefined && store.own_text !== undefined && !known) {
      store.own_text = undefined;
      // Where nothing can be kept, the end of the lesson brings it back all the same.
      new KeptDesigns().keep(WORDS.kept_as(own.name, WORDS.nameless), own.text).then(this.#edited, () => undefined);
    }
  }
}
