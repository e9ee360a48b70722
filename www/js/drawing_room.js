/**
 * All that is drawn and read off the arching, with a worker of its own. Loaded once the first figures are there: what
 * moves is waited for, what is read is not.
 */
/** @import { PanelEvents } from "./drawings_panel.js" */
/** @import { Exchange } from "./messages.js" */
/** @import { WorkshopClient } from "./workshop_client.js" */
import { showArching } from "./arching_text.js";
import { DrawingsPanel } from "./drawings_panel.js";
import { part } from "./page_parts.js";
import { ProblemError, Superseded } from "./workshop_client.js";

/** Draws the design at hand. */
export class DrawingRoom {
  #board;
  #panel;
  /** The design asked about last. */
  #latest = "";

  /**
   * @param {WorkshopClient} board
   * @param {PanelEvents} events
   */
  constructor(board, events) {
    this.#board = board;
    this.#panel = new DrawingsPanel(events);
  }

  /**
   * Shows a design. The board answers in the order it is asked, so the last one stays.
   * @param {string} design
   */
  follow(design) {
    this.#latest = design;
    void this.#ask("drawings", design, (drawings) => this.#panel.show(drawings, design === this.#latest));
    void this.#ask("arching", design, (arching) => showArching(part("#arching-figures", HTMLElement), arching));
  }

  /** What was tried can't be. */
  goBack() {
    this.#panel.goBack();
  }

  /**
   * A design that can't be drawn can't be shown at all, which is told once, by whoever shows the top.
   * @template {"drawings" | "arching"} K
   * @param {K} kind
   * @param {string} design
   * @param {(value: Exchange[K]["get"]) => void} show
   */
  async #ask(kind, design, show) {
    try {
      show(await this.#board.ask(kind, { design }));
    } catch (reason) {
      if (!(reason instanceof ProblemError || reason instanceof Superseded)) {
        throw reason;
      }
    }
  }
}
