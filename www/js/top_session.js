/**
 * One top at work: asks the workers for what the current design needs and hands results on in a consistent order.
 *
 * While a control moves, one worker follows it on the preview mesh: each answer is a picture, its modes and the motion of the
 * mode that is looked at. A settled design gets the standard mesh from a second worker, and a third judges how sure its figures
 * are or makes the fine mesh on request; those two are stopped as soon as something newer comes. Each trial and each settling is a
 * turn; what comes in for an older turn than the one that is shown is dropped.
 */
/** @import { Design, DesignStore } from "./design_store.js" */
/** @import { MeshSize, Mode, ModeWish, Motion, Picture, Problem, Solution, Step, Surety } from "./messages.js" */
/** @import { WorkshopClient } from "./workshop_client.js" */

import { WORDS } from "#words/page.js";
import { FigureCorrection } from "./figure_correction.js";
import { chosenMode, FIRST_WISH } from "./mode_choice.js";
import { ProblemError, Superseded } from "./workshop_client.js";

/**
 * Elastic modes asked for. Standard: the lowest twenty are what plates are judged by, a few more show where they crowd.
 * Preview: what is followed goes in fours, with four that guard them.
 */
const COUNTS = { standard: 26, fine: 60 };
const FOLLOWED = [12, 20, 28];

/**
 * @typedef {object} SessionEvents
 * @property {(picture: Picture, motion?: Motion) => void} picture a new shape, with the motion that belongs to it or none yet
 * @property {(design: string) => void} design one that is about to be shown, for whatever goes with it
 * @property {(motion: Motion) => void} motion on the shape that is shown
 * @property {(solution: Solution, chosen: Mode) => void} figures
 * @property {(sureties: Surety[]) => void} sureties of the modes of the figures that came last
 * @property {(problem: Problem) => void} problem the design that was tried or opened can't be; the store's one stays
 */

/**
 * @typedef {object} Workers
 * @property {WorkshopClient} follower stays free for the next move of a handle
 * @property {() => WorkshopClient} solver started when first needed, as is the other
 * @property {() => WorkshopClient} judge for what takes long
 */

/**
 * What is shown.
 * @typedef {object} Shown
 * @property {Solution} solution
 * @property {string} design
 * @property {Mode} chosen
 * @property {readonly Surety[]} [sureties] of its modes, once known
 */

/** Turns designs into pictures, figures and motions. */
export class TopSession {
  #store;
  #workers;
  #events;
  #correction = new FigureCorrection();
  /** @type {Set<WorkshopClient>} those for what takes long, once there */
  #started = new Set();
  #turn = 0;
  #shown_turn = 0;
  /** @type {ModeWish} */
  #wish = FIRST_WISH;
  /** @type {Shown | undefined} */
  #shown;
  /** @type {Promise<unknown>} */
  #judging = Promise.resolve();
  /** @type {Set<() => void>} */
  #listeners = new Set();
  /** @type {{ step: Step, design: string } | undefined} the last answer of the follower, figures as it gave them */
  #followed;

  /**
   * @param {DesignStore} store
   * @param {Workers} workers
   * @param {SessionEvents} events
   */
  constructor(store, workers, events) {
    this.#store = store;
    this.#workers = workers;
    this.#events = events;
  }

  /**
   * @param {ModeWish} wish what to look at on the design that is settled next
   * @returns {ModeWish} what was to be looked at before
   */
  wish(wish) {
    const before = this.#wish;
    this.#wish = wish;
    return before;
  }

