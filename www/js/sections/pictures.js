/**
 * The stage as a picture or as a short film of one period, with a caption, named after design and mode.
 */
/** @import { Bench } from "../sections.js" */

import { PICTURE_WORDS as WORDS } from "#words/pictures.js";
import { download, fileName } from "../design_files.js";
import { part } from "../page_parts.js";
import { button, ChoiceField, group, note } from "./fields.js";
import { canEncode, encodeFilm } from "./film.js";

/** Of a film: smooth, and few enough to be encoded while one waits. */
const FRAMES_A_SECOND = 30;
/** One period on the film, s: slow enough to follow, and below three flashes a second. */
const PERIOD_S = 2;
/** The caption's share of the shorter side. */
const CAPTION = 0.09;

/** @type {Record<string, [number, number]>} pixels */
const SIZES = { wide: [1920, 1080], small: [1280, 720], tiny: [640, 360], square: [1080, 1080], upright: [1200, 1600] };

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const size = new ChoiceField(WORDS.size, "", WORDS.sizes(SIZES), () => undefined);
  const film = button(WORDS.film, () => void bench.attempt(record));
  const still = button(WORDS.still, () => void bench.attempt(take));
  film.disabled = !canEncode();
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
    const { beside } = bench.stage;
    const caption_px = Math.round(CAPTION * Math.min(sheet.width, sheet.height));
    const [width_px, height_px] = [sheet.width * (beside?.across ?? 1), sheet.height - caption_px];
    const drawn = bench.stage.portray(width_px, height_px, phase_rad, (canvas) => {
      if (ink !== null) {
        ink.drawImage(canvas, sheet.width - width_px, 0, width_px, height_px);
        beside?.copy(ink, sheet.width, height_px);
      }
    });
    if (ink !== null) {
      const style = getComputedStyle(document.documentElement);
      ink.fillStyle = style.getPropertyValue("--sheet");
      ink.fillRect(0, height_px, sheet.width, caption_px);
      ink.fillStyle = style.getPropertyValue("--ink");
      ink.textBaseline = "middle";
      ink.font = `${Math.round(0.36 * caption_px)}px system-ui, sans-serif`;
      const margin = 0.4 * caption_px;
      const lines = beside === undefined ? [caption()] : [beside.said, `b: ${caption()}`];
      for (const [at, line] of lines.entries()) {
        const middle_px = height_px + ((at + 0.5) * caption_px) / lines.length;
        ink.fillText(line, margin, middle_px, sheet.width - 2 * margin);
      }
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
    film.disabled = true;
    film.textContent = WORDS.recording;
    try {
      const frames = FRAMES_A_SECOND * PERIOD_S;
      const whole = { frames, frames_a_second: FRAMES_A_SECOND };
      save(await encodeFilm(sheet, whole, (frame) => paint(sheet, (2 * Math.PI * frame) / frames)), named(".webm"));
    } catch (reason) {
      console.warn("the film could not be encoded:", reason);
      save(null, "");
    } finally {
      film.disabled = false;
      film.textContent = WORDS.film;
    }
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
