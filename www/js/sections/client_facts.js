/**
 * What a client is told of a top: its main figures with how sure they are, and what island, wings and narrows do in its modes.
 */
/** @import { Arching, Drawing, Mode, Region, Surety, WoodFigures } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { nodeMotion } from "./node_motion.js";

/** A part that does at least this share of the largest motion anywhere swings to be seen. */
const PLAIN_SHARE = 0.5;

/** @typedef {{ mode: Mode, surety: Surety | undefined }} SureMode */

/** @typedef {SureMode & { share: number, plainly: boolean }} Swing a part's motion over the largest anywhere, in the lowest mode in which it is plain, or
 * else in that where it is largest */

/**
 * @typedef {object} Facts
 * @property {number} mass_g
 * @property {number} nodes of the mesh that the frequencies come from
 * @property {SureMode[]} modes the named ones of a free plate, else the lowest
 * @property {Swing} [island] none without sound holes
 * @property {Swing} [wings]
 * @property {Region[]} regions
 * @property {Drawing} plan
 * @property {Arching} arching
 * @property {WoodFigures} wood
 */

/**
 * @param {Bench} bench
 * @returns {Promise<Facts | undefined>} nothing where the design was changed meanwhile
 */
export async function gatherFacts(bench) {
  const { session, store } = bench;
  await session.judged;
  const { shown } = session;
  if (shown === undefined) {
    return undefined;
  }
  const { solution, design, sureties } = shown;
  const board = bench.board();
  const { regions } = await board.ask("regions", { design });
  const { plan } = await board.ask("drawings", { design });
  const arching = await board.ask("arching", { design });
  const wood = await board.ask("wood", { design });
  const sure = solution.modes.map((mode, index) => ({ mode, surety: sureties?.[index] }));
  const swings = regions.some(({ key }) => key === "island") ? await swingsOf(bench, sure) : {};
  if (session.shown !== shown || store.text !== design) {
    return undefined;
  }
  const named = sure.filter(({ mode }) => mode.name !== "");
  const modes = store.design.rim === "free" && named.length > 0 ? named : sure.slice(0, 3);
  const { mass_g, nodes } = solution.picture;
  return { mass_g, nodes, modes, ...swings, regions, plan, arching, wood };
}

/**
 * @param {Bench} bench
 * @param {readonly SureMode[]} modes in rising order
 * @returns {Promise<{ island?: Swing, wings?: Swing }>}
 */
async function swingsOf({ session, board }, modes) {
  /** @type {Swing[]} */
  const lifts = [];
  /** @type {Swing[]} */
  const flaps = [];
  for (const one of modes) {
    const shown = session.shown;
    const motion = await session.motionOf(one.mode);
    if (shown === undefined || motion === undefined) {
      return {};
    }
    const moved = { design: shown.design, ...nodeMotion(shown.solution.picture, motion) };
    const movement = await board().askBeside("movement", moved);
    if (movement === undefined) {
      return {};
    }
    const size = (/** @type {[number, number]} */ amplitude) => Math.hypot(...amplitude);
    const swing = (/** @type {number} */ share) => ({ ...one, share, plainly: share >= PLAIN_SHARE });
    lifts.push(swing(size(movement.island_lift ?? [0, 0])));
    flaps.push(swing(Math.max(0, ...movement.flaps.map(({ amplitude }) => size(amplitude)))));
  }
  return { island: plainest(lifts), wings: plainest(flaps) };
}

/**
 * @param {readonly Swing[]} swings in rising order of frequency
 * @returns {Swing | undefined}
 */
export function plainest(swings) {
  const largest = swings.reduce((most, swing) => Math.max(most, swing.share), 0);
  return swings.find(({ plainly }) => plainly) ?? swings.find(({ share }) => share > 0 && share === largest);
}

/**
 * The narrowest wood of each kind, of both sides.
 * @param {readonly Region[]} regions
 * @param {readonly string[]} kinds keys without their side
 * @returns {Region[]} of each kind that there is one with the least
 */
export function narrowest(regions, kinds) {
  return kinds.flatMap((kind) => {
    const known = regions.filter(({ key, narrowest_mm }) => key.startsWith(kind) && typeof narrowest_mm === "number");
    const [first] = known.toSorted((one, other) => Number(one.narrowest_mm) - Number(other.narrowest_mm));
    return first === undefined ? [] : [first];
  });
}
