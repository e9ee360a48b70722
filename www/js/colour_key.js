/**
 * The key to the motion's colours, and the choice to see bare wood instead.
 */
/** @import { Stage } from "./stage.js" */
import { part } from "./page_parts.js";

/** Stops of the painted scale; between two of them the colours are straight enough. */
const STOPS = 16;

/**
 * Shows the scale that the stage draws with.
 * @param {Uint8Array} colours (step, rgb), from full inward to full outward
 */
export function paintColourKey(colours) {
  const last = colours.length / 3 - 1;
  const stops = Array.from({ length: STOPS + 1 }, (_, stop) => {
    const at = 3 * Math.round((stop / STOPS) * last);
    return `rgb(${colours[at]} ${colours[at + 1]} ${colours[at + 2]})`;
  });
  part("#colour-bar", HTMLElement).style.background = `linear-gradient(to right, ${stops.join(", ")})`;
  part("#colour-key", HTMLElement).hidden = false;
}

/** @param {Stage} stage */
export function connectColourKey(stage) {
  const box = part("#motion-colour", HTMLInputElement);
  const apply = () => stage.setColour(box.checked ? "motion" : "wood");
  box.addEventListener("change", apply);
  apply();
}
