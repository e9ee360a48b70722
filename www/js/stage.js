/**
 * The stage: the drawn top, whatever draws it. Holds what is shown, so that a lost graphics device costs nothing but a
 * moment.
 */
/** @import { Motion, Picture } from "./messages.js" */
/** @import { Backend, View } from "./view_backends.js" */
import { CanvasSize } from "./canvas_size.js";
import { FrameLoop } from "./frame_loop.js";
import { part } from "./page_parts.js";
import { openView } from "./view_backends.js";

/** A device lost more often than this within a minute is not worth another try. */
const LOSSES_A_MINUTE = 3;

/**
 * @typedef {object} StageEvents
 * @property {(colours: Uint8Array) => void} opened with the colours that the motion is drawn in
 * @property {() => void} drawn after the first picture of a top was drawn
 * @property {() => void} recovered after a lost device was replaced
 * @property {() => void} absent nothing here can draw
 */

/** @typedef {"frame" | "picture" | "motion" | "beside"} StageMoment after which something else is shown; a new view's picture is one too */

/**
 * Another top that goes with the stage's own: same viewer, same phase, canvases of one size.
 * @typedef {object} Beside
 * @property {number} across share of the stage's width that each of the two has
 * @property {number} share of the exaggeration with which the stage's own motion is drawn
 * @property {(tell: (view: View) => void) => void} tell what holds for every view
 * @property {(backend: Backend) => void} open once the stage's own view is there, with the same backend
 * @property {(own: View) => void} makeRoom sees to it that both tops will fit on the stage's own canvas
 * @property {(own: View, phase_rad: number, exaggeration_mm: number, size_px: [number, number]) => void} draw as own looks at its top
 * @property {(ink: CanvasRenderingContext2D, width_px: number, height_px: number) => void} copy what was just drawn, where it is seen,
 * with what parts both tops
 * @property {string} said of it and the mode that it shows
 * @property {Picture | undefined} picture
 * @property {(by: string) => Promise<Float32Array | undefined>} scalar (node) what its wood is coloured by
 */

/** Shows one top and its motion, and another beside it. */
export class Stage {
  #host;
  #events;
  #loop;
  /** @type {View | undefined} */
  #view;
  /** @type {Picture | undefined} */
  #picture;
  /** @type {Motion | undefined} */
  #motion;
  #exaggeration_mm = 0;
  /** @type {Map<string, (view: View) => void>} what holds for every view, by what it is about */
  #held = new Map();
  /** @type {Record<StageMoment, Set<() => void>>} */
  #listeners = { frame: new Set(), picture: new Set(), motion: new Set(), beside: new Set() };
  #drawn = false;
  /** @type {Beside | undefined} */
  #beside;
  #size;
  #width_px = 0;
  #height_px = 0;
  /** @type {number[]} */
  #losses_ms = [];

  /**
   * @param {HTMLElement} host the element that the canvas fills
   * @param {StageEvents} events
   */
  constructor(host, events) {
    this.#host = host;
    this.#loop = new FrameLoop(host, (phase_rad, frame_ms) => this.#draw(phase_rad, frame_ms));
    this.#events = events;
    this.#size = new CanvasSize(host, () => this.#loop.ask());
  }

  /**
   * Opens a view and shows what there is to show.
   * @param {readonly Backend[]} backends
   */
  async open(backends = ["webgpu", "webgl2"]) {
    const open = await openView(this.#host, backends);
    this.#view = open?.view;
    if (open === undefined) {
      this.#host.dataset.backend = "none";
      this.#events.absent();
      return;
    }
    const { view, colours } = open;
    view.on_lost((reason) => void this.#recover(view, reason));
    this.#host.dataset.backend = view.backend();
    this.#width_px = 0;
    this.#height_px = 0;
    this.#tell((now) => {
      for (const tell of this.#held.values()) {
        tell(now);
      }
      // The first picture is fitted to the canvas, which must have its size by then.
      this.#fitCanvas(now);
    });
    this.#sendPicture();
    this.#sendMotion();
    this.#beside?.open(view.backend());
    this.#events.opened(colours);
    this.#loop.ask();
  }

  /**
   * Shows a top. Without a motion of its own it keeps the last one where that fits, and rests where not.
   * @param {Picture} picture
   * @param {Motion} [motion]
   */
  show(picture, motion) {
    const fits = picture.positions.length === this.#picture?.positions.length;
    this.#picture = picture;
    this.#motion = motion ?? (fits ? this.#motion : undefined);
    this.#size.change();
    this.#sendPicture();
    this.#sendMotion();
    this.#loop.ask();
  }

