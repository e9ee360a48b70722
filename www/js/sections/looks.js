/**
 * How the top looks on the stage, beside what it is coloured by.
 */
/** @import { Bench } from "../sections.js" */
/** @import { View } from "../view_backends.js" */
import { LOOKS_WORDS as WORDS } from "#words/looks.js";
import { BoxField, group, note } from "./fields.js";

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, { stage }) {
  /**
   * @param {string} label
   * @param {boolean} ticked at first
   * @param {(view: View, ticked: boolean) => void} tell
   */
  const box = (label, ticked, tell) => {
    const field = new BoxField(label, "", (now) => stage.hold(label, (view) => tell(view, now)));
    field.show(ticked);
    return field.row;
  };
  host.append(
    group(
      WORDS.title,
      box(WORDS.nodal_lines, true, (view, shown) => view.set_nodal_lines(shown)),
      box(WORDS.plain, false, (view, plain) => view.set_plain(plain)),
    ),
    note(WORDS.about),
  );
}
