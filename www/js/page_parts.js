/**
 * Finds the parts of index.html that the scripts fill. A missing one is a broken page, not a state to handle.
 */

/**
 * @template {Element} T
 * @param {string} selector
 * @param {new () => T} type
 * @param {ParentNode} [within]
 * @returns {T}
 */
export function part(selector, type, within = document) {
  const found = within.querySelector(selector);
  if (!(found instanceof type)) {
    throw new TypeError(`the page has no ${selector} of type ${type.name}`);
  }
  return found;
}
