import assert from "node:assert/strict";
import { test } from "node:test";
import { webmFile } from "./webm.js";

const film = { width: 640, height: 480, duration_ms: 2000, app: "test" };

// Read back by RFC 8794: the identifier's and the length's width stand in their first byte's leading zeros.
test("each element holds exactly what its length says, down to the frames", async () => {
  const frames = [
    { data: Uint8Array.of(1, 2, 3), time_ms: 0, key: true },
    { data: Uint8Array.of(4), time_ms: 1966.7, key: false },
  ];
  const bytes = new Uint8Array(await webmFile(frames, film).arrayBuffer());
  const holders = new Set([0x1a45dfa3, 0x18538067, 0x1549a966, 0x1654ae6b, 0xae, 0xe0, 0x1f43b675]);
  /** @type {[number, Uint8Array][]} */
  const found = [];
  const walk = (/** @type {number} */ at, /** @type {number} */ end) => {
    while (at < end) {
      const id_width = Math.clz32(bytes[at]) - 23;
      const id = bytes.subarray(at, at + id_width).reduce((sum, byte) => sum * 256 + byte, 0);
      at += id_width;
      assert.equal(bytes[at], 1, "lengths take eight bytes");
      const length = Number(new DataView(bytes.buffer).getBigUint64(at) & 0xffffffffffffffn);
      at += 8;
      assert.ok(at + length <= end, `element ${id.toString(16)} ends after what holds it`);
      if (holders.has(id)) {
        walk(at, at + length);
      } else {
        found.push([id, bytes.subarray(at, at + length)]);
      }
      at += length;
    }
    assert.equal(at, end);
  };
  walk(0, bytes.length);
  const of = (/** @type {number} */ id) => found.filter(([own]) => own === id).map(([, data]) => [...data]);
  assert.deepEqual(of(0xb0), [[0x02, 0x80]]);
  assert.deepEqual(of(0xa3), [
    [0x81, 0, 0, 0x80, 1, 2, 3],
    [0x81, 0x07, 0xaf, 0, 4],
  ]);
});

test("a film that a cluster can't time is refused", () => {
  assert.throws(() => webmFile([], { ...film, duration_ms: 40_000 }), RangeError);
});
