/**
 * Encoding a film frame by frame: each frame takes as long as it takes, and the film runs as if drawing took no time.
 */
/** @import { EncodedFrame } from "./webm.js" */
import { webmFile } from "./webm.js";

/** Written into the file as what made it. */
const APP = "Bombatura";
const CODEC = "vp8";
const BITS_A_SECOND = 8_000_000;
/** Frames that may wait for the encoder. */
const MOST_WAITING = 4;

/**
 * @typedef {object} Film
 * @property {number} frames
 * @property {number} frames_a_second
 */

/** @returns {boolean} whether this browser can encode one */
export function canEncode() {
  return "VideoEncoder" in globalThis;
}

/**
 * @param {HTMLCanvasElement} sheet as wide and high as the film
 * @param {Film} film
 * @param {(frame: number) => void} paint draws a frame on the sheet
 * @returns {Promise<Blob>} a WebM file
 * @throws {DOMException} where the encoder gives up
 */
export async function encodeFilm(sheet, { frames, frames_a_second }, paint) {
  const { width, height } = sheet;
  /** @type {EncodedFrame[]} */
  const encoded = [];
  /** @type {DOMException | undefined} */
  let failure;
  const encoder = new VideoEncoder({
    output: (chunk) => {
      const data = new Uint8Array(chunk.byteLength);
      chunk.copyTo(data);
      encoded.push({ data, time_ms: chunk.timestamp / 1000, key: chunk.type === "key" });
    },
    error: (reason) => {
      failure = reason;
    },
  });
  encoder.configure({ codec: CODEC, width, height, bitrate: BITS_A_SECOND, framerate: frames_a_second });
  for (let frame = 0; frame < frames && failure === undefined; frame++) {
    paint(frame);
    const shown = new VideoFrame(sheet, { timestamp: (1e6 * frame) / frames_a_second });
    encoder.encode(shown, { keyFrame: frame === 0 });
    shown.close();
    do {
      // The page and the encoder go on meanwhile.
      await new Promise((resolve) => setTimeout(resolve));
    } while (encoder.encodeQueueSize > MOST_WAITING && failure === undefined);
  }
  if (failure === undefined) {
    await encoder.flush();
    encoder.close();
  }
  if (failure !== undefined) {
    throw failure;
  }
  return webmFile(encoded, { width, height, duration_ms: (1000 * frames) / frames_a_second, app: APP });
}
