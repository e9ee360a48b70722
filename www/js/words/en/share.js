/**
 * The words of the section that hands a design on, and of the page of paper for a client.
 */

import { countText } from "../numbers.js";
import { numberText } from "./page.js";

/** @param {number} times */
const timesText = (times) => `${numberText(times, 1)}\u00a0times`;

export const SHARE_WORDS = {
  link: "Link to this design",
  copy: "Copy the link",
  share: "Share…",
  copied: "Copied.",
  not_copied: "This browser doesn’t let the page copy; the link is selected: copy it with Ctrl+C.",
  not_shared: "The system didn’t take the link; copy it instead.",
  /** @param {number} characters */
  link_about: (characters) =>
    `It opens to this design, mode, colour and viewpoint. All of it stands in the link (${countText(characters)} characters) behind the #, which a browser sends to no server.`,
  code: "The link as a code",
  /** @param {string} name */
  code_label: (name) => `QR code of the link to “${name}”`,
  code_about: "For a phone’s camera, on paper or off this screen.",
  large: "Show it large",
  close: "Close",
  save_code: "Save the code (SVG)",
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
  summary: "A page for a client",
  summary_about:
    "Picture, plan, what island, wings and narrows do here, main figures with how sure they are, cautions, and the code, on one sheet of A4 or Letter. The picture is the stage as it is looked at now.",
  print: "Print or save as PDF",
  preparing: "Being prepared…",
  offline: "Without a network",
  is_kept:
    "This page is kept on this device: it opens and computes without a network. The browser’s menu can install it like a program.",
  not_kept: "Once this browser has kept the page, some seconds after a visit, it opens and computes without a network.",
};

export const SHEET_WORDS = {
  changed: "The design changed meanwhile. Print once its figures are there.",
  /** @param {string} date */
  tagline: (date) => `How this top moves, computed with Bombatura, ${date}`,
  /** @type {(mode: string, hertz: string, exaggeration_mm: number, by_motion: boolean) => string} */
  picture: (mode, hertz, exaggeration_mm, by_motion) =>
    `${mode}, ${hertz}. The largest motion is drawn ${numberText(exaggeration_mm)} mm; a mode has no true size: it says how the top bends, not how far.${
      by_motion ? " Coloured by motion, outward and inward; where the colours meet nothing moves." : ""
    }`,
  plan: "Plan, seen from outside, with the lines of equal height",
  key: { island: "island", wing: "wings", narrows: "narrowest wood beside the eyes" },
  says: "What the sound holes do on this top",
  island: "Island",
  /** @type {(area_cm2: number, mode: string, times: number) => string} */
  island_says: (area_cm2, mode, times) =>
    `The wood between the holes, ${numberText(area_cm2, 1)} cm², carries the bridge. It takes part most in ${mode}: gram for gram it then swings with ${timesText(times)} the energy of the whole top.`,
  wings: "Wings",
  /** @type {(mode: string, times: number, up_to: string) => string} */
  wings_say: (mode, times, up_to) =>
    `The tongues beside the eyes flap at high frequencies. Of the modes up to ${up_to} they take part most in ${mode}, with ${timesText(times)} the energy of the whole top, gram for gram.`,
  narrows: "Narrows",
  /** @type {(width_mm: number, thickness_mm: number) => string} */
  narrows_say: (width_mm, thickness_mm) =>
    `Between a lower eye and the edge ${numberText(width_mm, 1)} mm of wood are left, ${numberText(thickness_mm, 1)} mm thick on the mean. Cracks begin where wood is narrow and thin; whether this is enough the maker says.`,
  no_holes: "No holes",
  no_holes_say: "This top is whole, so that it has no island, wings or narrows yet.",
  free: "The frequencies are those of the top by itself in the hand, before it is glued on.",
  held: "The frequencies are those of the top held at its rim as the design has it, without back and air.",
  figures: "Main figures",
  figure: "Figure",
  value: "computed",
  sure: "how sure",
  /** @type {(number: number, name: string) => string} */
  mode: (number, name) => (name === `Mode ${number}` ? name : `Mode ${number}, ${name}`),
  not_judged: "not judged yet",
  mass: "Mass of the wood",
  /** @param {number} density_kg_m3 */
  mass_sure: (density_kg_m3) => `at ${numberText(density_kg_m3, 0)} kg/m³`,
  rise: "Rise of the arching",
  typed: "as designed",
  /** @param {number} nodes */
  figures_about: (nodes) =>
    `±: one standard deviation of what boards of the species differ by, and what mesh and shell leave open (${countText(nodes)} nodes).`,
  narrowest: "Where the wood is narrowest",
  place: "Place",
  least: "least",
  thickness: "mean thickness",
  narrowest_about: "Of a wing its root; else the shortest way from edge to edge. The narrower side of two.",
  cautions: "A model is not a top",
  cautions_say:
    "Wood varies from board to board; moisture, glue and varnish count. The figures compare ideas and promise no sound. What is cut too thin or too close can’t be mended: the maker’s judgement at the bench decides and, for a valuable instrument, a qualified restorer’s, under the rules that hold there.",
  /** @type {(hertz: string, spread: string) => string} */
  hertz: (hertz, spread) => `${hertz} ${spread}${spread === "" ? "" : " "}Hz`,
  /** @type {(number: number, hertz: string) => string} */
  in_mode: (number, hertz) => `mode ${number} at ${hertz}`,
  /** @param {string} site */
  way_by_code: (site) => `The code opens this design at ${site}, to be turned and watched in motion.`,
  /** @param {string} site */
  way_by_link: (site) => `The design is too large for a code; its link or file opens at ${site}.`,
  code: "QR code of the link to this design",
};
