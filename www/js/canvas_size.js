/**
 * How large the canvas is: the element's size on the page, times as many pixels as the moment allows.
 */
import { FrameBudget, IN_HAND_MS } from "./frame_budget.js";

/** After a hand's last move, this long passes before a resting picture is drawn with all its pixels again. */
const SETTLE_MS = 250;

/** Follows the size of the stage's element and the screen's pixels. */
export class CanvasSize {
  #width_css = 0;
  #height_css = 0;
  #budget = new FrameBudget();
  #in_hand = new FrameBudget(IN_HAND_MS);
  #changed_ms = -Infinity;
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
    const moving_ratio = this.#budget.movingRatio(devicePixelRatio);
    const in_hand = this.#settling !== undefined;
    const ratio = in_hand ? this.#in_hand.movingRatio(moving_ratio) : moving ? moving_ratio : devicePixelRatio;
    return { width_px: Math.round(this.#width_css * ratio), height_px: Math.round(this.#height_css * ratio), ratio };
  }

  /** @param {number} frame_ms time from one frame to the next in an unbroken run of frames */
  learn(frame_ms) {
    if (this.#settling === undefined) {
      this.#budget.add(frame_ms, devicePixelRatio);
    } else {
      this.#in_hand.add(frame_ms, this.#budget.movingRatio(devicePixelRatio));
    }
  }

  /** Notes that another top or motion is shown: one so soon after the other comes of a control that a hand moves. */
  change() {
    const now_ms = performance.now();
    if (now_ms - this.#changed_ms < SETTLE_MS) {
      this.handle();
    }
    this.#changed_ms = now_ms;
  }

  /** Notes that a hand is moving something: until it rests, pictures are as rough as it takes to follow it. */
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
