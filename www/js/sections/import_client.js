/**
 * The page's side of reading a measured file: a worker for each, ended when it has answered or is not wanted any more.
 */
/** @import { ImportFit, ImportReply, ImportRequest } from "./import_messages.js" */

import { MEASURED_WORDS } from "#words/measured.js";
import { ProblemError, Superseded } from "../workshop_client.js";

/** The file, its copy in the worker's memory and its points stay together below 1 GB. */
const LIMIT_MB = 200;

/** Reads one file at a time; a newer one ends the reading of the one before. */
export class ImportClient {
  /** @type {(() => void) | undefined} */
  #end;

  /**
   * @param {ImportRequest} request
   * @returns {Promise<ImportFit>} rejects with ProblemError, or Superseded where it was stopped
   */
  read(request) {
    this.stop();
    return new Promise((resolve, reject) => {
      if (request.file.size > LIMIT_MB * 1_000_000) {
        reject(new ProblemError(MEASURED_WORDS.too_large(LIMIT_MB)));
        return;
      }
      const worker = new Worker(new URL("./import_worker.js", import.meta.url), { type: "module" });
      const ended = (/** @type {() => void} */ tell) => {
        worker.terminate();
        this.#end = undefined;
        tell();
      };
      const failed = (/** @type {string} */ text) => {
        console.warn(`reading failed: ${text}`);
        ended(() => reject(new ProblemError(MEASURED_WORDS.failed)));
      };
      this.#end = () => ended(() => reject(new Superseded()));
      worker.addEventListener("message", (/** @type {MessageEvent<ImportReply>} */ { data }) => {
        if (data.outcome === "done") {
          ended(() => resolve(data.fit));
        } else if (data.outcome === "problem") {
          ended(() => reject(new ProblemError(data.problem)));
        } else {
          failed(data.text);
        }
      });
      worker.addEventListener("error", (event) => failed(event.message));
      worker.postMessage(request);
    });
  }

  /** Stops the reading that goes on, if any. */
  stop() {
    this.#end?.();
  }
}