  /** Goes to the demonstration design: at the start, and as a step that can be undone. */
  begin() {
    return this.#guarded(async () => {
      this.#take(await this.#demonstration());
      await this.#fresh();
    });
  }

  /**
   * Takes a design up without showing it, for another to be opened over it as a step.
   * @param {string} [json] the demonstration where there is none
   * @throws {ProblemError} where it is wrong
   */
  async lay(json) {
    const accepted = json && (await this.#workers.follower.ask("open", { json }));
    this.#take(accepted ? JSON.parse(accepted) : await this.#demonstration());
  }

  /** @param {Design} design one that takes the place of whatever is tried */
  #take(design) {
    this.#store.tried = undefined;
    this.#store.settle(design);
  }

  /** @returns {Promise<Design>} */
  async #demonstration() {
    return WORDS.demonstration(JSON.parse(await this.#workers.follower.ask("demo", {})));
  }

  /** Shows the store's design after it has gone to another step. */
  revisit() {
    return this.#guarded(() => this.#fresh());
  }

  /**
   * Opens a design from outside, as text; a wrong one is a problem and changes nothing.
   * @param {string} json
   * @param {ModeWish} [wish] the mode to look at, where it is not to be the one looked at now
   * @returns {Promise<boolean>} whether it was opened
   */
  open(json, wish) {
    return this.#guarded(async () => {
      const accepted = await this.#workers.follower.ask("open", { json });
      // Its shape must be possible too before it takes the place of the current one.
      const picture = await this.#workers.follower.ask("shape", { design: accepted, size: "preview" });
      this.#take(JSON.parse(accepted));
      this.#wish = wish ?? this.#wish;
      await this.#fresh(picture);
    });
  }

  /**
   * Follows a control that is being dragged.
   * @param {Design} design
   */
  async trial(design) {
    const turn = this.#newTurn();
    this.#store.tried = design;
    // What is looked at keeps its shape, whatever its name or number becomes.
    this.#wish = this.#shown?.chosen ?? this.#wish;
    await this.#guarded(() => this.#follow(design, JSON.stringify(design), turn));
    this.#endTried(turn);
  }

  /**
   * Takes a design as it now is. One that can't be gives way to the last one that could.
   * @param {Design} design
   * @returns {Promise<boolean>} whether it could be
   */
  async settle(design) {
    const turn = this.#newTurn();
    const text = JSON.stringify(design);
    // The last trial has mostly shown already that it can be, and the step is there to undo at once.
    const shown = text === this.#store.text && this.#store.tried === undefined;
    this.#store.tried = design;
    let settled = false;
    const taken = await this.#guarded(async () => {
      if (shown || (await this.#follow(design, text, turn))) {
        this.#store.settle(design);
        settled = true;
        await this.#solve("standard", text, turn);
      }
    });
    this.#endTried(turn);
    if (!taken && turn === this.#turn) {
      if (settled) {
        this.#store.withdraw();
      } else {
        this.#store.settle(this.#store.design);
      }
      this.#events.design(this.#store.text);
      await this.#guarded(() => this.#solve("standard", this.#store.text, turn));
    }
    return taken;
  }

  /** Works the settled design out on the fine mesh, unless something newer comes or it is given up. */
  fine() {
    // How sure the standard figures are waits for the better ones.
    this.#slow(this.#workers.judge).abandon();
    return this.#guarded(() => this.#solve("fine", this.#store.text, this.#turn));
  }

  /** Gives the fine mesh up. */
  giveUpFine() {
    this.#slow(this.#workers.judge).abandon();
    if (this.#shown?.solution.size === "standard") {
      this.#judging = this.#judge(this.#shown.design, "standard");
    }
  }

  /**
   * Shows another mode of the top that is shown.
   * @param {Mode} mode
   */
  choose(mode) {
    this.#wish = mode;
    if (this.#shown !== undefined) {
      this.#shown.chosen = mode;
      this.#tell();
    }
    return this.#guarded(() => this.#fetchMotion(mode));
  }

  /** Undefined before the first. */
  get shown() {
    return this.#shown;
  }

  /** Settles once it is known how sure the figures are, or can't be known. */
  get judged() {
    return this.#judging;
  }

  /**
   * The motion of any mode of what is shown; nothing where something newer is shown by then.
   * @param {Mode} mode
   */
  async motionOf(mode) {
    const shown = this.#shown;
    if (shown === undefined) {
      return undefined;
    }
    const motion = await this.#workerOf(shown.solution.size).askBeside("motion", requestOf(shown, mode));
    return shown === this.#shown ? motion : undefined;
  }

  /**
   * @param {() => void} listener called when something else is shown, or it is known how sure its figures are
   * @returns {() => void} stops listening
   */
  subscribe(listener) {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** (mode, place): what tells the modes that are shown from each other, and from those of any top. */
  async signatures() {
    const shown = this.#shown;
    if (shown === undefined) {
      return undefined;
    }
    const { step, design } = this.#followed ?? {};
    if (shown.solution.size === "preview" && step !== undefined && design === shown.design) {
      return step.signatures;
    }
    return this.#workerOf(shown.solution.size).askBeside("signatures", requestOf(shown, shown.chosen));
  }

  /** The mode that is shown, as people say it; empty before the first. */
  get title() {
    return this.#shown === undefined ? "" : WORDS.title(this.#shown.chosen);
  }

  /**
   * (node): strain energy of the mode that is shown, per volume over its mean; nothing where something newer is shown by then or
   * where it can't be had.
   */
  async strainEnergy() {
    const shown = this.#shown;
    if (shown === undefined) {
      return undefined;
    }
    const { number } = shown.chosen;
    const request = requestOf(shown, shown.chosen);
    const energy = await this.#workerOf(shown.solution.size).askBeside("strain_energy", request);
    return shown === this.#shown && number === shown.chosen.number ? energy : undefined;
  }

  /** @param {number} turn whose edit is taken or given up; a newer one goes on from it */
  #endTried(turn) {
    if (turn === this.#turn) {
      this.#store.tried = undefined;
    }
  }

  /** Begins a turn: whatever takes long belongs to an older one and is stopped. */
  #newTurn() {
    for (const worker of this.#started) {
      worker.abandon();
    }
    this.#turn += 1;
    return this.#turn;
  }

  /**
   * The current design from the start: picture, quick figures, then the standard mesh.
   * @param {Picture} [preview] where it is there already
   */
  async #fresh(preview) {
    const turn = this.#newTurn();
    // What was tried is given up, and not taken when its answer comes.
    this.#shown_turn = turn;
    const design = this.#store.design;
    const text = this.#store.text;
    // Another design's modes have names and numbers of their own.
    this.#wish = { name: this.#wish.name, number: this.#wish.number };
    this.#events.design(text);
    // Starts while the quick figures are worked out.
    this.#workerOf("standard");
    const picture = preview ?? (await this.#workers.follower.ask("shape", { design: text, size: "preview" }));
    if (this.#isNew(turn)) {
      this.#events.picture(picture);
    }
    if (await this.#follow(design, text, turn)) {
      await this.#solve("standard", text, turn);
    }
  }

  /**
   * Shows a design as quickly as can be and takes it on trial; false when something newer is shown already.
   * @param {Design} design
   * @param {string} text
   * @param {number} turn
   */
  async #follow(design, text, turn) {
    this.#events.design(text);
    const wish = this.#wish;
    const count = FOLLOWED.find((most) => wish.number <= most) ?? FOLLOWED[0];
    const step = await this.#workers.follower.ask("follow", { design: text, size: "preview", count, wish });
    if (!this.#isNew(turn)) {
      return false;
    }
    if (text !== this.#store.text) {
      this.#store.replace(design);
    }
    this.#followed = { step, design: text };
    const set_right = this.#correction.hasSeen(step.modes);
    await this.#show({ ...step, modes: this.#correction.correct(step.modes), set_right }, text);
    return true;
  }

  /**
   * Solves and shows; false when something newer is shown already.
   * @param {"standard" | "fine"} size
   * @param {string} design
   * @param {number} turn
   */
  async #solve(size, design, turn) {
    const followed = this.#followed?.design === design ? this.#followed.step : undefined;
    const kin = followed && {
      signatures: followed.signatures,
      identities: followed.modes.map(({ identity }) => identity),
    };
    const request = { design, size, count: COUNTS[size], wish: this.#wish, kin };
    const solution = await this.#workerOf(size).ask("solve", request);
    if (!this.#isNew(turn)) {
      return false;
    }
    if (followed !== undefined && size === "standard") {
      this.#correction.learn(followed.modes, solution.modes);
      await this.#show({ ...solution, modes: this.#correction.foresee(solution.modes) }, design);
    } else {
      await this.#show(solution, design);
    }
    this.#judging = this.#judge(design, size);
    return true;
  }

  /**
   * @param {Solution} solution
   * @param {string} design
   */
  async #show(solution, design) {
    const chosen = chosenMode(solution.modes, this.#wish);
    this.#shown = { solution, design, chosen };
    this.#events.picture(solution.picture, solution.motion);
    this.#events.figures(solution, chosen);
    this.#tell();
    if (chosen.number !== solution.motion.mode) {
      await this.#fetchMotion(chosen);
    }
  }

  /**
   * Finds out how sure the figures are that are shown. Where that can't be had they stand without it.
   * @param {string} design
   * @param {"standard" | "fine"} size
   */
  async #judge(design, size) {
    const shown = this.#shown;
    const sureties = await this.#slow(this.#workers.judge).askBeside("surety", { design, size, count: COUNTS[size] });
    if (sureties !== undefined && shown === this.#shown) {
      if (size === "standard") {
        this.#correction.judge(shown?.solution.modes ?? [], sureties);
      }
      if (shown !== undefined) {
        shown.sureties = sureties;
      }
      this.#events.sureties(sureties);
      this.#tell();
    }
  }

  #tell() {
    for (const listener of this.#listeners) {
      listener();
    }
  }

  /** @param {Mode} mode of the solution that is shown */
  async #fetchMotion(mode) {
    const shown = this.#shown;
    if (shown !== undefined) {
      const motion = await this.#workerOf(shown.solution.size).ask("motion", requestOf(shown, mode));
      if (shown === this.#shown) {
        this.#events.motion(motion);
      }
    }
  }

  /**
   * @param {MeshSize} size
   * @returns {WorkshopClient} the worker that holds the modes on that mesh
   */
  #workerOf(size) {
    switch (size) {
      case "preview":
        return this.#workers.follower;
      case "standard":
        return this.#slow(this.#workers.solver);
      default:
        return this.#slow(this.#workers.judge);
    }
  }

  /** @param {() => WorkshopClient} start */
  #slow(start) {
    const worker = start();
    this.#started.add(worker);
    return worker;
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

/**
 * A request about one mode of what is shown.
 * @param {{ solution: Solution, design: string }} shown
 * @param {Mode} mode
 */
function requestOf({ solution, design }, mode) {
  const { size, proven, modes } = solution;
  return { design, size, count: modes.length, mode: mode.number, proven };
}
