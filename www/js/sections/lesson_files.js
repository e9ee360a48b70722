/**
 * Lessons as files: ours, loaded when the section is opened, and a teacher's own.
 */

/**
 * @typedef {object} LessonText
 * @property {string} title
 * @property {string} see
 * @property {string} question
 * @property {string[]} choices
 * @property {string} change
 * @property {string} why
 */

/** @typedef {{ mode?: string | number, hz?: number, colour?: string, view?: string }} Look */

/**
 * A lesson's document, as far as the page reads it; the core has checked it by then.
 * @typedef {object} LessonDocument
 * @property {Look} look
 * @property {Look} [then_look]
 * @property {number} right from 1
 * @property {{ figure: string, mode?: string | number, hz?: number, region?: string, push?: string,
 * then?: Record<string, string | number> }} claim
 * @property {Record<string, LessonText>} texts by language
 */

/** @typedef {{ number: number, json: string, document: LessonDocument, text: LessonText, language: string }} Lesson 0: no own */

const FOLDER = new URL("../../lessons/", import.meta.url);

/** @returns {Promise<Lesson[]>} */
export async function ownLessons() {
  const names = /** @type {string[]} */ (JSON.parse(await load("list")));
  const files = await Promise.all(names.map(load));
  return files.map((json, index) => lessonOf(json, index + 1));
}

/**
 * @param {string} json that is known to be a lesson
 * @param {number} [number] in the list
 * @returns {Lesson} in the page's language where it has that, else in the first it has
 */
export function lessonOf(json, number = 0) {
  const document = /** @type {LessonDocument} */ (JSON.parse(json));
  const wanted = globalThis.document.documentElement.lang.slice(0, 2);
  const language = wanted in document.texts ? wanted : Object.keys(document.texts)[0];
  return { number, json, document, text: document.texts[language], language };
}

/** @param {string} name */
async function load(name) {
  const response = await fetch(new URL(`${name}.json`, FOLDER));
  if (!response.ok) {
    throw new Error(`${name}: status ${response.status}`);
  }
  return response.text();
}
