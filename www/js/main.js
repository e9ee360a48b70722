/**
 * The page's start: makes the parts and connects them. Whatever has a decision in it lives in a module of its own.
 */

import { WORDS } from "#words/page.js";
import { connectAutosave } from "./autosave.js";
import { ColourKey } from "./colour_key.js";
import { isMeasured, listenForFiles, read, save } from "./design_files.js";
import { DesignStore } from "./design_store.js";
import { FineMesh } from "./fine_mesh.js";
import { listenToHands } from "./gestures.js";
import { connectHistory } from "./history_buttons.js";
import { KeptDesigns } from "./kept_designs.js";
import { ModeTable } from "./mode_table.js";
import { connectMotionControls } from "./motion_controls.js";
import { Notices } from "./notices.js";
import { part } from "./page_parts.js";
import { ResultText } from "./result_text.js";
import { connectSections } from "./sections.js";
import { ShapeControls } from "./shape_controls.js";
import { Stage } from "./stage.js";
import { TopSession } from "./top_session.js";
import { ProblemError, Superseded, WorkshopClient } from "./workshop_client.js";

/** @import { Design } from "./design_store.js" */
/** @import { DrawingRoom } from "./drawing_room.js" */
/** @import { Measure } from "./measures.js" */
/** @import { Mode, Surety } from "./messages.js" */
/** @import { Bench } from "./sections.js" */
/** @typedef {"loading" | "top" | "modes" | "error"} PageState */

const page = document.documentElement;
const notices = new Notices();
const results = new ResultText();
const store = new DesignStore();

const restarted = () => notices.say(WORDS.restarted);

const startWorkshop = () =>
  new WorkshopClient(
    new URL("./compute_worker.js", import.meta.url),
    new URL("../wasm/compute_bg.wasm", import.meta.url),
    restarted,
  );

/** The first follows moving handles; the others do what takes long, so that it stays free. */
const workers = { follower: startWorkshop(), solver: once(startWorkshop), judge: once(startWorkshop) };

const board = once(
  () =>
    new WorkshopClient(
      new URL("./board_worker.js", import.meta.url),
      new URL("../wasm/board_bg.wasm", import.meta.url),
      restarted,
    ),
);

/** @type {DrawingRoom | undefined} */
let drawings;

/** @type {() => void} what waited for the first picture goes on */
let shown;
/** Settles with the first picture; where there is none, or none soon, all the same. */
const picture = new Promise((resolve) => {
  shown = () => resolve(undefined);
  setTimeout(shown, 5000);
});

const stage = new Stage(part("#stage-view", HTMLElement), {
  opened: (colours) => key.open(colours),
  drawn: () => {
    performance.mark("bombatura:first-top");
    reach("top");
    shown();
  },
  recovered: () => notices.say(WORDS.view_lost),
  absent: () => {
    part("#stage-message", HTMLElement).textContent = WORDS.no_view;
    part("#stage-message", HTMLElement).hidden = false;
    page.classList.add("no-view");
    shown();
  },
});

/** While it isn't known whether the design worked on last can be gone on with. */
let resuming = false;

/** @type {Measure | undefined} the control that the person moved last */
let touched;

/** @type {(sureties: readonly Surety[]) => string} what is said of the figures that came last, by how sure they are */
let settled;

const session = new TopSession(store, workers, {
  picture: (picture, motion) => stage.show(picture, motion),
  design: (design) => drawings?.follow(design),
  motion: (motion) => stage.move(motion),
  figures: (solution, chosen) => {
    modes.show(solution.modes, chosen);
    results.show(solution, chosen, store.design.rim);
    // Last: the words under the table take of its height.
    modes.reveal();
    fine.show(solution);
    page.dataset.basis = solution.size;
    delete page.dataset.surety;
    if (page.dataset.state !== "modes") {
      performance.mark("bombatura:first-modes");
      reach("modes");
    }
    if (solution.proven) {
      performance.mark(`bombatura:${solution.size}-modes`);
      settled = (sureties) => WORDS.settled(solution, chosen, sureties[chosen.number - 1]);
      notices.say(settled([]));
    }
  },
  sureties: (sureties) => {
    modes.judge(sureties);
    results.judge(sureties, stage.motion?.mode !== 0);
    notices.amend(settled([]), settled(sureties));
    page.dataset.surety = "known";
  },
  problem: (problem) => {
    controls.show(store.design);
    drawings?.goBack();
    if (page.dataset.state === "loading" && store.name === "" && !resuming) {
      page.dataset.state = "error";
    }
    notices.warn(problem, page.dataset.state === "modes" ? WORDS.design_kept : "");
    controls.mark(touched);
  },
});

const modes = new ModeTable(part("#modes", HTMLTableElement), choose);

/** @param {Mode} mode */
function choose(mode) {
  results.choose(mode);
  void session.choose(mode);
}

const fine = new FineMesh(
  () => session.fine(),
  () => session.giveUpFine(),
);

const controls = new ShapeControls(part("#measures", HTMLElement), {
  current: () => store.edited,
  trial: (design, measure) => void change(measure, () => session.trial(design)),
  settle: (design, measure) => void change(measure, () => session.settle(design)),
  not_a_number: ({ id, unit }) => notices.warn(WORDS.problems.not_a_number(WORDS.measures[id].label, unit)),
});

