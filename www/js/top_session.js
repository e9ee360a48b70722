/**
 * One top at work: asks the worker for what the current design needs and hands results on in a consistent order.
 *
 * A trial (a control being dragged) shows the preview mesh's picture at once and its figures shortly after. A settled
 * design gets the standard mesh. Each trial and each settling is a turn; what comes in for an older turn than the one
 * that is shown is dropped.
 */
/** @import { Design, DesignStore } from "./design_store.js" */
/** @import { Mode, ModeWish, Motion, Picture, Problem, Solution, Surety } from "./messages.js" */
/** @import { WorkshopClient } from "./workshop_client.js" */
import { chosenMode, FIRST_WISH } from "./mode_choice.js";
import { ProblemError, Superseded } from "./workshop_client.js";

/** Elastic modes asked for: the lowest twenty are what plates are judged by, a few more show where they crowd. */
const MODE_COUNT = 26;

/**
 * @typedef {object} SessionEvents
 * @property {(picture: Picture, motion?: Motion) => void} picture a new shape, with the motion that belongs to it or none yet
 * @property {(design: string) => void} design one that is about to be shown, for whatever goes with it
 * @property {(motion: Motion) => void} motion on the shape that is shown
 * @property {(solution: Solution, chosen: Mode) => void} figures
 * @property {(sureties: Surety[]) => void} sureties of the modes of the figures that came last
 * @property {(problem: Problem) => void} problem the design that was tried or opened can't be; the store's one stays
 */

/** Turns designs into pictures, figures and motions. */
export class TopSession {
  #store;
  #client;
  #second;
  #events;
  #turn = 0;
  #shown_turn = 0;
  /** @type {ModeWish} */
  #wish = FIRST_WISH;
  /** @type {{ solution: Solution, design: string } | undefined} */
  #shown;

  /**
   * @param {DesignStore} store
   * @param {WorkshopClient} client
   * @param {() => WorkshopClient} second started when first needed: for what takes long, so that the first stays free
   * @param {SessionEvents} events
   */
  constructor(store, client, second, events) {
    this.#store = store;
    this.#client = client;
    this.#second = second;
    this.#events = events;
  }

