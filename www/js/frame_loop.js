/**
 * Calls for a picture when one is due: continuously while playing, once after a change while paused, never while hidden
 * or out of sight.
 */

/** Runs the stage's clock. */
export class FrameLoop {
  #draw;
  #playing = false;
  #beats_a_second = 1;
  #phase_rad = 0;
  /** @type {number | undefined} */
  #asked;
  /** @type {number | undefined} */
  #last_ms;
  #in_sight = true;

  /**
   * @param {Element} place where the picture is
   * @param {(phase_rad: number, frame_ms: number | undefined) => void} draw frame_ms is the time since the frame
   * before, undefined for the first of a run
   */
  constructor(place, draw) {
    this.#draw = draw;
    document.addEventListener("visibilitychange", () => this.ask());
    new IntersectionObserver((entries) => {
      this.#in_sight = entries.at(-1)?.isIntersecting ?? true;
      this.ask();
    }).observe(place);
  }

  get playing() {
    return this.#playing;
  }

  get phase_rad() {
    return this.#phase_rad;
  }

  /** @param {number} phase_rad */
  setPhase(phase_rad) {
    this.#phase_rad = phase_rad;
    this.ask();
  }

  /** @param {boolean} playing */
  play(playing) {
    this.#playing = playing;
    this.#last_ms = undefined;
    this.ask();
  }

  /** @param {number} beats_a_second whole cycles of the motion in a second */
  setSpeed(beats_a_second) {
    this.#beats_a_second = beats_a_second;
  }

  /** Asks for one frame; more asks before it comes are the same ask. */
  ask() {
    if (document.visibilityState !== "visible" || !this.#in_sight) {
      this.#last_ms = undefined;
    } else {
      this.#asked ??= requestAnimationFrame((now_ms) => this.#frame(now_ms));
    }
  }

  /** @param {number} now_ms */
  #frame(now_ms) {
    this.#asked = undefined;
    const frame_ms = this.#last_ms === undefined ? undefined : now_ms - this.#last_ms;
    if (this.#playing) {
      // A long gap (a sleeping laptop) must not throw the phase somewhere else.
      const step_s = Math.min(frame_ms ?? 0, 500) / 1000;
      this.#phase_rad = (this.#phase_rad + 2 * Math.PI * this.#beats_a_second * step_s) % (2 * Math.PI);
      this.#last_ms = now_ms;
      this.ask();
    }
    this.#draw(this.#phase_rad, frame_ms);
  }
}
