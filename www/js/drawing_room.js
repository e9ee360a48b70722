/**
 * All that is drawn and read off the arching, with a worker of its own. Loaded once the first picture and figures are there:
 * what moves is waited for, what is read is not.
 */
/** @import { PanelEvents } from "./drawings_panel.js" */
/** @import { WorkshopClient } from "./workshop_client.js" */
import { showArching } from "./arching_text.js";
import { DrawingsPanel } from "./drawings_panel.js";
import { part } from "./page_parts.js";

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
    void this.#draw(design);
    void this.#read(design);
  }

  /** What was tried can't be. */
  goBack() {
    this.#panel.goBack();
  }

  /** @param {string} design */
  async #draw(design) {
    const drawings = await this.#board.askBeside("drawings", { design });
    if (drawings !== undefined) {
      this.#panel.show(drawings, design === this.#latest);
    }
  }

  /** @param {string} design */
  async #read(design) {
    const arching = await this.#board.askBeside("arching", { design });
    if (arching !== undefined) {
      showArching(part("#arching-figures", HTMLElement), arching);
    }
  }
}
