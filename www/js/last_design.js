/**
 * What a class of a wasm module makes of a design, kept for the design that was asked about last: making one takes seconds, and two would not
 * fit beside each other on a phone.
 * @template {{ free: () => void }} T
 */
export class OfLastDesign {
  #Class;
  /** @type {T | undefined} */
  #made;
  #design = "";

  /** @param {new (json: string) => T} made_class making one may throw a Problem */
  constructor(made_class) {
    this.#Class = made_class;
  }

  /** @param {string} design */
  of(design) {
    if (this.#made === undefined || design !== this.#design) {
      this.free();
      this.#made = new this.#Class(design);
      this.#design = design;
    }
    return this.#made;
  }

  /** Makes room. */
  free() {
    this.#made?.free();
    this.#made = undefined;
  }
}
