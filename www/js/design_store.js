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
 * @returns {value is Record<string, unknown>}
 */
function isObject(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Holds the current design and tells when it is replaced. */
export class DesignStore {
  /** @type {Design} */
  #design = {};
  /** @type {Set<(design: Design) => void>} */
  #listeners = new Set();

  /** The current design; empty until the first one is there. */
  get design() {
    return this.#design;
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

  /** @param {Design} design one that the core has accepted */
  replace(design) {
    this.#design = design;
    for (const listener of this.#listeners) {
      listener(design);
    }
  }

  /**
   * @param {(design: Design) => void} listener called after each replacement
   */
  subscribe(listener) {
    this.#listeners.add(listener);
  }
}
