/**
 * The design that is compared with: solved beside the one worked on, by a worker of its own.
 */
/** @import { MeshSize, Mode, Motion, Problem, Solution, Surety } from "../messages.js" */

import { FIRST_WISH } from "../mode_choice.js";
import { ProblemError, Superseded, WorkshopClient } from "../workshop_client.js";

/** As many modes of it as of the design worked on. */
const COUNT = 26;
/** @type {MeshSize} */
const SIZE = "standard";

/**
 * @typedef {object} Other
 * @property {string} name
 * @property {string} design its text
 * @property {Solution} solution
 * @property {Float32Array} signatures (mode, place)
 * @property {Surety[]} [sureties] once known
 */

/** Holds one design and its figures; a newer choice stops what an older one asked for. */
export class OtherDesign {
  #client;
  #turn = 0;
  #changed;
  #name = "";
  /** The text of the design that was asked for last. */
  #asked = "";
  /** @type {Promise<Problem | undefined>} */
  #taking = Promise.resolve(undefined);
  /** @type {Other | undefined} */
  #now;
  /** @type {Map<number, Motion>} by the mode's number */
  #motions = new Map();

  /**
   * @param {() => void} changed there are other figures, or it is known how sure they are
   * @param {() => void} restarted the worker had failed
   */
  constructor(changed, restarted) {
    this.#changed = changed;
    this.#client = new WorkshopClient(
      new URL("../compute_worker.js", import.meta.url),
      new URL("../../wasm/compute_bg.wasm", import.meta.url),
      restarted,
    );
  }

  /** What is known; nothing before the first. */
  get now() {
    return this.#now;
  }

  /**
   * Takes a design. One that can't be leaves what was there.
   * @param {string} name
   * @param {string} text
   * @returns {Promise<Problem | undefined>} what is wrong with it
   */
  take(name, text) {
    this.#name = name;
    if (text !== this.#asked) {
      this.#asked = text;
      this.#turn += 1;
      this.#client.abandon();
      this.#taking = text === this.#now?.design ? this.#goBack(this.#turn) : this.#solve(this.#turn, text);
    } else if (this.#now !== undefined && name !== this.#now.name) {
      this.#now = { ...this.#now, name };
      this.#changed();
    }
    return this.#taking;
  }

  /**
   * What is there is wanted again, after another one was asked for.
   * @param {number} turn
   */
  async #goBack(turn) {
    if (this.#now !== undefined) {
      this.#now = { ...this.#now, name: this.#name };
      this.#changed();
      if (this.#now.sureties === undefined) {
        void this.#judge(turn, this.#now.design);
      }
    }
    return undefined;
  }

  /**
   * @param {number} turn
   * @param {string} text
   */
  async #solve(turn, text) {
    try {
      const design = await this.#client.ask("open", { json: text });
      const solution = await this.#client.ask("solve", { design, size: SIZE, count: COUNT, wish: FIRST_WISH });
      const all = { design, size: SIZE, count: COUNT, mode: 1, proven: true };
      const signatures = await this.#client.ask("signatures", all);
      if (turn === this.#turn) {
        this.#now = { name: this.#name, design, solution, signatures };
        this.#motions = new Map([[solution.motion.mode, solution.motion]]);
        this.#changed();
        void this.#judge(turn, design);
      }
    } catch (reason) {
      if (reason instanceof ProblemError) {
        this.#asked = this.#now?.design ?? "";
        return reason.problem;
      }
      if (!(reason instanceof Superseded)) {
        throw reason;
      }
    }
    return undefined;
  }

  /** Lets go of it. */
  drop() {
    this.#turn += 1;
    this.#client.abandon();
    this.#now = undefined;
    this.#asked = "";
    this.#motions.clear();
  }

  /**
   * @param {Mode} mode
   * @returns {Promise<Motion | undefined>} nothing where something newer is asked for
   */
  async motion(mode) {
    const now = this.#now;
    const known = this.#motions.get(mode.number);
    if (now === undefined || known !== undefined) {
      return known;
    }
    const motion = await this.#beside("motion", now, mode.number);
    if (motion !== undefined && now.signatures === this.#now?.signatures) {
      this.#motions.set(mode.number, motion);
    }
    return motion;
  }

  /**
   * @param {Mode} mode
   * @returns {Promise<Float32Array | undefined>} (node) strain energy per volume over its mean
   */
  async strainEnergy(mode) {
    return this.#now && this.#beside("strain_energy", this.#now, mode.number);
  }

  /**
   * What is asked by the way doesn't wait for how sure the figures are, which takes seconds: that is asked again after it.
   * @template {"motion" | "strain_energy"} K
   * @param {K} kind
   * @param {Other} now
   * @param {number} mode
   */
  async #beside(kind, now, mode) {
    const judging = now.sureties === undefined;
    if (judging) {
      this.#client.abandon();
    }
    const request = { design: now.design, size: SIZE, count: COUNT, mode, proven: true };
    const answer = await this.#client.askBeside(kind, request);
    if (judging && now.design === this.#now?.design) {
      void this.#judge(this.#turn, now.design);
    }
    return answer;
  }

  /**
   * @param {number} turn
   * @param {string} design
   */
  async #judge(turn, design) {
    const sureties = await this.#client.askBeside("surety", { design, size: SIZE, count: COUNT });
    if (sureties !== undefined && turn === this.#turn && this.#now !== undefined) {
      this.#now = { ...this.#now, sureties };
      this.#changed();
    }
  }
}
