/**
 * A design as a link: all of it stands in the address behind the #, which browsers keep to themselves. No server sees it.
 *
 * `#design=1.LENGTH.PAYLOAD`: the format's version, how many characters the payload has, and the payload: JSON in the zlib format
 * (RFC 1950, whose Adler-32 tells a damaged one from a whole one) in base64url without padding (RFC 4648, section 5). Letters and
 * chats cut links or put marks behind them; the length tells the first and makes the second harmless.
 */
/** @import { Design } from "./design_store.js" */

import { LINK_WORDS } from "#words/link.js";
import { isObject } from "./design_store.js";
import { ProblemError } from "./workshop_client.js";

export const PREFIX = "#design=";

const VERSION = 1;

/** A design with hundreds of measured thicknesses and traced holes takes a tenth of this; browsers take a few times more. */
const MOST_CHARACTERS = 200_000;

/** What a payload may become. Zlib makes a thousandfold of what is written to do so. */
const MOST_BYTES = 1_000_000;

/** So much of a payload at a time that what it becomes stays of the order of the limit. */
const SLICE_BYTES = 1024;

/**
 * How a design is looked at. What is left out is as the page has it.
 * @typedef {object} Look
 * @property {{ name: string, number: number }} [mode]
 * @property {string} [colour] by what it is coloured
 * @property {number[]} [pose] of the view: nine numbers
 */

/** @typedef {{ design: Design, look: Look }} Shared */

/**
 * @param {Shared} shared
 * @returns {Promise<string>} to stand behind the page's address
 * @throws {ProblemError} where it is too large
 */
export async function linkOf({ design, look }) {
  const bytes = new TextEncoder().encode(JSON.stringify({ design, look }));
  if (bytes.length > MOST_BYTES) {
    throw new ProblemError(LINK_WORDS.problems.large(bytes.length, MOST_BYTES));
  }
  const payload = base64url(await collect(new Blob([bytes]).stream().pipeThrough(new CompressionStream("deflate"))));
  if (payload.length > MOST_CHARACTERS) {
    throw new ProblemError(LINK_WORDS.problems.long(payload.length, MOST_CHARACTERS));
  }
  return `${PREFIX}${VERSION}.${payload.length}.${payload}`;
}

/**
 * What a link carries. The design is a JSON object; whether it is a design the core says.
 * @param {string} fragment from the # on
 * @returns {Promise<Shared>}
 * @throws {ProblemError}
 */
export async function readLink(fragment) {
  const { problems } = LINK_WORDS;
  const version = /^#design=(\d{1,9})\./.exec(fragment)?.[1];
  if (version !== undefined && Number(version) > VERSION) {
    throw new ProblemError(problems.newer(Number(version), VERSION));
  }
  const [, length, rest] = /^#design=1\.([1-9]\d{0,8})\.(.*)$/s.exec(fragment) ?? [];
  if (rest === undefined) {
    throw new ProblemError(problems.foreign);
  }
  const characters = Number(length);
  if (characters > MOST_CHARACTERS) {
    throw new ProblemError(problems.long(characters, MOST_CHARACTERS));
  }
  if (rest.length < characters) {
    throw new ProblemError(problems.cut(rest.length, characters));
  }
  return shared(await inflated(bytesOf(rest.slice(0, characters))));
}

/**
 * @param {Uint8Array} payload
 * @returns {Promise<string>}
 */
async function inflated(payload) {
  let at = 0;
  const slices = new ReadableStream({
    pull(controller) {
      controller.enqueue(payload.slice(at, at + SLICE_BYTES));
      at += SLICE_BYTES;
      if (at >= payload.length) {
        controller.close();
      }
    },
  });
  try {
    const bytes = await collect(slices.pipeThrough(new DecompressionStream("deflate")), MOST_BYTES);
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (reason) {
    throw reason instanceof ProblemError ? reason : new ProblemError(LINK_WORDS.problems.damaged);
  }
}

/**
 * @param {ReadableStream<Uint8Array>} stream
 * @param {number} [most] bytes
 */
async function collect(stream, most = Number.POSITIVE_INFINITY) {
  const reader = stream.getReader();
  /** @type {Uint8Array[]} */
  const parts = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) {
      break;
    }
    length += value.length;
    if (length > most) {
      reader.cancel().catch(() => undefined);
      throw new ProblemError(LINK_WORDS.problems.large(length, most));
    }
    parts.push(value);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** @param {Uint8Array} bytes */
function base64url(bytes) {
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return btoa(text).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** @param {string} payload */
function bytesOf(payload) {
  if (!/^[\w-]+$/.test(payload) || payload.length % 4 === 1) {
    throw new ProblemError(LINK_WORDS.problems.damaged);
  }
  return Uint8Array.from(atob(payload.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));
}

/**
 * @param {string} json
 * @returns {Shared}
 */
function shared(json) {
  const foreign = new ProblemError(LINK_WORDS.problems.foreign);
  /** @type {unknown} */
  let value;
  try {
    value = JSON.parse(json);
  } catch {
    throw foreign;
  }
  if (!hasOnly(value, ["design", "look"]) || !isObject(value.design) || !isLook(value.look)) {
    throw foreign;
  }
  return { design: value.design, look: value.look };
}

/**
 * @param {unknown} value
 * @param {readonly string[]} keys that it may have
 * @returns {value is Record<string, unknown>}
 */
function hasOnly(value, keys) {
  return isObject(value) && Object.keys(value).every((key) => keys.includes(key));
}

/**
 * @param {unknown} value
 * @returns {value is Look}
 */
function isLook(value) {
  if (!hasOnly(value, ["mode", "colour", "pose"])) {
    return false;
  }
  const { mode, colour, pose } = value;
  const is_mode = hasOnly(mode, ["name", "number"]) && typeof mode.name === "string" && Number.isInteger(mode.number);
  const is_pose = Array.isArray(pose) && pose.length === 9 && pose.every(Number.isFinite);
  return (
    (mode === undefined || is_mode) &&
    (colour === undefined || typeof colour === "string") &&
    (pose === undefined || is_pose)
  );
}
