/**
 * The top that workshop steps go from: worked out anew once the design rests at another, and not because a step from it is on trial.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Steps } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { Waiting } from "./waiting.js" */

import { stepBench } from "./steps_client.js";
import { whileOpen } from "./while_open.js";

/** A handle that moves is left to rest so long first. */
const REST_MS = 400;

/**
 * @typedef {object} OriginEvents
 * @property {(steps: Steps) => unknown} began another top is worked out
 * @property {(anew: boolean) => void} left what was on trial is gone; `anew`: nothing else holds either, another top is worked out
 */

export class StepOrigin {
  /** The design's text. */
  text = "";
  /** @type {Steps | undefined} once known */
  steps;
  #bench;
  #waiting;
  #events;
  #turn = 0;
  /** @type {string | undefined} the design on trial from here */
  #trial;

  /**
   * @param {HTMLElement} host inside the section
   * @param {Bench} bench
   * @param {Waiting} waiting
   * @param {OriginEvents} events
   */
  constructor(host, bench, waiting, events) {
    this.#bench = bench;
    this.#waiting = waiting;
    this.#events = events;
    /** @type {number | undefined} */
    let rest;
    whileOpen(host, bench, () => {
      const { text } = bench.store;
      if (text !== this.text && text !== this.#trial) {
        clearTimeout(rest);
        rest = setTimeout(() => void this.#begin(), REST_MS);
      }
    });
  }

  /** @returns {() => boolean} whether nothing has begun since */
  turn() {
    this.#turn += 1;
    const own = this.#turn;
    return () => own === this.#turn;
  }

  /** @param {Design} design shown without being a step */
  trial(design) {
    this.#trial = JSON.stringify(design);
    this.#bench.trial(design);
  }

  /** Shows the top itself again. */
  async leave() {
    this.#trial = undefined;
    this.#events.left(false);
    await this.#bench.settle(JSON.parse(this.text));
  }

  /**
   * Goes on from there.
   * @param {Design} design
   */
  take(design) {
    this.#trial = undefined;
    return this.#bench.settle(design);
  }

  #begin() {
    return this.#waiting.run(async () => {
      const current = this.turn();
      this.#trial = undefined;
      this.#events.left(true);
      this.text = this.#bench.store.text;
      const steps = await stepBench(this.#bench).ask("steps", { design: this.text });
      if (current()) {
        this.#waiting.say("");
        this.steps = steps;
        await this.#events.began(steps);
      }
    });
  }
}
