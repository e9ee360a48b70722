/**
 * The driven motion on the stage: shown in place of the mode until somebody looks at a mode again.
 */
/** @import { Motion } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { WORDS as PAGE_WORDS } from "#words/page.js";
import { part } from "../page_parts.js";

/** @typedef {{ title: string, text: string, detail: string, largest_um: number }} Caption */

/** One owner of the stage's motion at a time. */
export class DrivenStage {
  #stage;
  /** @type {Motion | undefined} that this showed last */
  #own;
  #largest_um = 1;
  /** @type {number | undefined} */
  #timer;

  /** @param {Pick<Bench, "stage">} bench */
  constructor({ stage }) {
    this.#stage = stage;
    part("#exaggeration", HTMLInputElement).addEventListener("input", () => this.#tellScale());
    stage.listen("motion", () => {
      if (this.#own !== undefined && !this.owns) {
        this.#own = undefined;
        part("#drawn-scale", HTMLElement).textContent = PAGE_WORDS.drawn_scale(stage.exaggeration_mm);
      }
    });
  }

  /**
   * Shows a motion, if the picture on the stage is the one it was worked out for.
   * @param {Pick<Motion, "re" | "im">} motion
   * @param {Caption} caption
   * @returns {boolean} whether it fits
   */
  show({ re, im }, { title, text, detail, largest_um }) {
    this.stop();
    const fits = this.#put({ mode: 0, re, im });
    if (fits) {
      this.#largest_um = largest_um;
      part("#stage-title", HTMLElement).textContent = title;
      part("#stage-hertz", HTMLElement).textContent = text;
      part("#stage-mesh", HTMLElement).textContent = detail;
      this.#tellScale();
    }
    return fits;
  }

  /**
   * Runs through the frames of one period, again and again, at the pace of the stage's speed.
   * @param {Float32Array} frames (frame, vertex, 6)
   * @param {number} count of frames
   * @param {Caption} caption
   */
  play(frames, count, caption) {
    const length = frames.length / count;
    const at = (/** @type {number} */ frame) => frames.subarray(frame * length, (frame + 1) * length);
    const im = new Float32Array(length);
    if (!this.show({ re: at(0), im }, caption)) {
      return;
    }
    // The frames hold the phase already.
    if (this.#stage.playing) {
      part("#play", HTMLButtonElement).click();
    }
    this.#stage.setPhase(0);
    let frame = 0;
    const next = () => {
      const beats_a_second = part("#speed", HTMLInputElement).valueAsNumber;
      if (!this.owns || !this.#put({ mode: 0, re: at(frame), im })) {
        this.stop();
        return;
      }
      frame = (frame + 1) % count;
      this.#timer = setTimeout(next, 1000 / (beats_a_second * count));
    };
    next();
  }

  /** Stops what runs; the last frame stays. */
  stop() {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  /** Whether what the stage shows comes from here. */
  get owns() {
    return this.#own !== undefined && this.#stage.motion === this.#own;
  }

  /** @param {Motion} motion */
  #put(motion) {
    const { picture } = this.#stage;
    if (picture === undefined || 2 * picture.positions.length !== motion.re.length) {
      return false;
    }
    this.#own = motion;
    this.#stage.move(motion);
    return true;
  }

  #tellScale() {
    if (this.owns) {
      const text = WORDS.true_scale(this.#stage.exaggeration_mm, this.#largest_um);
      part("#drawn-scale", HTMLElement).textContent = text;
    }
  }
}
