/**
 * One drawing on the page: its lines, labels and handles. A handle is dragged with mouse, finger or pen, or moved by
 * keys; while it moves the change is offered as a trial, and settled when it is let go.
 */
/** @import { Drawing, Handle } from "./messages.js" */

import { DRAWING_WORDS } from "#words/drawings.js";
import { measureName } from "#words/measures.js";
import { numberText } from "#words/page.js";
import { dragged, keyed } from "./handle_moves.js";

const SVG = "http://www.w3.org/2000/svg";

/** How near a press has to be to a handle, in CSS pixels: a finger covers more than a mouse's point. */
const REACH_PX = /** @type {Record<string, number>} */ ({ mouse: 12, pen: 16, touch: 22 });

/**
 * @typedef {object} SheetLayout
 * @property {readonly [number, number, number, number]} matrix from the sheet to the page's SVG, as in CSS matrix(a, b, c, d)
 * @property {readonly [number, number, number, number]} margins left, top, right, bottom, mm on the page's SVG
 * @property {"middle" | "start"} anchor of the labels
 */

/**
 * @typedef {object} SheetEvents
 * @property {(handle: Handle, value: number) => void} trial
 * @property {(handle: Handle, value: number) => void} settle
 * @property {(handle: Handle, value: number) => void} attend a handle has the pointer or the focus
 */

/** @typedef {{ handle: Handle, group: SVGGElement, number: SVGTextElement, pending?: number, moved: boolean }} Held */

/** Draws one sheet and moves its handles. */
export class DrawingSheet {
  #svg;
  #layout;
  #events;
  #lines = group("lines");
  #labels = group("labels");
  #handles = group("handles");
  /** @type {Drawing | undefined} */
  #drawing;
  /** @type {Map<string, Held>} by what they move */
  #held = new Map();
  /** @type {{ held: Held, from: number, at: [number, number], pointer: number } | undefined} */
  #drag;
  /** Millimetres of the SVG to a CSS pixel. */
  #mm_per_px = 1;

