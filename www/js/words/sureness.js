/**
 * How a figure with what it is sure within is written: no more decimals than that leaves any sense.
 */

/**
 * @param {number} within
 * @returns {number} decimals of a figure that is sure within so much; of one that is exact, one
 */
function decimalsOf(within) {
  return within >= 9.5 ? 0 : within >= 0.15 || within === 0 ? 1 : 2;
}

/**
 * A language's way with them.
 * @param {(value: number, decimals: number) => string} numberText
 */
export function surenessWith(numberText) {
  return {
    /** @type {(value: number, within: number) => string} */
    sureText: (value, within) => {
      const decimals = decimalsOf(within);
      const text = numberText(value, decimals);
      // Never surer than what is shown.
      return within === 0 ? text : `${text} ±\u2009${numberText(Math.max(within, 10 ** -decimals), decimals)}`;
    },
    /** @type {(change: number, within: number) => -1 | 0 | 1} which way a figure goes, as far as it is written */
    wayOf: (change, within) => (Number(change.toFixed(decimalsOf(within))) === 0 ? 0 : change > 0 ? 1 : -1),
  };
}
