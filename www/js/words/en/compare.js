/**
 * What the comparison of two designs says.
 */
/** @import { Kept } from "../../kept_designs.js" */

export const COMPARE_WORDS = {
  with: "Compare with",
  choices: {
    none: "nothing",
    before: "before the last change",
    first: "as it was at first",
    held: "as it is now, held",
  },
  kept: "Kept designs",
  /** @param {Kept} kept */
  kept_of: (kept) =>
    `${kept.name}, ${new Date(kept.kept_ms).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" })}`,
  file: "Or a design’s file",
  at_rest: "at rest",
  swap: "Work on the other",
  swapped: "The two have changed places. Undo brings back what you had.",
  solving: "Working out the other design…",
  /** @type {(other: string, own: string) => string} */
  about: (other, own) => `a is “${other}”, b is “${own}”, which you go on working on.`,
  same: "Both are the same design. Change something: b follows at once.",
  restarted: "Computing the other design stopped and was started again.",
  on_stage: "On the stage",
  layout: "Two tops",
  layouts: { side: "side by side", swipe: "one over the other" },
  scale: "Motion",
  scales: { own: "each to its largest", one: "both to one scale" },
  scale_about:
    "Same viewer, same phase; modes are turned so that they begin the same way. To one scale, both modes have the same modal amplitude (each mode’s modal mass being one), and the one that moves farther is drawn as large as the exaggeration says.",
  divider: "Divider between the two tops",
  /** @param {number} pct */
  divided: (pct) => `${pct.toFixed(0)} % of the stage shows a`,
  not_drawn: "a can’t be drawn here",
  no_partner: "no mode of this shape",
  own: "now",
  pairs: "Modes paired by shape",
  shape: "Shape",
  cents: "cents",
  number: "number",
  shift: "shift",
  deviation: "one deviation",
  figure: "figure",
  unit: "unit",
  corrected: "Both corrected for the mesh.",
  uncorrected:
    "As the meshes give them; corrected for the mesh, and with how sure the difference is, once that is known of both.",
  /** @param {boolean | undefined} set_right */
  following: (set_right) =>
    `b on the preview mesh, ${set_right ? "set right by its last standard figures" : "up to some 5 % off"}.`,
  one_board:
    "±: one standard deviation for two tops of one board, on which most of the wood’s scatter is the same for both and drops out. What each mesh leaves open is counted as if the two had nothing in common, which is too wide for small changes.",
  two_boards:
    "±: one standard deviation. The woods differ, so that each board’s scatter counts in full, and so does what each mesh leaves open.",
  pairs_about:
    "MAC, the modal assurance criterion, is 1 for the same shape and 0 for shapes that have nothing in common; it looks at how both tops move outwards at the same 720 places, laid out by shares of length and width. The pair most alike is taken first; below 0.50 a mode has no partner. Choose a row or a mode in the table of modes to see the pair.",
  figures: "Figures of the pair",
  mass: "Mass of the wood",
  lift: "Island’s lift",
  flap: "Largest flap of a wing",
  figures_about:
    "Lift and flap in per cent of each mode’s own largest motion, positive outwards when the phase is 0°. The narrows are where they are narrowest. Mass and widths are those of the designs and have no scatter; what is carved has.",
  matrix: "How alike the shapes are (MAC, in hundredths)",
  matrix_about: "Outlined: the pairs. Press a cell to see that pair on the stage; arrow keys go from cell to cell.",
  colours: {
    height: "height: b\u00a0−\u00a0a",
    thickness: "thickness: b\u00a0−\u00a0a",
    motion: "motion: b\u00a0−\u00a0a",
  },
  colour_ends: {
    height: /** @type {[string, string]} */ (["b lower", "b higher"]),
    thickness: /** @type {[string, string]} */ (["b thinner", "b thicker"]),
    motion: /** @type {[string, string]} */ (["b inward", "b outward"]),
  },
  colours_about:
    "“Colour by” on the stage now offers differences, b less a: of height and thickness in mm, of the pair’s outward motion in per cent of the largest as drawn. Places at the same shares of the outlines’ length and width are compared; where only one has wood, no difference is shown.",
  save: "Save as CSV",
  /** @param {string} file */
  saved: (file) => `Saved as ${file}.`,
};