  /**
   * @param {SVGSVGElement} svg
   * @param {SheetLayout} layout
   * @param {SheetEvents} events
   */
  constructor(svg, layout, events) {
    this.#svg = svg;
    this.#layout = layout;
    this.#events = events;
    this.#lines.setAttribute("transform", `matrix(${layout.matrix.join(" ")} 0 0)`);
    this.#labels.setAttribute("text-anchor", layout.anchor);
    for (const hidden of [this.#lines, this.#labels]) {
      hidden.setAttribute("aria-hidden", "true");
    }
    svg.append(this.#lines, this.#labels, this.#handles);
    svg.addEventListener("pointerdown", (event) => this.#grab(event));
    svg.addEventListener("pointermove", (event) => this.#follow(event));
    svg.addEventListener("pointerup", (event) => this.#release(event, true));
    svg.addEventListener("pointercancel", (event) => this.#release(event, false));
    new ResizeObserver(() => this.#fit()).observe(svg);
  }

  /** What is shown, for a file. */
  get drawing() {
    return this.#drawing;
  }

  /**
   * @param {Drawing} drawing
   * @param {boolean} latest false where it is of a design that another has followed since
   */
  show(drawing, latest) {
    this.#drawing = drawing;
    fill(this.#lines, drawing.lines.length, "path").forEach((path, i) => {
      path.setAttribute("class", drawing.lines[i].kind);
      path.setAttribute("d", drawing.lines[i].path);
    });
    fill(this.#labels, drawing.labels.length, "text").forEach((text, i) => {
      text.setAttribute("class", drawing.labels[i].minor ? "minor" : "");
      text.textContent = DRAWING_WORDS.label(drawing.labels[i]);
      text.setAttribute("dx", this.#layout.anchor === "start" ? "9" : "0");
    });
    this.#showHandles(drawing.handles, latest);
    this.#fit();
  }

  /** The value that was tried can't be: every handle goes back to the design's number. */
  goBack() {
    for (const held of this.#held.values()) {
      held.pending = undefined;
      this.#place(held);
    }
  }

  /**
   * A number that was given to a handle stays until the drawing of that very design is there; one of an earlier design would
   * take it back, and the next key would go on from there.
   * @param {readonly Handle[]} handles
   * @param {boolean} latest
   */
  #showHandles(handles, latest) {
    const before = this.#held;
    this.#held = new Map();
    for (const handle of handles) {
      const key = handle.paths.join();
      const held = before.get(key) ?? this.#build(handle);
      before.delete(key);
      held.handle = handle;
      if (latest && held !== this.#drag?.held && !held.moved) {
        held.pending = undefined;
      }
      this.#held.set(key, held);
    }
    for (const gone of before.values()) {
      gone.group.remove();
    }
  }

  /**
   * @param {Handle} handle
   * @returns {Held}
   */
  #build(handle) {
    const holder = group("handle");
    holder.setAttribute("role", "slider");
    holder.setAttribute("tabindex", "0");
    const [hit, arrows, dot, number] = ["circle", "path", "circle", "text"].map((name) => {
      const part = document.createElementNS(SVG, name);
      holder.append(part);
      return part;
    });
    hit.setAttribute("class", "hit");
    arrows.setAttribute("d", "M9-3l4 3-4 3M-9-3l-4 3 4 3");
    dot.setAttribute("r", "4.5");
    /** @type {Held} */
    const held = { handle, group: holder, number: /** @type {SVGTextElement} */ (number), moved: false };
    holder.addEventListener("keydown", (event) => this.#press(held, event));
    holder.addEventListener("keyup", () => this.#letGo(held));
    holder.addEventListener("blur", () => this.#letGo(held));
    for (const kind of ["focus", "pointerenter"]) {
      holder.addEventListener(kind, () => this.#events.attend(held.handle, numberOf(held)));
    }
    this.#handles.append(holder);
    return held;
  }

  /** Fits the view to the drawing, but for while a handle is dragged: the paper would slip under the pointer. */
  #fit() {
    const drawing = this.#drawing;
    if (drawing === undefined) {
      return;
    }
    if (this.#drag === undefined) {
      const [a, b] = [this.#onPage(drawing.low), this.#onPage(drawing.high)];
      const [left, top, right, bottom] = this.#layout.margins;
      const low = [Math.min(a[0], b[0]) - left, Math.min(a[1], b[1]) - top];
      const size = [Math.max(a[0], b[0]) + right - low[0], Math.max(a[1], b[1]) + bottom - low[1]];
      this.#svg.setAttribute("viewBox", [...low, ...size].join(" "));
      // Figures side by side share a row by the widths of what they show, and so have one scale.
      this.#svg.parentElement?.style.setProperty("flex-grow", String(size[0]));
      this.#mm_per_px = size[0] / Math.max(this.#svg.clientWidth, 1);
    }
    [...this.#labels.children].forEach((text, i) => {
      this.#put(text, drawing.labels[i].at);
    });
    for (const held of this.#held.values()) {
      this.#place(held);
    }
  }

  /** @param {Held} held */
  #place(held) {
    const { handle, group: holder, number } = held;
    const value = numberOf(held);
    const off = value - handle.value;
    this.#put(holder, [handle.at[0] + off * handle.along[0], handle.at[1] + off * handle.along[1]]);
    const along = this.#onPage(handle.along);
    const turn = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
    holder.children[1].setAttribute("transform", `rotate(${turn.toFixed(1)})`);
    const text = valueText(handle, value);
    number.textContent = text;
    number.setAttribute("x", String(Math.sign(this.#onPage(handle.at)[0]) * -14));
    number.setAttribute("y", "-16");
    for (const [name, says] of [
      ["label", measureName(handle.paths[0], handle.what)],
      ["valuemin", String(handle.least)],
      ["valuemax", String(handle.most)],
      ["valuenow", String(value)],
      ["valuetext", text],
      ["orientation", Math.abs(along[0]) > Math.abs(along[1]) ? "horizontal" : "vertical"],
    ]) {
      holder.setAttribute(`aria-${name}`, says);
    }
  }

  /**
   * Lays something down whose size is in CSS pixels.
   * @param {Element} element
   * @param {readonly [number, number]} at on the sheet
   */
  #put(element, at) {
    const [x, y] = this.#onPage(at);
    element.setAttribute(
      "transform",
      `translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${this.#mm_per_px.toFixed(4)})`,
    );
  }

  /**
   * @param {readonly [number, number]} p
   * @returns {[number, number]}
   */
  #onPage([u, v]) {
    const [a, b, c, d] = this.#layout.matrix;
    return [a * u + c * v, b * u + d * v];
  }

  /** @param {PointerEvent} event */
  #grab(event) {
    const reach = REACH_PX[event.pointerType] ?? REACH_PX.mouse;
    let nearest = reach;
    /** @type {Held | undefined} */
    let found;
    for (const held of this.#held.values()) {
      const dot = held.group.children[2].getBoundingClientRect();
      const away = Math.hypot(event.clientX - dot.x - 0.5 * dot.width, event.clientY - dot.y - 0.5 * dot.height);
      if (away < nearest) {
        [nearest, found] = [away, held];
      }
    }
    if (found === undefined || this.#drag !== undefined || event.button !== 0) {
      return;
    }
    event.preventDefault();
    this.#svg.setPointerCapture(event.pointerId);
    found.group.focus({ preventScroll: true });
    found.group.classList.add("moving");
    const from = numberOf(found);
    this.#drag = { held: found, from, at: [event.clientX, event.clientY], pointer: event.pointerId };
  }

  /** @param {PointerEvent} event */
  #follow(event) {
    if (this.#drag?.pointer !== event.pointerId) {
      return;
    }
    const { held, from, at } = this.#drag;
    const drag = /** @type {const} */ ([
      (event.clientX - at[0]) * this.#mm_per_px,
      (event.clientY - at[1]) * this.#mm_per_px,
    ]);
    this.#offer(held, dragged(held.handle, from, this.#onPage(held.handle.along), drag));
  }

  /**
   * @param {PointerEvent} event
   * @param {boolean} meant false where the browser took the pointer away, to scroll or otherwise
   */
  #release(event, meant) {
    if (this.#drag?.pointer === event.pointerId) {
      this.#end(meant);
    }
  }

  /** @param {boolean} meant */
  #end(meant) {
    if (this.#drag === undefined) {
      return;
    }
    const { held, from } = this.#drag;
    this.#drag = undefined;
    held.group.classList.remove("moving");
    if (!meant) {
      this.#offer(held, from);
    }
    this.#letGo(held);
    this.#fit();
  }

  /**
   * @param {Held} held
   * @param {KeyboardEvent} event
   */
  #press(held, event) {
    if (event.key === "Escape" && this.#drag?.held === held) {
      this.#end(false);
    }
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const value = keyed(held.handle, numberOf(held), event);
    if (value !== undefined) {
      event.preventDefault();
      this.#offer(held, value);
    }
  }

  /**
   * @param {Held} held
   * @param {number} value
   */
  #offer(held, value) {
    if (value !== numberOf(held)) {
      held.pending = value;
      held.moved = true;
      this.#place(held);
      this.#events.attend(held.handle, value);
      this.#events.trial(held.handle, value);
    }
  }

  /** @param {Held} held */
  #letGo(held) {
    if (held.moved && held !== this.#drag?.held) {
      held.moved = false;
      this.#events.settle(held.handle, numberOf(held));
    }
  }
}

/** @param {Held} held */
function numberOf({ handle, pending }) {
  return pending ?? handle.value;
}

/**
 * @param {Handle} handle
 * @param {number} value
 */
export function valueText({ unit }, value) {
  return unit === "" ? numberText(value, 2) : `${numberText(value, 1)} ${unit}`;
}

/** @param {string} name */
function group(name) {
  const made = /** @type {SVGGElement} */ (document.createElementNS(SVG, "g"));
  made.setAttribute("class", name);
  return made;
}

/**
 * Gives a group just so many children, keeping those it has.
 * @param {SVGGElement} holder
 * @param {number} count
 * @param {string} name
 */
function fill(holder, count, name) {
  while (holder.children.length > count) {
    holder.lastElementChild?.remove();
  }
  while (holder.children.length < count) {
    holder.append(document.createElementNS(SVG, name));
  }
  return [...holder.children];
}
