/** @import { Exchange, Proposal, Request, RequestKind, StepEffect, Steps, DrivenFigures, StepTarget } from "./messages.js" */

import { OfLastDesign } from "./last_design.js";

/**
 * The step bench's class, as the wasm module gives it: one solved design, and what steps away from it do. Any of it may throw a Problem.
 * @typedef {object} StepBench
 * @property {() => Steps} about
 * @property {(step: number) => StepEffect} effect
 * @property {(step: number) => DrivenFigures} response_effect
 * @property {(step: number, share: number) => string} changed
 * @property {(what: string, mode: number, change: number, heavier_by_g: number | undefined, narrows_mm: number | undefined, carved:
 * boolean, allowed: string, steps: number) => Proposal} propose
 * @property {() => void} free
 */

/** Answers requests about steps; keeps the bench of the design it was asked about last. */
export class StepsDesk {
  #bench;

  /** @param {new (json: string) => StepBench} bench_class */
  constructor(bench_class) {
    this.#bench = new OfLastDesign(bench_class);
  }

  /**
   * @param {Request} request
   * @returns {Exchange[RequestKind]["get"]}
   * @throws {import("./messages.js").Problem}
   */
  answer(request) {
    switch (request.kind) {
      case "steps":
        return this.#bench.of(request.design).about();
      case "step_effect":
        return this.#bench.of(request.design).effect(request.step);
      case "step_response":
        return this.#bench.of(request.design).response_effect(request.step);
      case "stepped":
        return this.#bench.of(request.design).changed(request.step, request.share);
      case "proposal":
        return this.#proposal(this.#bench.of(request.design), request.target);
      default:
        throw new TypeError(`the step bench knows no "${request.kind}"`);
    }
  }

  /**
   * @param {StepBench} bench
   * @param {StepTarget} target
   */
  #proposal(bench, { what, mode, change, heavier_by_g, narrows_mm, carved, allowed, steps }) {
    return bench.propose(what, mode, change, heavier_by_g, narrows_mm, carved, allowed.join(" "), steps);
  }
}