  /** @param {Motion} motion on the vertices of the picture that is shown */
  move(motion) {
    this.#motion = motion;
    this.#size.change();
    this.#sendMotion();
    this.#loop.ask();
  }

  /**
   * @param {StageMoment} moment
   * @param {() => void} listener
   * @returns {() => void} stops listening
   */
  listen(moment, listener) {
    this.#listeners[moment].add(listener);
    return () => this.#listeners[moment].delete(listener);
  }

  /** What is shown, undefined before the first. */
  get picture() {
    return this.#picture;
  }

  /** Of the picture; undefined at rest. */
  get motion() {
    return this.#motion;
  }

  /** The largest displacement drawn of the stage's own motion. */
  get exaggeration_mm() {
    return this.#exaggeration_mm * (this.#beside?.share ?? 1);
  }

  get phase_rad() {
    return this.#loop.phase_rad;
  }

  /** @param {number} phase_rad */
  setPhase(phase_rad) {
    this.#loop.setPhase(phase_rad);
  }

  get playing() {
    return this.#loop.playing;
  }

  /** @param {boolean} playing */
  play(playing) {
    this.#loop.play(playing);
  }

  /** @param {number} beats_a_second */
  setSpeed(beats_a_second) {
    this.#loop.setSpeed(beats_a_second);
  }

  /** @param {number} exaggeration_mm the largest displacement drawn */
  setExaggeration(exaggeration_mm) {
    this.#exaggeration_mm = exaggeration_mm;
    this.#loop.ask();
  }

  /**
   * Tells the view what holds from now on, for one that takes its place too.
   * @param {string} about what an earlier word is replaced by it
   * @param {(view: View) => void} tell
   */
  hold(about, tell) {
    this.#held.set(about, tell);
    this.look(tell);
    this.#beside?.tell(tell);
  }

  /** What holds for every view, for one that is opened beside the stage's own. */
  get held() {
    return this.#held.values();
  }

  /** What goes with the stage's own top. */
  get beside() {
    return this.#beside;
  }

