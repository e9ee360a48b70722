/**
 * A lesson's card: what one sees, the question with its answers, and what came of it.
 */
/** @import { LessonOutcome } from "../messages.js" */
/** @import { Lesson } from "./lesson_files.js" */

import { LESSON_WORDS as WORDS } from "#words/lessons.js";
import { button, note } from "./fields.js";
import { namedRow } from "./tables.js";

/** Look, question, answer. */
export const STEPS = 3;

/**
 * @typedef {object} CardEvents
 * @property {(by: -1 | 1) => void} step
 * @property {(choice: number) => void} guess from 1
 * @property {() => void} end
 * @property {() => void} big
 * @property {(lesson: Lesson) => void} save
 */

/** Shows one step of one lesson at a time, and knows no designs. */
export class LessonCard {
  /** To be laid into the page. */
  element = document.createElement("article");
  #place = text("p", "lesson-place");
  #title = document.createElement("h3");
  #see = text("p", "lesson-see");
  #ask = text("div", "lesson-ask");
  #question = text("p", "lesson-question");
  #choices = document.createElement("fieldset");
  #answer = text("div", "lesson-answer");
  #verdict = text("p", "lesson-verdict");
  #change = text("p", "lesson-change");
  #progress = document.createElement("progress");
  #figures = text("div", "lesson-figures");
  #why = text("p", "lesson-why");
  #problem = text("p", "lesson-problem");
  #said = text("p", "visually-hidden");
  #back;
  #next;
  /** What is of no use while the lesson is shown big. */
  #aside = text("div", "lesson-aside");
  #events;

  /** @param {CardEvents} events */
  constructor(events) {
    this.#events = events;
    this.#back = button(WORDS.back, () => events.step(-1));
    this.#next = button("", () => events.step(1));
    this.#next.className = "lesson-next";
    const steps = text("div", "lesson-steps");
    steps.append(this.#back, this.#next);
    this.#title.id = "lesson-title";
    this.element.className = "lesson-card";
    this.element.setAttribute("aria-labelledby", this.#title.id);
    // What is asked and answered gets the focus, so that it is read, and Tab goes on from there.
    this.#question.tabIndex = this.#verdict.tabIndex = this.#title.tabIndex = -1;
    this.#said.setAttribute("role", "status");
    this.#progress.setAttribute("aria-label", WORDS.working);
    const legend = text("legend", "visually-hidden");
    legend.textContent = WORDS.choices;
    this.#choices.append(legend);
    this.#ask.append(this.#question, this.#choices);
    this.#answer.append(this.#verdict, this.#change, this.#progress, this.#figures, this.#why);
    this.element.append(
      this.#place,
      this.#title,
      this.#see,
      this.#ask,
      this.#answer,
      this.#problem,
      steps,
      this.#aside,
      this.#said,
    );
  }

  /**
   * @param {Lesson} lesson
   * @param {number} count of lessons in the list
   * @param {number} step from 0
   * @param {number} [guess] the choice that was guessed, from 1
   */
  show(lesson, count, step, guess) {
    const { text: says, document: lesson_document } = lesson;
    for (const own of [this.#title, this.#see, this.#ask, this.#change, this.#why]) {
      own.lang = lesson.language;
    }
    this.#place.textContent = WORDS.place(lesson.number, count, step + 1, STEPS);
    this.#title.textContent = says.title;
    this.#see.textContent = says.see;
    this.#see.hidden = step === 2;
    this.#ask.hidden = step !== 1;
    this.#answer.hidden = step !== 2;
    this.#question.textContent = says.question;
    const choices = says.choices.map((choice, index) => button(choice, () => this.#events.guess(index + 1)));
    this.#choices.replaceChildren(this.#choices.children[0], ...choices);
    const right = says.choices[lesson_document.right - 1];
    this.#verdict.textContent =
      guess === undefined ? WORDS.unguessed(right) : guess === lesson_document.right ? WORDS.right : WORDS.wrong(right);
    this.#verdict.dataset.right = String(guess === lesson_document.right);
    this.#change.textContent = says.change;
    this.#why.textContent = says.why;
    this.#figures.replaceChildren();
    this.#progress.hidden = false;
    this.#problem.textContent = "";
    this.#back.setAttribute("aria-disabled", String(step === 0 && lesson.number <= 1));
    const last = step === STEPS - 1 && (lesson.number === 0 || lesson.number === count);
    this.#next.textContent = last ? WORDS.end : WORDS.next[step];
    const end = button(WORDS.end, this.#events.end);
    const big = button(WORDS.big, this.#events.big);
    big.className = "lesson-big";
    this.#aside.replaceChildren(
      big,
      end,
      button(WORDS.save, () => this.#events.save(lesson)),
    );
    const heading = step === 0 ? this.#title : step === 1 ? this.#question : this.#verdict;
    this.say(step === 0 ? `${says.title}. ${says.see}` : `${heading.textContent} ${step === 2 ? says.change : ""}`);
    if (this.element.isConnected) {
      heading.focus({ preventScroll: true });
      this.element.scrollIntoView({ block: "nearest" });
    }
  }

  /**
   * @param {Lesson} lesson
   * @param {LessonOutcome | undefined} outcome nothing where it can't be had
   */
  tell({ document: { claim } }, outcome) {
    this.#progress.hidden = true;
    if (outcome === undefined) {
      return;
    }
    const { before, after, unit, shown } = outcome;
    const value = (/** @type {typeof before} */ of) => WORDS.value(of.value, of.sure_within, unit);
    const { common, first, last } = readBy(claim);
    const table = document.createElement("table");
    const caption = WORDS.figure(claim.figure, common);
    table.createCaption().textContent = caption;
    const body = table.createTBody();
    namedRow(body, first).insertCell().textContent = value(before);
    namedRow(body, last).insertCell().textContent = value(after);
    const change = text("p", "lesson-outcome");
    change.textContent = WORDS.change(outcome);
    this.#figures.replaceChildren(table, change, note(outcome.same_board ? WORDS.sure_about : WORDS.sure_apart));
    if (!shown) {
      const doubt = text("p", "lesson-doubt");
      doubt.textContent = WORDS.not_shown;
      this.#figures.append(doubt);
    }
    this.say(`${caption}: ${first} ${value(before)}, ${last} ${value(after)}. ${change.textContent}`);
  }

  /** @param {string} problem what could not be done */
  warn(problem) {
    this.#problem.textContent = problem;
    this.say(problem);
  }

  /** @param {string} words for a screen reader */
  say(words) {
    this.#said.textContent = words;
  }
}

/**
 * What both readings of a figure have in common, and what tells them apart.
 * @param {Lesson["document"]["claim"]} claim
 */
function readBy({ mode, hz, region, push, then = {} }) {
  const given = Object.entries({ mode, hz, region, push }).filter(([, value]) => value !== undefined);
  const by = /** @type {Record<string, string | number>} */ (Object.fromEntries(given));
  const differing = Object.keys(then);
  const told = (/** @type {Record<string, string | number>} */ from) =>
    differing.map((key) => WORDS.read_by(key, from[key])).join(", ");
  const [before, after] = WORDS.before_and_after;
  return {
    common: Object.fromEntries(Object.entries(by).filter(([key]) => !differing.includes(key))),
    first: differing.length === 0 ? before : told(by),
    last: differing.length === 0 ? after : told(then),
  };
}

/**
 * @param {string} element
 * @param {string} name of its class
 */
function text(element, name) {
  const made = document.createElement(element);
  made.className = name;
  return made;
}
