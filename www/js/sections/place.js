/**
 * What the top is at one place, pointed at on the stage or given in numbers: height, thickness, slope, region, motion.
 */
/** @import { PlaceFigures } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { PLACE_WORDS as WORDS } from "#words/place.js";
import { part } from "../page_parts.js";
import { group, NumberField, note } from "./fields.js";
import { nodeMotion } from "./node_motion.js";
import { overPlan, pickedPlace } from "./picked_place.js";
import { watchStage } from "./stage_watch.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const { stage } = bench;
  const view = part("#stage-view", HTMLElement);
  /** Across and from the bottom edge, mm: on the bridge's way at first. */
  let place = [0, 180];
  const across = new NumberField({ ...WORDS.across, step: 1 }, (value) => go([value ?? 0, place[1]]));
  const along = new NumberField({ ...WORDS.along, step: 1 }, (value) => go([place[0], value ?? 0]));
  const figures = document.createElement("dl");
  figures.className = "figures place-figures";
  figures.setAttribute("aria-label", WORDS.title);
  host.append(group(WORDS.title, across.row, along.row), figures, note(WORDS.about));

  /** @param {number[]} to */
  const go = (to) => {
    place = to;
    across.show(place[0]);
    along.show(place[1]);
    stage.hold("place", (now) => now.set_place(place[0], place[1]));
    void tell();
  };

  /** @type {ReturnType<typeof nodeMotion> | undefined} of the motion that is shown */
  let moving;

  const tell = async () => {
    const [x_mm, y_mm] = place;
    const { picture, motion } = stage;
    if (picture === undefined) {
      return;
    }
    const wood = await bench.board().askBeside("place", { design: bench.store.text, x_mm, y_mm });
    if (picture !== stage.picture || motion !== stage.motion || x_mm !== place[0] || y_mm !== place[1]) {
      return;
    }
    const shares = wood && overPlan(picture, x_mm, y_mm);
    /** @type {[number, number] | undefined} */
    let outward;
    if (shares !== undefined && moving !== undefined) {
      const { re, im } = moving;
      const at = (/** @type {Float32Array} */ field) =>
        shares.reduce((sum, [node, own]) => sum + own * field[4 * node], 0);
      outward = [at(re), at(im)];
    }
    show(wood, outward);
  };

  /**
   * @param {PlaceFigures | undefined} wood
   * @param {[number, number] | undefined} outward
   */
  const show = (wood, outward) => {
    const rows = wood === undefined ? [[WORDS.region, WORDS.off]] : WORDS.rows(wood, outward);
    figures.replaceChildren(
      ...rows.flatMap(([what, value]) => {
        const [term, figure] = [document.createElement("dt"), document.createElement("dd")];
        term.textContent = what;
        figure.textContent = value;
        return [term, figure];
      }),
    );
  };

  let due = false;
  /** @param {PointerEvent} event over the stage: a mouse that hovers, or a finger that touches */
  const point = (event) => {
    if (due || (event.type === "pointermove" && event.buttons !== 0)) {
      return;
    }
    due = true;
    requestAnimationFrame(() => {
      due = false;
      const box = view.getBoundingClientRect();
      const ray = stage.ray(event.clientX - box.left, event.clientY - box.top);
      const { picture, motion, phase_rad, exaggeration_mm } = stage;
      const found = ray && picture && pickedPlace(picture, motion, phase_rad, exaggeration_mm, ray);
      if (found !== undefined) {
        go(found.map((value) => Math.round(10 * value) / 10));
      }
    });
  };
  const follow = () => {
    const { picture, motion } = stage;
    moving = picture && motion && nodeMotion(picture, motion);
    go(place);
  };
  watchStage(host, stage, { motion: follow }, (open) => {
    for (const moment of /** @type {const} */ (["pointermove", "pointerdown"])) {
      if (open) {
        view.addEventListener(moment, point);
      } else {
        view.removeEventListener(moment, point);
      }
    }
    if (!open) {
      stage.hold("place", (now) => now.set_place(Number.NaN, Number.NaN));
    }
  });
}
