/**
 * Hands on the stage: one finger or the left button turns the top, two fingers or the right button shift it, pinch and
 * wheel bring it nearer; the keyboard does all of it too.
 */
/** @import { Stage } from "./stage.js" */
/** @import { View } from "./view_backends.js" */

/** One arrow key press turns as far as a drag over this many CSS pixels. */
const KEY_STEP_PX = 24;

/** One key press or wheel notch brings the top this much nearer. */
const ZOOM_STEP = 1.15;

/** A wheel notch in the browser's pixels. */
const NOTCH_PX = 100;

/**
 * @param {HTMLElement} host the element that holds the canvas
 * @param {Stage} stage
 */
export function listenToHands(host, stage) {
  // A stop on the way of the tab key only where keys are listened to.
  host.tabIndex = 0;

  /** @type {Map<number, { x: number, y: number }>} */
  const fingers = new Map();

  host.addEventListener("pointerdown", (event) => {
    host.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  host.addEventListener("pointermove", (event) => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) {
      return;
    }
    const now = { x: event.clientX, y: event.clientY };
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
    fingers.set(event.pointerId, now);
    const [dx, dy] = [now.x - before.x, now.y - before.y];
    if (other !== undefined) {
      const factor = distance(now, other) / Math.max(distance(before, other), 1);
      // Each of two fingers carries half of the shift.
      stage.handle((view, ratio) => {
        view.pan((dx * ratio) / 2, (dy * ratio) / 2);
        view.zoom(factor);
      });
    } else if (event.shiftKey || (event.buttons & ~1) !== 0) {
      stage.handle((view, ratio) => view.pan(dx * ratio, dy * ratio));
    } else {
      stage.handle((view, ratio) => view.orbit(dx * ratio, dy * ratio));
    }
  });
  for (const end of /** @type {const} */ (["pointerup", "pointercancel", "lostpointercapture"])) {
    host.addEventListener(end, (event) => fingers.delete(event.pointerId));
  }
  host.addEventListener("contextmenu", (event) => event.preventDefault());
  host.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      const lines_px = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 33 : 1;
      stage.handle((view) => view.zoom(ZOOM_STEP ** ((-event.deltaY * lines_px) / NOTCH_PX)));
    },
    { passive: false },
  );
  host.addEventListener("dblclick", () => stage.look((view) => view.fit()));
  host.addEventListener("keydown", (event) => {
    const movement = keyMovement(event);
    if (movement !== undefined && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      stage.handle(movement);
    }
  });
}

/**
 * @param {{ x: number, y: number }} a
 * @param {{ x: number, y: number }} b
 */
function distance(a, b) {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/**
 * @param {KeyboardEvent} event
 * @returns {((view: View, ratio: number) => void) | undefined}
 */
function keyMovement(event) {
  /** @type {Record<string, readonly [number, number]>} */
  const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  const arrow = arrows[event.key];
  if (arrow !== undefined) {
    const [dx, dy] = [arrow[0] * KEY_STEP_PX, arrow[1] * KEY_STEP_PX];
    return event.shiftKey
      ? (view, ratio) => view.pan(dx * ratio, dy * ratio)
      : (view, ratio) => view.orbit(dx * ratio, dy * ratio);
  }
  switch (event.key) {
    case "+":
    case "=":
      return (view) => view.zoom(ZOOM_STEP);
    case "-":
      return (view) => view.zoom(1 / ZOOM_STEP);
    case "0":
      return (view) => view.fit();
    default:
      return undefined;
  }
}
