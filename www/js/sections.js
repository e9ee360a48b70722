/**
 * The sections below the main measures. Each is loaded when it is first opened: the first visit waits for none of them.
 */
/** @import { Design, DesignStore } from "./design_store.js" */
/** @import { Mode, Problem } from "./messages.js" */
/** @import { Stage } from "./stage.js" */
/** @import { TopSession } from "./top_session.js" */
/** @import { WorkshopClient } from "./workshop_client.js" */

import { WORDS } from "#words/page.js";
import { part } from "./page_parts.js";
import { styleSheet } from "./style_sheet.js";

/**
 * What a section works with.
 * @typedef {object} Bench
 * @property {DesignStore} store
 * @property {Stage} stage
 * @property {TopSession} session
 * @property {() => WorkshopClient} board
 * @property {(design: Design) => void} trial shows a design whose handle still moves
 * @property {(design: Design) => Promise<boolean>} settle takes a design as a step; false where it can't be
 * @property {(mode: Mode) => void} choose shows another mode of the top that is shown
 * @property {(text: string) => void} say
 * @property {(problem: Problem) => void} warn
 * @property {(work: () => Promise<unknown>) => Promise<void>} attempt tells a problem, after which every field shows the design
 * again
 */

/** @typedef {{ build: (host: HTMLElement, bench: Bench) => void | Promise<void> }} Section */

/** @type {Record<string, () => Promise<Section>>} */
const SECTIONS = {
  presets: () => import("./sections/presets.js"),
  outline: () => import("./sections/outline.js"),
  arching: () => import("./sections/arching.js"),
  sound_holes: () => import("./sections/sound_holes.js"),
  graduation: () => import("./sections/graduation.js"),
  bar_and_post: () => import("./sections/bar_and_post.js"),
  wood: () => import("./sections/wood.js"),
  rim: () => import("./sections/rim.js"),
  regions: () => import("./sections/regions.js"),
  cut: () => import("./sections/cut.js"),
  place: () => import("./sections/place.js"),
  movement: () => import("./sections/movement.js"),
  sand: () => import("./sections/sand.js"),
  looks: () => import("./sections/looks.js"),
  pictures: () => import("./sections/pictures.js"),
  measured: () => import("./sections/measured.js"),
  drive: () => import("./sections/drive.js"),
  curves: () => import("./sections/curves.js"),
  note: () => import("./sections/note.js"),
  tap: () => import("./sections/tap.js"),
  lessons: () => import("./sections/lessons.js"),
  compare: () => import("./sections/compare.js"),
  effects: () => import("./sections/effects.js"),
  target: () => import("./sections/target.js"),
  share: () => import("./sections/share.js"),
};

/** @param {Bench} bench */
export function connectSections(bench) {
  for (const section of document.querySelectorAll("details[data-section]")) {
    const load = SECTIONS[/** @type {HTMLElement} */ (section).dataset.section ?? ""];
    const opened = async () => {
      section.removeEventListener("toggle", opened);
      const host = part("div", HTMLDivElement, section);
      try {
        await styleSheet("sections");
        const { build } = await load();
        host.replaceChildren();
        await build(host, bench);
      } catch (reason) {
        console.error(reason);
        host.textContent = WORDS.not_loaded;
        section.addEventListener("toggle", opened);
      }
    };
    section.addEventListener("toggle", opened);
  }
}
