/**
 * The three drawings: shown together, moved by their handles, each saved as a file of its own.
 */
/** @import { Design } from "./design_store.js" */
/** @import { Drawings, Handle } from "./messages.js" */
/** @import { SheetLayout } from "./drawing_sheet.js" */

import { DRAWING_WORDS as WORDS } from "#words/drawings.js";
import { measureName } from "#words/measures.js";
import { download, fileName } from "./design_files.js";
import { withValueAt } from "./design_store.js";
import { drawingFile } from "./drawing_file.js";
import { DrawingSheet, valueText } from "./drawing_sheet.js";
import { part } from "./page_parts.js";

/** Heights are drawn twice as large on the page, where a channel of 0.8 mm would be a single pixel; files are true. */
const HEIGHTS = 2;

/** @typedef {keyof Drawings} DrawingName */

/** @type {Record<DrawingName, SheetLayout>} */
const LAYOUTS = {
  plan: { matrix: [1, 0, 0, 1], margins: [9, 10, 9, 4], anchor: "middle" },
  // Stood up beside the plan, station beside station: (u, v) goes to (-v, -u).
  long_arch: { matrix: [0, -1, -HEIGHTS, 0], margins: [6, 10, 24, 12], anchor: "start" },
  cross_arches: { matrix: [1, 0, 0, HEIGHTS], margins: [9, 6, 9, 3], anchor: "middle" },
};

/**
 * @typedef {object} PanelEvents
 * @property {() => Design} current the design that a change starts from
 * @property {(design: Design) => void} trial
 * @property {(design: Design) => void} settle
 * @property {(file: string) => void} saved
 */

/** Holds the three sheets. */
export class DrawingsPanel {
  /** @type {Map<DrawingName, DrawingSheet>} */
  #sheets = new Map();
  #text = part("#handle-text", HTMLElement);

  /** @param {PanelEvents} events */
  constructor(events) {
    const changed = (/** @type {Handle} */ handle, /** @type {number} */ value) =>
      handle.paths.reduce((design, path) => withValueAt(design, path.split("."), value), events.current());
    this.#text.textContent = WORDS.handles_hint;
    for (const name of /** @type {DrawingName[]} */ (Object.keys(LAYOUTS))) {
      const sheet = new DrawingSheet(part(`#${name}`, SVGSVGElement), LAYOUTS[name], {
        trial: (handle, value) => events.trial(changed(handle, value)),
        settle: (handle, value) => events.settle(changed(handle, value)),
        attend: (handle, value) => {
          this.#text.textContent = `${measureName(handle.paths[0], handle.what)}: ${valueText(handle, value)}`;
        },
      });
      this.#sheets.set(name, sheet);
      part(`#save-${name}`, HTMLButtonElement).addEventListener("click", () => {
        if (sheet.drawing !== undefined) {
          const design = String(events.current().name ?? "");
          const title = `${design}: ${WORDS.drawings[name]}`;
          const foot = `${title}. ${WORDS.true_scale}`;
          const file = drawingFile(sheet.drawing, { title, foot, label: WORDS.label });
          const ending = `-${name.replace("_", "-")}.svg`;
          events.saved(download(fileName(design, ending), file, "image/svg+xml"));
        }
      });
    }
  }

  /**
   * @param {Drawings} drawings
   * @param {boolean} latest false where the next are on their way
   */
  show(drawings, latest) {
    for (const [name, sheet] of this.#sheets) {
      sheet.show(drawings[name], latest);
    }
  }

  /** What was tried can't be. */
  goBack() {
    for (const sheet of this.#sheets.values()) {
      sheet.goBack();
    }
  }
}
