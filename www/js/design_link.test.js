import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { deflateRawSync, deflateSync, inflateSync } from "node:zlib";
import { linkOf, PREFIX, readLink } from "./design_link.js";

const CORE = new URL("../../core/src/design/", import.meta.url);
const DEMO = JSON.parse(readFileSync(new URL("demo.json", CORE), "utf8"));

/** The core's own limits, from its table. */
const MEASURES = [
  ...readFileSync(new URL("measures.rs", CORE), "utf8").matchAll(
    /measure\(\s*"([^"]+)",\s*(?:"[^"]*"|\w+),\s*"[^"]*",\s*(-?[\d.]+),\s*(-?[\d.]+),?\s*\)/g,
  ),
].map(([, path, least, most]) => ({ path, least: Number(least), most: Number(most) }));

/** Random numbers that are the same at every run (Marsaglia's xorshift, 2003, 32 bits). */
function dice(seed) {
  let state = seed;
  const next = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  return {
    next,
    one: (list) => list[Math.floor(next() * list.length)],
    often: (share) => next() < share,
    list: (most, make) => Array.from({ length: Math.floor(next() * (most + 1)) }, make),
  };
}

const NAMES = [
  "Decke für Mañuela",
  "🎻 größer",
  "楽器の表板",
  'naïve "quoted" \\ top',
  "Ŝafto\u202e",
  "e\u0301",
  "",
  "𝄢 bass",
];

/** A design with values within the core's limits everywhere; which of them make a shape is another matter. */
function randomDesign(roll) {
  const limits = (path) => MEASURES.find((measure) => measure.path === path) ?? { least: 0, most: 400 };
  const value = (path) => {
    const { least, most } = limits(path);
    const number = least + roll.next() * (most - least);
    // As typed, as dragged, and as computed.
    const written = roll.one([(at) => Math.round(at), (at) => Number(at.toFixed(1)), (at) => at])(number);
    // JSON has no negative zero.
    return written + 0;
  };
  const group = (path, keys) => Object.fromEntries(keys.map((key) => [key, value(`${path}.${key}`)]));
  const keysBelow = (path) =>
    MEASURES.filter((measure) => measure.path.startsWith(`${path}.`))
      .map((measure) => measure.path.slice(path.length + 1))
      .filter((key) => !key.includes("."));
  const place = (path) => group(path, ["across_mm", "station_mm"]);
  const holes = {
    eyes_and_stem: () => ({
      kind: "eyes_and_stem",
      ...group("sound_holes.*", Object.keys(DEMO.sound_holes.bass).slice(1)),
    }),
    round: () => ({
      kind: "round",
      ...group("sound_holes.*", ["diameter_mm", "centre_to_centreline_mm", "centre_station_mm"]),
    }),
    slot: () => ({ kind: "slot", ends: "sharp", ...group("sound_holes.*", ["length_mm", "width_mm", "lean_deg"]) }),
    traced: () => ({
      kind: "traced",
      path: `M0 0 ${roll.list(300, () => `L${roll.next() * 90} ${roll.next()}`).join(" ")}z`,
    }),
    none: () => ({ kind: "none" }),
  };
  const design = structuredClone(DEMO);
  design.name = roll.one(NAMES) + roll.list(20, () => roll.one(NAMES)).join("");
  design.note = roll.list(60, () => roll.one(NAMES)).join(" ");
  for (const part of ["outline", "arching", "graduation"]) {
    for (const key of Object.keys(design[part]).filter((name) => typeof design[part][name] === "number")) {
      design[part][key] = value(`${part}.${key}`);
    }
  }
  for (const arch of Object.values(design.arching.cross_arches)) {
    arch.fullness = value("arching.cross_arches.waist.fullness");
    if (roll.often(0.2)) {
      const point = () => group("arching.cross_arches.*.curve.points.*", ["place", "height"]);
      arch.curve = { family: "spline", points: roll.list(8, point) };
    }
  }
  for (const side of ["bass", "treble"]) {
    design.sound_holes[side] = roll.one(Object.values(holes))();
  }
  if (roll.often(0.3)) {
    const measured = () => ({
      place: place("graduation.*.*.place"),
      thickness_mm: value("graduation.*.*.thickness_mm"),
    });
    design.graduation.measured = roll.list(roll.often(0.1) ? 500 : 20, measured);
  }
  if (roll.often(0.5)) {
    design.bar = {
      ...group("bar", keysBelow("bar")),
      lower_end: place("bar.lower_end"),
      upper_end: place("bar.upper_end"),
    };
  }
  if (roll.often(0.5)) {
    design.post = { ...group("post", keysBelow("post")), place: place("post.place") };
  }
  if (roll.often(0.3)) {
    design.masses = roll.list(5, () => ({ place: place("masses.*.place"), mass_g: value("masses.*.mass_g") }));
  }
  design.rim = roll.one(["free", "hinged", "clamped", { elastic: group("rim.elastic", keysBelow("rim.elastic")) }]);
  return design;
}

