/**
 * How a problem is told in German: by its kind, with the numbers that the core's English sentence carries. What only the core can
 * say, such as what a reader stumbled over, stays English beside it.
 */
/** @import * as English from "../en/problems.js" */
/** @import { Problem } from "../../messages.js" */
import { measureName } from "./measures.js";

/** @typedef {[says: string, remedy: string, english?: string]} Said */

/**
 * @typedef {(numbers: string[], problem: Problem) => Said} Teller numbers: those of value and limits, or of the sentence where it has
 * neither
 */

const GIVE_WITHIN = "Einen Wert innerhalb dieser Grenzen eingeben.";
const OWN_FILE = "Eine Entwurfsdatei wählen, die hier gespeichert wurde.";
const ONLY_THE_TOP = "Alles außer der Außenseite der Decke wegschneiden.";

/**
 * By the last key of the measure that is wrong.
 * @type {Record<string, Teller>}
 */
const HOLES = {
  upper_eye_diameter_mm: ([eye, stem]) => [
    `das Auge ist mit ${eye} mm kleiner, als der Schaft breit ist; nötig sind mindestens ${stem} mm.`,
    "Das Auge größer oder den Schaft schmaler machen.",
  ],
  lower_eye_diameter_mm: (numbers, problem) => HOLES.upper_eye_diameter_mm(numbers, problem),
  stem_at_hooks_mm: ([hooks, nicks]) => [
    `der Schaft darf von den Kerben zu den Bögen nicht breiter werden; er hat dort ${hooks} mm, höchstens ${nicks} mm gehen.`,
    "Den Schaft an den Bögen schmaler oder an den Kerben breiter machen.",
  ],
  throat_width_mm: ([throat, slot]) => [
    `der Schlitz muss zum Auge hin enger werden; er hat dort ${throat} mm, weniger als ${slot} mm sind nötig.`,
    "Den Schlitz am Auge enger oder den Schaft breiter machen.",
  ],
  upper_eye_station_mm: ([_, apart, least]) => [
    `die Augen stehen für ihre Flügel zu nahe beisammen; die Mitten der Bögen sind ${apart} mm auseinander, mehr als ${least} mm sind nötig.`,
    "Die Augen auseinanderrücken oder die Flügel schmaler machen.",
  ],
  stop_mm: ([nicks, low, high]) => [
    `die Kerben liegen bei ${nicks} mm von der Unterkante und damit nicht auf dem geraden Teil des Schafts, der von ${low} bis ${high} mm geht.`,
    "Die Mensur ändern, oder die Augen nach oben oder unten rücken.",
  ],
  wing_rounding_mm: ([rounding]) => [
    `die Spitze des Flügels lässt sich nicht auf ${rounding} mm runden; die Rundung muss zwischen Auge und Schlitz passen.`,
    "Die Rundung kleiner oder den Flügel breiter machen.",
  ],
  lower_eye_to_edge_mm: ([distance, most]) => [
    `mit ${distance} mm käme das untere Auge über die Mittellinie, die hier ${most} mm vom Rand ist.`,
    "Einen kleineren Abstand zum Rand eingeben.",
  ],
  length_mm: ([length, width]) => [
    `mit ${length} mm ist der Schlitz nicht länger als breit, so dass seine Enden nicht halbrund sein können; nötig sind mehr als ${width} mm.`,
    "Den Schlitz länger oder schmaler machen, oder ein rundes Loch schneiden.",
  ],
  bow_mm: ([bow, least]) => [
    `mit ${bow} mm ist die Sichel innen nicht hohl; nötig sind mehr als ${least} mm, die halbe Breite, nach der einen oder anderen Seite.`,
    "Sie weiter biegen oder schmaler machen.",
  ],
  end_rounding_mm: ([rounding, width]) => [
    `die Hörner der Sichel lassen sich nicht auf ${rounding} mm runden; die Rundung muss in die Sichel passen, die höchstens ${width} mm breit ist.`,
    "Die Rundung kleiner oder die Sichel breiter machen.",
  ],
};

