/**
 * A lesson under way: its designs on the stage, its steps, what the model makes of it.
 */
/** @import { Design } from "../design_store.js" */
/** @import { LessonDesigns, LessonOutcome } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { WorkshopClient } from "../workshop_client.js" */
/** @import { Lesson, Look } from "./lesson_files.js" */

import { LESSON_WORDS as WORDS } from "#words/lessons.js";
import { ProblemError, Superseded } from "../workshop_client.js";
import { problemText } from "./driven_client.js";
import { inBetween, sameKeys } from "./in_between.js";
import { LessonCard, STEPS } from "./lesson_card.js";
import { LessonLook } from "./lesson_look.js";
import { OwnDesign } from "./own_design.js";

/** Designs shown between the two, for those who don't mind motion: as many as take a moment. */
const IN_BETWEEN = 10;

/**
 * @typedef {object} RunEvents
 * @property {(by: -1 | 1, from: Lesson) => void} beyond the lesson's first or last step was passed
 * @property {() => void} big
 * @property {(lesson: Lesson) => void} save
 * @property {() => void} ended
 */

/** One lesson at a time. */
export class LessonRun {
  card;
  #bench;
  #client;
  #events;
  #look;
  #own;
  #count = 0;
  #step = 0;
  /** @type {{ lesson: Lesson, before: Design, after: Design } | undefined} */
  #current;
  /** @type {Design | undefined} which of its designs was put on the stage last */
  #asked;
  /** @type {Promise<LessonOutcome | undefined> | undefined} nothing once another lesson was opened */
  #outcome;
  /** What is under way; whatever belongs to an older number is dropped. */
  #turn = 0;

  /**
   * @param {Bench} bench
   * @param {WorkshopClient} client of the lessons alone
   * @param {RunEvents} events
   */
  constructor(bench, client, events) {
    this.#bench = bench;
    this.#client = client;
    this.#events = events;
    this.#look = new LessonLook(bench, client);
    this.#own = new OwnDesign(bench, () => this.card.warn(WORDS.edited));
    this.card = new LessonCard({
      step: (by) => this.step(by),
      guess: (choice) => this.guess(choice),
      end: () => void this.end(),
      big: () => events.big(),
      save: (lesson) => events.save(lesson),
    });
  }

  /** The one under way. */
  get lesson() {
    return this.#current?.lesson;
  }

  get running() {
    return this.#current !== undefined;
  }

  /**
   * Makes a lesson ready to begin.
   * @param {Lesson} lesson
   * @param {number} count of lessons in the list
   * @throws {ProblemError} for one that can't be; then everything stays as it was
   */
  async open(lesson, count) {
    this.#client.abandon();
    const designs = await this.#client.ask("lesson", { json: lesson.json });
    this.#turn += 1;
    this.#count = count;
    this.#asked = this.#outcome = undefined;
    this.#current = { lesson, ...named(designs, lesson) };
  }

  /** Shows its first step. */
  begin() {
    void this.#go(0);
  }

  /** @param {-1 | 1} by */
  step(by) {
    const current = this.#current;
    const step = this.#step + by;
    if (current !== undefined && (step < 0 || step >= STEPS)) {
      this.#events.beyond(by, current.lesson);
    } else {
      void this.#go(step);
    }
  }

  /** @param {number} choice from 1; nothing where no question is asked */
  guess(choice) {
    if (this.#step === 1 && choice <= (this.#current?.lesson.text.choices.length ?? 0)) {
      void this.#go(2, choice);
    }
  }

  /** Ends the lesson and brings the person's own design back. */
  async end() {
    if (this.#current !== undefined) {
      this.#current = undefined;
      this.#turn += 1;
      this.#client.abandon();
      this.#look.undress();
      const back = this.#own.bringBack();
      this.#events.ended();
      this.#bench.say(WORDS.ended(await back));
    }
  }

  /**
   * @param {number} step
   * @param {number} [guess]
   */
  async #go(step, guess) {
    const current = this.#current;
    if (current === undefined) {
      return;
    }
    this.#step = step;
    const { lesson, before, after } = current;
    this.card.show(lesson, this.#count, step, guess);
    const { look, then_look = look } = lesson.document;
    const wanted = step === 2 ? after : before;
    try {
      if (wanted !== this.#asked) {
        this.#asked = wanted;
        this.#turn += 1;
        await (step === 2 ? this.#put(after, before, then_look) : this.#put(before, undefined, look));
      }
      const turn = this.#turn;
      if (current !== this.#current) {
        return;
      }
      // Worked out while people look and guess.
      this.#outcome ??= this.#workOut(lesson);
      const outcome = await this.#outcome;
      if (turn === this.#turn && this.#step === 2) {
        this.card.tell(lesson, outcome);
      }
    } catch (reason) {
      if (reason instanceof ProblemError && current === this.#current) {
        this.card.warn(problemText(reason.problem));
        this.card.tell(lesson, undefined);
      } else if (!(reason instanceof ProblemError || reason instanceof Superseded)) {
        throw reason;
      }
    }
  }

  /**
   * @param {Design} design
   * @param {Design | undefined} from where it comes from, to be seen changing
   * @param {Look} look
   */
  async #put(design, from, look) {
    const turn = this.#turn;
    const { store, session, settle } = this.#bench;
    const current = this.#current;
    const expected = current === undefined ? [] : [current.before, current.after].map((own) => JSON.stringify(own));
    await this.#own.change(async () => {
      this.#look.dress(look);
      if (from !== undefined && store.text === JSON.stringify(from) && look === current?.lesson.document.look) {
        // What is looked at goes on with its shape.
        const moving = sameKeys(from, design) && !matchMedia("(prefers-reduced-motion: reduce)").matches;
        const steps = moving ? IN_BETWEEN : 1;
        for (let at = 1; at <= steps && turn === this.#turn; at += 1) {
          await session.trial(inBetween(from, design, at / steps));
        }
      } else {
        this.#look.wish(look);
      }
      if (turn === this.#turn) {
        await settle(design);
      }
    }, expected);
    if (turn === this.#turn) {
      await this.#look.drive(look, JSON.stringify(design));
    }
  }

  /** @param {Lesson} lesson */
  async #workOut({ json }) {
    try {
      return await this.#client.ask("lesson_outcome", { json });
    } catch (reason) {
      if (reason instanceof Superseded) {
        return undefined;
      }
      throw reason;
    }
  }
}

/**
 * @param {LessonDesigns} designs
 * @param {Lesson} lesson
 * @returns {{ before: Design, after: Design }} under the lesson's name, as the page shows it
 */
function named({ before, after }, { text }) {
  const own = { name: text.title, note: WORDS.lesson_note };
  return { before: { ...JSON.parse(before), ...own }, after: { ...JSON.parse(after), ...own } };
}