  /** Goes to the demonstration design: at the start, and as a step that can be undone. */
  begin() {
    return this.#guarded(async () => {
      const json = await this.#client.ask("demo", {});
      this.#store.settle(JSON.parse(json));
      await this.#fresh();
    });
  }

  /** Shows the store's design after it has gone to another step. */
  revisit() {
    return this.#guarded(() => this.#fresh());
  }

  /**
   * Opens a design from outside, as text; a wrong one is a problem and changes nothing.
   * @param {string} json
   * @returns {Promise<boolean>} whether it was opened
   */
  open(json) {
    return this.#guarded(async () => {
      const accepted = await this.#client.ask("open", { json });
      // Its shape must be possible too before it takes the place of the current one.
      const picture = await this.#client.ask("shape", { design: accepted, size: "preview" });
      this.#store.settle(JSON.parse(accepted));
      await this.#fresh(picture);
    });
  }

  /**
   * Follows a control that is being dragged.
   * @param {Design} design
   */
  async trial(design) {
    const turn = ++this.#turn;
    const text = JSON.stringify(design);
    const shaped = this.#guarded(() => this.#shape(design, text, turn));
    // Its problem, if any, is the shape's and is told once.
    const solved = this.#ask("preview", text, turn).catch(() => undefined);
    await Promise.all([shaped, solved]);
  }

  /**
   * Takes a design as it now is. One that can't be gives way to the last one that could.
   * @param {Design} design
   * @returns {Promise<boolean>} whether it could be
   */
  async settle(design) {
    const turn = ++this.#turn;
    const text = JSON.stringify(design);
    let settled = false;
    const taken = await this.#guarded(async () => {
      // The last trial has mostly shown already that it can be drawn, and the step is there to undo at once.
      if (text === this.#store.text || (await this.#shape(design, text, turn))) {
        this.#store.settle(design);
        settled = true;
        await this.#ask("standard", text, turn);
      }
    });
    if (!taken && turn === this.#turn) {
      if (settled) {
        this.#store.withdraw();
      } else {
        this.#store.settle(this.#store.design);
      }
      this.#events.design(this.#store.text);
      await this.#guarded(() => this.#ask("standard", this.#store.text, turn));
    }
    return taken;
  }

  /**
   * Shows the shape of a design and takes it on trial; false when something newer is shown already.
   * @param {Design} design
   * @param {string} text
   * @param {number} turn
   */
  async #shape(design, text, turn) {
    this.#events.design(text);
    const picture = await this.#client.ask("shape", { design: text, size: "preview" });
    const fresh = this.#isNew(turn);
    if (fresh) {
      this.#store.replace(design);
      this.#events.picture(picture);
    }
    return fresh;
  }

  /**
   * Shows another mode of the top that is shown.
   * @param {Mode} mode
   */
  choose(mode) {
    this.#wish = { name: mode.name, number: mode.number };
    return this.#guarded(() => this.#fetchMotion(mode));
  }

  /**
   * The current design from the start: picture, quick figures, then the standard mesh.
   * @param {Picture} [preview] where it is there already
   */
  async #fresh(preview) {
    const turn = ++this.#turn;
    const text = this.#store.text;
    this.#events.design(text);
    const picture = preview ?? (await this.#client.ask("shape", { design: text, size: "preview" }));
    if (this.#isNew(turn)) {
      this.#events.picture(picture);
    }
    await this.#ask("preview", text, turn);
    await this.#ask("standard", text, turn);
  }

  /**
   * Solves and shows; false when something newer is shown already.
   * @param {"preview" | "standard"} size
   * @param {string} design
   * @param {number} turn
   */
  async #ask(size, design, turn) {
    const solution = await this.#client.ask("solve", { design, size, count: MODE_COUNT, wish: this.#wish });
    if (!this.#isNew(turn)) {
      return false;
    }
    this.#shown = { solution, design };
    const chosen = chosenMode(solution.modes, this.#wish);
    this.#events.picture(solution.picture, solution.motion);
    this.#events.figures(solution, chosen);
    if (chosen.number !== solution.motion.mode) {
      await this.#fetchMotion(chosen);
    }
    if (size === "standard") {
      void this.#judge(design);
    }
    return true;
  }

  /**
   * Finds out how sure the figures are that are shown. Where that can't be had they stand without it.
   * @param {string} design
   */
  async #judge(design) {
    const shown = this.#shown;
    const request = { design, size: /** @type {const} */ ("standard"), count: MODE_COUNT };
    const sureties = await this.#second().askBeside("surety", request);
    if (sureties !== undefined && shown === this.#shown) {
      this.#events.sureties(sureties);
    }
  }

  /** @param {Mode} mode of the solution that is shown */
  async #fetchMotion(mode) {
    const shown = this.#shown;
    if (shown !== undefined) {
      const { design, solution } = shown;
      const motion = await this.#client.ask("motion", {
        design,
        size: solution.size,
        count: MODE_COUNT,
        mode: mode.number,
      });
      if (shown === this.#shown) {
        this.#events.motion(motion);
      }
    }
  }

  /**
   * Whether a turn is not older than what is shown; marks it as shown if so.
   * @param {number} turn
   */
  #isNew(turn) {
    if (turn < this.#shown_turn) {
      return false;
    }
    this.#shown_turn = turn;
    return true;
  }

  /**
   * @param {() => Promise<unknown>} work
   * @returns {Promise<boolean>} whether it went through; a problem has been told otherwise
   */
  async #guarded(work) {
    try {
      await work();
      return true;
    } catch (reason) {
      if (reason instanceof ProblemError) {
        this.#events.problem(reason.problem);
        return false;
      }
      if (reason instanceof Superseded) {
        return true;
      }
      throw reason;
    }
  }
}