/** @type {Record<string, Teller>} */
const KINDS = {
  // The document.
  too_large: ([bytes, most]) => [`Die Datei hat ${bytes} Bytes; ein Entwurf hat höchstens ${most}.`, OWN_FILE],
  truncated: ([line, column]) => [
    `Die Datei endet zu früh, in Zeile ${line}, Spalte ${column}.`,
    "Die Kopie ist unvollständig: den Entwurf noch einmal speichern oder kopieren.",
  ],
  not_json: ([line, column], { message }) => [
    `Die Datei ist in Zeile ${line}, Spalte ${column} kein JSON.`,
    "Eine Entwurfsdatei wählen, die hier gespeichert wurde, oder den Text dort richten.",
    inBrackets(message),
  ],
  wrong_format: (_, { value = "" }) => [
    `statt „bombatura-design“ steht da ${value}, also ist das kein Entwurf.`,
    OWN_FILE,
  ],
  unknown_version: (_, { value = "", limits = "" }) => {
    const [known] = numbersOf(limits);
    return [
      `${value} ist hier nicht bekannt; gelesen wird Version ${known}.`,
      `Mit dem Programm öffnen, das sie gespeichert hat, oder sie von dort als Version ${known} speichern.`,
    ];
  },
  wrong_shape: (_, { value }) => [
    "das passt nicht in einen Entwurf.",
    "Schreibweise oder Wert berichtigen, oder mit der Vorführdecke beginnen.",
    value,
  ],
  not_finite: (numbers, { path = "" }) =>
    path === ""
      ? [`Punkt ${numbers[0]} ist keine endliche Zahl.`, "Ihn weglassen oder neu messen."]
      : [`das ist keine endliche Zahl; erlaubt sind ${numbers[0]} bis ${numbers[1]}.`, GIVE_WITHIN],
  out_of_range: (_, { value = "", limits = "" }) => {
    const [least, most] = numbersOf(limits);
    const unit = unitOf(value);
    return [`${local(value)} geht nicht; erlaubt sind ${least} bis ${most}${unit}.`, GIVE_WITHIN];
  },
  impossible_wood: (_, problem) => [
    "mit diesen Konstanten kann kein fester Körper bestehen.",
    "Die gemessenen Werte berichtigen.",
    whatOf(problem),
  ],
  too_many_thicknesses: ([count, most]) => [
    `es sind ${count} gemessene Stärken; höchstens ${most} gehen.`,
    "Einige weglassen, gleichmäßig über die Decke verteilt.",
  ],
  // Outline.
  crossing_stations: ([value, other], { limits = "" }) => {
    const path = /above (\S+) =/.exec(limits)?.[1] ?? "";
    return [
      `${value} mm liegt nicht in der Reihe; es muss über ${other} mm liegen (${measureName(path, path)}).`,
      "Dieses Maß vergrößern oder das andere verkleinern.",
    ];
  },
  corner_out_of_place: ([reach, least, most]) => [
    `eine Ecke steht zwischen Mittelbug und Bug; ${reach} mm gehen nicht, nötig sind mehr als ${least} mm und höchstens ${most} mm, die halben Breiten daneben.`,
    "Die Ecke verschieben oder die Breiten ändern.",
  ],
  outline_not_drawable: ([value]) => [
    `mit ${value} verbindet kein Paar von Kreisbögen diese Punkte glatt; die Mittelpunkte müssen im Bug bleiben.`,
    "Dieses Maß dem der Vorführdecke annähern.",
  ],
  outline_crosses_itself: ([lower, upper, waist]) => [
    `der Umriss kreuzt sich; Ecken bei ${lower} und ${upper} mm, Mittelbug ${waist} mm breit.`,
    "Die Ecken auseinanderrücken, schmaler machen oder weniger neigen.",
  ],
  // Arching.
  arch_too_steep: ([aspect, most]) => [
    `die Wölbung ist für zwei Kreisbögen zu hoch; sie hat das ${aspect}-fache ihrer halben Breite, höchstens das ${most}-fache geht.`,
    "Den Scheitel senken, oder die verkürzte Zykloide nehmen.",
  ],
  fullness_beyond_arcs: ([fullness, least, most]) => [
    `so voll oder so schlank (${fullness}) können zwei Kreisbögen nicht sein; hier gehen ${least} bis ${most}.`,
    "Die Völligkeit ändern, oder die verkürzte Zykloide nehmen.",
  ],
  wrong_number_of_points: ([count, least, most]) => [
    `eine Wölbung wird durch eine Handvoll Punkte gezeichnet; es sind ${count}, zwischen Mitte und Hohlkehle gehen ${least} bis ${most}.`,
    "Mehr oder weniger Punkte geben; ein ganzer Scan wird als gemessene Decke eingelesen.",
  ],
  points_out_of_order: ([place, before]) => [
    `die Punkte einer Wölbung laufen von der Mitte zur Hohlkehle; ${place} muss größer sein als ${before}, der Ort des Punkts davor.`,
    "Die Punkte ordnen, jeder Ort nur einmal.",
  ],
  channel_too_far_in: ([distance]) => [
    `mit ${distance} mm kann die Hohlkehle diesem Umriss nicht folgen; der Abstand muss kleiner sein als jeder nach außen gewölbte Radius und zwischen den Ecken Platz lassen.`,
    "Die Hohlkehle näher an den Rand rücken oder den Umriss weiter schwingen.",
  ],
  station_out_of_place: ([station, least, most]) => [
    `bei ${station} mm steht die Querwölbung zu nahe an einer anderen oder am Ende der Hohlkehle; frei ist ${least} bis ${most} mm.`,
    "Diese Querwölbung verschieben oder weglassen.",
  ],
  apex_out_of_place: ([apex, least, most]) => [
    `bei ${apex} mm steht der Scheitel zu nahe an einem Ende; er darf ${least} bis ${most} mm von der Unterkante stehen.`,
    "Den Scheitel zur Mitte der Länge rücken.",
  ],
  turn_out_of_place: ([turn, least, most]) =>
    least === undefined
      ? [
          "ein Spline wendet dort, wo seine Punkte es sagen.",
          "Seine Punkte verschieben, oder eine andere Kurve nehmen.",
        ]
      : [
          `${turn} mm vom Scheitel kann die Wölbung nicht von rund zu hohl wenden; möglich ist es ${least} bis ${most} mm vom Scheitel.`,
          "Eine Stelle zwischen Scheitel und Hohlkehle wählen.",
        ],
  arch_below_channel: ([apex, edge, channel]) => [
    `mit ${apex} mm steigt die Wölbung nicht über Rand und Hohlkehle; der Rand ist ${edge} mm hoch, die Hohlkehle liegt bei ${channel} mm.`,
    "Den Scheitel heben oder den Rand senken.",
  ],
  channel_below_rim: ([depth, edge]) => [
    `mit ${depth} mm ist die Hohlkehle tiefer, als der Rand hoch ist; nötig sind weniger als ${edge} mm.`,
    "Die Hohlkehle flacher oder den Rand höher machen.",
  ],
  unknown_arch: (_, { value = "" }) => [`Dieser Entwurf hat keine Wölbung oder Kurve „${value}“.`, ""],
  // Sound holes.
  hole_not_drawable: (numbers, problem) => {
    const teller = HOLES[problem.path?.split(".").at(-1) ?? ""];
    return (
      teller?.(numbers, problem) ?? [
        "dieses Loch lässt sich so nicht schneiden.",
        "Den Pfad des Lochs als eine geschlossene Linie geben.",
        whatOf(problem),
      ]
    );
  },
  hole_crosses_itself: () => [
    "sein Rand kreuzt sich; Augen, Flügel und Schaft laufen ineinander.",
    "Die Augen auseinanderrücken, oder Flügel oder Schaft schmaler machen.",
  ],
  hole_outside_outline: ([left, least], problem) => {
    const [x, y] = numbersOf(whatOf(problem));
    return [
      `bei x = ${x} mm, y = ${y} mm bleiben ${left} mm Holz zum Rand; mindestens ${least} mm müssen stehen.`,
      "Die Augen nach innen rücken, oder das Loch kleiner machen.",
    ];
  },
  holes_overlap: ([between, least]) => [
    `die beiden Löcher kommen sich auf ${between} mm nahe; mindestens ${least} mm Holz müssen dazwischen stehen.`,
    "Die Löcher von der Mittellinie wegrücken.",
  ],
  no_equal_hole: () => [
    "Kein Loch dieses Musters öffnet hier so viel Holz wie das jetzige.",
    "Ein anderes Muster wählen.",
  ],
  no_such_lean: () => ["So schräg steht kein F-Loch.", "Eine Schräge zwischen −80 und 80 Grad eingeben."],
  wrong_transform: ([count]) => [`Eine Abbildung hat sechs Zahlen, nicht ${count}.`, ""],
  // Bar, post, ribs, masses.
  bar_too_short: ([length, least]) => [
    `zwischen unterem und oberem Ende des Balkens sind ${length} mm; mindestens ${least} mm sind nötig.`,
    "Die Enden auseinanderrücken, das untere näher zur Unterkante.",
  ],
  bar_highest_beyond_end: ([station, lower, upper]) => [
    `${station} mm liegt nicht zwischen den Enden des Balkens, ${lower} und ${upper} mm.`,
    "Die höchste Stelle zwischen die Enden rücken, in der Regel unter den Steg.",
  ],
  bar_ends_too_high: ([end, most]) => [
    `mit ${end} mm sind die Enden höher als die höchste Stelle; höchstens ${most} mm gehen.`,
    "Die Enden niedriger oder den Balken höher machen.",
  ],
  linings_overlap: ([height, most]) => [
    `mit ${height} mm stoßen die Reifchen an Decke und Boden aneinander; höchstens die halbe Zargenhöhe geht, ${most} mm.`,
    "Die Reifchen niedriger oder die Zargen höher machen.",
  ],
  fitting_off_the_wood: ([left, least], problem) => {
    const [x, y] = numbersOf(whatOf(problem));
    return [
      `bei x = ${x} mm, y = ${y} mm sind es ${left} mm bis zum nächsten Rand des Holzes; von der Mitte an sind mindestens ${least} mm nötig.`,
      "Verschieben oder schmaler machen.",
    ];
  },
  // What is asked of a design that can be.
  mass_out_of_reach: (_, { message }) => [
    "Durch gleiches Ändern aller Stärken ist diese Masse nicht zu erreichen.",
    "Eine andere Masse oder anderes Holz wählen.",
    message,
  ],
  unknown_quantity: (_, { message }) => ["Nach dieser Größe lässt sich nicht färben.", "", message],
  unknown_mesh_size: (_, { value = "" }) => [
    `Ein Netz „${value}“ gibt es nicht; es gibt preview, standard und fine.`,
    "",
  ],
  unknown_mode: ([number]) => [
    `Eine Mode ${number} gibt es nicht; so viele sind nicht berechnet.`,
    "Mehr Moden berechnen, oder eine tiefere wählen.",
  ],
  mesh: (_, { message }) => [
    "Für diese Decke lässt sich kein Netz machen.",
    "Umriss oder F-Löcher ein wenig ändern.",
    message,
  ],
  shell: (_, { message }) => [
    "Aus dieser Decke lässt sich keine Schale bilden.",
    "Einen anderen Wert versuchen.",
    message,
  ],
  fitting: (_, { message }) => [
    "Balken, Stimme oder Masse lassen sich so nicht anbringen.",
    "Sie auf das Holz rücken.",
    message,
  ],
  wood: (_, { message }) => ["Solches Holz kann es nicht geben.", "Die Konstanten des Holzes berichtigen.", message],
  equations: (_, { message }) => [
    "Die Gleichungen dieser Decke lassen sich nicht lösen.",
    "Einen anderen Wert versuchen.",
    message,
  ],
  given_up: () => ["Darauf wartet niemand mehr, darum wurde nicht zu Ende gerechnet.", "Noch einmal danach fragen."],
  modes: (_, { message }) => [
    "Die Moden dieser Decke sind so nicht zu haben.",
    "Einen anderen Wert versuchen.",
    message,
  ],
  // Measured files.
  not_a_number: ([line, column], { message }) => [
    `Zeile ${line}, Spalte ${column}: „${/"(.*)"/s.exec(message)?.[1] ?? ""}“ ist keine Zahl.`,
    "Sie berichtigen, oder das Feld leer lassen.",
  ],
  not_a_table: (_, { message }) => [
    "Die Tabelle lässt sich nicht lesen; es gehen Spalten x, y, z, oder ein Gitter mit den Lagen an einer Seite, oder Spalten mit den Namen upper_bout, upper_corners, waist, lower_corners, lower_bout.",
    "Sie so anordnen.",
    inBrackets(message),
  ],
  not_an_outline: (_, { message }) => [
    "Der Umriss lässt sich nicht lesen; es gehen eine Tabelle mit den Spalten x und y, oder eine SVG-Datei mit einem Pfad.",
    "Ihn so speichern.",
    inBrackets(message),
  ],
  too_few_points: ([count, least]) => [
    `Es sind ${count} Punkte; mindestens ${least} sind nötig.`,
    "An mehr Stellen messen.",
  ],
  too_many_points: ([count, most]) => [
    `Es sind ${count} Punkte; höchstens ${most} lassen sich lesen.`,
    "Den Scan ausdünnen: ein Punkt je Millimeter ist reichlich.",
  ],
  looks_like_inches: ([read, in_mm], { message }) => [
    `${message.startsWith("the top") ? "Die Decke ist" : "Die Ablesungen sind"} ${read} ${message.includes("across") ? "breit" : "lang"}; in Zoll wären das ${in_mm} mm. Sind es Zoll oder Millimeter?`,
    "",
  ],
  not_a_body: ([length, least, most]) => [
    `Die Decke ist ${length} mm lang; ein Korpus hat ${least} bis ${most} mm.`,
    "Die Einheit prüfen, und ob die Länge in y läuft.",
  ],
  not_stl: (_, { message }) => [
    "Die STL-Datei lässt sich nicht lesen.",
    "Sie noch einmal als binäres oder ASCII-STL speichern.",
    inBrackets(message),
  ],
  whole_instrument: ([height, length, most]) => [
    `Der Scan ist ${height} mm hoch und ${length} mm lang, also mehr als eine Decke; bei dieser Länge ist sie höchstens ${most} mm hoch.`,
    ONLY_THE_TOP,
  ],
  two_faces: ([apart, most]) => [
    `Der Scan hat zwei Flächen übereinander, ${apart} mm auseinander; die Außenseite einer Decke hat eine (höchstens ${most} mm sind Neigung).`,
    ONLY_THE_TOP,
  ],
  gaps: ([share, area, reach, most]) => [
    `${share} % der Decke (${area} cm²) haben keinen Punkt im Umkreis von ${reach} mm; höchstens ${most} % dürfen fehlen.`,
    "Das Fehlende noch einmal scannen.",
  ],
  does_not_fit: (_, { message }) => [
    "Die Messwerte passen so nicht auf diese Decke.",
    "Umriss und Lage prüfen: x zählt von der Mittellinie, y von der Unterkante.",
    message,
  ],
  // Steps and targets.
  mesh_left_behind: (_, { message }) => [
    "Diesen Schritt kann das Netz nicht mitgehen.",
    "Das Maß selbst ändern und die Decke neu berechnen lassen.",
    message,
  ],
  no_such_mode: ([mode, count]) => [
    `Mode ${mode} ist gefragt, berechnet sind ${count}.`,
    `Eine von 1 bis ${count} nehmen.`,
  ],
  target_no_number: (_, { message }) => ["Das Ziel ist keine Zahl.", "Eine Zahl eingeben.", message],
  unknown_target: (_, { message }) => ["Dieses Ziel gibt es nicht.", "", message],
  unknown_step: (_, { message }) => ["Diesen Schritt gibt es nicht.", "", message],
  // The driven top.
  unknown_drive: (_, { message }) => ["Diese Kraft gibt es nicht.", "", message],
  off_the_wood: ([across, along]) => [
    `Bei ${across} mm von der Mittellinie und ${along} mm von der Unterkante ist kein Holz.`,
    "Eine Stelle auf dem Holz nehmen, neben Loch und Rand.",
  ],
  link_too_long_for_code: ([bytes, most]) => [
    `Ein QR-Code fasst höchstens ${most} Byte; dieser Link hat ${bytes}.`,
    "Den Link selbst schicken oder die gespeicherte Datei.",
  ],
  outside_limits: (_, { message }) => ["Diese Zahl liegt außerhalb ihrer Grenzen.", "", message],
  bad_modes: (_, { message }) => [
    "Unter den Schwingungen ist etwas keine Zahl.",
    "Einen anderen Wert versuchen.",
    message,
  ],
  foreign_modes: (_, { message }) => [
    "Die Schwingungen gehören nicht zu dieser Decke.",
    "Die Seite neu laden.",
    message,
  ],
  // Lessons.
  lesson_too_large: ([bytes, most]) => [
    `Die Datei hat ${bytes} Bytes; eine Lektion hat höchstens ${most}.`,
    "Die Datei einer Lektion wählen.",
  ],
  lesson_not_json: (_, { value = "", message }) => {
    const [line, column] = numbersOf(value);
    return [
      `Die Datei ist in Zeile ${line ?? "?"}, Spalte ${column ?? "?"} kein JSON.`,
      "Den Text dort richten.",
      inBrackets(message),
    ];
  },
  lesson_wrong_format: (_, { value = "" }) => [
    `statt „bombatura-lesson“ steht da ${value}, also ist das keine Lektion.`,
    "Die Datei einer Lektion wählen.",
  ],
  lesson_unknown_version: (_, { value = "", limits = "" }) => [
    `${value} ist hier nicht bekannt; gelesen wird Version ${limits}.`,
    "Die Lektion für diese Version schreiben.",
  ],
  lesson_wrong_shape: (_, { value }) => [
    "das passt nicht in eine Lektion.",
    "Schreibweise oder Wert berichtigen, wie die Anleitung der Lektionen es sagt.",
    value,
  ],
  lesson_outside: (_, { value = "", limits = "" }) => [
    "dieser Wert geht hier nicht.",
    "Einen Wert innerhalb der Grenzen eingeben.",
    `${value}; ${limits}`,
  ],
  lesson_no_such_place: (_, { value = "" }) => [
    `im Entwurf steht nichts unter „${value}“.`,
    "Den Wert so nennen, wie die Datei eines Entwurfs ihn hat, die Schlüssel mit Punkten verbunden.",
  ],
  lesson_design: (_, { value }) => [
    "mit diesen Änderungen lässt sich der Entwurf nicht zeichnen.",
    "Die Änderung berichtigen.",
    value,
  ],
  lesson_needs: (_, { value = "", limits = "" }) => [`zur Zahl „${limits}“ gehört noch „${value}“.`, "Das ergänzen."],
  lesson_needless: (_, { value = "", limits = "" }) => [
    `zur Zahl „${limits}“ gehört kein „${value}“.`,
    "Das weglassen.",
  ],
  lesson_no_mode: (_, { value = "" }) => [
    `eine der beiden Decken hat keine Mode ${value} oder keine solcher Gestalt.`,
    "Eine andere Mode oder eine kleinere Änderung nehmen.",
  ],
  lesson_no_region: (_, { value = "", limits = "" }) => [
    `eine der beiden Decken hat keinen Bereich „${value}“.`,
    "Einen Bereich nehmen, den beide haben.",
    limits,
  ],
  lesson_floats: () => [
    "Ein langsamer Druck braucht einen gehaltenen Rand, und diese Decke ist frei.",
    "In „start“ den „rim“ auf „hinged“ setzen.",
  ],
  lesson_no_bridge: () => ["Die Stegfüße stehen nicht auf dem Holz.", "„sound_holes.stop_mm“ ändern."],
  lesson_statics: (_, { message }) => ["Auf diesen Druck gibt es keine Antwort.", "Eine andere Zahl nehmen.", message],
  wrong_wishes: (_, { message }) => ["Die Angaben zur Lage der Datei sind nicht zu verstehen.", "", message],
};

