/**
 * What a lesson shows on the stage: a mode, or the top driven by the bow; its colours, and from where.
 */
/** @import { Bench } from "../sections.js" */
/** @import { SetView } from "../view_backends.js" */
/** @import { WorkshopClient } from "../workshop_client.js" */
/** @import { Look } from "./lesson_files.js" */

import { DRIVE_WORDS } from "#words/drive.js";
import { colourBy } from "../colour_choice.js";
import { part } from "../page_parts.js";
import { DrivenStage } from "./driven_stage.js";

/** One stage's looks. */
export class LessonLook {
  #bench;
  #client;
  #driven;
  /** @type {string | undefined} what the person coloured the top by */
  #colour;
  /** @type {import("../messages.js").ModeWish | undefined} and looked at */
  #wish;

  /**
   * @param {Bench} bench
   * @param {WorkshopClient} client
   */
  constructor(bench, client) {
    this.#bench = bench;
    this.#client = client;
    this.#driven = new DrivenStage(bench);
  }

  /**
   * Says which mode is to be looked at on the design that comes next.
   * @param {Look} look
   */
  wish({ mode }) {
    if (mode !== undefined) {
      const wish = typeof mode === "number" ? { name: "", number: mode } : { name: mode, number: 1 };
      const before = this.#bench.session.wish(wish);
      this.#wish ??= before;
    }
  }

  /** @param {Look} look */
  dress({ colour, view }) {
    this.#colour ??= part("#colour-by", HTMLSelectElement).value;
    if (colour !== undefined) {
      colourBy(colour);
    }
    if (view !== undefined) {
      this.#bench.stage.look((drawn) => drawn.view(/** @type {SetView} */ (view)));
    }
  }

  /** Leaves the stage as the person had it. */
  undress() {
    this.dress({ colour: this.#colour });
    if (this.#wish !== undefined) {
      this.#bench.session.wish(this.#wish);
    }
    this.#colour = this.#wish = undefined;
  }

  /**
   * Drives the settled design, where that is what is looked at.
   * @param {Look} look
   * @param {string} design
   */
  async drive({ hz }, design) {
    if (hz !== undefined) {
      const drive = { by: /** @type {const} */ ("bow"), place_mm: /** @type {[number, number]} */ ([0, 0]) };
      const { re, im, largest_um } = await this.#client.ask("driven_motion", { design, drive, hz });
      const [title, text] = [DRIVE_WORDS.stage_title(hz), DRIVE_WORDS.stage_text(largest_um)];
      this.#driven.show(
        { re, im },
        { title, text, detail: DRIVE_WORDS.stage_detail(DRIVE_WORDS.drives.bow), largest_um },
      );
    }
  }
}
