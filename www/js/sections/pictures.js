/**
 * The stage as a picture or as a short film of one period, with a caption, named after design and mode.
 */
/** @import { Bench } from "../sections.js" */

import { PICTURE_WORDS as WORDS } from "#words/pictures.js";
import { download, fileName } from "../design_files.js";
import { part } from "../page_parts.js";
import { button, ChoiceField, group, note } from "./fields.js";

/** Of a film: smooth, and few enough for every machine to draw in time. */
const FRAMES_A_SECOND = 30;
/** One period on the film, s: slow enough to follow, and below three flashes a second. */
const PERIOD_S = 2;
const FILM = "video/webm";
/** The caption's share of the shorter side. */
const CAPTION = 0.09;

/** @type {Record<string, [number, number]>} pixels */
const SIZES = { wide: [1920, 1080], small: [1280, 720], square: [1080, 1080], upright: [1200, 1600] };

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const size = new ChoiceField(WORDS.size, "", WORDS.sizes(SIZES), () => undefined);
  const film = button(WORDS.film, () => void bench.attempt(record));
  const still = button(WORDS.still, () => void bench.attempt(take));
  film.disabled = !globalThis.MediaRecorder?.isTypeSupported(FILM);
  host.append(group(WORDS.title, size.row, still, film), note(film.disabled ? WORDS.no_film : WORDS.about));

  const paper = () => {
    const sheet = document.createElement("canvas");
    [sheet.width, sheet.height] = SIZES[size.word];
    return sheet;
  };

  /**
   * @param {HTMLCanvasElement} sheet
   * @param {number} phase_rad
   * @returns {boolean} whether there is something that draws
   */
  const paint = (sheet, phase_rad) => {
    const ink = sheet.getContext("2d");
    const caption_px = Math.round(CAPTION * Math.min(sheet.width, sheet.height));
    const drawn = bench.stage.portray(sheet.width, sheet.height - caption_px, phase_rad, (canvas) => {
      ink?.drawImage(canvas, 0, 0, sheet.width, sheet.height - caption_px);
    });
    if (ink !== null) {
      const style = getComputedStyle(document.documentElement);
      ink.fillStyle = style.getPropertyValue("--sheet");
      ink.fillRect(0, sheet.height - caption_px, sheet.width, caption_px);
      ink.fillStyle = style.getPropertyValue("--ink");
      ink.textBaseline = "middle";
      ink.font = `${Math.round(0.36 * caption_px)}px system-ui, sans-serif`;
      const margin = 0.4 * caption_px;
      ink.fillText(caption(), margin, sheet.height - caption_px / 2, sheet.width - 2 * margin);
    }
    return drawn && ink !== null;
  };

  const caption = () => {
    const { stage, store, session } = bench;
    const hertz = part("#stage-hertz", HTMLElement).textContent ?? "";
    return WORDS.caption(store.name, session.title, hertz, stage.exaggeration_mm);
  };

  const named = (/** @type {string} */ ending) => fileName(`${bench.store.name} ${bench.session.title}`, ending);

  const take = async () => {
    const sheet = paper();
    const drawn = paint(sheet, bench.stage.phase_rad);
    const blob = await new Promise((resolve) => sheet.toBlob(resolve, "image/png"));
    save(drawn ? blob : null, named(".png"));
  };

  const record = async () => {
    const sheet = paper();
    if (!paint(sheet, 0)) {
      save(null, "");
      return;
    }
    const stream = sheet.captureStream(0);
    const track = /** @type {CanvasCaptureMediaStreamTrack} */ (stream.getVideoTracks()[0]);
    const recorder = new MediaRecorder(stream, { mimeType: FILM, videoBitsPerSecond: 8_000_000 });
    /** @type {Blob[]} */
    const parts = [];
    recorder.addEventListener("dataavailable", ({ data }) => parts.push(data));
    const stopped = new Promise((resolve) => recorder.addEventListener("stop", resolve, { once: true }));
    film.disabled = true;
    film.textContent = WORDS.recording;
    try {
      recorder.start();
      const frames = FRAMES_A_SECOND * PERIOD_S;
      for (let frame = 0; frame < frames; frame++) {
        const due = new Promise((resolve) => setTimeout(resolve, 1000 / FRAMES_A_SECOND));
        paint(sheet, (2 * Math.PI * frame) / frames);
        track.requestFrame();
        await due;
      }
      recorder.stop();
      await stopped;
    } finally {
      film.disabled = false;
      film.textContent = WORDS.film;
      for (const open of stream.getTracks()) {
        open.stop();
      }
    }
    save(new Blob(parts, { type: FILM }), named(".webm"));
  };

  /**
   * @param {Blob | null} blob
   * @param {string} name
   */
  const save = (blob, name) => {
    if (blob === null || blob.size === 0) {
      bench.warn(WORDS.failed);
      return;
    }
    download(name, blob, blob.type);
    bench.say(WORDS.saved(name));
  };
}
