/**
 * What the comparison of two designs says, in German.
 */
/** @import * as English from "../en/compare.js" */

/** @type {typeof English.COMPARE_WORDS} */
export const COMPARE_WORDS = {
  with: "Vergleichen mit",
  choices: {
    none: "nichts",
    before: "vor der letzten Änderung",
    first: "wie er zuerst war",
    held: "wie er jetzt ist, festgehalten",
  },
  kept: "Aufgehobene Entwürfe",
  kept_of: (kept) =>
    `${kept.name}, ${new Date(kept.kept_ms).toLocaleString("de", { dateStyle: "medium", timeStyle: "short" })}`,
  file: "Oder die Datei eines Entwurfs",
  at_rest: "in Ruhe",
  swap: "Am anderen weiterarbeiten",
  swapped: "Die beiden haben getauscht. Rückgängig bringt das Vorige zurück.",
  solving: "Der andere Entwurf wird berechnet …",
  about: (other, own) => `a ist „${other}“, b ist „${own}“, an dem weitergearbeitet wird.`,
  same: "Beide sind derselbe Entwurf. Etwas ändern: b folgt sofort.",
  restarted: "Die Berechnung des anderen Entwurfs brach ab und wurde neu begonnen.",
  on_stage: "Auf der Bühne",
  layout: "Zwei Decken",
  layouts: { side: "nebeneinander", swipe: "übereinander" },
  scale: "Bewegung",
  scales: { own: "jede bis zur eigenen größten", one: "beide im selben Maßstab" },
  scale_about:
    "Derselbe Blick, dieselbe Phase; die Moden sind so gedreht, dass sie gleich beginnen. Im selben Maßstab haben beide Moden dieselbe modale Amplitude (bei modaler Masse eins), und die weiter ausschlagende ist so groß gezeichnet, wie die Überhöhung sagt.",
  divider: "Trennlinie zwischen den beiden Decken",
  divided: (pct) => `${pct.toFixed(0)} % der Bühne zeigen a`,
  not_drawn: "a lässt sich hier nicht zeichnen",
  no_partner: "keine Mode dieser Form",
  own: "jetzt",
  pairs: "Moden, nach der Form gepaart",
  shape: "Form",
  cents: "Cent",
  number: "Nummer",
  shift: "Verschiebung",
  deviation: "eine Abweichung",
  figure: "Zahl",
  unit: "Einheit",
  corrected: "Beide um das Netz berichtigt.",
  uncorrected:
    "Wie die Netze sie ergeben; um das Netz berichtigt, und mit der Sicherheit des Unterschieds, sobald sie von beiden bekannt ist.",
  following: (set_right) =>
    `b auf dem Vorschaunetz, ${set_right ? "nach seinen letzten Zahlen auf dem Standardnetz berichtigt" : "bis zu etwa 5 % daneben"}.`,
  one_board:
    "±: eine Standardabweichung für zwei Decken aus einem Brett, auf dem das meiste der Streuung des Holzes für beide gleich ist und herausfällt. Was jedes Netz offen lässt, zählt, als hätten beide nichts gemein; für kleine Änderungen ist das zu weit.",
  two_boards:
    "±: eine Standardabweichung. Die Hölzer sind verschieden, also zählt die Streuung jedes Bretts ganz, und auch, was jedes Netz offen lässt.",
  pairs_about:
    "Der MAC (modal assurance criterion) ist 1 für dieselbe Form und 0 für Formen, die nichts gemein haben; er sieht darauf, wie sich beide Decken an denselben 720 Stellen nach außen bewegen, die nach Anteilen von Länge und Breite liegen. Das ähnlichste Paar kommt zuerst; unter 0,50 hat eine Mode keinen Partner. Eine Zeile oder eine Mode in der Modentabelle wählen, um das Paar zu sehen.",
  figures: "Zahlen zum Paar",
  mass: "Masse des Holzes",
  lift: "Hub der Insel",
  flap: "Größter Schlag eines Flügels",
  figures_about:
    "Hub und Schlag in Prozent der größten Bewegung der jeweiligen Mode, positiv nach außen bei Phase 0°. Die Engstellen, wo sie am schmalsten sind. Massen und Breiten sind die der Entwürfe und streuen nicht; was geschnitzt wird, schon.",
  matrix: "Wie ähnlich die Formen sind (MAC in Hundertsteln)",
  matrix_about:
    "Umrandet: die Paare. Ein Feld drücken zeigt das Paar auf der Bühne; Pfeiltasten gehen von Feld zu Feld.",
  colours: {
    height: "Höhe: b\u00a0−\u00a0a",
    thickness: "Stärke: b\u00a0−\u00a0a",
    motion: "Bewegung: b\u00a0−\u00a0a",
  },
  colour_ends: {
    height: ["b tiefer", "b höher"],
    thickness: ["b dünner", "b dicker"],
    motion: ["b nach innen", "b nach außen"],
  },
  colours_about:
    "„Farbe nach“ auf der Bühne bietet nun Unterschiede an, b weniger a: von Höhe und Stärke in mm, von der Bewegung des Paars nach außen in Prozent der größten, wie gezeichnet. Verglichen werden Stellen bei gleichen Anteilen von Länge und Breite der Umrisse; wo nur eine Holz hat, ist kein Unterschied gezeigt.",
  save: "Als CSV speichern",
  saved: (file) => `Gespeichert als ${file}.`,
};
