/**
 * Whether the bridge is stiff or rocks by itself.
 */
import { DRIVE_WORDS as WORDS } from "#words/drive.js";
import { ChoiceField, NumberField } from "./fields.js";

/** As is usual for a violin's; the core says whose figure that is. */
const USUAL_HZ = 3000;

/** A choice, and the bridge's own frequency where it has one. */
export class BridgeField {
  /** To be laid into the page. */
  rows = document.createElement("div");
  #choice;
  #number;
  #hz = USUAL_HZ;

  /** @param {() => void} changed */
  constructor(changed) {
    this.#choice = new ChoiceField(WORDS.bridge, "", WORDS.bridges, () => {
      this.#show();
      changed();
    });
    this.#number = new NumberField({ ...WORDS.bridge_alone, group: WORDS.bridge, step: 50 }, (hz) => {
      this.#hz = hz ?? USUAL_HZ;
      this.#show();
      changed();
    });
    this.rows.className = "part";
    this.rows.append(this.#choice.row, this.#number.row);
    this.#show();
  }

  /** Of a bridge that rocks by itself; none for a stiff one. */
  get hz() {
    return this.#choice.word === "rocking" ? this.#hz : undefined;
  }

  #show() {
    this.#number.row.hidden = this.hz === undefined;
    this.#number.show(this.#hz);
  }
}
