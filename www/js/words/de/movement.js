/**
 * The words of the section about a mode's motion, in German.
 */
/** @import * as English from "../en/movement.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

/** @type {typeof English.MOVEMENT_WORDS} */
export const MOVEMENT_WORDS = {
  moved: "Wie weit sich die Insel hebt und die Flügel schlagen",
  moved_columns: ["Bereich", "der größten Bewegung"],
  shares: "Bewegungsenergie",
  share_columns: ["Bereich", "Anteil daran"],
  region: (key) => REGION_WORDS.name(key),
  percent: (share) => `${numberText(100 * share, share < 0.1 ? 1 : 0)} %`,
  amplitude: ([re, im]) => {
    const percent = (/** @type {number} */ value) => `${numberText(100 * value, 0)} %`;
    const phase = numberText((Math.atan2(im, re) * 180) / Math.PI, 0);
    return im === 0 ? percent(re) : `${percent(Math.hypot(re, im))} bei ${phase}°`;
  },
  about:
    "Gemessen an der größten Bewegung auf der ganzen Decke; positiv ist nach außen, wenn die Phase 0° ist. Der Hub der Insel ist ihr Mittel. Der Schlag eines Flügels ist, was seine fernste Stelle tut, über das Mitgehen mit der Insel als ein steifes Stück hinaus. Die Energie ist die des Holzes, ohne Balken und aufgesetzte Massen; die Anteile ergeben zusammen 100 %, und ein Teil mit großem Anteil für seine Größe schwingt am meisten.",
};
