/**
 * A page of paper about the design for a client: picture, plan, plain words and figures, cautions, and the way back to the design. It is
 * only there while it is printed.
 */
/** @import { Code, Region } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { Facts, SureMode } from "./client_facts.js" */

import { hertzText, modeName, numberText } from "#words/page.js";
import { REGION_WORDS } from "#words/regions.js";
import { SHEET_WORDS as WORDS } from "#words/share.js";
import { part } from "../page_parts.js";
import { styleSheet } from "../style_sheet.js";
import { bestHertz, spreadText } from "../words/numbers.js";
import { gatherFacts, narrowest } from "./client_facts.js";
import { codeDrawing } from "./link_code.js";
import { SVG, svgLine } from "./svg_line.js";
import { namedRow, tableOf } from "./tables.js";

/** Of the picture: 300 dots an inch on a third of the page. */
const PICTURE_PX = /** @type {const} */ ([1000, 1200]);

/** Room round the plan, mm. */
const MARGIN_MM = 4;

/** Lines of the plan that a client reads. */
const LINES = ["outline", "hole", "fifth_contour", "contour", "fitting"];

/** Where wood is narrow, by what makers watch. */
const NARROW = ["lower_narrows", "upper_narrows", "upper_wing", "lower_wing", "island"];

/** @typedef {{ address: string, code: Code | undefined }} Way back to the design */

/**
 * Prints the page; the browser's own dialogue takes it from there.
 * @param {Bench} bench
 * @param {Way} way
 * @throws {ProblemError} what keeps a figure from being known
 */
export async function printSheet(bench, way) {
  await styleSheet("client_sheet");
  const facts = await gatherFacts(bench);
  if (facts === undefined) {
    bench.say(WORDS.changed);
    return;
  }
  document.querySelector(".client-sheet")?.remove();
  const sheet = sheetOf(bench, facts, way);
  document.body.append(sheet);
  await Promise.all([...sheet.querySelectorAll("img")].map((image) => image.decode()));
  addEventListener("afterprint", () => sheet.remove(), { once: true });
  print();
}

/**
 * @param {Bench} bench
 * @param {Facts} facts
 * @param {Way} way
 */
function sheetOf(bench, facts, way) {
  const sheet = document.createElement("article");
  sheet.className = "client-sheet";
  const pictures = element("div", "pictures", plan(facts));
  const still = picture(bench);
  if (still !== undefined) {
    pictures.prepend(still);
  }
  const date = new Date().toLocaleDateString(document.documentElement.lang, { dateStyle: "long" });
  sheet.append(
    element("header", "", text("h1", bench.store.name), text("p", WORDS.tagline(date))),
    pictures,
    says(facts, bench.store.design.rim),
    element("div", "tables", figures(facts), narrows(facts)),
    element("footer", "", cautions(), wayBack(way)),
  );
  return sheet;
}

/**
 * The stage as it is looked at, on white paper, at the end of the swing.
 * @param {Bench} bench
 * @returns {HTMLElement | undefined} nothing where nothing draws
 */
function picture({ stage, session }) {
  const image = document.createElement("img");
  const is_dark = matchMedia("(prefers-color-scheme: dark)").matches;
  stage.look((view) => view.set_theme(false));
  const drawn = stage.portray(...PICTURE_PX, 0, (canvas) => {
    const copy = document.createElement("canvas");
    [copy.width, copy.height] = PICTURE_PX;
    copy.getContext("2d")?.drawImage(canvas, 0, 0);
    image.src = copy.toDataURL("image/png");
  });
  stage.look((view) => view.set_theme(is_dark));
  if (!drawn) {
    return undefined;
  }
  const hertz = part("#stage-hertz", HTMLElement).textContent ?? "";
  const by = part("#colour-by", HTMLSelectElement).value;
  const caption = WORDS.picture(session.title, hertz, stage.exaggeration_mm, by === "motion");
  image.alt = caption;
  return element("figure", "still", image, text("figcaption", caption));
}

/** @param {Facts} facts */
function plan({ plan: { low, high, lines }, regions }) {
  const drawing = document.createElementNS(SVG, "svg");
  const [left, top] = low.map((least) => least - MARGIN_MM);
  const [width, height] = [high[0] - left + MARGIN_MM, high[1] - top + MARGIN_MM];
  drawing.setAttribute("viewBox", `${left} ${top} ${width} ${height}`);
  drawing.setAttribute("role", "img");
  drawing.setAttribute("aria-label", WORDS.plan);
  const coloured = regions.filter(({ key }) => /^(island|upper_wing|lower_wing)/.test(key));
  drawing.append(
    ...coloured.map(({ key, path }) => svgLine(kindOf(key), path)),
    ...lines.filter(({ kind }) => LINES.includes(kind)).map(({ kind, path }) => svgLine(kind, path)),
    ...narrowest(regions, ["lower_narrows", "upper_narrows"]).map(({ narrowest_path }) =>
      svgLine("narrows", narrowest_path ?? ""),
    ),
  );
  const key = element("ul", "key");
  for (const [name, words] of Object.entries(coloured.length > 0 ? WORDS.key : {})) {
    const item = text("li", words);
    item.className = name;
    key.append(item);
  }
  return element("figure", "plan", drawing, text("figcaption", WORDS.plan), key);
}

