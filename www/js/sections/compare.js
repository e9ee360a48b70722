/**
 * Two designs beside each other: on the stage in step, their modes paired by shape, and how they differ in figures and in colours.
 */
/** @import { Mode, Motion, Movement, Problem, Region, ShapeLikeness, Surety } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { Shown } from "../top_session.js" */
/** @import { Other } from "./other_design.js" */
/** @import { FigureRow, PairRow } from "./pair_tables.js" */
/** @import { Layout } from "./second_top.js" */

import { COMPARE_WORDS as WORDS } from "#words/compare.js";
import { hertzText, modeName } from "#words/page.js";
import { download, fileName, read } from "../design_files.js";
import { part } from "../page_parts.js";
import { styleSheet } from "../style_sheet.js";
import { bestHertz } from "../words/numbers.js";
import { ProblemError, WorkshopClient } from "../workshop_client.js";
import { AssuranceMatrix } from "./assurance_matrix.js";
import { CompareChoice } from "./compare_choice.js";
import { CompareColours } from "./compare_colours.js";
import { csvText } from "./compare_text.js";
import { problemText } from "./driven_client.js";
import { button, ChoiceField, chooser, group, note } from "./fields.js";
import { assurance, modePairs, sharesOfOneScale, shiftOf, shiftSpread } from "./mode_pairs.js";
import { nodeMotion } from "./node_motion.js";
import { OtherDesign } from "./other_design.js";
import { figureRows, figureTable, fillFigures, PairTable } from "./pair_tables.js";
import { SecondTop } from "./second_top.js";

