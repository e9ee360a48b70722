/**
 * A film's file: encoded frames in WebM's boxes, the least that players ask for.
 *
 * EBML (RFC 8794): every element is its identifier, the length of what is in it, and that. Identifiers and their meaning: Matroska (RFC
 * 9559), of which WebM is a part.
 */

/**
 * @typedef {object} EncodedFrame
 * @property {Uint8Array} data
 * @property {number} time_ms from the film's start
 * @property {boolean} key whether it can be shown without those before it
 */

/** Elements by their identifiers. */
const ID = {
  EBML: 0x1a45dfa3,
  DocType: 0x4282,
  DocTypeVersion: 0x4287,
  DocTypeReadVersion: 0x4285,
  Segment: 0x18538067,
  Info: 0x1549a966,
  TimestampScale: 0x2ad7b1,
  MuxingApp: 0x4d80,
  WritingApp: 0x5741,
  Duration: 0x4489,
  Tracks: 0x1654ae6b,
  TrackEntry: 0xae,
  TrackNumber: 0xd7,
  TrackUID: 0x73c5,
  TrackType: 0x83,
  FlagLacing: 0x9c,
  CodecID: 0x86,
  Video: 0xe0,
  PixelWidth: 0xb0,
  PixelHeight: 0xba,
  Cluster: 0x1f43b675,
  Timestamp: 0xe7,
  SimpleBlock: 0xa3,
};

/** Timestamps count milliseconds, given in nanoseconds. */
const MILLISECOND_NS = 1_000_000;
const VIDEO_TRACK = 1;
/** A block's time counts from its cluster's in sixteen bits with a sign. */
const LONGEST_CLUSTER_MS = 30_000;

/**
 * @param {readonly EncodedFrame[]} frames of VP8, in the order of their times, the first a key frame
 * @param {{ width: number, height: number, duration_ms: number, app: string }} film at most half a minute
 * @returns {Blob}
 * @throws {RangeError} for a film that is longer
 */
export function webmFile(frames, { width, height, duration_ms, app }) {
  if (duration_ms > LONGEST_CLUSTER_MS) {
    throw new RangeError(`a film of ${duration_ms} ms; ${LONGEST_CLUSTER_MS} ms fit`);
  }
  const head = element(ID.EBML, [
    element(ID.DocType, [text("webm")]),
    element(ID.DocTypeVersion, [unsigned(4)]),
    element(ID.DocTypeReadVersion, [unsigned(2)]),
  ]);
  const info = element(ID.Info, [
    element(ID.TimestampScale, [unsigned(MILLISECOND_NS)]),
    element(ID.Duration, [float(duration_ms)]),
    element(ID.MuxingApp, [text(app)]),
    element(ID.WritingApp, [text(app)]),
  ]);
  const track = element(ID.TrackEntry, [
    element(ID.TrackNumber, [unsigned(1)]),
    element(ID.TrackUID, [unsigned(1)]),
    element(ID.TrackType, [unsigned(VIDEO_TRACK)]),
    element(ID.FlagLacing, [unsigned(0)]),
    element(ID.CodecID, [text("V_VP8")]),
    element(ID.Video, [element(ID.PixelWidth, [unsigned(width)]), element(ID.PixelHeight, [unsigned(height)])]),
  ]);
  const blocks = frames.map(({ data, time_ms, key }) => {
    const time = Math.round(time_ms);
    // Track 1, the time, and whether it is a key frame.
    return element(ID.SimpleBlock, [Uint8Array.of(0x81, time >> 8, time & 0xff, key ? 0x80 : 0), data]);
  });
  const cluster = element(ID.Cluster, [element(ID.Timestamp, [unsigned(0)]), ...blocks]);
  return new Blob([head, element(ID.Segment, [info, element(ID.Tracks, [track]), cluster])], { type: "video/webm" });
}

/**
 * @param {number} id
 * @param {readonly Uint8Array[]} parts
 * @returns {Uint8Array<ArrayBuffer>}
 */
function element(id, parts) {
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  // Eight bytes whatever the length: a one for the field's width, then the length.
  const size = new Uint8Array(8);
  new DataView(size.buffer).setBigUint64(0, (1n << 56n) | BigInt(length));
  return joined([unsigned(id), size, ...parts]);
}

/** @param {readonly Uint8Array[]} parts */
function joined(parts) {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** @param {number} value below 2^32, in as few bytes as hold it */
function unsigned(value) {
  const bytes = [24, 16, 8, 0].map((shift) => (value >>> shift) & 0xff);
  const first = bytes.findIndex((byte) => byte !== 0);
  return Uint8Array.from(bytes.slice(first < 0 ? 3 : first));
}

/** @param {number} value */
function float(value) {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setFloat64(0, value);
  return bytes;
}

/** @param {string} value */
function text(value) {
  return new TextEncoder().encode(value);
}