function randomLook(roll) {
  const look = {};
  if (roll.often(0.8)) {
    look.mode = { name: roll.one(["twist", "x", "ring", ""]), number: 1 + Math.floor(60 * roll.next()) };
  }
  if (roll.often(0.8)) {
    look.colour = roll.one(["motion", "wood", "height", "strain_energy"]);
  }
  if (roll.often(0.8)) {
    look.pose = Array.from({ length: 9 }, () => (roll.next() - 0.5) * 10);
  }
  return look;
}

/** The promise is kept for whatever the format can hold, so it is asked of ten thousand designs. */
test("ten thousand random designs come out of their links as they went in", async () => {
  assert.ok(MEASURES.length > 100, `${MEASURES.length} measures were read`);
  const roll = dice(20_261_126);
  let longest = 0;
  for (let round = 0; round < 10_000; round++) {
    const shared = { design: randomDesign(roll), look: randomLook(roll) };
    const link = await linkOf(shared);
    assert.match(link, /^#design=1\.\d+\.[A-Za-z0-9_-]+$/);
    assert.deepEqual(await readLink(link), shared);
    longest = Math.max(longest, link.length);
  }
  assert.ok(longest > 10_000, `the longest link has only ${longest} characters`);
});

/** Section 5 of RFC 4648 and RFC 1950, by Node's own zlib in place of the browser's streams. */
test("a link is what the standards say", async () => {
  const shared = { design: DEMO, look: {} };
  const [version, length, payload] = (await linkOf(shared)).slice(PREFIX.length).split(".");
  assert.equal(version, "1");
  assert.equal(Number(length), payload.length);
  assert.equal(inflateSync(Buffer.from(payload, "base64url")).toString("utf8"), JSON.stringify(shared));
  assert.ok(payload.length < 900, `the demonstration takes ${payload.length} characters`);
});

/** Sent by the first version that made links; whoever has it in a letter opens it for ever. */
const FIRST_LINK =
  "#design=1.928.eJztVUGu0zAQvYo1azdq0qbtzw4JFpwBochNpolVZxzZTvs_X5H-CViyQnAQltyEE3AEZCftT35BLNiyi96M3zx73kweoUQrK4LsEQ7aNMJBBnvd7IXrjFiMQQ4nNFZqgizmQKJByOCNOXRUIiF7jcUR2Y-nL98_1ebH02f28-vHb8CBtPOJr9ihU2ph5QdkJ6mVJOZ0y87S1UzSCclhyVmrRGflXiE7a3O0tW5Zg8J2Bm3E3jomLSPNDArFJFlnugbJRcBBd05JQn8DhVS5Om8ayFZpyqFrWzT5WZYjGG92F9A64aSmACe7Ow5nIa2b5sbJBZzmxncpB6XPM95kubmA09xtfKlWaENovMRZ3VXMwaAoBpbtNko5PLNuOSgUlJdYQZYk_aXE78niNJmS3SV_IxuUIZW5bw-htZAto92lyk0g5aBPaGpB1aA-8izCFLWkyqvBssK8RlnVLiSsOYgW76dQvImSlENRCyJUeYntKC8UvsLSOkEFhkgQRFXuC80EbdYcCqOtDSG0XsJwp73uXDD0JDtd9fNm2JuMdT82_CayffH2t2fTa8Yfivc9B6s7KvNaq0Gsdbp99tRe2IAeJZWQAT6gzQWVuXXYwLVbD5iXUjTo0ISjmyiZxpzOCyRn0E_E0KV4Gp8Zxrt-7PVL2t3EBwNtaG44lkwjM8LVmoOXO5mMtSdytdFiNlvR7nk4qcrnNh2Ha4bHS29mqnLj31COFvTLSBbHiY_inoMzuFf4_y3__S17DpURZRd0-QcdHmRYsBwOStBx3AUbDtdrhUHSugwmb7GQ3u9gpTuK3LamKxA4GF9YUKVw2EnL3mMNZHAwiBDmSR89RaPL0M3xv3Pv_yxds_cr0G-gQivdGcjA1bI4hpHj0GqLkL1b8sUyWid8ySdfUcpjvx0Xq_d9_wsSEWxw";

test("a link of the first version opens", async () => {
  const { design, look } = await readLink(FIRST_LINK);
  assert.equal(design.name, "Erfundene Decke „Öhr“ 🎻");
  assert.equal(design.arching.apex_height_mm, 16.25);
  assert.deepEqual(look, {
    mode: { name: "x", number: 2 },
    colour: "thickness",
    pose: [0, -0.42, 0, 0, -0.42, 0, 0.5, 12.5, -3],
  });
});

const packed = (content, pack = deflateSync) => {
  const payload = pack(Buffer.from(content)).toString("base64url");
  return `#design=1.${payload.length}.${payload}`;
};

/** @param {string} link */
async function refusal(link) {
  const reason = await readLink(link).then(
    () => assert.fail(`${link.slice(0, 60)} was opened`),
    (error) => error,
  );
  assert.ok(reason.problem.message.length > 20 && reason.problem.remedy.length > 20, link.slice(0, 60));
  return reason.problem;
}

test("what is no link of ours is refused as foreign", async () => {
  const foreign = [
    "#design=",
    "#design=abc",
    "#design=1",
    "#design=1.",
    "#design=1..x",
    "#design=0.4.abcd",
    "#design=1.-4.abcd",
  ];
  const contents = [
    "[]",
    "null",
    "7",
    "{}",
    '{"design":[],"look":{}}',
    '{"design":{}}',
    '{"design":{},"look":{},"x":1}',
    "no json",
  ];
  const looks = [
    { mode: 5 },
    { mode: { name: "x", number: 1.5 } },
    { colour: 1 },
    { pose: [1, 2] },
    { pose: Array(9).fill("1") },
    { x: 1 },
  ];
  const wrong = looks.map((look) => JSON.stringify({ design: DEMO, look }));
  for (const link of [...foreign, ...[...contents, ...wrong].map((content) => packed(content))]) {
    assert.equal((await refusal(link)).kind, "link_foreign", link);
  }
});

test("a newer link is refused with both versions", async () => {
  const problem = await refusal("#design=2.whatever.comes");
  assert.equal(problem.kind, "link_too_new");
  assert.match(problem.message, /version 2\b.*version 1\b/);
});

test("a link that was cut anywhere is refused as cut, with what is there and what is missing", async () => {
  const link = await linkOf({ design: DEMO, look: {} });
  const begin = link.lastIndexOf(".") + 1;
  for (let end = begin; end < link.length; end++) {
    const problem = await refusal(link.slice(0, end));
    assert.equal(problem.kind, "link_cut_short");
    assert.ok(problem.message.includes(` ${end - begin} `), problem.message);
  }
  for (let end = PREFIX.length; end < begin; end++) {
    assert.match((await refusal(link.slice(0, end))).kind, /^link_(foreign|cut_short)$/, link.slice(0, end));
  }
});

test("marks that a letter puts behind a link do no harm", async () => {
  const link = await linkOf({ design: DEMO, look: {} });
  for (const behind of [".", ")", " and so on", "\n", "%20"]) {
    assert.deepEqual((await readLink(link + behind)).design, DEMO);
  }
});

test("a link with any character changed is refused", async () => {
  const link = await linkOf({ design: DEMO, look: {} });
  const begin = link.lastIndexOf(".") + 1;
  // The last character's spare bits say nothing.
  for (let at = begin; at < link.length - 1; at++) {
    for (const letter of [link[at] === "A" ? "B" : "A", "+"]) {
      const problem = await refusal(link.slice(0, at) + letter + link.slice(at + 1));
      assert.equal(problem.kind, "link_damaged", `${at}: ${letter}`);
    }
  }
  assert.equal(
    (await refusal(packed(JSON.stringify({ design: DEMO, look: {} }), deflateRawSync))).kind,
    "link_damaged",
  );
  assert.equal((await refusal(packed(Buffer.from([0x22, 0xff, 0x22])))).kind, "link_damaged");
});

test("what would fill the memory is refused before it does", async () => {
  const bomb = packed(Buffer.alloc(100_000_000, " "));
  assert.ok(bomb.length < 200_000, `${bomb.length} characters`);
  const before = process.memoryUsage().arrayBuffers;
  const problem = await refusal(bomb);
  assert.equal(problem.kind, "link_too_large");
  assert.match(problem.message, /at most 1\u202f000\u202f000/);
  assert.ok(process.memoryUsage().arrayBuffers - before < 20_000_000, "it was unpacked whole");
  const long = await refusal(`#design=1.200001.${"A".repeat(200_001)}`);
  assert.equal(long.kind, "link_too_long");
  await assert.rejects(linkOf({ design: { ...DEMO, note: "x".repeat(1_000_001) }, look: {} }), (reason) => {
    return reason.problem.kind === "link_too_large";
  });
});
