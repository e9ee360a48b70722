/** @import { Code } from "../messages.js" */
import { SVG } from "./svg_line.js";

/**
 * A code as a drawing that stays crisp at any size: dark on white whatever the page's colours, as readers expect it.
 * @param {Code} code
 * @param {string} name of the drawing, for who can't see it
 */
export function codeDrawing({ size, path }, name) {
  const drawing = document.createElementNS(SVG, "svg");
  drawing.setAttribute("viewBox", `0 0 ${size} ${size}`);
  drawing.setAttribute("shape-rendering", "crispEdges");
  drawing.setAttribute("role", "img");
  drawing.setAttribute("aria-label", name);
  const paper = document.createElementNS(SVG, "rect");
  paper.setAttribute("width", String(size));
  paper.setAttribute("height", String(size));
  paper.setAttribute("fill", "#fff");
  const modules = document.createElementNS(SVG, "path");
  modules.setAttribute("d", path);
  modules.setAttribute("fill", "#000");
  drawing.append(paper, modules);
  return drawing;
}
