/**
 * What the top is cut from: a species' means, or the board in hand as it was measured.
 */
/** @import { Design } from "../design_store.js" */
/** @import { WoodFigures } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { FITTING_WORDS as WORDS } from "#words/fittings.js";
import { at, changed } from "./design_edits.js";
import { BoxField, ChoiceField, group, measureOf, NumberField, note } from "./fields.js";
import { MeasureField } from "./measure_field.js";
import { namedRow, tableOf } from "./tables.js";
import { allMeasures, allSpecies, speciesNames } from "./unchanging.js";
import { whileOpen } from "./while_open.js";

const SPECIES = "wood.species";
const RINGS = "wood.ring_angle_deg";
const MEASURED = "wood.measured";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  const measures = await allMeasures(bench);
  const all = await allSpecies(bench);
  const put = (/** @type {string} */ path, /** @type {unknown} */ value) =>
    bench.settle(changed(bench.store.edited, path, value));

  const species = new ChoiceField(WORDS.wood, "", await speciesNames(bench), (word) => void put(SPECIES, word));
  const rings = new MeasureField(measureOf(RINGS, measures), bench);
  const box = new BoxField(WORDS.measured, "", (ticked) =>
    bench.attempt(async () => {
      await put(MEASURED, ticked ? (seen ?? (await asAssumed())) : undefined);
    }),
  );
  const board = [
    { key: "density_kg_m3", label: WORDS.density, unit: "kg/m³", step: 1 },
    { key: "speed_along_m_s", label: WORDS.speed_along, unit: "m/s", step: 10 },
    { key: "speed_across_m_s", label: WORDS.speed_across, unit: "m/s", step: 10, absent: WORDS.speed_left_out },
  ].map(({ key, ...options }) => {
    const path = `${MEASURED}.${key}`;
    return { path, field: new NumberField({ ...options, group: WORDS.board }, (value) => void put(path, value)) };
  });
  const board_rows = document.createElement("div");
  board_rows.className = "part";
  board_rows.append(...board.map(({ field }) => field.row), note(WORDS.measured_about));

  const constants = tableOf(WORDS.columns);
  constants.className = "constants";
  const source = note(`${WORDS.source} `);
  // A publication is called what it is called.
  const publication = document.createElement("span");
  publication.lang = "en";
  source.append(publication);
  const sure = note(WORDS.scatter);

  /** @type {unknown} what was measured when it last stood in the design */
  let seen;
  /** The species' own density and speeds, to begin with. */
  async function asAssumed() {
    const wood = await bench.board().ask("wood", { design: bench.store.text });
    return { density_kg_m3: Math.round(wood.density_kg_m3), speed_along_m_s: Math.round(wood.speed_along_m_s) };
  }

  const show = (/** @type {Design} */ design) => {
    const measured = at(design, MEASURED);
    seen = measured ?? seen;
    species.show(at(design, SPECIES));
    rings.show(at(design, RINGS));
    box.show(measured !== undefined);
    board_rows.hidden = measured === undefined;
    sure.hidden = measured !== undefined;
    for (const { path, field } of board) {
      field.show(at(design, path));
    }
    publication.textContent = all.find(({ key }) => key === at(design, SPECIES))?.source ?? "";
  };

  host.append(
    species.row,
    rings.row,
    group(WORDS.board, box.row, board_rows, sure),
    group(WORDS.constants, constants, source),
  );
  bench.store.subscribe(show);
  show(bench.store.design);
  whileOpen(host, bench, async (design) => {
    const wood = await bench.board().askBeside("wood", { design: JSON.stringify(design) });
    if (wood !== undefined) {
      fill(constants.tBodies[0], wood);
    }
  });
}

/**
 * @param {HTMLTableSectionElement} body
 * @param {WoodFigures} wood
 */
function fill(body, { constants, ...wood }) {
  body.replaceChildren();
  const figures = /** @type {Record<string, number>} */ ({ ...wood, ...constants });
  for (const [key, name] of Object.entries(WORDS.constant_names)) {
    const value = figures[key];
    namedRow(body, name).insertCell().textContent = value >= 100 ? value.toFixed(0) : value.toPrecision(3);
  }
}
