/**
 * Reads one measured file. A scan takes hundreds of megabytes that a wasm memory never gives back, so each file has a worker of
 * its own, which ends with it, while the compute worker goes on answering.
 */
/** @import { ImportReply, ImportRequest } from "./import_messages.js" */
import init, { read_heights, read_outline } from "../../wasm/board.js";

self.addEventListener("message", async (/** @type {MessageEvent<ImportRequest>} */ { data }) => {
  self.postMessage(await reply(data));
});

/**
 * @param {ImportRequest} request
 * @returns {Promise<ImportReply>}
 */
async function reply({ kind, design, file, wishes }) {
  try {
    await init({ module_or_path: new URL("../../wasm/board_bg.wasm", import.meta.url) });
    const bytes = new Uint8Array(await file.arrayBuffer());
    const fit =
      kind === "outline" ? read_outline(design, bytes, wishes) : read_heights(design, bytes, kind === "scan", wishes);
    return { outcome: "done", fit };
  } catch (thrown) {
    if (typeof thrown === "object" && thrown !== null && "kind" in thrown && "message" in thrown) {
      return { outcome: "problem", problem: /** @type {any} */ (thrown) };
    }
    return { outcome: "crashed", text: String(thrown) };
  }
}
