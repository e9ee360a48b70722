/**
 * What one workshop step would do to a figure, the largest effect first; a step that is chosen is shown on the stage.
 */
/** @import { Design } from "../design_store.js" */
/** @import { DrivenFigures, StepEffect } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { STEP_WORDS as WORDS } from "#words/steps.js";
import { styleSheet } from "../style_sheet.js";
import { button, ChoiceField, note } from "./fields.js";
import { effectText, stepText } from "./signed_text.js";
import { StepOrigin } from "./step_origin.js";
import { figuresOf, firstFigure, stepBench, stepNames, unitOf } from "./steps_client.js";
import { namedRow, tableOf } from "./tables.js";
import { Waiting } from "./waiting.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  await styleSheet("steps");
  const client = stepBench(bench);
  const named = await stepNames(bench);
  const waiting = new Waiting(WORDS.solving);
  const figure_host = document.createElement("div");
  const progress = note("");
  progress.setAttribute("role", "status");
  const table = tableOf(WORDS.columns);
  table.className = "effects";
  table.createCaption().textContent = WORDS.caption;
  table.hidden = true;
  const shown = note("");
  shown.setAttribute("role", "status");
  const keep = button(WORDS.keep, () => void take());
  const back = button(WORDS.back, () => void origin.leave());
  const choices = document.createElement("div");
  choices.className = "part";
  choices.append(shown, keep, back);
  choices.hidden = true;
  host.append(...waiting.parts, figure_host, progress, choices, table, note(WORDS.about));

  /** @type {ChoiceField | undefined} */
  let figure;
  /** @type {(StepEffect | undefined)[]} */
  let effects = [];
  /** @type {(DrivenFigures | undefined)[]} */
  let responses = [];
  /** @type {Design | undefined} the top with a step, while it is shown */
  let stepped;

  /** What is known of the figure chosen, and then what isn't yet, step by step. */
  const fill = () =>
    waiting.tell(async () => {
      const current = origin.turn();
      const count = origin.steps?.steps.length ?? 0;
      let none = 0;
      for (let step = 0; step < count; step += 1) {
        const ofResponse = /^(island|wings)$/.test(figure?.word ?? "");
        const known = ofResponse ? responses : effects;
        if (!(step in known)) {
          const request = { design: origin.text, step };
          const answer = ofResponse
            ? await client.askBeside("step_response", request)
            : await client.askBeside("step_effect", request);
          if (!current()) {
            return;
          }
          // Those that can't be made stay nothing.
          known[step] = /** @type {any} */ (answer);
          if (ofResponse || step % 8 === 0) {
            show();
            progress.textContent = WORDS.progress(step + 1, count);
          }
        }
        none += known[step] === undefined ? 1 : 0;
      }
      show();
      progress.textContent = WORDS.done(count, none);
    });

  /**
   * Of the figure chosen.
   * @param {number} step
   * @returns {{ value: number, within: number | undefined } | undefined}
   */
  const effectOf = (step) => {
    const [what, at] = (figure?.word ?? "").split(" ");
    const [effect, response] = [effects[step], responses[step]];
    if (what === "island" || what === "wings") {
      const told = what === "island" ? response?.island_mobility_db : response?.wing_activity;
      return told ? { value: told.value, within: told.sure_within } : undefined;
    }
    if (effect === undefined) {
      return undefined;
    }
    if (what === "mode") {
      const value = effect.by_mode_hz[Number(at)];
      return { value, within: Math.abs(value) * (origin.steps?.modes[Number(at)].sure_within ?? 0) };
    }
    // Lengths and areas are as exact as the design.
    return { value: what === "mass" ? effect.mass_g : effect.narrows_mm[Number(at)], within: undefined };
  };

  const show = () => {
    const known = (origin.steps?.steps ?? []).flatMap((step, index) => {
      const told = effectOf(index);
      return told === undefined ? [] : [{ step, index, ...told }];
    });
    known.sort((one, other) => Math.abs(other.value) - Math.abs(one.value));
    const most = Math.max(...known.map(({ value, within }) => Math.abs(value) + (within ?? 0)), Number.MIN_VALUE);
    const unit = unitOf(figure?.word);
    const focused = table.contains(document.activeElement)
      ? /** @type {HTMLElement} */ (document.activeElement).dataset.step
      : undefined;
    table.hidden = known.length === 0;
    const body = table.tBodies[0];
    body.replaceChildren();
    for (const { step, index, value, within } of known) {
      const { name, unit: of_step } = named(step);
      const words = stepText(name, step.change, of_step);
      const row = namedRow(body, "");
      const chosen = button(words, () => void stepTo(index, words));
      chosen.dataset.step = String(index);
      row.cells[0].replaceChildren(chosen);
      const cell = row.insertCell();
      const text = document.createElement("span");
      text.textContent = effectText(value, within, unit);
      cell.append(barOf(value / most, (within ?? 0) / most), text);
      if (focused === String(index)) {
        chosen.focus();
      }
    }
  };

  /**
   * @param {number} step
   * @param {string} words
   */
  const stepTo = (step, words) =>
    bench.attempt(async () => {
      const text = await client.ask("stepped", { design: origin.text, step, share: 1 });
      stepped = /** @type {Design} */ (JSON.parse(text));
      shown.textContent = WORDS.shown(words);
      choices.hidden = false;
      origin.trial(stepped);
    });

  const take = async () => {
    if (stepped !== undefined && (await origin.take(stepped))) {
      bench.say(WORDS.kept);
    }
  };

  const origin = new StepOrigin(host, bench, waiting, {
    began: (steps) => {
      effects = [];
      responses = [];
      const word = figure?.word ?? firstFigure(steps);
      figure = new ChoiceField(WORDS.figure, "", figuresOf(steps), () => void fill());
      figure.show(word);
      figure_host.replaceChildren(figure.row);
      return fill();
    },
    left: () => {
      stepped = undefined;
      choices.hidden = true;
    },
  });
}

/**
 * A bar to one side of the middle with its spread over its end.
 * @param {number} share of the half width, −1 to 1
 * @param {number} within likewise
 */
function barOf(share, within) {
  const bar = document.createElement("span");
  bar.className = "effect-bar";
  bar.setAttribute("aria-hidden", "true");
  bar.style.setProperty("--from", String(Math.min(0, share)));
  bar.style.setProperty("--to", String(Math.max(0, share)));
  bar.style.setProperty("--end", String(share));
  bar.style.setProperty("--within", String(within));
  bar.classList.toggle("less", share < 0);
  return bar;
}
