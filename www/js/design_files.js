/**
 * Designs as files: saving by download, opening by the file chooser or by dropping a file on the page.
 */

import { WORDS } from "#words/page.js";
import { part } from "./page_parts.js";
import { ProblemError } from "./workshop_client.js";

/**
 * A design takes a few kilobytes, one with thousands of measured heights some hundreds. Much more than that is another
 * kind of file, and reading it would only make the page stutter.
 */
const LIMIT_MB = 5;

/**
 * @param {string} name of the design
 * @param {string} ending what the file is
 * @returns {string} a file name that every system takes
 */
export function fileName(name, ending) {
  const plain = name
    .normalize("NFKD")
    .replace(/[^\w\s-]/g, "")
    .trim()
    .replace(/\s+/g, "-")
    .toLowerCase()
    .slice(0, 60);
  return `${plain === "" ? "top" : plain}${ending}`;
}

/**
 * Hands the design to the browser as a download.
 * @param {string} name
 * @param {string} json
 * @returns {string} the file's name
 */
export function save(name, json) {
  return download(fileName(name, ".bombatura.json"), json, "application/json");
}

/**
 * Hands a file to the browser as a download.
 * @param {string} file its name
 * @param {string | Blob} content
 * @param {string} type
 * @returns {string} the file's name
 */
export function download(file, content, type) {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = file;
  link.click();
  // The download has its own hold on the data once it has begun, which is not at once in every browser.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
  return link.download;
}

/**
 * Whether a file is a table, a drawing or a scan and no design, by its name.
 * @param {string} name
 */
export function isMeasured(name) {
  return /\.(csv|tsv|txt|stl|svg)$/i.test(name);
}

/**
 * @param {File} file
 * @returns {Promise<string>} its text, whatever it is
 * @throws {ProblemError} when it is far too large or can't be read
 */
export async function read(file) {
  if (file.size > LIMIT_MB * 1_000_000) {
    throw new ProblemError(WORDS.problems.file_too_large(LIMIT_MB));
  }
  try {
    return await file.text();
  } catch {
    throw new ProblemError(WORDS.problems.file_unreadable);
  }
}

/**
 * Calls for each file that the person picks or drops.
 * @param {(file: File) => void} on_file
 */
export function listenForFiles(on_file) {
  const chooser = part("#design-file", HTMLInputElement);
  part("#open-design", HTMLButtonElement).addEventListener("click", () => chooser.click());
  chooser.addEventListener("change", () => {
    const file = chooser.files?.[0];
    // Emptied, so that choosing the same file again is a change again.
    chooser.value = "";
    if (file !== undefined) {
      on_file(file);
    }
  });
  const page = document.documentElement;
  page.addEventListener("dragover", (event) => {
    event.preventDefault();
    page.classList.toggle("file-above", event.dataTransfer?.types.includes("Files"));
  });
  page.addEventListener("dragleave", (event) => {
    // Without a related target the file has left the window, not just passed from one element to the next.
    if (event.relatedTarget === null) {
      page.classList.remove("file-above");
    }
  });
  page.addEventListener("drop", (event) => {
    event.preventDefault();
    page.classList.remove("file-above");
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) {
      on_file(file);
    }
  });
}
