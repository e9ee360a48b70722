/**
 * Lessons: guided demonstrations with a question, ours and a teacher's own, in the page or shown big.
 */
/** @import { Bench } from "../sections.js" */
/** @import { Lesson } from "./lesson_files.js" */

import { LESSON_WORDS as WORDS } from "#words/lessons.js";
import { download, fileName, read } from "../design_files.js";
import { styleSheet } from "../style_sheet.js";
import { ProblemError, WorkshopClient } from "../workshop_client.js";
import { problemText } from "./driven_client.js";
import { button, chooser, note } from "./fields.js";
import { lessonOf, ownLessons } from "./lesson_files.js";
import { LessonRun } from "./lesson_run.js";
import { Presenter } from "./presenter.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  await styleSheet("lessons");
  const lessons = await ownLessons();
  // One of their own, which is given up in the middle of what it does as soon as another lesson is opened.
  const client = new WorkshopClient(
    new URL("../drive_worker.js", import.meta.url),
    new URL("../../wasm/drive_bg.wasm", import.meta.url),
    () => bench.say(WORDS.restarted),
  );
  const status = note("");
  status.setAttribute("role", "status");
  const list = document.createElement("ol");
  list.className = "lesson-list";
  list.setAttribute("aria-label", WORDS.list);
  const place = document.createElement("div");
  place.className = "lesson-place-of-card";

  /** @param {Lesson} lesson */
  const open = async (lesson) => {
    try {
      status.textContent = WORDS.loading;
      await run.open(lesson, lessons.length);
      status.textContent = "";
      if (!presenter.shown) {
        place.append(run.card.element);
      }
      run.begin();
    } catch (reason) {
      if (reason instanceof ProblemError) {
        status.textContent = problemText(reason.problem);
      }
    }
    mark();
  };
  const run = new LessonRun(bench, client, {
    beyond: (by, from) => {
      const next = from.number === 0 ? undefined : lessons[from.number - 1 + by];
      if (next !== undefined) {
        void open(next);
      } else if (by > 0 && !presenter.shown) {
        void run.end();
      }
    },
    big: () => presenter.enter(run.card.element),
    save: ({ json, text }) => {
      bench.say(WORDS.saved(download(fileName(text.title, ".bombatura-lesson.json"), json, "application/json")));
    },
    ended: () => {
      presenter.leave();
      const [first] = list.querySelectorAll("[aria-current]");
      run.card.element.remove();
      mark();
      (first?.querySelector("button") ?? list.querySelector("button"))?.focus();
    },
  });
  const presenter = new Presenter({
    step: (by) => (run.running ? run.step(by) : stepMode(by)),
    guess: (choice) => run.guess(choice),
  });
  const mark = () => {
    for (const [index, item] of [...list.children].entries()) {
      const current = run.running && run.card.element.isConnected && run.lesson?.number === index + 1;
      current ? item.setAttribute("aria-current", "true") : item.removeAttribute("aria-current");
    }
  };
  for (const lesson of lessons) {
    const item = document.createElement("li");
    item.append(button(lesson.text.title, () => void open(lesson)));
    list.append(item);
  }
  const file = chooser(WORDS.open_file, ".json,application/json", async (chosen) => {
    try {
      const json = await read(chosen);
      // Checked before anything is made of it.
      await client.ask("lesson", { json });
      await open(lessonOf(json));
    } catch (reason) {
      if (reason instanceof ProblemError) {
        status.textContent = problemText(reason.problem);
      }
    }
  });
  const big = button(WORDS.big_stage, () => presenter.enter(run.running ? run.card.element : undefined));
  host.append(note(WORDS.about), list, status, place, big, file, note(WORDS.file_about));
}

/**
 * Without a lesson a clicker goes through the modes.
 * @param {-1 | 1} by
 */
function stepMode(by) {
  const rows = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("#modes tbody button"));
  const at = [...rows].findIndex((row) => row.getAttribute("aria-pressed") === "true");
  rows[at + by]?.click();
}
