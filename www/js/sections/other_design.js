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
  /** @type {Other | undefined} */
  #now;

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
  async take(name, text) {
    if (text === this.#now?.design) {
      this.#client.abandon();
      this.#now = { ...this.#now, name };
      this.#changed();
      return undefined;
    }
    this.#turn += 1;
    const turn = this.#turn;
    this.#client.abandon();
    try {
      const design = await this.#client.ask("open", { json: text });
      const solution = await this.#client.ask("solve", { design, size: SIZE, count: COUNT, wish: FIRST_WISH });
      const all = { design, size: SIZE, count: COUNT, mode: 1, proven: true };
      const signatures = await this.#client.ask("signatures", all);
      if (turn === this.#turn) {
        this.#now = { name, design, solution, signatures };
        this.#changed();
        void this.#judge(turn, design);
      }
      return undefined;
    } catch (reason) {
      if (reason instanceof ProblemError) {
        return reason.problem;
      }
      if (reason instanceof Superseded) {
        return undefined;
      }
      throw reason;
    }
  }

  /** Lets go of it. */
  drop() {
    this.#turn += 1;
    this.#client.abandon();
    this.#now = undefined;
  }

  /**
   * @param {Mode} mode
   * @returns {Promise<Motion | undefined>} nothing where something newer is asked for
   */
  async motion(mode) {
    const now = this.#now;
    if (now === undefined || now.solution.motion.mode === mode.number) {
      return now?.solution.motion;
    }
    return this.#beside("motion", now, mode.number);
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
