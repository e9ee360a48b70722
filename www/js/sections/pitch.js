/**
 * Frequencies as notes and along a slider.
 */

const NOTES = ["C", "C♯", "D", "D♯", "E", "F", "F♯", "G", "G♯", "A", "A♯", "B"];

/** A4, Hz (ISO 16). */
const A4_HZ = 440;
const A4 = 69;

/**
 * The nearest note of equal temperament, and how far off it the frequency is.
 * @param {number} hz
 * @returns {{ name: string, cents: number }} scientific pitch: A4 is 440 Hz; cents from -50 to 50
 */
export function nearestNote(hz) {
  const above = A4 + 12 * Math.log2(hz / A4_HZ);
  const note = Math.round(above);
  return { name: `${NOTES[note % 12]}${Math.floor(note / 12) - 1}`, cents: Math.round(100 * (above - note)) };
}

/**
 * @param {number} note counted in semitones, 69 for A4
 * @returns {number} Hz
 */
export function noteHertz(note) {
  return A4_HZ * 2 ** ((note - A4) / 12);
}
