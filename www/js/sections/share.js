/**
 * The design handed on: as a link that opens to the same view, as a code to be scanned, and as a page of paper for a client.
 */
/** @import { Look } from "../design_link.js" */
/** @import { Code } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { told } from "#words/problems.js";
import { SHARE_WORDS as WORDS } from "#words/share.js";
import { download, fileName } from "../design_files.js";
import { linkOf } from "../design_link.js";
import { part } from "../page_parts.js";
import { styleSheet } from "../style_sheet.js";
import { ProblemError, Superseded } from "../workshop_client.js";
import { printSheet } from "./client_sheet.js";
import { button, group, note } from "./fields.js";
import { codeDrawing } from "./link_code.js";
import { whileOpen } from "./while_open.js";

/** After the last change of design or view: a link is not made anew for every frame of a turn. */
const PAUSE_MS = 300;

/** Enough that nobody sees the difference; each digit is a character of the link. */
const POSE_DECIMALS = 3;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export async function build(host, bench) {
  await styleSheet("share");
  const { stage, store } = bench;
  const field = document.createElement("input");
  field.type = "text";
  field.readOnly = true;
  field.className = "link";
  field.setAttribute("aria-label", WORDS.link);
  field.addEventListener("focus", () => field.select());
  const copy = button(WORDS.copy, () => void copyLink());
  const share = button(WORDS.share, () => void shareLink());
  share.hidden = navigator.share === undefined;
  const said = document.createElement("p");
  said.className = "said";
  said.setAttribute("role", "status");
  const length = note("");
  const figure = document.createElement("figure");
  figure.className = "code";
  const refused = note("");
  const large = button(WORDS.large, () => showLarge());
  const save = button(WORDS.save_code, () => saveCode());
  const code_buttons = document.createElement("p");
  code_buttons.className = "buttons";
  code_buttons.append(large, save);
  const offline = note("");
  const print = button(WORDS.print, () => void printSummary());
  const buttons = document.createElement("p");
  buttons.className = "buttons";
  buttons.append(copy, share);
  host.append(
    group(WORDS.link, field, buttons, said, length),
    group(WORDS.code, figure, refused, code_buttons, note(WORDS.code_about)),
    group(WORDS.summary, note(WORDS.summary_about), print),
    group(WORDS.offline, offline),
  );

  /** @type {Code | undefined} of the link in the field */
  let code;
  let last = "";
  /** @type {number | undefined} */
  let waiting;

  const refresh = async () => {
    waiting = undefined;
    offline.textContent = document.documentElement.dataset.offline === "ready" ? WORDS.is_kept : WORDS.not_kept;
    const shared = { design: store.design, look: lookOf(bench) };
    last = JSON.stringify(shared.look);
    try {
      const link = new URL(await linkOf(shared), location.href).href;
      if (link !== field.value) {
        field.value = link;
        said.textContent = "";
        length.textContent = WORDS.link_about(link.length);
        await showCode(link);
      }
    } catch (reason) {
      tell(reason, length);
    }
  };

  const soon = () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void refresh(), PAUSE_MS);
  };

  /** @param {string} link */
  const showCode = async (link) => {
    try {
      code = await bench.board().ask("qr_code", { text: link });
      figure.replaceChildren(codeDrawing(code, WORDS.code_label(store.name)));
      refused.textContent = "";
    } catch (reason) {
      code = undefined;
      figure.replaceChildren();
      tell(reason, refused);
    }
    code_buttons.hidden = code === undefined;
  };

  const copyLink = async () => {
    field.select();
    try {
      await navigator.clipboard.writeText(field.value);
      said.textContent = WORDS.copied;
    } catch {
      // Where a page may not write to the clipboard by itself, copying what is selected mostly works still.
      said.textContent = document.execCommand("copy") ? WORDS.copied : WORDS.not_copied;
    }
  };

  const shareLink = async () => {
    try {
      await navigator.share({ title: store.name, url: field.value });
    } catch (reason) {
      // Who closes the system's dialogue has changed their mind.
      if (!(reason instanceof DOMException && reason.name === "AbortError")) {
        said.textContent = WORDS.not_shared;
      }
    }
  };

  /** For a phone at the bench: as large as the screen, until a key or a click. */
  const showLarge = () => {
    if (code === undefined) {
      return;
    }
    const dialogue = document.createElement("dialog");
    dialogue.className = "large-code";
    dialogue.setAttribute("aria-label", WORDS.code);
    dialogue.append(
      codeDrawing(code, WORDS.code_label(store.name)),
      button(WORDS.close, () => dialogue.close()),
    );
    dialogue.addEventListener("close", () => dialogue.remove());
    document.body.append(dialogue);
    dialogue.showModal();
  };

  const saveCode = () => {
    if (code !== undefined) {
      const file = new XMLSerializer().serializeToString(codeDrawing(code, store.name));
      bench.say(WORDS.saved(download(fileName(store.name, "-link.svg"), file, "image/svg+xml")));
    }
  };

  const printSummary = async () => {
    print.disabled = true;
    print.textContent = WORDS.preparing;
    try {
      await refresh();
      await printSheet(bench, { address: field.value, code });
    } catch (reason) {
      tell(reason, said);
    } finally {
      print.disabled = false;
      print.textContent = WORDS.print;
    }
  };

  part("#colour-by", HTMLSelectElement).addEventListener("change", soon);
  const section = host.closest("details");
  for (const moment of /** @type {const} */ (["frame", "motion"])) {
    stage.listen(moment, () => {
      if (section?.open !== false && waiting === undefined && JSON.stringify(lookOf(bench)) !== last) {
        soon();
      }
    });
  }
  whileOpen(host, bench, soon);
}

/**
 * How the design is looked at now.
 * @param {Bench} bench
 * @returns {Look}
 */
function lookOf({ session, stage }) {
  /** @type {Look} */
  const look = { colour: part("#colour-by", HTMLSelectElement).value };
  const chosen = session.shown?.chosen;
  if (chosen !== undefined) {
    look.mode = { name: chosen.name, number: chosen.number };
  }
  const { pose } = stage;
  if (pose !== undefined) {
    look.pose = Array.from(pose, (number) => Number(number.toFixed(POSE_DECIMALS)));
  }
  return look;
}

/**
 * @param {unknown} reason
 * @param {HTMLElement} where
 */
function tell(reason, where) {
  if (reason instanceof ProblemError) {
    const { message, remedy } = told(reason.problem);
    where.textContent = `${message} ${remedy}`;
  } else if (!(reason instanceof Superseded)) {
    throw reason;
  }
}
