/** @import { Request, RequestKind } from "./messages.js" */

/**
 * Which waiting request comes next. A dragged control sends far more than can be answered; the picture should follow
 * the hand, and the figures should follow too, a little later.
 */

/** Lower comes first: what the hand sees before what the eye reads. */
const RANK = {
  demo: 0,
  open: 0,
  measures: 0,
  presets: 0,
  reshape: 0,
  equal_hole: 0,
  leaning_hole: 0,
  traced_hole: 0,
  to_mass: 0,
  with_thicknesses: 0,
  shape: 1,
  drawings: 2,
  arching: 3,
  arches: 3,
  holes: 3,
  regions: 3,
  thickness: 3,
  motion: 4,
  solve: 5,
  surety: 6,
};

/**
 * A solve that has waited this long goes before new pictures. Longer, and the figures freeze while a control is
 * dragged without pause; much shorter, and the picture stutters behind each solve.
 */
const PATIENCE_MS = 250;

/** Requests that wait for the worker, at most one of each kind. */
export class RequestQueue {
  /** @type {Map<RequestKind, { request: Request, since_ms: number }>} */
  #waiting = new Map();

  /**
   * Adds a request; one of the same kind that still waits is replaced but its place in time is kept.
   * @param {Request} request
   * @param {number} now_ms
   * @returns {Request | undefined} the replaced request
   */
  add(request, now_ms) {
    const older = this.#waiting.get(request.kind);
    this.#waiting.set(request.kind, { request, since_ms: older?.since_ms ?? now_ms });
    return older?.request;
  }

  /**
   * Takes out the request to answer now.
   * @param {number} now_ms
   * @returns {Request | undefined} undefined when nothing waits
   */
  take(now_ms) {
    const entries = [...this.#waiting.values()];
    const overdue = entries.find(
      ({ request, since_ms }) => request.kind === "solve" && now_ms - since_ms > PATIENCE_MS,
    );
    const first = overdue ?? entries.sort((a, b) => RANK[a.request.kind] - RANK[b.request.kind])[0];
    if (first !== undefined) {
      this.#waiting.delete(first.request.kind);
    }
    return first?.request;
  }
}
