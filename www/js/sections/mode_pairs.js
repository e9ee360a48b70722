/**
 * The modes of two designs as pairs: known by their shapes, told by how their frequencies differ and how sure that is.
 */
/** @import { Mode, ShapeLikeness, Surety } from "../messages.js" */

/**
 * @typedef {object} ModePair
 * @property {Mode} [a] none where b's shape has no partner
 * @property {Mode} [b] likewise
 * @property {number} likeness from -1, the same shape the other way round, to 1; zero without a partner
 */

/**
 * @typedef {object} Shift
 * @property {number} a_hz
 * @property {number} b_hz
 * @property {number} pct of a
 * @property {number} cents
 * @property {boolean} corrected whether both are corrected for the mesh; neither is otherwise
 */

/**
 * @param {readonly Mode[]} a
 * @param {readonly Mode[]} b
 * @param {ShapeLikeness} found of them
 * @returns {ModePair[]} in b's order, then what of a has no partner
 */
export function modePairs(a, b, { likeness, partners }) {
  /** @type {ModePair[]} */
  const pairs = b.map((mode) => {
    const at = partners.indexOf(mode.number);
    return at < 0
      ? { b: mode, likeness: 0 }
      : { a: a[at], b: mode, likeness: likeness[at * b.length + mode.number - 1] };
  });
  return [...pairs, ...a.filter((_, at) => partners[at] === 0).map((mode) => ({ a: mode, likeness: 0 }))];
}

/** @param {number} likeness */
export function assurance(likeness) {
  return likeness * likeness;
}

/**
 * How far a frequency is moved. Like is compared with like: figures corrected for the mesh only with such, else what the meshes gave.
 * @param {Mode} a
 * @param {Mode} b
 * @param {Surety | undefined} surety_a
 * @param {Surety | undefined} surety_b
 * @returns {Shift}
 */
export function shiftOf(a, b, surety_a, surety_b) {
  const a_best = surety_a?.converged_hz;
  // Under a moving handle it is foreseen what judging will make of the figure.
  const b_best = surety_b?.converged_hz ?? b.foreseen_hz;
  const corrected = typeof a_best === "number" && typeof b_best === "number";
  const [a_hz, b_hz] = corrected ? [a_best, b_best] : [a.frequency_hz, b.frequency_hz];
  return { a_hz, b_hz, pct: 100 * (b_hz / a_hz - 1), cents: 1200 * Math.log2(b_hz / a_hz), corrected };
}

/**
 * One standard deviation of a shift, per cent of a; nothing where it isn't known of both.
 *
 * On one board each constant and the density are the same for both tops, so that of what they do only the difference counts; on two
 * boards both scatter by themselves. What the meshes leave open is taken as independent, which is rather too wide where two designs
 * differ little.
 * @param {Shift} shift
 * @param {Surety | undefined} a
 * @param {Surety | undefined} b
 * @param {boolean} one_board
 * @returns {number | undefined}
 */
export function shiftSpread({ a_hz, b_hz, corrected }, a, b, one_board) {
  if (!corrected || typeof a?.mesh_hz !== "number" || typeof b?.mesh_hz !== "number") {
    return undefined;
  }
  const wood = one_board
    ? Math.hypot(...b.wood_parts_pct.map((part, figure) => part - a.wood_parts_pct[figure]))
    : Math.hypot(...a.wood_parts_pct, ...b.wood_parts_pct);
  return (b_hz / a_hz) * Math.hypot(wood, (100 * a.mesh_hz) / a_hz, (100 * b.mesh_hz) / b_hz);
}

/**
 * By which share of the exaggeration each of two motions is drawn so that both modes have the same modal amplitude: the larger is
 * drawn in full.
 * @param {number} a_mm_per_m what a's shape of unit modal mass was multiplied by
 * @param {number} b_mm_per_m
 * @returns {[number, number]}
 */
export function sharesOfOneScale(a_mm_per_m, b_mm_per_m) {
  // Drawn = amplitude × shape, and the field is scale × shape: the one of the smaller scale moves farther.
  const least = Math.min(a_mm_per_m, b_mm_per_m);
  return [least / a_mm_per_m, least / b_mm_per_m];
}
