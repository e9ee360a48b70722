/**
 * The words of the section that cuts the top, in German.
 */
/** @import * as English from "../en/cut.js" */
import { numberText } from "./page.js";
import { REGION_WORDS } from "./regions.js";

/** @type {typeof English.CUT_WORDS} */
export const CUT_WORDS = {
  title: "Wo geschnitten wird",
  direction: "Schnitt",
  directions: { across: "quer über die Decke", along: "längs der Jahrringe" },
  place: { across: "Von der Unterkante", along: "Von der Mittellinie, Diskantseite positiv" },
  about:
    "Das Holz in wahrer Form, seine Bewegung so vergrößert wie auf der Bühne und im Gleichtakt mit ihr; grau dasselbe in Ruhe. Was sich aus der Ebene heraus bewegt, ist darin nicht zu sehen.",
  drawing: ({ across, at_mm }, pieces) =>
    `Schnitt ${across ? `quer, ${numberText(at_mm)} mm von der Unterkante` : `längs, ${numberText(at_mm)} mm von der Mittellinie`}: ${pieces} ${pieces === 1 ? "Stück" : "Stücke"} Holz, im Gleichtakt mit der Bühne`,
  region: (key) => nameOf(key).replace(/, (Bass|Diskant)$/, ""),
  stretch: ({ key, from_mm, to_mm }, across) => {
    const [from, to] = [from_mm, to_mm].map((value) => numberText(Math.round(value)));
    return `${nameOf(key)}: ${across ? "x" : "y"} ${from} bis ${to} mm`;
  },
};

/** @param {string} key */
function nameOf(key) {
  return key === "hole" ? "F-Loch" : REGION_WORDS.name(key);
}
