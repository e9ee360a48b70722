/**
 * Presenter mode: the stage and a lesson's card big, everything else away; driven by a clicker's keys.
 */
import { LESSON_WORDS as WORDS } from "#words/lessons.js";
import { part } from "../page_parts.js";
import { button } from "./fields.js";

/**
 * @typedef {object} PresenterEvents
 * @property {(by: -1 | 1) => void} step
 * @property {(choice: number) => void} guess
 */

/** What presentation remotes send, and the keys beside them. */
const KEYS = /** @type {Record<string, -1 | 1>} */ ({
  PageDown: 1,
  ArrowRight: 1,
  ArrowDown: 1,
  PageUp: -1,
  ArrowLeft: -1,
  ArrowUp: -1,
});

/** Shown or not. */
export class Presenter {
  #frame = document.createElement("section");
  #events;
  /** @type {{ card: HTMLElement | undefined, home: Element | null, from: Element | null } | undefined} while it is shown */
  #shown;

  /** @param {PresenterEvents} events */
  constructor(events) {
    this.#events = events;
    this.#frame.className = "presenter";
    this.#frame.setAttribute("aria-label", WORDS.presenting);
    const leave = button(WORDS.leave, () => this.leave());
    leave.className = "presenter-leave";
    const keys = document.createElement("p");
    keys.className = "visually-hidden";
    keys.textContent = WORDS.keys;
    this.#frame.append(leave, keys);
    // Before the stage and whatever has the focus: a clicker is meant for the lesson, wherever that is.
    document.addEventListener("keydown", (event) => this.#keyed(event), { capture: true });
    document.addEventListener("fullscreenchange", () => {
      // The browser's own way out, which takes Escape for itself.
      if (document.fullscreenElement === null) {
        this.leave();
      }
    });
  }

  get shown() {
    return this.#shown !== undefined;
  }

  /** @param {HTMLElement} [card] what is shown beside the stage; the stage alone without one */
  enter(card) {
    if (this.#shown !== undefined) {
      return;
    }
    this.#shown = { card, home: card?.parentElement ?? null, from: document.activeElement };
    if (card !== undefined) {
      this.#frame.prepend(card);
    }
    this.#frame.classList.toggle("alone", card === undefined);
    part("main", HTMLElement).append(this.#frame);
    document.documentElement.classList.add("presenting");
    // Where the browser doesn't allow it, the window is what there is.
    document.documentElement.requestFullscreen?.().catch(() => undefined);
    const first = card?.querySelector("h3") ?? part(".presenter-leave", HTMLElement, this.#frame);
    /** @type {HTMLElement} */ (first).focus({ preventScroll: true });
  }

  leave() {
    const shown = this.#shown;
    if (shown === undefined) {
      return;
    }
    this.#shown = undefined;
    document.documentElement.classList.remove("presenting");
    if (shown.card !== undefined) {
      shown.home?.append(shown.card);
    }
    this.#frame.remove();
    if (document.fullscreenElement !== null) {
      document.exitFullscreen().catch(() => undefined);
    }
    const back = shown.from?.isConnected ? shown.from : shown.card?.querySelector(".lesson-big");
    if (back instanceof HTMLElement) {
      back.focus();
    }
    shown.card?.scrollIntoView({ block: "nearest" });
  }

  /** @param {KeyboardEvent} event */
  #keyed(event) {
    const { key, target } = event;
    if (this.#shown === undefined || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const by = KEYS[key];
    const choice = /^[1-4]$/.test(key) ? Number(key) : 0;
    // On the stage the arrows turn the top, in a list or on a slider they choose.
    const own = target instanceof Element && target.closest("#stage-view, select, input") !== null;
    if (key === "Escape") {
      this.leave();
    } else if (by !== undefined && !(own && key.startsWith("Arrow"))) {
      this.#events.step(by);
    } else if (choice > 0 && !own) {
      this.#events.guess(choice);
    } else {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }
}
