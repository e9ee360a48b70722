/**
 * Another top on the stage, beside the stage's own or over it with a divider: a view of its own that stands where the stage's does
 * and is drawn in the same frame, at the same phase.
 */
/** @import { Motion, Picture } from "../messages.js" */
/** @import { Beside, Stage } from "../stage.js" */
/** @import { Backend, View } from "../view_backends.js" */

import { COMPARE_WORDS as WORDS } from "#words/compare.js";
import { isLoss } from "../stage.js";
import { surroundingsOf } from "../surroundings.js";
import { openView } from "../view_backends.js";

/** @typedef {"side" | "swipe"} Layout */

/** Steps of the divider by a key, per cent of the stage's width. */
const KEYS = /** @type {Record<string, number>} */ ({
  ArrowLeft: -2,
  ArrowDown: -2,
  ArrowRight: 2,
  ArrowUp: 2,
  PageDown: -10,
  PageUp: 10,
  Home: -100,
  End: 100,
});

/** @implements {Beside} */
export class SecondTop {
  #stage;
  #host;
  #frame = document.createElement("div");
  #divider = document.createElement("div");
  #captions = [document.createElement("p"), document.createElement("p")];
  #layout = /** @type {Layout} */ ("side");
  #divided_pct = 50;
  /** @type {View | undefined} */
  #view;
  /** Of the views that were opened, so that one that comes too late is put away. */
  #opened = 0;
  #size_px = [0, 0];
  /** @type {Picture | undefined} */
  #picture;
  /** @type {Motion | undefined} */
  #motion;
  #shares = /** @type {[number, number]} */ ([1, 1]);
  /** @type {(by: string) => Promise<Float32Array | undefined>} */
  #scalar = async () => undefined;
  #active = false;