/** @type {Bench} */
const bench = {
  store,
  stage,
  session,
  board,
  trial,
  settle: (design) => change(undefined, () => session.settle(design)),
  choose: (mode) => {
    modes.choose(mode);
    choose(mode);
  },
  say: (text) => notices.say(text),
  warn: (problem) => notices.warn(problem, WORDS.design_kept),
  attempt: async (work) => {
    try {
      await work();
    } catch (reason) {
      if (reason instanceof ProblemError) {
        notices.warn(reason.problem, WORDS.design_kept);
        store.replace(store.design);
      } else if (!(reason instanceof Superseded)) {
        throw reason;
      }
    }
  },
};

connectSections(bench);
const key = new ColourKey(bench);

connectHistory(store, (said) => {
  notices.clear();
  notices.say(said);
  void session.revisit();
});

store.subscribe((design) => {
  controls.show(design);
  part("#design-name", HTMLElement).textContent = store.name;
});

listenToHands(part("#stage-view", HTMLElement), stage);
connectMotionControls(stage);

const dark = matchMedia("(prefers-color-scheme: dark)");
const showTheme = () => stage.hold("theme", (view) => view.set_theme(dark.matches));
showTheme();
dark.addEventListener("change", showTheme);

part("#save-design", HTMLButtonElement).addEventListener("click", () => {
  notices.say(WORDS.saved(save(store.name, store.pretty)));
});

listenForFiles(async (file) => {
  touched = undefined;
  notices.clear();
  if (isMeasured(file.name)) {
    notices.warn(WORDS.problems.measured_file, "");
    return;
  }
  try {
    if (await session.open(await read(file))) {
      notices.say(WORDS.opened(store.name));
    }
  } catch (reason) {
    if (!(reason instanceof ProblemError)) {
      throw reason;
    }
    notices.warn(reason.problem, WORDS.design_kept);
  }
});

part("#reset", HTMLButtonElement).addEventListener("click", async () => {
  notices.clear();
  if (await session.begin()) {
    notices.say(WORDS.reset);
  }
});

const kept = new KeptDesigns();
connectAutosave(store, kept);

part("#kept-designs", HTMLButtonElement).addEventListener("click", async () => {
  const { openKept } = await import("./kept_dialogue.js");
  await openKept(kept, bench);
});

void stage.open();
void begin()
  .then(() => picture)
  .then(openDrawings)
  .then(dressTop)
  .then(goOffline);

addEventListener("hashchange", () => void takeLink());

/**
 * Opens the design that the page's address carries.
 * @param {boolean} [at_start] before any other is there
 * @returns {Promise<boolean>} false where it carries none, or none that can be
 */
async function takeLink(at_start = false) {
  if (!location.hash.startsWith("#design=")) {
    return false;
  }
  try {
    const { openLink } = await import("./opened_link.js");
    return await openLink(bench, kept, at_start);
  } catch (reason) {
    console.error(reason);
    notices.say(WORDS.not_loaded);
    return false;
  }
}

/** Goes on with what was worked on last, or begins with the demonstration. */
async function begin() {
  resuming = true;
  if (await takeLink(true)) {
    resuming = false;
    return;
  }
  // A browser that keeps nothing has nothing to go on with.
  const text = await kept.now().catch(() => undefined);
  resuming = text !== undefined;
  const resumed = text !== undefined && (await session.open(text));
  resuming = false;
  if (resumed) {
    notices.say(WORDS.resumed(store.name));
    return;
  }
  if (text !== undefined) {
    // The alert has said what is wrong with it. The next step would take its place.
    await kept.keep(WORDS.unread_design, text).catch(() => undefined);
  }
  await session.begin();
}

async function openDrawings() {
  const { DrawingRoom } = await import("./drawing_room.js");
  drawings = new DrawingRoom(board(), {
    current: () => store.edited,
    trial,
    settle: (design) => void change(undefined, () => session.settle(design)),
    saved: (file) => notices.say(WORDS.saved(file)),
  });
  drawings.follow(store.text);
}

/** @param {Design} design */
function trial(design) {
  void change(undefined, () => session.trial(design));
}

/** What the top is read without. */
async function dressTop() {
  const { dress } = await import("./surroundings.js");
  dress(stage);
  await controls.sketch();
}

/** What the page can do without a network. */
async function goOffline() {
  const { keepOffline } = await import("./offline.js");
  await keepOffline(bench.say, part("#stage-view", HTMLElement).dataset.backend ?? "none");
}

/**
 * @template T
 * @param {Measure | undefined} measure
 * @param {() => Promise<T>} work
 */
function change(measure, work) {
  touched = measure;
  notices.clear();
  controls.mark(undefined);
  return work();
}

/**
 * Makes something when it is first asked for.
 * @template T
 * @param {() => T} make
 * @returns {() => T}
 */
function once(make) {
  /** @type {{ made: T } | undefined} */
  let kept;
  return () => {
    kept ??= { made: make() };
    return kept.made;
  };
}

/**
 * The page's state only ever moves forward; modes can be there before the first picture, or without any.
 * @param {PageState} state
 */
function reach(state) {
  if (page.dataset.state !== "modes") {
    page.dataset.state = state;
  }
}
