/**
 * A musical scale of frequencies across a drawing.
 */
import { SVG, svgLine } from "./svg_line.js";

const MARKS_HZ = [50, 100, 200, 500, 1000, 2000, 5000];
/** Room for the numbers below the drawing. */
export const FOOT = 16;

/** Even steps across the drawing are even intervals. */
export class FrequencyScale {
  #from_hz;
  #to_hz;
  #left;
  #width;

  /**
   * @param {number} from_hz
   * @param {number} to_hz
   * @param {number} left where it begins
   * @param {number} width
   */
  constructor(from_hz, to_hz, left, width) {
    this.#from_hz = from_hz;
    this.#to_hz = to_hz;
    this.#left = left;
    this.#width = width;
  }

  /** @param {number} hz */
  place(hz) {
    return this.#left + (this.#width * Math.log(hz / this.#from_hz)) / Math.log(this.#to_hz / this.#from_hz);
  }

  /**
   * @param {number} share of the drawing's width, from its left
   * @returns {number} Hz
   */
  at(share) {
    return this.#from_hz * (this.#to_hz / this.#from_hz) ** Math.min(Math.max(share, 0), 1);
  }

  /**
   * @param {number} height of the drawing
   * @param {number} reach how high the marks' lines go up
   * @returns {SVGElement[]} lines of class "grid", and the numbers below
   */
  marks(height, reach) {
    return MARKS_HZ.filter((hz) => hz >= this.#from_hz && hz <= this.#to_hz).flatMap((hz) => {
      const text = document.createElementNS(SVG, "text");
      text.setAttribute("x", String(this.place(hz)));
      text.setAttribute("y", String(height + FOOT - 4));
      // Numbers at the ends stay inside.
      const anchor = hz === this.#from_hz && this.#left === 0 ? "start" : hz === this.#to_hz ? "end" : "middle";
      text.setAttribute("text-anchor", anchor);
      text.textContent = hz < 1000 ? String(hz) : `${hz / 1000}k`;
      return [svgLine("grid", `M${this.place(hz)} ${height}v${-reach}`), text];
    });
  }
}
