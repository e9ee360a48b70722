/**
 * What makers call the parts of the top: laid over the plan, and in a table with what each weighs.
 */
/** @import { Regions } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { numberText } from "#words/page.js";
import { REGION_WORDS as WORDS } from "#words/regions.js";
import { BoxField, note } from "./fields.js";
import { RegionOverlay } from "./region_overlay.js";
import { namedRow, tableOf } from "./tables.js";
import { whileOpen } from "./while_open.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const table = tableOf(WORDS.columns);
  table.className = "regions-table";
  const caption = table.createCaption();
  caption.className = "visually-hidden";
  caption.textContent = WORDS.caption;
  const body = table.tBodies[0];
  /** @type {Map<string, HTMLTableRowElement>} */
  const rows = new Map();
  const point = (/** @type {string | undefined} */ key) => {
    overlay.point(key);
    for (const [own, row] of rows) {
      row.classList.toggle("pointed", own === key);
    }
  };
  const overlay = new RegionOverlay(point);
  const box = new BoxField(WORDS.overlay, "", (ticked) => overlay.reveal(ticked));
  box.show(true);

  const throats = note("");
  /** @param {Regions} found */
  const show = ({ regions, throats: across }) => {
    rows.clear();
    body.replaceChildren();
    for (const region of regions) {
      const row = namedRow(body, WORDS.name(region.key));
      rows.set(region.key, row);
      for (const text of [
        numberText(region.area_mm2 / 100, region.area_mm2 < 1000 ? 2 : 1),
        numberText(region.mass_g, region.mass_g < 1 ? 2 : 1),
        numberText(region.mean_thickness_mm, 2),
        typeof region.narrowest_mm === "number" ? numberText(region.narrowest_mm, 1) : "–",
      ]) {
        row.insertCell().textContent = text;
      }
      row.addEventListener("pointerenter", () => point(region.key));
      row.addEventListener("pointerleave", () => point(undefined));
    }
    overlay.show(regions);
    throats.textContent = across.length === 0 ? "" : WORDS.throats(across);
  };

  host.append(box.row, table, throats, note(WORDS.about));
  host.closest("details")?.addEventListener("toggle", (event) => {
    overlay.reveal(box.ticked && /** @type {HTMLDetailsElement} */ (event.target).open);
  });
  whileOpen(host, bench, async () => {
    const regions = await bench.board().askBeside("regions", { design: bench.store.text });
    if (regions !== undefined) {
      show(regions);
    }
  });
}