  /**
   * Shows another top with the stage's own from now on, or none.
   * @param {Beside | undefined} beside
   */
  accompany(beside) {
    this.#beside = beside;
    if (beside !== undefined && this.#view !== undefined) {
      beside.open(this.#view.backend());
    }
    // A view that made room for two gives it up with its next picture.
    this.#sendPicture();
    this.#sendMotion();
    this.refit();
  }

  /** Frames what is shown anew: the canvas or what has to fit on it is another. */
  refit() {
    this.#width_px = 0;
    this.#loop.ask();
  }

  /** Draws, once something beside the stage's own top is another. */
  tellBeside() {
    this.#say("beside");
    this.#loop.ask();
  }

  /**
   * Changes how the top is looked at, and draws.
   * @param {(view: View, ratio: number) => void} change ratio is the canvas's pixels to a CSS pixel
   */
  look(change) {
    const { ratio } = this.#size.next(this.playing);
    this.#tell((view) => change(view, ratio));
    this.#loop.ask();
  }

  /**
   * The line of sight through a place of the stage, in CSS pixels from its corner.
   * @param {number} x_px
   * @param {number} y_px
   * @returns {Float32Array | undefined} a point and a direction in the top's frame, mm; undefined where nothing draws
   */
  ray(x_px, y_px) {
    // Side by side, a place on either top is the same place.
    const width_css = this.#host.clientWidth * (this.#beside?.across ?? 1);
    const ratio = this.#width_px / width_css;
    /** @type {Float32Array | undefined} */
    let ray;
    this.#tell((view) => {
      ray = view.ray((x_px % width_css) * ratio, y_px * ratio);
    });
    return ray;
  }

  /** Where the viewer stands, for a view's `set_pose`; undefined where nothing draws. */
  get pose() {
    /** @type {Float32Array | undefined} */
    let pose;
    this.#tell((view) => {
      pose = view.pose();
    });
    return pose;
  }

  /**
   * Draws at a size and phase of its own, what is beside it too, for whoever copies the canvas before anything else happens.
   * @param {number} width_px
   * @param {number} height_px
   * @param {number} phase_rad
   * @param {(canvas: HTMLCanvasElement) => void} copy
   * @returns {boolean} whether it was drawn and copied
   */
  portray(width_px, height_px, phase_rad, copy) {
    let copied = false;
    this.#tell((view) => {
      view.resize(width_px, height_px);
      this.#width_px = 0;
      this.#drawBoth(view, phase_rad, [width_px, height_px]);
      copy(part("canvas", HTMLCanvasElement, this.#host));
      copied = true;
      this.#fitCanvas(view);
      this.#drawBoth(view, this.#loop.phase_rad);
    });
    return copied;
  }

  /**
   * The same by a hand that goes on moving: meanwhile speed counts more than sharpness.
   * @param {(view: View, ratio: number) => void} change
   */
  handle(change) {
    this.#size.handle();
    this.look(change);
  }

  /**
   * Speaks to the view if there is one. A view that has just lost its device throws; its loss is answered in #recover.
   * @param {(view: View) => void} what
   */
  #tell(what) {
    const view = this.#view;
    if (view === undefined) {
      return;
    }
    try {
      what(view);
    } catch (reason) {
      if (!isLoss(reason)) {
        throw reason;
      }
    }
  }

  #sendPicture() {
    const picture = this.#picture;
    if (picture !== undefined) {
      this.#tell((view) => view.set_picture(picture.positions, picture.normals, picture.triangles, picture.kinds));
      this.#say("picture");
    }
  }

  #sendMotion() {
    if (this.#picture !== undefined) {
      const rest = new Float32Array(2 * (this.#motion === undefined ? this.#picture.positions.length : 0));
      this.#tell((view) => view.set_motion(this.#motion?.re ?? rest, this.#motion?.im ?? rest));
      this.#say("motion");
    }
  }

  /** @param {StageMoment} moment */
  #say(moment) {
    for (const listener of this.#listeners[moment]) {
      listener();
    }
  }

  /**
   * @param {number} phase_rad
   * @param {number | undefined} frame_ms
   */
  #draw(phase_rad, frame_ms) {
    if (this.#picture === undefined) {
      return;
    }
    this.#say("frame");
    if (this.#view === undefined) {
      return;
    }
    if (frame_ms !== undefined) {
      this.#size.learn(frame_ms);
    }
    this.#tell((view) => {
      this.#beside?.makeRoom(view);
      this.#fitCanvas(view);
      this.#drawBoth(view, phase_rad);
    });
    if (!this.#drawn) {
      this.#drawn = true;
      this.#events.drawn();
    }
  }

  /**
   * @param {View} view
   * @param {number} phase_rad
   * @param {[number, number]} [size_px] of each canvas
   */
  #drawBoth(view, phase_rad, size_px = [this.#width_px, this.#height_px]) {
    this.#beside?.draw(view, phase_rad, this.#exaggeration_mm, size_px);
    view.draw(phase_rad, this.exaggeration_mm);
  }

  /** @param {View} view */
  #fitCanvas(view) {
    const size = this.#size.next(this.playing);
    const [width_px, height_px] = [Math.round(size.width_px * (this.#beside?.across ?? 1)), size.height_px];
    if (width_px !== this.#width_px || height_px !== this.#height_px) {
      this.#width_px = width_px;
      this.#height_px = height_px;
      view.resize(width_px, height_px);
    }
  }

  /**
   * Replaces a view whose device is gone: WebGL 2 after WebGPU, since a device that went once tends to go again.
   * @param {View} view
   * @param {string} reason
   */
  async #recover(view, reason) {
    if (view === this.#view) {
      this.#view = undefined;
      await this.replace(reason);
    }
  }

  /**
   * Replaces all that draws.
   * @param {string} reason
   */
  async replace(reason) {
    console.warn(`graphics device lost: ${reason}`);
    this.#view?.free();
    this.#view = undefined;
    const now_ms = performance.now();
    this.#losses_ms = [...this.#losses_ms.filter((at_ms) => now_ms - at_ms < 60_000), now_ms];
    await this.open(this.#losses_ms.length > LOSSES_A_MINUTE ? [] : ["webgl2"]);
    if (this.#view !== undefined) {
      this.#events.recovered();
    }
  }
}

/**
 * @param {unknown} reason
 * @returns {boolean}
 */
export function isLoss(reason) {
  return typeof reason === "object" && reason !== null && "kind" in reason && reason.kind === "gpu_lost";
}
