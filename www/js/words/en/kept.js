/**
 * What the dialogue of kept designs says.
 */
/** @import { Kept } from "../../kept_designs.js" */

/** @param {number} kept_ms */
const time = (kept_ms) => new Date(kept_ms).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });

export const KEPT_WORDS = {
  dialogue: `
    <h2 id="kept-title">Designs in this browser</h2>
    <p>What you work on is kept by itself and is here again next time. A design to come back to is kept under a name.</p>
    <form>
      <label for="kept-name">Name</label>
      <input type="text" id="kept-name" required maxlength="80" autocomplete="off">
      <button>Keep this design</button>
    </form>
    <p class="kept-status">
      <span class="kept-said" role="status"></span>
      <button type="button" class="kept-back" hidden>Bring it back</button>
    </p>
    <div class="kept-list">
      <table>
        <caption class="visually-hidden">Kept designs</caption>
        <tbody></tbody>
      </table>
      <p class="kept-none">None is kept under a name yet.</p>
    </div>
    <p class="kept-caution">They stay on this device, where a browser may clear them: save a file of what matters.</p>
    <button type="button" class="kept-close">Close</button>
  `,
  open: "Open",
  remove: "Remove",
  time,
  /** @type {(text: string, kept: Kept) => string} */
  label: (text, kept) => `${text} “${kept.name}” of ${time(kept.kept_ms)}`,
  /** @param {string} name */
  kept: (name) => `“${name}” is kept.`,
  /** @param {string} name */
  opened: (name) => `“${name}” is open. Undo brings back what you had.`,
  /** @param {string} name */
  removed: (name) => `“${name}” is removed.`,
  /** @param {string} name */
  back: (name) => `“${name}” is back.`,
  impossible: "This browser keeps nothing here; in a private window that is usual. Save the design as a file instead.",
};
