/**
 * Play and pause, speed, exaggeration, and the set views.
 */
/** @import { Stage } from "./stage.js" */
/** @import { SetView } from "./view_backends.js" */
import { part } from "./page_parts.js";
import { paintRange } from "./shape_controls.js";
import { WORDS } from "./words.js";

/** @param {Stage} stage */
export function connectMotionControls(stage) {
  const play = part("#play", HTMLButtonElement);
  const setPlaying = (/** @type {boolean} */ playing) => {
    stage.play(playing);
    play.dataset.playing = String(playing);
    part(".button-text", HTMLElement, play).textContent = playing ? WORDS.pause : WORDS.play;
  };
  play.addEventListener("click", () => setPlaying(!stage.playing));

  // Moving pictures start by themselves only for those who have not asked for less of it.
  const reduced = matchMedia("(prefers-reduced-motion: reduce)");
  setPlaying(!reduced.matches);
  reduced.addEventListener("change", () => setPlaying(!reduced.matches));

  follow("#speed", (beats_a_second) => stage.setSpeed(beats_a_second));
  follow("#exaggeration", (exaggeration_mm) => {
    stage.setExaggeration(exaggeration_mm);
    part("#drawn-scale", HTMLElement).textContent = WORDS.drawn_scale(exaggeration_mm);
  });

  for (const button of document.querySelectorAll("button[data-view]")) {
    button.addEventListener("click", () => {
      const name = /** @type {SetView} */ (/** @type {HTMLElement} */ (button).dataset.view);
      stage.look((view) => view.view(name));
    });
  }
}

/**
 * Keeps a slider's output and effect in step with it, from now on.
 * @param {string} selector of the slider
 * @param {(value: number) => void} effect
 */
function follow(selector, effect) {
  const slider = part(selector, HTMLInputElement);
  const output = part(`output[for=${slider.id}]`, HTMLOutputElement);
  const apply = () => {
    output.value = slider.value;
    paintRange(slider);
    effect(slider.valueAsNumber);
  };
  slider.addEventListener("input", apply);
  apply();
}
