/**
 * What differs between two tops, place by place: b less a. Where their outlines differ, places at the same shares of length and width
 * are the same place; where only one of them has wood there, no difference is shown.
 */
/** @import { Picture } from "../messages.js" */

import { outsidePlaces } from "../picture_nodes.js";
import { PlanLocator, placeLike } from "./plan_locator.js";

/**
 * One top as it is compared.
 * @typedef {object} Side
 * @property {Picture} picture
 * @property {(places_mm: Float32Array) => Promise<Float32Array | undefined>} quantity (place, xy) what is compared, at any place within
 * the outline
 */

/** @type {WeakMap<Picture, PlanLocator>} a picture never changes */
const locators = new WeakMap();

/** @param {Picture} picture */
function locatorOf(picture) {
  const known = locators.get(picture) ?? new PlanLocator(picture);
  locators.set(picture, known);
  return known;
}

/**
 * (node of `on`): what `other` has at the same place, and whether it has wood there.
 * @param {Picture} on
 * @param {Picture} other
 * @returns {{ own: Float32Array, like: Float32Array, wood: Uint8Array }} own and like (node, xy) mm, on either top
 */
function commonPlaces(on, other) {
  const own = outsidePlaces(on);
  const [from, to] = [locatorOf(on), locatorOf(other)];
  const like = new Float32Array(own.length);
  const wood = new Uint8Array(own.length / 2);
  for (let node = 0; node < wood.length; node++) {
    const place = placeLike(from, to, own[2 * node], own[2 * node + 1]);
    const on_wood = to.at(...place) !== undefined || to.at(...inwards(place, to)) !== undefined;
    wood[node] = on_wood ? 1 : 0;
    like.set(place, 2 * node);
  }
  return { own, like, wood };
}

/** Chords of two meshes along one edge lie this far apart at most, mm. */
const BESIDE_CHORD_MM = 0.2;

/**
 * A little towards the middle: two meshes of one outline cut its curve by chords of their own.
 * @param {[number, number]} place
 * @param {Pick<PlanLocator, "low" | "high">} box
 * @returns {[number, number]}
 */
function inwards([x, y], { low, high }) {
  const [dx, dy] = [(low[0] + high[0]) / 2 - x, (low[1] + high[1]) / 2 - y];
  const step = BESIDE_CHORD_MM / Math.max(Math.hypot(dx, dy), BESIDE_CHORD_MM);
  return [x + step * dx, y + step * dy];
}

/**
 * (node of `on`): its quantity less the other's there, or the other's less its own.
 * @param {Side} on
 * @param {Side} other
 * @param {1 | -1} sign −1 where `on` is a
 * @returns {Promise<Float32Array | undefined>}
 */
export async function differenceOn(on, other, sign) {
  const { own, like, wood } = commonPlaces(on.picture, other.picture);
  const [here, there] = [await on.quantity(own), await other.quantity(like)];
  return here && there && here.map((value, node) => (wood[node] === 0 ? 0 : sign * (value - there[node])));
}

/**
 * A field of nodes, read at any place of its picture; zero off the wood.
 * @param {Picture} picture
 * @param {(node: number) => number} field
 * @returns {Side["quantity"]}
 */
export function readFrom(picture, field) {
  const locator = locatorOf(picture);
  return async (places_mm) => {
    const values = new Float32Array(places_mm.length / 2);
    for (let place = 0; place < values.length; place++) {
      const [x, y] = places_mm.subarray(2 * place, 2 * place + 2);
      const found = locator.at(x, y) ?? locator.at(...inwards([x, y], locator)) ?? [];
      values[place] = found.reduce((sum, [node, share]) => sum + share * field(node), 0);
    }
    return values;
  };
}