/** @type {typeof English.told} */
export function told(problem) {
  const { kind, message, path = "", value = "", limits = "", remedy = "" } = problem;
  const teller = KINDS[kind];
  if (teller === undefined) {
    // The page's own come in German.
    return { message, remedy };
  }
  const [says, what_to_do, english] = teller(numbersOf(limits === "" ? message : `${value}; ${limits}`), problem);
  const name = measureName(path, "");
  const place = name === "" ? path : `${name} (${path})`;
  return { message: place === "" ? says : `${place}: ${says}`, remedy: what_to_do, english };
}

/**
 * @param {string} text
 * @returns {string[]} as German writes them
 */
function numbersOf(text) {
  return Array.from(text.matchAll(/(?<![\w.])-?\d+(?:\.\d+)?/g), ([number]) => local(number));
}

/** @param {string} value a number with its unit */
function local(value) {
  return value.replace("-", "−").replace(".", ",").replace("degrees", "Grad");
}

/** @param {string} value */
function unitOf(value) {
  return local(/ \S+$/.exec(value)?.[0] ?? "");
}

/**
 * What is wrong, of a sentence that begins with the place and goes on with the value in brackets.
 * @param {Problem} problem
 */
function whatOf({ message, path = "", value = "" }) {
  return message.slice(path.length + 2).split(` (${value})`)[0];
}

/** @param {string} message */
function inBrackets(message) {
  return /\((.+?)\)[;:]/s.exec(message)?.[1];
}
