/**
 * Opens the design of a link as a step that can be undone. What was worked on before is not lost with the window: it is kept under a
 * name, unless it is so already.
 */
/** @import { Look } from "./design_link.js" */
/** @import { KeptDesigns } from "./kept_designs.js" */
/** @import { Bench } from "./sections.js" */

import { LINK_WORDS as WORDS } from "#words/link.js";
import { WORDS as PAGE_WORDS } from "#words/page.js";
import { colourBy } from "./colour_choice.js";
import { readLink } from "./design_link.js";
import { ProblemError } from "./workshop_client.js";

/**
 * Takes the link out of the page's address, so that a reload goes on with what is worked on then.
 * @param {Bench} bench
 * @param {KeptDesigns} kept
 * @param {boolean} at_start before any design is there
 * @returns {Promise<boolean>} whether it was opened; otherwise it was told why not, and the design stays
 */
export async function openLink(bench, kept, at_start) {
  const fragment = location.hash;
  history.replaceState(history.state, "", `${location.pathname}${location.search}`);
  const { session, store } = bench;
  try {
    const { design, look } = await readLink(fragment);
    const text = JSON.stringify(design);
    const before = await kept.now().catch(() => undefined);
    if (at_start) {
      await lay(bench, kept, before);
    }
    const is_changed = before !== undefined && store.text !== text;
    // First, for what is worked on next takes the place of what was.
    const copy = is_changed ? await keep(kept, store.text, store.name) : undefined;
    const give_up = standWhere(look, bench, text);
    if (!(await session.open(text, look.mode))) {
      give_up();
      await copy?.remove();
      return false;
    }
    if (look.colour !== undefined) {
      colourBy(look.colour);
    }
    bench.say(WORDS.opened(store.name, copy !== undefined));
    return true;
  } catch (reason) {
    if (!(reason instanceof ProblemError)) {
      throw reason;
    }
    bench.warn(reason.problem);
    return false;
  }
}

/**
 * Takes up what was worked on last, or the demonstration, for the link's design to come over it.
 * @param {Bench} bench
 * @param {KeptDesigns} kept
 * @param {string | undefined} before
 */
async function lay({ session }, kept, before) {
  try {
    await session.lay(before);
  } catch (reason) {
    if (!(reason instanceof ProblemError) || before === undefined) {
      throw reason;
    }
    await kept.keep(PAGE_WORDS.unread_design, before).catch(() => undefined);
    await session.lay();
  }
}

/**
 * @param {KeptDesigns} kept
 * @param {string} text
 * @param {string} name
 * @returns {Promise<{ remove: () => Promise<unknown> } | undefined>} what undoes it; undefined where this browser keeps nothing
 */
async function keep(kept, text, name) {
  try {
    if ((await kept.list()).some((one) => one.text === text)) {
      return { remove: async () => undefined };
    }
    const id = Number(await kept.keep(WORDS.before(name), text));
    return { remove: () => kept.remove(id) };
  } catch {
    return undefined;
  }
}

/**
 * Stands where the link says, as soon as its top is on a view, which may open later than the link.
 * @param {Look} look
 * @param {Bench} bench
 * @param {string} text of the link's design
 * @returns {() => void} gives it up
 */
function standWhere({ pose }, { stage, store }, text) {
  const stop = stage.listen("picture", () => {
    if (store.text === text && pose !== undefined) {
      stage.look((view) => {
        view.set_pose(Float32Array.from(pose));
        stop();
      });
    }
  });
  return stop;
}
