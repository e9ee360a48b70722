/**
 * The largest path of an SVG drawing, and the transform that makes millimetres of it.
 */

/** Millimetres of the units of length that SVG knows and that mean something on paper. */
const UNITS_MM = /** @type {Record<string, number>} */ ({
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  q: 0.25,
});

const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {string} text
 * @returns {{ d: string, mm_from_path: number[] } | undefined} undefined where there is no path
 */
export function largestPathOfSvg(text) {
  const parsed = new DOMParser().parseFromString(text, "image/svg+xml");
  const root = parsed.documentElement;
  if (!(root instanceof SVGSVGElement)) {
    return undefined;
  }
  const scale = mmPerUnit(root.getAttribute("width") ?? "", root.getAttribute("viewBox") ?? "");
  // Nothing of the file itself is laid into the page, only lines made anew.
  const ruler = document.createElementNS(SVG, "svg");
  ruler.setAttribute("aria-hidden", "true");
  ruler.style.cssText = "position: absolute; inline-size: 0; block-size: 0";
  document.body.append(ruler);
  let largest = 0;
  /** @type {{ d: string, mm_from_path: number[] } | undefined} */
  let found;
  for (const shape of root.querySelectorAll("path, polygon, polyline")) {
    const d = shape.getAttribute("d") ?? `M${shape.getAttribute("points") ?? ""}${shape.matches("polygon") ? "Z" : ""}`;
    const { a, b, c, d: e, e: f, f: g } = rootFrom(shape, root);
    const line = document.createElementNS(SVG, "path");
    line.setAttribute("d", d);
    ruler.replaceChildren(line);
    const { width, height } = line.getBBox();
    const size = width * height * Math.abs(a * e - b * c);
    if (size > largest && shape.closest("defs, clipPath, symbol, pattern, marker, mask") === null) {
      largest = size;
      found = { d, mm_from_path: [a, b, c, e, f, g].map((value) => value * scale) };
    }
  }
  ruler.remove();
  return found;
}

/**
 * A drawing without a unit that means something on paper is taken as one millimetre a unit.
 * @param {string} width
 * @param {string} view_box
 */
export function mmPerUnit(width, view_box) {
  const [, number = "", unit = ""] = /^\s*([\d.eE+-]+)\s*([a-zA-Z]*)\s*$/.exec(width) ?? [];
  const unit_mm = UNITS_MM[unit.toLowerCase()];
  const across = Number(view_box.trim().split(/[\s,]+/)[2]);
  if (unit_mm === undefined) {
    return 1;
  }
  // Without a view box a unit is a CSS pixel, 96 to the inch.
  return across > 0 ? (Number(number) * unit_mm) / across : 25.4 / 96;
}

/**
 * @param {Element} shape
 * @param {Element} root
 * @returns {DOMMatrix}
 */
function rootFrom(shape, root) {
  let matrix = new DOMMatrix();
  for (let at = /** @type {Element | null} */ (shape); at !== null && at !== root; at = at.parentElement) {
    if (at instanceof SVGGraphicsElement) {
      const own = at.transform.baseVal.consolidate()?.matrix;
      if (own !== undefined) {
        matrix = new DOMMatrix([own.a, own.b, own.c, own.d, own.e, own.f]).multiply(matrix);
      }
    }
  }
  return matrix;
}
