/**
 * What is said of a link that carries a design, and of one that can't be opened.
 */
/** @import { Problem } from "../../messages.js" */

import { countText } from "../numbers.js";

const AGAIN = "Ask for the link again, or for the design as a file.";

export const LINK_WORDS = {
  /** @type {(name: string, kept: boolean) => string} */
  opened: (name, kept) =>
    `“${name}” is open from the link. Undo brings back what you had${kept ? ", and it is kept under “Designs” too" : ""}.`,
  /** @param {string} name of the design that was worked on */
  before: (name) => `${name}, before a link was opened`,
  problems: {
    /** @type {Problem} */
    foreign: {
      kind: "link_foreign",
      message: "What stands behind “#design=” in this link is no design of this page.",
      remedy: AGAIN,
    },
    /** @type {(version: number, known: number) => Problem} */
    newer: (version, known) => ({
      kind: "link_too_new",
      message: `This link is of version ${version}; this page reads links up to version ${known}.`,
      remedy: "Load the page again to have its newest version, then open the link once more.",
    }),
    /** @type {(there: number, whole: number) => Problem} */
    cut: (there, whole) => ({
      kind: "link_cut_short",
      message: `This link was cut short: only ${countText(there)} of the ${countText(whole)} characters of its design are there.`,
      remedy: "Copy the whole link, to its very end; some programs break long links.",
    }),
    /** @type {Problem} */
    damaged: {
      kind: "link_damaged",
      message: "This link was changed on its way: its check sum does not hold.",
      remedy: AGAIN,
    },
    /** @type {(characters: number, most: number) => Problem} */
    long: (characters, most) => ({
      kind: "link_too_long",
      message: `This design takes ${countText(characters)} characters of a link; at most ${countText(most)} will do.`,
      remedy: "Save the design and send the file.",
    }),
    /** @type {(bytes: number, most: number) => Problem} */
    large: (bytes, most) => ({
      kind: "link_too_large",
      message: `What this link holds takes ${countText(bytes)} bytes or more; at most ${countText(most)} will do.`,
      remedy: "Save the design and send the file.",
    }),
  },
};
