/**
 * What a client is told of a top: its main figures with how sure they are, and what island, wings and narrows do in its modes.
 */
/** @import { Arching, Drawing, Mode, Region, Surety, WoodFigures } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { nodeMotion } from "./node_motion.js";

/** @typedef {{ mode: Mode, surety: Surety | undefined }} SureMode */

/** @typedef {SureMode & { times: number }} Swing a part's energy of motion per gram over the whole top's, in the mode where it is largest */

/**
 * @typedef {object} Facts
 * @property {number} mass_g
 * @property {number} nodes of the mesh that the frequencies come from
 * @property {SureMode} highest mode worked out
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
  const swings = regions.some(({ key }) => key === "island") ? await swingsOf(bench, sure, regions) : {};
  if (session.shown !== shown || store.text !== design) {
    return undefined;
  }
  const named = sure.filter(({ mode }) => mode.name !== "");
  const modes = store.design.rim === "free" && named.length > 0 ? named : sure.slice(0, 3);
  const { mass_g, nodes } = solution.picture;
  return { mass_g, nodes, modes, highest: sure[sure.length - 1], ...swings, regions, plan, arching, wood };
}

/**
 * @param {Bench} bench
 * @param {readonly SureMode[]} modes
 * @param {readonly Region[]} regions
 * @returns {Promise<{ island?: Swing, wings?: Swing }>}
 */
async function swingsOf({ session, board }, modes, regions) {
  /** @type {Swing[]} */
  const island = [];
  /** @type {Swing[]} */
  const wings = [];
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
    island.push({ ...one, times: timesTheMean(/^island$/, movement.shares, regions) });
    wings.push({ ...one, times: timesTheMean(/_wing_/, movement.shares, regions) });
  }
  const most = (/** @type {Swing[]} */ swings) => swings.toSorted((one, other) => other.times - one.times)[0];
  return { island: most(island), wings: most(wings) };
}

/**
 * How much more a part takes part in a mode than the wood does on the mean: its share of the kinetic energy over its share of the mass.
 * @param {RegExp} part of the regions' keys
 * @param {readonly { key: string, share: number }[]} shares of the energy
 * @param {readonly { key: string, mass_g: number }[]} regions those of the shares, and others
 */
export function timesTheMean(part, shares, regions) {
  const wood = regions.filter(({ key }) => shares.some((one) => one.key === key));
  const sum = (/** @type {number[]} */ values) => values.reduce((total, value) => total + value, 0);
  const energy = sum(shares.filter(({ key }) => part.test(key)).map(({ share }) => share));
  const mass = sum(wood.filter(({ key }) => part.test(key)).map(({ mass_g }) => mass_g));
  return mass === 0 ? 0 : (energy * sum(wood.map(({ mass_g }) => mass_g))) / mass;
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
