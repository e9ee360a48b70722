/** The namespace of what is drawn. */
export const SVG = "http://www.w3.org/2000/svg";

/**
 * A line to be laid into a drawing.
 * @param {string} name its class
 * @param {string} d path data
 */
export function svgLine(name, d) {
  const path = document.createElementNS(SVG, "path");
  path.setAttribute("class", name);
  path.setAttribute("d", d);
  return path;
}