/**
 * What the holes do, in plain words.
 * @param {Facts} facts
 * @param {unknown} rim
 */
function says({ island, wings, highest, regions }, rim) {
  const words = element("section", "says", text("h2", WORDS.says));
  const list = document.createElement("dl");
  const say = (/** @type {string} */ what, /** @type {string} */ sentence) =>
    list.append(text("dt", what), text("dd", sentence));
  const [eye] = narrowest(regions, ["lower_narrows"]);
  const area = regions.find(({ key }) => key === "island")?.area_mm2;
  if (area !== undefined && island !== undefined) {
    say(WORDS.island, WORDS.island_says(area / 100, modeText(island), island.times));
  }
  if (wings !== undefined) {
    say(WORDS.wings, WORDS.wings_say(modeText(wings), wings.times, hertzOf(highest)));
  }
  if (eye !== undefined) {
    say(WORDS.narrows, WORDS.narrows_say(Number(eye.narrowest_mm), eye.mean_thickness_mm));
  }
  if (list.childElementCount === 0) {
    say(WORDS.no_holes, WORDS.no_holes_say);
  }
  words.append(list, text("p", rim === "free" ? WORDS.free : WORDS.held));
  return words;
}

/** @param {Facts} facts */
function figures({ mass_g, nodes, modes, arching, wood }) {
  const table = tableOf([WORDS.figure, WORDS.value, WORDS.sure]);
  table.createCaption().textContent = WORDS.figures;
  const row = (/** @type {string} */ name, /** @type {string} */ value, /** @type {string} */ sure) => {
    const cells = namedRow(table.tBodies[0], name);
    cells.insertCell().textContent = value;
    cells.insertCell().textContent = sure;
  };
  for (const { mode, surety } of modes) {
    const spread = surety === undefined ? WORDS.not_judged : `${spreadText(surety)} Hz`;
    row(WORDS.mode(mode.number, modeName(mode)), `${hertzText(bestHertz(mode, surety))} Hz`, spread);
  }
  row(WORDS.mass, `${numberText(mass_g, 1)} g`, WORDS.mass_sure(wood.density_kg_m3));
  row(WORDS.rise, `${numberText(arching.rise_mm, 1)} mm`, WORDS.typed);
  return element("div", "", table, text("p", WORDS.figures_about(nodes)));
}

/** @param {Facts} facts */
function narrows({ regions }) {
  const found = narrowest(regions, NARROW);
  const table = tableOf([WORDS.place, WORDS.least, WORDS.thickness]);
  table.createCaption().textContent = WORDS.narrowest;
  for (const { key, narrowest_mm, mean_thickness_mm } of found) {
    const cells = namedRow(table.tBodies[0], REGION_WORDS.name(key));
    cells.insertCell().textContent = `${numberText(Number(narrowest_mm), 1)} mm`;
    cells.insertCell().textContent = `${numberText(mean_thickness_mm, 1)} mm`;
  }
  return found.length === 0 ? "" : element("div", "", table, text("p", WORDS.narrowest_about));
}

function cautions() {
  return element("section", "", text("h2", WORDS.cautions), text("p", WORDS.cautions_say));
}

/** @param {Way} way */
function wayBack({ address, code }) {
  const site = new URL("./", address).href;
  const words = text("p", code === undefined ? WORDS.way_by_link(site) : WORDS.way_by_code(site));
  return code === undefined
    ? element("div", "way", words)
    : element("div", "way", words, codeDrawing(code, WORDS.code));
}

/** @param {SureMode} one */
function modeText(one) {
  return WORDS.in_mode(one.mode.number, hertzOf(one)).replaceAll(/[ \u2009]/g, "\u00a0");
}

/** @param {SureMode} one */
function hertzOf({ mode, surety }) {
  return WORDS.hertz(hertzText(bestHertz(mode, surety)), surety === undefined ? "" : spreadText(surety));
}

/** @param {Region["key"]} key */
function kindOf(key) {
  return key.startsWith("island") ? "island" : "wing";
}

/**
 * @param {string} kind
 * @param {string} content
 */
function text(kind, content) {
  return element(kind, "", content);
}

/**
 * @param {string} kind
 * @param {string} name its class
 * @param {...(Node | string)} parts
 */
function element(kind, name, ...parts) {
  const made = document.createElement(kind);
  if (name !== "") {
    made.className = name;
  }
  made.append(...parts);
  return made;
}