  /**
   * @param {Stage} stage
   * @param {HTMLElement} host the stage's element
   */
  constructor(stage, host) {
    this.#stage = stage;
    this.#host = host;
    this.#frame.className = "second-top";
    this.#divider.className = "divider";
    this.#divider.setAttribute("role", "slider");
    this.#divider.setAttribute("aria-label", WORDS.divider);
    this.#divider.setAttribute("aria-valuemin", "0");
    this.#divider.setAttribute("aria-valuemax", "100");
    this.#divider.tabIndex = 0;
    this.#captions.forEach((caption, at) => {
      caption.className = at === 0 ? "top-caption other" : "top-caption own";
    });
    this.#listenToDivider();
  }

  get across() {
    return this.#layout === "side" ? 0.5 : 1;
  }

  /** Of the exaggeration, for the stage's own motion. */
  get share() {
    return this.#shares[1];
  }

  get picture() {
    return this.#picture;
  }

  /** @param {string} by */
  scalar(by) {
    return this.#scalar(by);
  }

  /** @param {(by: string) => Promise<Float32Array | undefined>} values (node) of the top that is shown */
  colourWith(values) {
    this.#scalar = values;
  }

  /** @param {Layout} layout */
  lay(layout) {
    this.#layout = layout;
    this.#dress();
    this.#stage.refit();
  }

  /**
   * @param {Picture} picture
   * @param {Motion | undefined} motion on it; none leaves it at rest
   * @param {[number, number]} shares of the exaggeration with which this and the stage's own motion are drawn
   */
  show(picture, motion, shares) {
    const fresh = picture !== this.#picture;
    this.#picture = picture;
    this.#motion = motion;
    this.#shares = shares;
    if (fresh) {
      this.#sendPicture();
      this.#stage.refit();
    }
    this.#sendMotion();
    if (!this.#active) {
      this.#active = true;
      this.#host.append(this.#frame, this.#divider, ...this.#captions);
      this.#dress();
      this.#stage.accompany(this);
    }
    this.#stage.tellBeside();
  }

  /**
   * @param {readonly string[]} other lines
   * @param {readonly string[]} own
   */
  caption(other, own) {
    for (const [at, lines] of [other, own].entries()) {
      const spans = lines.map((text) => {
        const line = document.createElement("span");
        line.textContent = text;
        return line;
      });
      this.#captions[at].replaceChildren(...spans);
    }
  }

  get said() {
    return [...this.#captions[0].children].map((line) => line.textContent).join(", ");
  }

  /** Leaves the stage to its own top. */
  leave() {
    if (this.#active) {
      this.#active = false;
      this.#opened += 1;
      this.#stage.accompany(undefined);
      this.#putAway();
      this.#picture = this.#motion = undefined;
      for (const part of [this.#frame, this.#divider, ...this.#captions]) {
        part.remove();
      }
      delete this.#host.dataset.beside;
      this.#stage.tellBeside();
    }
  }

  /** @param {Backend} backend */
  async open(backend) {
    this.#opened += 1;
    const number = this.#opened;
    this.#putAway();
    const open = await openView(this.#frame, [backend]);
    if (number !== this.#opened) {
      open?.view.free();
      return;
    }
    if (open === undefined) {
      this.caption([WORDS.not_drawn], []);
      return;
    }
    const { view } = open;
    this.#view = view;
    this.#size_px = [0, 0];
    view.on_lost((reason) => {
      if (view === this.#view) {
        // Both have to be of one kind to stand in one place, so both are replaced.
        this.#view = undefined;
        void this.#stage.replace(reason);
      }
    });
    for (const tell of this.#stage.held) {
      this.tell(tell);
    }
    this.#sendPicture();
    this.#sendMotion();
    this.#stage.refit();
    this.#stage.tellBeside();
  }

  /** @param {(view: View) => void} what */
  tell(what) {
    if (this.#view === undefined) {
      return;
    }
    try {
      what(this.#view);
    } catch (reason) {
      if (!isLoss(reason)) {
        throw reason;
      }
    }
  }

  /** @param {View} own */
  makeRoom(own) {
    if (this.#picture !== undefined) {
      this.tell((view) => own.make_room_for(view));
    }
  }

  /**
   * @param {View} own
   * @param {number} phase_rad
   * @param {number} exaggeration_mm
   * @param {[number, number]} size_px
   */
  draw(own, phase_rad, exaggeration_mm, size_px) {
    this.tell((view) => {
      if (size_px[0] !== this.#size_px[0] || size_px[1] !== this.#size_px[1]) {
        this.#size_px = [...size_px];
        view.resize(...size_px);
      }
      view.look_along_with(own);
      view.draw(phase_rad, exaggeration_mm * this.#shares[0]);
    });
  }

  /**
   * @param {CanvasRenderingContext2D} ink
   * @param {number} width_px
   * @param {number} height_px
   */
  copy(ink, width_px, height_px) {
    const canvas = this.#frame.querySelector("canvas");
    const edge_px = (width_px * this.#shown_pct) / 100;
    if (canvas !== null) {
      const share = edge_px / (width_px * this.across);
      ink.drawImage(canvas, 0, 0, canvas.width * share, canvas.height, 0, 0, edge_px, height_px);
    }
    ink.fillStyle = getComputedStyle(this.#host).getPropertyValue("--line-strong");
    ink.fillRect(edge_px - 1, 0, 2, height_px);
  }

  #putAway() {
    const view = this.#view;
    this.#view = undefined;
    view?.free();
  }

  #sendPicture() {
    const picture = this.#picture;
    if (picture !== undefined) {
      this.tell((view) => view.set_picture(picture.positions, picture.normals, picture.triangles, picture.kinds));
      void this.#sendSurroundings(picture);
    }
  }

  #sendMotion() {
    if (this.#picture !== undefined) {
      const rest = new Float32Array(this.#motion === undefined ? 2 * this.#picture.positions.length : 0);
      this.tell((view) => view.set_motion(this.#motion?.re ?? rest, this.#motion?.im ?? rest));
    }
  }

  /** @param {Picture} picture */
  async #sendSurroundings(picture) {
    const surroundings = await surroundingsOf(picture);
    if (picture === this.#picture) {
      this.tell((view) => view.set_surroundings(surroundings));
      this.#stage.refit();
    }
  }

  #dress() {
    if (this.#active) {
      this.#host.dataset.beside = this.#layout;
      this.#divider.hidden = this.#layout === "side";
      this.#divide(this.#divided_pct);
    }
  }

  /** Of the stage's width, what shows the other top. */
  get #shown_pct() {
    return this.#layout === "side" ? 50 : this.#divided_pct;
  }

  /** @param {number} pct of the stage's width that shows the other top, where one is over the other */
  #divide(pct) {
    this.#divided_pct = Math.min(Math.max(pct, 0), 100);
    const now = this.#shown_pct;
    this.#host.style.setProperty("--divided", `${now}%`);
    this.#divider.setAttribute("aria-valuenow", now.toFixed(0));
    this.#divider.setAttribute("aria-valuetext", WORDS.divided(now));
  }

  #listenToDivider() {
    const divider = this.#divider;
    divider.addEventListener("keydown", (event) => {
      const step = KEYS[event.key];
      if (step !== undefined && !event.ctrlKey && !event.metaKey && !event.altKey) {
        event.preventDefault();
        // The stage would turn the top.
        event.stopPropagation();
        this.#divide(this.#divided_pct + step);
      }
    });
    divider.addEventListener("pointerdown", (event) => {
      event.stopPropagation();
      divider.setPointerCapture(event.pointerId);
    });
    divider.addEventListener("pointermove", (event) => {
      event.stopPropagation();
      if (divider.hasPointerCapture(event.pointerId)) {
        const box = this.#host.getBoundingClientRect();
        this.#divide((100 * (event.clientX - box.left)) / box.width);
      }
    });
    for (const moment of /** @type {const} */ (["pointerup", "dblclick"])) {
      divider.addEventListener(moment, (event) => event.stopPropagation());
    }
  }
}
