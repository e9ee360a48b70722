/**
 * What the regions are called, and the sentences of their section.
 */

import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const REGIONS = {
  island: "Island",
  upper_wing: "Upper wing",
  lower_wing: "Lower wing",
  upper_narrows: "Upper narrows",
  lower_narrows: "Lower narrows",
  flank: "Flank",
  upper_bout: "Upper bout",
  middle_bout: "Middle bout",
  lower_bout: "Lower bout",
  bar_line: "Under the bar",
};

export const REGION_WORDS = {
  caption: "Regions of the top",
  columns: ["Region", "cm²", "g", "mean mm", "least mm"],
  overlay: "Show them in the plan",
  /** @param {readonly { key: string, width_mm: number }[]} throats */
  throats: (throats) => {
    const each = throats.map(
      ({ key, width_mm }) => `${REGION_WORDS.name(key).toLowerCase()} ${numberText(width_mm, 1)} mm`,
    );
    return `From the wings’ points to the stem: ${each.join("; ")}.`;
  },
  about:
    "Found from outline and sound holes. Areas in plan, masses without bar and varnish. Mean: of the thickness. Least: the narrowest wood, of a wing its root, of island, narrows and flanks the shortest way from edge to edge.",
  /**
   * @param {string} key as the core names it
   * @returns {string}
   */
  name: (key) => {
    const side = /_(bass|treble)$/.exec(key)?.[1];
    const region = REGIONS[key.replace(/_(bass|treble)$/, "")] ?? key;
    return side === undefined ? region : `${region}, ${side}`;
  },
};
