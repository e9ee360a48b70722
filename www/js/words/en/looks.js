/**
 * The words of the section about how the top looks on the stage.
 */

export const LOOKS_WORDS = {
  title: "Shown on the stage",
  nodal_lines: "Nodal lines",
  plain: "Even grey in place of the wood’s own colour",
  about: "Bare wood or even grey shows the shape best with “Colour by: nothing”.",
};
