/**
 * How a problem is told. The core's sentences are English; they begin in small letters, so that they can stand inside others.
 */
/** @import { Problem } from "../../messages.js" */

/**
 * @param {Problem} problem
 * @returns {{ message: string, remedy: string, english?: string }} whole sentences; beside them what is only known in English, of
 * other languages
 */
export function told({ message, remedy = "" }) {
  return { message: sentence(message), remedy: message.includes(remedy) ? "" : sentence(remedy) };
}

/** @param {string} text */
function sentence(text) {
  // A message that begins with a place in the file keeps that as it is written there.
  const place = /^[\w"]*[._"]/.test(text);
  const begun = place ? text : text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?…]$/.test(begun) ? begun : `${begun}.`;
}
