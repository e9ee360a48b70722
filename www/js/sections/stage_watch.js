/**
 * Listening to the stage while a section is open, and only then: closed, it costs nothing.
 */
/** @import { Stage, StageMoment } from "../stage.js" */

/**
 * @param {HTMLElement} host inside the section
 * @param {Stage} stage
 * @param {Partial<Record<StageMoment, () => void>>} hear each is called now, when the section is opened again, and at its moment
 * @param {(open: boolean) => void} [turned] when the section is opened or closed, and now
 */
export function watchStage(host, stage, hear, turned) {
  const section = host.closest("details");
  /** @type {(() => void)[]} */
  const listening = [];
  const follow = () => {
    for (const stop of listening.splice(0)) {
      stop();
    }
    const open = section?.open !== false;
    turned?.(open);
    if (!open) {
      return;
    }
    for (const [moment, listener] of Object.entries(hear)) {
      listening.push(stage.listen(/** @type {StageMoment} */ (moment), listener));
      listener();
    }
  };
  section?.addEventListener("toggle", follow);
  follow();
}
