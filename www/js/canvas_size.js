/**
 * How large the canvas is: the element's size on the page, times as many pixels as the moment allows.
 */
import { FrameBudget } from "./frame_budget.js";

/** After the last touch of the stage, this long passes before a resting picture is drawn with all its pixels again. */
const SETTLE_MS = 250;

/** Follows the size of the stage's element and the screen's pixels. */
export class CanvasSize {
  #width_css = 0;
  #height_css = 0;
  #budget = new FrameBudget();
  #on_change;
  /** @type {number | undefined} */
  #settling;

  /**
   * @param {HTMLElement} host the element that the canvas fills
   * @param {() => void} on_change a picture of another size is due
   */
  constructor(host, on_change) {
    this.#on_change = on_change;
    // Read at once too: the first picture does not wait for the observer's first call.
    this.#width_css = host.clientWidth;
    this.#height_css = host.clientHeight;
    new ResizeObserver(([entry]) => {
      this.#width_css = entry.contentRect.width;
      this.#height_css = entry.contentRect.height;
      on_change();
    }).observe(host);
    this.#watchDeviceRatio();
  }

  /**
   * The canvas's pixels for the next picture.
   * @param {boolean} moving whether more pictures follow at once
   * @returns {{ width_px: number, height_px: number, ratio: number }} ratio is the canvas's pixels to a CSS pixel
   */
  next(moving) {
    const rough = moving || this.#settling !== undefined;
    const ratio = rough ? this.#budget.movingRatio(devicePixelRatio) : devicePixelRatio;
    return { width_px: Math.round(this.#width_css * ratio), height_px: Math.round(this.#height_css * ratio), ratio };
  }

  /** @param {number} frame_ms time from one frame to the next in an unbroken run of frames */
  learn(frame_ms) {
    this.#budget.add(frame_ms, devicePixelRatio);
  }

  /** Notes that a hand is moving the top: until it rests, pictures are as rough as moving ones. */
  handle() {
    clearTimeout(this.#settling);
    this.#settling = setTimeout(() => {
      this.#settling = undefined;
      this.#on_change();
    }, SETTLE_MS);
  }

  /** Moving the window to another screen changes the pixels to draw, not the element's size. */
  #watchDeviceRatio() {
    const query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    const changed = () => {
      this.#on_change();
      this.#watchDeviceRatio();
    };
    query.addEventListener("change", changed, { once: true });
  }
}
