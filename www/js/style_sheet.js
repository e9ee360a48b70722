/**
 * Style sheets that are loaded with what they are for.
 */

/** @type {Map<string, Promise<unknown>>} */
const loaded = new Map();

/**
 * Loads a style sheet of `css`, once.
 * @param {string} name
 * @returns {Promise<unknown>} until it holds; fails where it can't be loaded, and may be tried again
 */
export function styleSheet(name) {
  const known = loaded.get(name);
  if (known !== undefined) {
    return known;
  }
  const loading = new Promise((resolve, reject) => {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = new URL(`../css/${name}.css`, import.meta.url).href;
    link.addEventListener("load", resolve);
    link.addEventListener("error", () => {
      loaded.delete(name);
      link.remove();
      reject(new Error(`${link.href} can't be loaded`));
    });
    document.head.append(link);
  });
  loaded.set(name, loading);
  return loading;
}
