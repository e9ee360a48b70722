/**
 * What a section shows of the design as it stands, worked out only while the section is open.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Bench } from "../sections.js" */

/**
 * @param {HTMLElement} host inside the section
 * @param {Bench} bench
 * @param {(design: Design) => unknown} show called now, at every change while the section is open, and when it is opened again
 * after one
 */
export function whileOpen(host, bench, show) {
  const section = host.closest("details");
  let stale = false;
  const follow = () => {
    stale = section?.open === false;
    if (!stale) {
      show(bench.store.design);
    }
  };
  section?.addEventListener("toggle", () => {
    if (stale) {
      follow();
    }
  });
  bench.store.subscribe(follow);
  follow();
}
