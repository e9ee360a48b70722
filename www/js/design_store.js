/**
 * The design the person is working on: plain JSON, in one place, replaced and never altered.
 */

/** @typedef {Readonly<Record<string, unknown>>} Design as the file format has it; only the core knows every key */
/** @typedef {readonly string[]} Path keys from the design's root to one value */

/**
 * The value at a path, or undefined where this design has none (a top without sound holes has no lower eye).
 * @param {Design} design
 * @param {Path} path
 * @returns {unknown}
 */
export function valueAt(design, path) {
  /** @type {unknown} */
  let value = design;
  for (const key of path) {
    value = isObject(value) ? value[key] : undefined;
  }
  return value;
}

/**
 * A design equal to this one but for one value. Everything off the path is shared with the old design.
 * @template T
 * @param {T} design
 * @param {Path} path to a value that is there
 * @param {unknown} value
 * @returns {T}
 */
export function withValueAt(design, path, value) {
  const [key, ...rest] = path;
  if (key === undefined) {
    return /** @type {T} */ (value);
  }
  if (!isObject(design) || !(key in design)) {
    return design;
  }
  return /** @type {T} */ ({ ...design, [key]: withValueAt(design[key], rest, value) });
}

/**
 * @param {unknown} value
 * @returns {value is Record<string, unknown>} whether it has keys of its own
 */
export function isObject(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** More steps back than anyone remembers; designs share what they have in common, so each step is small. */
const MOST_STEPS = 200;

/**
 * Holds the current design and tells when it is replaced. A design being tried is shown and not remembered; a settled one
 * is a step that can be undone.
 */
export class DesignStore {
  /** @type {Design} */
  #design = {};
  /** @type {Set<(design: Design) => void>} */
  #listeners = new Set();
  /** @type {Design | undefined} */
  #settled;
  /** @type {Design[]} */
  #past = [];
  /** @type {Design[]} undone ones, the next one last */
  #future = [];
  /** @type {string | undefined} the person's own design while a lesson's stands in its place: what a reload goes on with */
  own_text;
  /** @type {Design | undefined} what the newest edit makes, until it is taken or given up */
  tried;

  /** The current design; empty until the first one is there. */
  get design() {
    return this.#design;
  }

  /** What an edit starts from: what is being tried, where something is, or that would be lost. */
  get edited() {
    return this.tried ?? this.#design;
  }

  /** The current design as the text that requests carry. */
  get text() {
    return JSON.stringify(this.#design);
  }

  /** The current design as a file that a person can read. */
  get pretty() {
    return `${JSON.stringify(this.#design, undefined, 2)}\n`;
  }

  /** The design's name, as its file gives it. */
  get name() {
    return typeof this.#design.name === "string" ? this.#design.name : "";
  }

  /** How many steps can be undone. */
  get steps_back() {
    return this.#past.length;
  }

  /** How many steps can be done again. */
  get steps_forth() {
    return this.#future.length;
  }

  /** The design of the first step that is still known. */
  get first() {
    return this.#past[0] ?? this.#settled;
  }

  /** The design before the last change: before the one under the hand, or else before the last step. */
  get before() {
    return this.#design === this.#settled ? (this.#past.at(-1) ?? this.#settled) : this.#settled;
  }

  /**
   * Takes a design as a step. One equal to the last settled one is none: a handle was put back.
   * @param {Design} design one that the core has accepted
   */
  settle(design) {
    if (this.#settled !== undefined && JSON.stringify(design) !== JSON.stringify(this.#settled)) {
      this.#past = [...this.#past, this.#settled].slice(-MOST_STEPS);
      this.#future = [];
    }
    this.#settled = design;
    this.replace(design);
  }

  /** Takes the last step back as if it had not been: its design turned out not to work. */
  withdraw() {
    if (this.undo()) {
      this.#future.pop();
      this.replace(this.#design);
    }
  }

  /** @returns {boolean} whether there was a step to undo */
  undo() {
    if (this.#settled !== undefined && this.tried !== undefined) {
      // The last edit isn't a step yet.
      this.tried = undefined;
      this.replace(this.#settled);
      return true;
    }
    return this.#go(this.#past, this.#future);
  }

  /** @returns {boolean} whether there was a step to do again */
  redo() {
    return this.#go(this.#future, this.#past);
  }

  /**
   * @param {Design[]} from
   * @param {Design[]} to
   */
  #go(from, to) {
    const design = from.pop();
    if (design === undefined || this.#settled === undefined) {
      return false;
    }
    to.push(this.#settled);
    this.#settled = design;
    this.tried = undefined;
    this.replace(design);
    return true;
  }

  /** @param {Design} design one that the core has accepted, on trial */
  replace(design) {
    this.#design = design;
    if (design === this.tried) {
      this.tried = undefined;
    }
    for (const listener of this.#listeners) {
      listener(this.edited);
    }
  }

  /**
   * @param {(edited: Design) => void} listener called after each replacement with what an edit starts from: what comes of an older one
   * would put a control back that a hand has moved on
   */
  subscribe(listener) {
    this.#listeners.add(listener);
  }
}
