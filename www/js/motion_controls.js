/**
 * Play and pause, phase, speed, exaggeration, ghosts, and the set views.
 */
/** @import { Stage } from "./stage.js" */
/** @import { SetView } from "./view_backends.js" */

import { numberText, WORDS } from "#words/page.js";
import { part } from "./page_parts.js";
import { paintRange } from "./shape_controls.js";

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

  // While it plays the slider goes along; moved by hand, it holds the motion there.
  const phase = part("#phase", HTMLInputElement);
  const showPhase = () => {
    phase.value = String((stage.phase_rad * 180) / Math.PI);
    show(phase);
  };
  stage.listen("frame", showPhase);
  phase.addEventListener("input", () => {
    setPlaying(false);
    stage.setPhase((phase.valueAsNumber * Math.PI) / 180);
  });

  const ghosts = part("#ghosts", HTMLInputElement);
  const showGhosts = () => stage.hold("ghosts", (view) => view.set_ghosts(ghosts.checked));
  ghosts.addEventListener("change", showGhosts);
  showGhosts();

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
  const apply = () => {
    show(slider);
    effect(slider.valueAsNumber);
  };
  slider.addEventListener("input", apply);
  apply();
}

/**
 * Brings a slider's output and track in step with it.
 * @param {HTMLInputElement} slider
 */
function show(slider) {
  part(`output[for=${slider.id}]`, HTMLOutputElement).value = numberText(slider.valueAsNumber);
  paintRange(slider);
}
