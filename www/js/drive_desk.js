/** @import { Drive, Driven, DrivenCurves, DrivenFigures, DrivenMotion, DrivenNote } from "./messages.js" */
/** @import { Exchange, LessonDesigns, LessonOutcome, Request, RequestKind, TapTone, WhoMoves } from "./messages.js" */

import { OfLastDesign } from "./last_design.js";

/**
 * The driven top's class, as the wasm module gives it: one design, its modes and a bridge on it. Making one takes seconds and may throw a
 * Problem.
 * @typedef {object} Top
 * @property {() => Driven} about
 * @property {(alone_hz: number | undefined) => void} stand_bridge
 * @property {(drive: string, x_mm: number, y_mm: number, hz: number) => DrivenMotion} motion
 * @property {(hz: number) => DrivenNote} note
 * @property {(drive: string, x_mm: number, y_mm: number, to_x_mm: number, to_y_mm: number, from_hz: number, to_hz: number, points:
 * number) => DrivenCurves} curves
 * @property {(drive: string, x_mm: number, y_mm: number, from_hz: number, to_hz: number, points: number) => WhoMoves} who_moves
 * @property {() => DrivenFigures} figures
 * @property {(x_mm: number, y_mm: number, rate_hz: number) => TapTone} tap_tone
 * @property {() => void} free
 */

/**
 * The class itself.
 * @typedef {object} TopClass
 * @property {(json: string) => LessonDesigns} lesson
 * @property {(json: string) => LessonOutcome} lesson_outcome
 */

/** Answers requests about a driven top; keeps the one of the design it was asked about last. */
export class DriveDesk {
  #Top;
  #top;

  /** @param {TopClass & (new (json: string) => Top)} top_class */
  constructor(top_class) {
    this.#Top = top_class;
    this.#top = new OfLastDesign(top_class);
  }

  /**
   * @param {Request} request
   * @returns {Exchange[RequestKind]["get"]}
   * @throws {import("./messages.js").Problem}
   */
  answer(request) {
    switch (request.kind) {
      case "driven":
        return this.#of(request.design).about();
      case "driven_motion":
        return this.#of(request.design, request.drive.bridge_hz).motion(...placed(request.drive), request.hz);
      case "driven_note":
        return this.#of(request.design, request.bridge_hz).note(request.hz);
      case "driven_curves": {
        const { design, drive, to_mm, from_hz, to_hz, points } = request;
        return this.#of(design, drive.bridge_hz).curves(...placed(drive), ...to_mm, from_hz, to_hz, points);
      }
      case "who_moves": {
        const { design, drive, from_hz, to_hz, points } = request;
        return this.#of(design, drive.bridge_hz).who_moves(...placed(drive), from_hz, to_hz, points);
      }
      case "driven_figures":
        return this.#of(request.design).figures();
      case "tap_tone":
        return this.#of(request.design).tap_tone(...request.place_mm, request.rate_hz);
      case "lesson":
        return this.#Top.lesson(request.json);
      case "lesson_outcome":
        this.#top.free();
        return this.#Top.lesson_outcome(request.json);
      default:
        throw new TypeError(`the driven top knows no "${request.kind}"`);
    }
  }

  /**
   * @param {string} design
   * @param {number} [bridge_hz] of a bridge that rocks by itself
   */
  #of(design, bridge_hz) {
    const top = this.#top.of(design);
    top.stand_bridge(bridge_hz);
    return top;
  }
}

/**
 * @param {Drive} drive
 * @returns {[string, number, number]}
 */
function placed({ by, place_mm }) {
  return [by, ...place_mm];
}
