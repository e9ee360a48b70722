/**
 * A drawing as an SVG file of its own: true to scale, lengths in mm, everything it needs inside.
 */
/** @import { Drawing } from "./messages.js" */

/** Room round the drawing, and below it for the words and the bar, mm. */
const MARGIN_MM = 10;
const FOOT_MM = 16;
/** Long enough that a printer's scaling shows on a ruler. */
const BAR_MM = 50;

const STYLE = `
path{fill:none;stroke:#222;stroke-width:.25;stroke-linejoin:round;stroke-linecap:round}
.contour{stroke:#999;stroke-width:.15}.fifth_contour{stroke:#666;stroke-width:.25}
.channel_line{stroke:#06c;stroke-dasharray:.4 1.2}.inflection_line{stroke:#b40;stroke-dasharray:3 1.2}
.wood{fill:#f2e2c8}.rib_plane,.dimension{stroke:#888;stroke-width:.15;stroke-dasharray:2 1}
text{font:3.2px sans-serif;fill:#222;text-anchor:middle;dominant-baseline:middle;paint-order:stroke;stroke:#fff;stroke-width:.8}
.minor{font-size:2.4px}.foot{text-anchor:start;stroke:none}`;

/**
 * @param {Drawing} drawing
 * @param {{ title: string, foot: string, label: (label: Drawing["labels"][number]) => string }} words
 * @returns {string} the file's text
 */
export function drawingFile(drawing, words) {
  const [left, top] = drawing.low.map((least) => least - MARGIN_MM);
  const width = drawing.high[0] + MARGIN_MM - left;
  const height = drawing.high[1] + MARGIN_MM + FOOT_MM - top;
  const foot = drawing.high[1] + MARGIN_MM;
  const begin = drawing.low[0];
  const parts = [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="${mm(left)} ${mm(top)} ${mm(width)} ${mm(height)}">`,
    `<title>${escaped(words.title)}</title>`,
    `<style>${STYLE}</style>`,
    ...drawing.lines.map(({ kind, path }) => `<path class="${kind}" d="${path.trim()}"/>`),
    ...drawing.labels.map(
      (label) =>
        `<text${label.minor ? ' class="minor"' : ""} x="${mm(label.at[0])}" y="${mm(label.at[1])}">${escaped(words.label(label))}</text>`,
    ),
    `<path class="scale" d="M${mm(begin)} ${mm(foot)}v2h${BAR_MM}v-2"/>`,
    `<text class="foot" x="${mm(begin)}" y="${mm(foot + 5)}">${BAR_MM} mm</text>`,
    `<text class="foot" x="${mm(begin)}" y="${mm(foot + 10)}">${escaped(words.foot)}</text>`,
    "</svg>",
  ];
  return `${parts.join("\n")}\n`;
}

/** @param {number} length */
function mm(length) {
  return String(Number(length.toFixed(2)));
}

/** @param {string} text */
function escaped(text) {
  return text.replace(/[&<>"]/g, (letter) => `&#${letter.charCodeAt(0)};`);
}
