/**
 * How many pixels a moving picture may have. Frames that come too slowly make motion unreadable long before fewer pixels
 * make the shape so; a picture at rest is always drawn with all of them.
 */

/** Slower than this, and motion at one beat a second falls below some 15 pictures a beat. */
export const MOVING_MS = 66;

/** Slower than this, two refreshes of most screens, and what a hand moves no longer follows it smoothly. */
export const IN_HAND_MS = 34;

/** Faster than this for a while, and more pixels may be tried again. */
const FAST_MS = 24;

/** Frames looked at before deciding: enough to even out a hiccup. */
const SAMPLE = 8;

/** With very slow frames two must do: waiting for more would hold up the page. */
const HURRY_MS = 300;

/** A step up or down leaves at least twice or half the pixels, for smaller ones aren't worth a new canvas. */
const STEP = Math.SQRT1_2;

/** A step down leaves at most this: not all of a slow frame's time is its pixels' fault. */
const LONGEST_STEP = 0.5;

/** Never fewer than this many canvas pixels to a CSS pixel along a side: below it, the holes' edges fall apart. */
const LEAST_RATIO = 0.35;

/** A step down after which frames take more than this share of their time was in vain. */
const IN_VAIN = 0.9;

/** So many decisions pass before what was found is doubted; twice as many each time, up to the last. */
const PATIENCE = 8;
const LONGEST_PATIENCE = 128;

/** Watches the time between frames and says the canvas pixels to a CSS pixel. */
export class FrameBudget {
  #slow_ms;
  #ratio = Infinity;
  #ceiling = Infinity;
  #patience = PATIENCE;
  /** Decisions since frames were slow; below 0, those that are still to pass. */
  #calm = 0;
  /** @type {{ ratio: number, median_ms: number } | undefined} where the last decision was a step down, what it came from */
  #before;
  /** @type {number[]} */
  #frames_ms = [];

  /** @param {number} [slow_ms] frames that take longer cost pixels */
  constructor(slow_ms = MOVING_MS) {
    this.#slow_ms = slow_ms;
  }

  /**
   * Canvas pixels to a CSS pixel for a moving picture.
   * @param {number} device_ratio the most that there may be, the screen's
   */
  movingRatio(device_ratio) {
    return Math.min(this.#ratio, device_ratio);
  }

  /**
   * Takes the time from one frame to the next in an unbroken run of frames.
   * @param {number} frame_ms
   * @param {number} device_ratio
   */
  add(frame_ms, device_ratio) {
    this.#frames_ms.push(frame_ms);
    const count = this.#frames_ms.length;
    const total_ms = this.#frames_ms.reduce((sum, ms) => sum + ms, 0);
    if (count < 2 || (count < SAMPLE && total_ms < HURRY_MS)) {
      return;
    }
    // The first frame after a change of size is slow for its own reasons, hence the lower median.
    const median_ms = this.#frames_ms.sort((a, b) => a - b)[Math.floor((count - 1) / 2)];
    this.#frames_ms = [];
    this.#ratio = this.#next(median_ms, this.movingRatio(device_ratio), device_ratio);
  }

  /**
   * @param {number} median_ms
   * @param {number} now
   * @param {number} device_ratio
   */
  #next(median_ms, now, device_ratio) {
    const before = this.#before;
    this.#before = undefined;
    if (median_ms > this.#slow_ms) {
      if (before !== undefined && median_ms > IN_VAIN * before.median_ms) {
        // Something else takes the time: the pixels are given back, and it is some time before they are suspected again.
        this.#calm = -this.#patience;
        this.#growPatience();
        return before.ratio;
      }
      if (this.#calm < 0) {
        this.#calm += 1;
        return now;
      }
      const step = Math.max(LONGEST_STEP, Math.min(STEP, Math.sqrt(this.#slow_ms / median_ms)));
      const lower = Math.max(now * step, Math.min(LEAST_RATIO, now));
      if (lower < now) {
        this.#before = { ratio: now, median_ms };
        // Remembered, so that the ratio does not swing up and down for ever.
        this.#ceiling = now;
      }
      return lower;
    }
    const higher = Math.min(now / STEP, device_ratio);
    if (median_ms >= FAST_MS || higher === now) {
      return now;
    }
    this.#calm += 1;
    if (higher >= this.#ceiling && this.#calm >= this.#patience) {
      // What was slow then may have been a busy moment.
      this.#ceiling = Infinity;
      this.#calm = 0;
      this.#growPatience();
    }
    return higher < this.#ceiling ? higher : now;
  }

  #growPatience() {
    this.#patience = Math.min(2 * this.#patience, LONGEST_PATIENCE);
  }
}
