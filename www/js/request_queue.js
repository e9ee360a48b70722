/** @import { Request, RequestKind } from "./messages.js" */

/**
 * Which waiting request comes next. A dragged control sends far more than can be answered: the newest of each kind is.
 */

/**
 * Lower comes first: what the hand sees before what the eye reads. What isn't here comes before all, being asked for by a press.
 * @type {Partial<Record<RequestKind, number>>}
 */
const RANK = {
  shape: 1,
  follow: 1,
  place: 1,
  drawings: 2,
  arching: 3,
  arches: 3,
  holes: 3,
  movement: 3,
  quantity: 3,
  regions: 3,
  regions_at: 3,
  thickness: 3,
  wood: 3,
  driven_curves: 4,
  driven_figures: 6,
  who_moves: 5,
  motion: 4,
  strain_energy: 4,
  solve: 5,
  surety: 6,
};

/** Requests that wait for the worker, at most one of each kind. */
export class RequestQueue {
  /** @type {Map<RequestKind, Request>} */
  #waiting = new Map();

  /**
   * Adds a request; one of the same kind that still waits is replaced.
   * @param {Request} request
   * @returns {Request | undefined} the replaced request
   */
  add(request) {
    const older = this.#waiting.get(request.kind);
    this.#waiting.set(request.kind, request);
    return older;
  }

  /**
   * Takes out the request to answer now.
   * @returns {Request | undefined} undefined when nothing waits
   */
  take() {
    const [first] = [...this.#waiting.values()].sort((a, b) => rank(a) - rank(b));
    if (first !== undefined) {
      this.#waiting.delete(first.kind);
    }
    return first;
  }
}

/** @param {Request} request */
function rank({ kind }) {
  return RANK[kind] ?? 0;
}
