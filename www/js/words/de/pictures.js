/**
 * The words of the section that makes pictures, in German.
 */
/** @import * as English from "../en/pictures.js" */
import { numberText } from "./page.js";

/** @type {Record<string, string>} */
const SIZES = { wide: "breit", small: "klein", tiny: "winzig", square: "quadratisch", upright: "hochkant" };

/** @type {typeof English.PICTURE_WORDS} */
export const PICTURE_WORDS = {
  title: "Bild der Bühne",
  size: "Größe",
  sizes: (sizes) =>
    Object.fromEntries(
      Object.entries(sizes).map(([word, [width, height]]) => [word, `${SIZES[word] ?? word}, ${width} × ${height}`]),
    ),
  still: "Bild speichern (PNG)",
  film: "Film einer Schwingung speichern (WebM)",
  recording: "Wird aufgenommen …",
  about:
    "Wie es jetzt zu sehen ist, darunter Entwurf, Mode und Frequenz. Der Film beginnt und endet bei Phase 0°, so dass er ohne Sprung umläuft.",
  no_film: "Dieser Browser kann keine Filme aufnehmen; Bilder gehen.",
  saved: (file) => `Gespeichert als ${file}.`,
  failed: {
    kind: "no_picture",
    message: "Der Browser hat kein Bild geliefert.",
    remedy: "Ein kleineres Bild versuchen oder einen Browser, der die Decke zeichnet.",
  },
  caption: (design, mode, hertz, exaggeration_mm) =>
    `${design}: ${mode}, ${hertz}; berechnet, größte Bewegung ${numberText(exaggeration_mm)} mm gezeichnet`,
};
