/** @import { Bench } from "../sections.js" */
import { WorkshopClient } from "../workshop_client.js";
import { DRIVE_WORDS } from "./drive_words.js";

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
