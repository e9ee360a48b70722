/**
 * What the mode that is shown does with the parts of the top: where its kinetic energy is, how far the island lifts, how far the wings flap.
 */
/** @import { Movement } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { MOVEMENT_WORDS as WORDS } from "#words/movement.js";
import { note } from "./fields.js";
import { nodeMotion } from "./node_motion.js";
import { watchStage } from "./stage_watch.js";
import { barsOf, fillBars } from "./tables.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const { stage } = bench;
  const mode = document.createElement("p");
  const moved = barsOf(WORDS.moved, WORDS.moved_columns);
  const shares = barsOf(WORDS.shares, WORDS.share_columns);
  host.append(mode, moved, shares, note(WORDS.about));

  /** @param {Movement} movement */
  const show = ({ shares: parts, island_lift, flaps }) => {
    const amplitudes = island_lift ? [{ key: "island", amplitude: island_lift }, ...flaps] : [];
    moved.hidden = amplitudes.length === 0;
    fillBars(
      moved,
      amplitudes.map(({ key, amplitude }) => ({
        name: WORDS.region(key),
        share: Math.hypot(...amplitude),
        figures: [WORDS.amplitude(amplitude)],
      })),
    );
    const sorted = parts.toSorted((one, other) => other.share - one.share);
    fillBars(
      shares,
      sorted.map(({ key, share }) => ({ name: WORDS.region(key), share, figures: [WORDS.percent(share)] })),
    );
  };

  const follow = async () => {
    const { picture, motion } = stage;
    if (picture === undefined || motion === undefined) {
      return;
    }
    const movement = await bench
      .board()
      .askBeside("movement", { design: bench.store.text, ...nodeMotion(picture, motion) });
    if (movement !== undefined && motion === stage.motion) {
      mode.textContent = bench.session.title;
      show(movement);
    }
  };
  watchStage(host, stage, { motion: () => void follow() });
}