/**
 * Both sides and how their modes are paired.
 * @typedef {object} Matched
 * @property {Other} a
 * @property {Shown["solution"]} b
 * @property {ShapeLikeness} found
 */

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  await styleSheet("compare");
  const { stage, session, store } = bench;
  const section = host.closest("details");
  /** What was last chosen and can't be, until something else is: figures that come meanwhile don't take its place. */
  let refused = "";
  const restarted = () => bench.say(WORDS.restarted);
  const other = new OtherDesign(() => void refresh(), restarted);
  const board = new WorkshopClient(
    new URL("../board_worker.js", import.meta.url),
    new URL("../../wasm/board_bg.wasm", import.meta.url),
    restarted,
  );
  const second = new SecondTop(stage, part("#stage-view", HTMLElement));

  const choice = new CompareChoice(store, () => void take());
  const file = chooser(WORDS.file, ".json,application/json", (picked) => void open(picked));
  const swap = button(WORDS.swap, () => void bench.attempt(exchange));
  const said = note("");
  said.setAttribute("role", "status");
  const layout = new ChoiceField(WORDS.layout, "", WORDS.layouts, (word) => second.lay(/** @type {Layout} */ (word)));
  const scale = new ChoiceField(WORDS.scale, "", WORDS.scales, () => void showPair());
  const on_stage = group(WORDS.on_stage, layout.row, scale.row, note(WORDS.scale_about), note(WORDS.colours_about));
  const pairs = new PairTable((pair) => {
    forced = undefined;
    if (pair.b !== undefined) {
      bench.choose(pair.b);
    }
  });
  const basis = note("");
  const figures = figureTable();
  const matrix = new AssuranceMatrix((a, b) => {
    const mode = matched?.b.modes[b];
    if (mode !== undefined) {
      forced = { a, b: mode.number, of: matched };
      bench.choose(mode);
    }
  });
  const save = button(WORDS.save, () => {
    const name = fileName(`${store.name} comparison`, ".csv");
    download(name, csv(rows, figure_rows), "text/csv");
    bench.say(WORDS.saved(name));
  });
  const results = document.createElement("div");
  results.className = "compared";
  results.append(
    swap,
    on_stage,
    pairs.table,
    basis,
    figures,
    note(WORDS.figures_about),
    matrix.table,
    note(WORDS.matrix_about),
    save,
    note(WORDS.pairs_about),
  );
  results.hidden = true;
  host.append(group(WORDS.with, choice.row, file, said), results);

  /** @type {Matched | undefined} */
  let matched;
  /** @type {{ a: number, b: number, of: Matched | undefined } | undefined} a pair that was asked for though its shapes are others */
  let forced;
  /** @type {PairRow[]} */
  let rows = [];
  /** @type {FigureRow[]} */
  let figure_rows = [];
  /** @type {Motion | undefined} a's, as it is drawn */
  let a_motion;
  /** @type {[number, number]} */
  let shares = [1, 1];
  /** @type {Map<string, readonly Region[]>} by the design, of the last two */
  const regions_known = new Map();

  const is_open = () => section?.open !== false;

  const colours = new CompareColours(() => {
    const { picture, motion } = stage;
    const [a, design] = [other.now, session.shown?.design];
    if (a === undefined || picture === undefined || design === undefined) {
      return undefined;
    }
    const quantity = (/** @type {WorkshopClient} */ from, /** @type {string} */ text) =>
      /** @type {import("./compare_colours.js").ColouredTop["quantity"]} */ (
        (what, places_mm) => from.askBeside("quantity", { design: text, what, places_mm })
      );
    return {
      a: { picture: a.solution.picture, motion: a_motion, share: shares[0], quantity: quantity(board, a.design) },
      b: { picture, motion, share: shares[1], quantity: quantity(bench.board(), design) },
    };
  });
  second.colourWith((by) =>
    colours.ofA(by, async () => {
      const a = other.now;
      if (a === undefined) {
        return undefined;
      }
      if (by === "strain_energy") {
        const mode = shownPair()?.a;
        return mode && other.strainEnergy(mode);
      }
      const { outsidePlaces } = await import("../picture_nodes.js");
      const places_mm = outsidePlaces(a.solution.picture);
      return board.askBeside("quantity", { design: a.design, what: by, places_mm });
    }),
  );

  /** @param {Problem} problem */
  const refuse = (problem) => {
    refused = problemText(problem);
    said.textContent = refused;
  };

  /** Goes to the design that is chosen, as it is now. */
  const take = async () => {
    const chosen = is_open() ? choice.now : undefined;
    refused = "";
    if (chosen === undefined) {
      other.drop();
      matched = undefined;
      second.leave();
      colours.offer(false);
      results.hidden = true;
      said.textContent = "";
      choice.confirm();
      return;
    }
    if (chosen.text !== other.now?.design) {
      said.textContent = WORDS.solving;
    }
    const { word } = choice;
    const problem = await other.take(chosen.name, chosen.text);
    if (problem === undefined) {
      choice.confirm();
    } else if (word === choice.word) {
      // What was compared before stays.
      choice.goBack();
      refuse(problem);
    }
  };

  /** @param {File} picked */
  const open = async (picked) => {
    try {
      const text = await read(picked);
      choice.hold({ name: picked.name.replace(/(\.bombatura)?\.json$/i, ""), text });
      await take();
    } catch (reason) {
      if (!(reason instanceof ProblemError)) {
        throw reason;
      }
      refuse(reason.problem);
    }
  };

  /** The other becomes the one worked on, and this the other. */
  const exchange = async () => {
    const now = other.now;
    if (now !== undefined) {
      const own = { name: store.name, text: store.text };
      if (await bench.settle(JSON.parse(now.design))) {
        choice.hold(own);
        bench.say(WORDS.swapped);
        await take();
      }
    }
  };

  /** Pairs the modes anew where either side has others, and tells what is known of them. */
  const refresh = async () => {
    const [a, b] = [other.now, session.shown];
    if (a === undefined || b === undefined || !is_open()) {
      return;
    }
    if (matched?.b !== b.solution || matched.a.signatures !== a.signatures) {
      const signatures = await session.signatures();
      if (
        signatures === undefined ||
        session.shown?.solution !== b.solution ||
        other.now?.signatures !== a.signatures
      ) {
        return;
      }
      const modes_of_b = b.solution.modes.length;
      const found = await board.askBeside("compare_shapes", { a: a.signatures, b: signatures, modes_of_b });
      if (found === undefined || session.shown?.solution !== b.solution || other.now?.signatures !== a.signatures) {
        return;
      }
      matched = { a: other.now, b: b.solution, found };
      if (b.solution.size !== "preview") {
        frame(b.design);
      }
      matrix.show(a.solution.modes, b.solution.modes, found.likeness, found.partners);
    }
    matched = { ...matched, a: other.now ?? a };
    tell(matched);
    await showPair();
  };

  let framed = "";
  /** A settled top of another outline may be of another size. @param {string} design */
  const frame = (design) => {
    const outline = JSON.stringify(JSON.parse(design).outline);
    if (framed !== outline) {
      framed = outline;
      stage.refit();
    }
  };

  /** @param {Matched} now */
  const tell = ({ a, b, found }) => {
    const shown = session.shown;
    if (shown === undefined) {
      return;
    }
    const [own, before] = [shown.design, a.design].map((text) => JSON.parse(text));
    const one_board = JSON.stringify(own.wood) === JSON.stringify(before.wood);
    rows = modePairs(a.solution.modes, b.modes, found).map((pair) => {
      const of_a = pair.a && a.sureties?.[pair.a.number - 1];
      const of_b = pair.b && shown.sureties?.[pair.b.number - 1];
      if (pair.a === undefined || pair.b === undefined) {
        const hertz = [pair.a && bestHertz(pair.a, of_a), pair.b && bestHertz(pair.b, of_b)];
        return { pair, hertz, shift: undefined, spread: undefined };
      }
      const shift = shiftOf(pair.a, pair.b, of_a, of_b);
      return { pair, hertz: [shift.a_hz, shift.b_hz], shift, spread: shiftSpread(shift, of_a, of_b, one_board) };
    });
    pairs.show(rows);
    const corrected = rows.some(({ shift }) => shift?.corrected);
    const known = rows.some(({ spread }) => spread !== undefined);
    basis.textContent = [
      b.size === "preview" ? WORDS.following(b.set_right) : "",
      corrected ? WORDS.corrected : WORDS.uncorrected,
      known ? (one_board ? WORDS.one_board : WORDS.two_boards) : "",
    ]
      .filter((text) => text !== "")
      .join(" ");
    const same = shown.design === a.design ? ` ${WORDS.same}` : "";
    said.textContent = refused || `${WORDS.about(a.name, store.name)}${same}`;
    results.hidden = false;
  };

  /** @returns {{ a: Mode | undefined, b: Mode, likeness: number } | undefined} what the stage shows or is about to */
  const shownPair = () => {
    const chosen = session.shown?.chosen;
    if (matched === undefined || chosen === undefined || session.shown?.solution !== matched.b) {
      return undefined;
    }
    const { a, b, found } = matched;
    const forced_now = forced?.b === chosen.number && forced.of?.found === found ? forced : undefined;
    const at = forced_now?.a ?? found.partners.indexOf(chosen.number);
    return {
      a: a.solution.modes[at],
      b: chosen,
      likeness: at < 0 ? 0 : found.likeness[at * b.modes.length + chosen.number - 1],
    };
  };

  let turn = 0;
  const showPair = async () => {
    const pair = shownPair();
    if (pair === undefined || matched === undefined) {
      return;
    }
    turn += 1;
    const own_turn = turn;
    const { a } = matched;
    const sureties_of_b = session.shown?.sureties;
    // A driven motion is of no mode.
    const driven = stage.motion !== undefined && stage.motion.mode === 0;
    const found = pair.a === undefined || driven ? undefined : await other.motion(pair.a);
    if (own_turn !== turn || a.signatures !== other.now?.signatures || !is_open()) {
      return;
    }
    a_motion = found && (pair.likeness < 0 ? turned(found) : found);
    const [a_scale, b_scale] = [found?.scale_mm_per_m, stage.motion?.scale_mm_per_m];
    const to_one = scale.word === "one" && a_scale !== undefined && b_scale !== undefined;
    shares = to_one ? sharesOfOneScale(a_scale, b_scale) : [1, 1];
    second.show(a.solution.picture, a_motion, shares);
    colours.offer(true);
    // They stand for the stage's heading and say what that and the table of modes do.
    const mode = (/** @type {Mode | undefined} */ mode, /** @type {readonly Surety[]} */ sureties = []) =>
      mode === undefined || driven
        ? WORDS.at_rest
        : `${modeName(mode)}, ${hertzText(bestHertz(mode, sureties[mode.number - 1]))}\u202fHz`;
    second.caption(
      [`a: ${a.name}`, pair.a === undefined && !driven ? WORDS.no_partner : mode(pair.a, a.sureties)],
      [`b: ${WORDS.own}`, driven ? "" : mode(pair.b, sureties_of_b)],
    );
    pairs.point(pair.b.number);
    matrix.point(pair.a === undefined ? undefined : pair.a.number - 1, pair.b.number - 1);
    await tellFigures(own_turn, driven);
  };

  /**
   * @param {number} own_turn
   * @param {boolean} driven
   */
  const tellFigures = async (own_turn, driven) => {
    const [a, b, picture, motion] = [other.now, session.shown, stage.picture, stage.motion];
    if (a === undefined || b === undefined || picture !== b.solution.picture) {
      return;
    }
    /** @type {(design: string, top: import("../messages.js").Picture, of: Motion | undefined) => Promise<Movement | undefined>} */
    const movement = async (design, top, of) =>
      of === undefined || driven ? undefined : board.askBeside("movement", { design, ...nodeMotion(top, of) });
    const of_a = await movement(a.design, a.solution.picture, a_motion);
    const a_regions = await regionsOf(a.design);
    const of_b = await movement(b.design, picture, motion);
    const b_regions = await regionsOf(b.design);
    if (own_turn === turn && a_regions !== undefined && b_regions !== undefined) {
      figure_rows = figureRows(
        { mass_g: a.solution.picture.mass_g, regions: a_regions, movement: of_a },
        { mass_g: picture.mass_g, regions: b_regions, movement: of_b },
      );
      fillFigures(figures, figure_rows);
    }
  };

  /** @param {string} design */
  const regionsOf = async (design) => {
    const known = regions_known.get(design) ?? (await board.askBeside("regions", { design }))?.regions;
    if (known !== undefined) {
      regions_known.delete(design);
      regions_known.set(design, known);
      if (regions_known.size > 2) {
        regions_known.delete([...regions_known.keys()][0]);
      }
    }
    return known;
  };

  section?.addEventListener("toggle", () => {
    void choice.list();
    void take();
  });
  store.subscribe(() => {
    if (is_open() && (choice.word === "before" || choice.word === "first")) {
      void take();
    }
  });
  session.subscribe(() => void refresh());
  stage.listen("motion", () => {
    if (is_open() && stage.picture === session.shown?.solution.picture) {
      void showPair();
    }
  });
  await choice.list();
}

