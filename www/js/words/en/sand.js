/**
 * The words of the section with the sand picture.
 */

export const SAND_WORDS = {
  /** @param {string} mode */
  picture: (mode) => `${mode}: sand lies along the nodal lines`,
  turn: "Seen from inside",
  back: "Seen from outside",
  about:
    "Drawn from the computed motion, as sand strewn on a flat plate comes to lie: dense where the wood hardly moves outwards or inwards. On an arched top real grains would roll as well.",
};
