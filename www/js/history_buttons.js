/**
 * Undo and redo: two buttons and the usual keys.
 */
/** @import { DesignStore } from "./design_store.js" */

import { WORDS } from "#words/page.js";
import { part } from "./page_parts.js";

/**
 * @param {DesignStore} store
 * @param {(said: string) => void} moved called after the store has gone to another design
 */
export function connectHistory(store, moved) {
  const undo = part("#undo", HTMLButtonElement);
  const redo = part("#redo", HTMLButtonElement);
  const back = () => store.undo() && moved(WORDS.undone(store.steps_back));
  const forth = () => store.redo() && moved(WORDS.redone(store.steps_forth));
  undo.addEventListener("click", back);
  redo.addEventListener("click", forth);
  store.subscribe(() => {
    // A disabled button would lose the focus to the page's start.
    undo.setAttribute("aria-disabled", String(store.steps_back === 0));
    redo.setAttribute("aria-disabled", String(store.steps_forth === 0));
  });
  document.addEventListener("keydown", (event) => {
    const wish = historyWish(event);
    if (wish !== undefined && !isBeingTyped(event.target)) {
      event.preventDefault();
      wish === "undo" ? back() : forth();
    }
  });
}

/**
 * @param {{ key: string, ctrlKey: boolean, metaKey: boolean, shiftKey: boolean, altKey: boolean }} event
 * @returns {"undo" | "redo" | undefined}
 */
export function historyWish({ key, ctrlKey, metaKey, shiftKey, altKey }) {
  if (ctrlKey === metaKey || altKey || key.toLowerCase() !== "z") {
    return undefined;
  }
  return shiftKey ? "redo" : "undo";
}

/**
 * Whether a number is half typed: its own undo comes first.
 * @param {EventTarget | null} target
 */
function isBeingTyped(target) {
  return target instanceof HTMLInputElement && target.type === "number" && target.value !== target.defaultValue;
}
