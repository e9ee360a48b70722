/**
 * The smallest change that leads to a target, with the wood to take off for it.
 */
/** @import { Proposal, Steps, StepTarget } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { numberText } from "#words/page.js";
import { REGION_WORDS } from "#words/regions.js";
import { STEP_WORDS as WORDS } from "#words/steps.js";
import { styleSheet } from "../style_sheet.js";
import { BoxField, button, ChoiceField, group, NumberField, note } from "./fields.js";
import { StepOrigin } from "./step_origin.js";
import { figuresOf, firstFigure, stepBench, stepNames, unitOf } from "./steps_client.js";
import { namedRow, tableOf } from "./tables.js";
import { Waiting } from "./waiting.js";
import { WoodOffMap } from "./wood_off_map.js";

/** Nearer than this share of what was wanted is there. */
const NEAR_ENOUGH = 0.05;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  await styleSheet("steps");
  const client = stepBench(bench);
  const named = await stepNames(bench);
  const waiting = new Waiting(WORDS.solving);
  const wanted = document.createElement("div");
  wanted.className = "part";
  let change = 5;
  let steps_each = 4;
  /** @type {number | undefined} */
  let least_narrows;
  const by = new NumberField({ label: WORDS.change, group: WORDS.wanted, unit: "", step: 0.5 }, (value) => {
    change = value ?? change;
    by.show(change);
  });
  const heavier = new BoxField(WORDS.no_heavier, WORDS.limits, () => undefined);
  const narrows = new NumberField(
    { label: WORDS.least_narrows, group: WORDS.limits, unit: "mm", step: 0.5, absent: WORDS.no_limit },
    (value) => {
      least_narrows = value;
      narrows.show(value);
    },
  );
  const carved = new BoxField(WORDS.carved, WORDS.limits, () => undefined);
  const each = new NumberField({ label: WORDS.steps, group: WORDS.limits, unit: "", step: 1 }, (value) => {
    steps_each = Math.min(Math.max(value ?? steps_each, 0.5), 20);
    each.show(steps_each);
  });
  const allowed = Object.entries(WORDS.groups).map(([word, text]) => {
    const box = new BoxField(text, WORDS.allowed, () => undefined);
    box.show(word === "arching" || word === "graduation");
    return { word, box };
  });
  const ask = button(WORDS.propose, () => void propose());
  const back = button(WORDS.back, () => void origin.leave());
  back.hidden = true;
  const result = document.createElement("div");
  result.className = "part proposal";
  result.hidden = true;
  host.append(
    ...waiting.parts,
    group(WORDS.wanted, wanted, by.row),
    group(WORDS.limits, heavier.row, carved.row, narrows.row, each.row),
    group(WORDS.allowed, ...allowed.map(({ box }) => box.row)),
    ask,
    result,
    note(WORDS.target_about),
  );
  by.show(change);
  each.show(steps_each);
  narrows.show(least_narrows);

  /** @type {ChoiceField | undefined} */
  let figure;

  const sayUnit = () => by.sayUnit(unitOf(figure?.word));

  const propose = () =>
    waiting.run(async () => {
      const { steps, text } = origin;
      if (steps === undefined || figure === undefined) {
        return;
      }
      const current = origin.turn();
      const [what, mode] = figure.word.split(" ");
      /** @type {StepTarget} */
      const target = {
        what: /** @type {StepTarget["what"]} */ (what),
        mode: Number(mode ?? 0),
        change,
        heavier_by_g: heavier.ticked ? 0 : undefined,
        narrows_mm: least_narrows,
        carved: carved.ticked,
        allowed: allowed.filter(({ box }) => box.ticked).map(({ word }) => word),
        steps: steps_each,
      };
      if (what === "island") {
        const open = steps.steps.flatMap(({ group }, step) => (target.allowed.includes(group) ? [step] : []));
        for (const [at, step] of open.entries()) {
          waiting.say(WORDS.listening(at + 1, open.length));
          await client.askBeside("step_response", { design: text, step });
          if (!current()) {
            return;
          }
        }
      }
      waiting.say(WORDS.proposing);
      const proposal = await client.ask("proposal", { design: text, target });
      if (current()) {
        waiting.say("");
        await show(proposal, target, steps);
      }
    });

  /**
   * @param {Proposal} proposal
   * @param {StepTarget} target
   * @param {Steps} steps
   */
  const show = async (proposal, target, steps) => {
    const told = note(verdict(proposal, target, unitOf(figure?.word)));
    told.setAttribute("role", "status");
    result.hidden = false;
    result.replaceChildren(told);
    if (proposal.changes.length === 0) {
      return;
    }
    const table = tableOf(WORDS.change_columns);
    table.className = "constants";
    table.createCaption().textContent = WORDS.changes;
    for (const { step, share } of proposal.changes) {
      const own = steps.steps[step];
      const { name, unit: of_step } = named(own);
      const row = namedRow(table.tBodies[0], of_step === "" ? name : `${name}, ${of_step}`);
      for (const value of [own.now, own.now + share * own.change]) {
        row.insertCell().textContent = numberText(value, of_step === "" ? 3 : 2);
      }
    }
    const then = proposal.narrows_mm.map((width_mm, place) => ({
      name: REGION_WORDS.name(steps.narrows[place].key),
      width_mm,
    }));
    const map = new WoodOffMap(bench);
    const design = JSON.parse(proposal.design);
    result.append(
      table,
      note(WORDS.mass_then(steps.mass_g, proposal.mass_g)),
      ...(then.length === 0 ? [] : [note(WORDS.narrows_then(then))]),
      group(WORDS.wood, map.figure),
      button(WORDS.show, () => {
        back.hidden = false;
        origin.trial(design);
      }),
      button(WORDS.take, async () => {
        if (await origin.take(design)) {
          bench.say(WORDS.taken);
        }
      }),
      back,
    );
    await map.show(origin.text, proposal.design);
  };

  const origin = new StepOrigin(host, bench, waiting, {
    began: (steps) => {
      const figures = Object.entries(figuresOf(steps)).filter(([word]) => !/^(narrows|wings)/.test(word));
      const word = figure?.word ?? firstFigure(steps);
      figure = new ChoiceField(WORDS.figure, WORDS.wanted, Object.fromEntries(figures), sayUnit);
      figure.show(word);
      wanted.replaceChildren(figure.row);
      sayUnit();
    },
    left: (anew) => {
      back.hidden = true;
      result.hidden ||= anew;
    },
  });
}

/**
 * @param {Proposal} proposal
 * @param {StepTarget} target
 * @param {string} unit
 */
function verdict({ changes, reached }, { change }, unit) {
  if (changes.length === 0) {
    return WORDS.nothing;
  }
  if (typeof reached !== "number") {
    return WORDS.lost;
  }
  const near = Math.abs(reached - change) <= NEAR_ENOUGH * Math.abs(change);
  return near ? WORDS.reached(change, reached, unit) : WORDS.missed(change, reached, unit);
}
