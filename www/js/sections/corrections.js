/**
 * How a measured file lies, to be put right: exchanged ends and sides, a turn, shifts.
 */
/** @import { ImportKind, Wishes } from "./import_messages.js" */

import { MEASURED_WORDS } from "#words/measured.js";
import { BoxField, group, NumberField } from "./fields.js";

/** The corrections that a kind of file can need, as they are now. */
export class Corrections {
  set;

  /**
   * @param {ImportKind} kind
   * @param {Wishes} wishes
   * @param {(wishes: Wishes) => void} changed
   */
  constructor(kind, wishes, changed) {
    const words = MEASURED_WORDS;
    this.set = group(words.laid);
    /** @type {("end_for_end" | "upside_down" | "mirrored")[]} */
    const exchanged = kind === "scan" ? ["end_for_end", "upside_down", "mirrored"] : ["end_for_end", "mirrored"];
    for (const key of exchanged) {
      const box = new BoxField(words[key], "", (ticked) => changed({ ...wishes, [key]: ticked }));
      box.show(wishes[key] === true);
      this.set.append(box.row);
    }
    // The fit of an outline finds its turn and its place by itself.
    if (kind === "outline") {
      return;
    }
    const turn = new NumberField({ label: words.turn, unit: "deg", step: 0.1 }, (value) => {
      changed({ ...wishes, turn_deg: value ?? 0 });
    });
    turn.show(wishes.turn_deg ?? 0);
    this.set.append(turn.row);
    const shift_mm = wishes.shift_mm ?? [0, 0, 0];
    words.shifts.forEach((label, axis) => {
      const field = new NumberField({ label, unit: "mm" }, (value) => {
        const [x, y, z] = shift_mm.map((now, other) => (other === axis ? (value ?? 0) : now));
        changed({ ...wishes, shift_mm: [x, y, z] });
      });
      field.show(shift_mm[axis]);
      this.set.append(field.row);
    });
  }
}
