/** @import { Problem } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { DRIVE_WORDS } from "#words/drive.js";
import { told } from "#words/problems.js";
import { WorkshopClient } from "../workshop_client.js";

/** @type {WorkshopClient | undefined} */
let client;

/**
 * The worker that knows how the top answers forces; one for all sections, started by the first that asks.
 * @param {Bench} bench
 */
export function driven({ say }) {
  client ??= new WorkshopClient(
    new URL("../drive_worker.js", import.meta.url),
    new URL("../../wasm/drive_bg.wasm", import.meta.url),
    () => say(DRIVE_WORDS.restarted),
  );
  return client;
}

/**
 * A problem as it stands in a section; the page's alert is for the design.
 * @param {Problem} problem
 */
export function problemText(problem) {
  const { message, remedy, english = "" } = told(problem);
  return [message, remedy, english === "" ? "" : `(${english})`].filter((part) => part !== "").join(" ");
}
