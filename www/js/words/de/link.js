/**
 * What is said of a link that carries a design, in German.
 */
/** @import * as English from "../en/link.js" */
import { countText } from "../numbers.js";

const AGAIN = "Um den Link noch einmal bitten, oder um den Entwurf als Datei.";
const FILE = "Den Entwurf speichern und die Datei schicken.";

/** @type {typeof English.LINK_WORDS} */
export const LINK_WORDS = {
  opened: (name, kept) =>
    `„${name}“ ist aus dem Link geöffnet. Rückgängig bringt den vorigen Entwurf zurück${kept ? "; er steht auch unter „Entwürfe“" : ""}.`,
  before: (name) => `${name}, bevor ein Link geöffnet wurde`,
  problems: {
    foreign: {
      kind: "link_foreign",
      message: "Was in diesem Link hinter „#design=“ steht, ist kein Entwurf dieser Seite.",
      remedy: AGAIN,
    },
    newer: (version, known) => ({
      kind: "link_too_new",
      message: `Dieser Link hat Version ${version}; diese Seite liest Links bis Version ${known}.`,
      remedy: "Die Seite neu laden, damit sie auf dem neuesten Stand ist, dann den Link noch einmal öffnen.",
    }),
    cut: (there, whole) => ({
      kind: "link_cut_short",
      message: `Dieser Link ist abgeschnitten: nur ${countText(there)} der ${countText(whole)} Zeichen seines Entwurfs sind da.`,
      remedy: "Den ganzen Link bis zum letzten Zeichen kopieren; manche Programme brechen lange Links um.",
    }),
    damaged: {
      kind: "link_damaged",
      message: "Dieser Link wurde unterwegs verändert: seine Prüfsumme stimmt nicht.",
      remedy: AGAIN,
    },
    long: (characters, most) => ({
      kind: "link_too_long",
      message: `Dieser Entwurf braucht im Link ${countText(characters)} Zeichen; höchstens ${countText(most)} gehen.`,
      remedy: FILE,
    }),
    large: (bytes, most) => ({
      kind: "link_too_large",
      message: `Was dieser Link enthält, braucht ${countText(bytes)} Byte oder mehr; höchstens ${countText(most)} gehen.`,
      remedy: FILE,
    }),
  },
};
