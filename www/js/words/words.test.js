import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { measureName } from "./de/measures.js";
import { told } from "./de/problems.js";

const LANGUAGES = ["de"];

/** What German writes as English does, or leaves to what it is given. */
const ALIKE = new Set([
  "Bombatura",
  "Deutsch",
  "English",
  "Hz",
  "Phase",
  "Q",
  "in mm",
  "mm",
  "cm²",
  "g",
  "–",
  "9",
  "no_path",
  "crashed",
  "no_compute",
  "measured_file",
  "file_unreadable",
  "file_too_large",
  "no_picture",
  "reading_failed",
  "no_microphone",
  "dB",
  "link_foreign",
  "link_damaged",
]);

/** Functions that only hand on or join what other words or numbers are. */
const JOINING = new Set([
  "page.WORDS.hertz",
  "page.hertzText",
  "page.numberText",
  "drawings.DRAWING_WORDS.label",
  "movement.MOVEMENT_WORDS.percent",
  "movement.MOVEMENT_WORDS.region",
  "drive.DRIVE_WORDS.percent",
  "drive.DRIVE_WORDS.region",
  "drive.DRIVE_WORDS.figure",
  "drive.DRIVE_WORDS.harmonic",
  "lessons.LESSON_WORDS.figure",
  "lessons.LESSON_WORDS.value",
  "lessons.LESSON_WORDS.read_by",
  "share.SHEET_WORDS.hertz",
  "steps.STEP_WORDS.narrows_then",
]);

const words = (language) =>
  readdirSync(new URL(`./${language}/`, import.meta.url)).filter((file) => /\.js$/.test(file));

/** Every string and function below a value, by its keys. */
function* leaves(value, path) {
  if (typeof value === "object") {
    for (const [key, part] of Object.entries(value)) {
      yield* leaves(part, `${path}.${key}`);
    }
  } else {
    yield [path, value];
  }
}

async function allLeaves(language) {
  const found = new Map();
  for (const file of words(language)) {
    const module = await import(`./${language}/${file}`);
    for (const [path, value] of leaves({ ...module }, file.replace(".js", ""))) {
      found.set(path, value);
    }
  }
  return found;
}

for (const language of LANGUAGES) {
  test(`${language} says everything that English says, and in its own words`, async () => {
    const [english, other] = [await allLeaves("en"), await allLeaves(language)];
    assert.ok(english.size > 250);
    assert.deepEqual([...other.keys()].sort(), [...english.keys()].sort());
    for (const [path, value] of english) {
      const translated = other.get(path);
      assert.equal(typeof translated, typeof value, path);
      if (typeof value === "function") {
        assert.equal(translated.length, value.length, `${path}: the number of what it is told`);
        assert.ok(String(translated) !== String(value) || JOINING.has(path), `${path} is English`);
      } else {
        assert.ok(translated !== value || ALIKE.has(value), `${path}: “${value}” is English`);
      }
    }
  });

  test(`the page itself is not left English in ${language}`, () => {
    const translations = JSON.parse(readFileSync(new URL(`./${language}/index.json`, import.meta.url), "utf8"));
    for (const [text, translated] of Object.entries(translations)) {
      assert.ok(text !== translated || ALIKE.has(text), `“${text}”`);
    }
  });
}

const ROOT = new URL("../../../", import.meta.url);
const source = (path) => readFileSync(new URL(path, ROOT), "utf8");

/** What the core and its bindings can say, from their sources: a list beside them would be forgotten. */
function kindsOfProblems() {
  const files = ["core/src", "web/src"].flatMap((folder) =>
    readdirSync(new URL(folder, ROOT), { recursive: true }).map((file) => `${folder}/${file}`),
  );
  // The view's are told by what the page does about them.
  const said = files.filter((file) => /\.rs$/.test(file) && !/tests?\.rs$|\/view\//.test(file));
  const kinds = new Set();
  for (const file of said) {
    const text = source(file);
    const of_enum = /fn kind\(&self\)[^{]*\{[\s\S]*?\n {4}\}/.exec(text)?.[0] ?? "";
    for (const [, kind] of [
      ...text.matchAll(/\bkind: "(\w+)"/g),
      ...text.matchAll(/(?:Problem::said|no_such_hole)\(\s*"(\w+)"/g),
      ...of_enum.matchAll(/=> "(\w+)"/g),
    ]) {
      kinds.add(kind);
    }
  }
  return kinds;
}

test("every refusal of the core has a German sentence", () => {
  const kinds = kindsOfProblems();
  assert.ok(kinds.size > 50, String(kinds.size));
  for (const kind of kinds) {
    const english = { kind, message: "arch: 1 (2) is 3: 4; 5, 6", value: "1 mm", limits: "2 to 3 mm, 4" };
    const { message, remedy } = told(english);
    assert.notEqual(message, english.message, `${kind} is told in English`);
    assert.match(message, /[.?]$/, kind);
    assert.doesNotMatch(message + remedy, /undefined|\[object/, kind);
  }
});

test("every measure of the core has a German name", () => {
  const paths = [...source("core/src/design/measures.rs").matchAll(/measure\(\s*"([^"]+)"/g)].map(([, path]) => path);
  assert.ok(paths.length > 100);
  for (const path of paths) {
    assert.notEqual(measureName(path, "English"), "English", path);
  }
  assert.equal(measureName("sound_holes.bass.lower_eye_to_edge_mm", ""), "Unteres Auge zum Rand");
  assert.equal(measureName("masses.3.mass_g", ""), "Eine aufgesetzte Masse");
});

test("a refusal says in German which value, what it may be and what to do", () => {
  const { message, remedy, english } = told({
    kind: "out_of_range",
    message: "graduation.centre_mm (thickness in the centre) is -3.5 mm; it may be 0.8 to 12 mm: give a value …",
    path: "graduation.centre_mm",
    value: "-3.5 mm",
    limits: "it may be 0.8 to 12 mm",
    remedy: "give a value within these limits, in millimetres",
  });
  assert.equal(message, "Stärke in der Mitte (graduation.centre_mm): −3,5 mm geht nicht; erlaubt sind 0,8 bis 12 mm.");
  assert.equal(remedy, "Einen Wert innerhalb dieser Grenzen eingeben.");
  assert.equal(english, undefined);
});

test("what only the core can say stays English beside the German sentence", () => {
  const detail = "unknown field `varnish`, expected one of `format`";
  const { message, english } = told({ kind: "wrong_shape", message: `x: ${detail}; …`, path: "x", value: detail });
  assert.match(message, /^x: das passt nicht/);
  assert.equal(english, detail);
});
