/**
 * A musical scale of frequencies across a drawing: even steps are even intervals.
 */
import { scaleLog } from "../plotting.js";
import { SVG, svgLine } from "./svg_line.js";

const MARKS_HZ = [50, 100, 200, 500, 1000, 2000, 5000];
/** Room for the numbers below the drawing. */
export const FOOT = 16;

/** @typedef {ReturnType<typeof frequencyScale>} FrequencyScale */

/**
 * @param {number} from_hz
 * @param {number} to_hz
 * @param {number} left where it begins
 * @param {number} right where it ends
 */
export function frequencyScale(from_hz, to_hz, left, right) {
  return scaleLog([from_hz, to_hz], [left, right]).clamp(true);
}

/**
 * @param {FrequencyScale} scale
 * @param {number} height of the drawing
 * @param {number} reach how high the marks' lines go up
 * @returns {SVGElement[]} lines of class "grid", and the numbers below
 */
export function frequencyMarks(scale, height, reach) {
  const [[from_hz, to_hz], [left]] = [scale.domain(), scale.range()];
  return MARKS_HZ.filter((hz) => hz >= from_hz && hz <= to_hz).flatMap((hz) => {
    const text = document.createElementNS(SVG, "text");
    text.setAttribute("x", String(scale(hz)));
    text.setAttribute("y", String(height + FOOT - 4));
    // Numbers at the ends stay inside.
    const anchor = hz === from_hz && left === 0 ? "start" : hz === to_hz ? "end" : "middle";
    text.setAttribute("text-anchor", anchor);
    text.textContent = hz < 1000 ? String(hz) : `${hz / 1000}k`;
    return [svgLine("grid", `M${scale(hz)} ${height}v${-reach}`), text];
  });
}