/**
 * The same motion half a period later.
 * @param {Motion} motion
 * @returns {Motion}
 */
function turned(motion) {
  return { ...motion, re: motion.re.map((value) => -value), im: motion.im.map((value) => -value) };
}

/**
 * @param {readonly PairRow[]} rows
 * @param {readonly FigureRow[]} figures
 */
function csv(rows, figures) {
  const { shape, number, shift, cents, deviation, figure, unit } = WORDS;
  const round = (/** @type {number | undefined} */ value) =>
    value === undefined ? undefined : Number(value.toFixed(3));
  return csvText([
    [
      shape,
      `${number} a`,
      `${number} b`,
      "a (Hz)",
      "b (Hz)",
      `${shift} (%)`,
      `${shift} (${cents})`,
      `${deviation} (%)`,
      "MAC",
    ],
    ...rows.map(({ pair, hertz, shift, spread }) => [
      (pair.b ?? pair.a)?.name ?? "",
      pair.a?.number,
      pair.b?.number,
      ...hertz.map(round),
      round(shift?.pct),
      round(shift?.cents),
      round(spread),
      shift && round(assurance(pair.likeness)),
    ]),
    [],
    [figure, unit, "a", "b", "b - a"],
    ...figures.map(({ name, unit, a, b }) => [
      name,
      unit,
      round(a),
      round(b),
      a === undefined || b === undefined ? undefined : round(b - a),
    ]),
  ]);
}
