/**
 * What the design's measures are called, in German: by where they stand in the design, `*` for any one key or place in a list, as
 * in the core's table.
 */
/** @import * as English from "../en/measures.js" */

const PLACE = "Ort eines Wölbungspunkts, 0 am Scheitel bis 1 an der Hohlkehle";
const HEIGHT = "Höhe eines Wölbungspunkts über der Hohlkehle, gemessen an der des Scheitels";
const BASS_FULLNESS = "Völligkeit einer Querwölbung auf der Bassseite";

/** @type {Record<string, string>} */
const NAMES = {
  "outline.length_mm": "Länge des Korpus",
  "outline.upper_width_mm": "Breite des Oberbugs",
  "outline.upper_station_mm": "Breiteste Stelle des Oberbugs, von der Unterkante",
  "outline.waist_width_mm": "Breite des Mittelbugs",
  "outline.waist_station_mm": "Schmalste Stelle des Mittelbugs, von der Unterkante",
  "outline.lower_width_mm": "Breite des Unterbugs",
  "outline.lower_station_mm": "Breiteste Stelle des Unterbugs, von der Unterkante",
  "outline.upper_corner.station_mm": "Mitte der oberen Eckenspitze, von der Unterkante",
  "outline.upper_corner.reach_mm": "Mitte der oberen Eckenspitze, von der Mittellinie",
  "outline.upper_corner.width_mm": "Breite der oberen Eckenspitze",
  "outline.upper_corner.lean_deg": "Neigung der oberen Ecke zum Mittelbug",
  "outline.lower_corner.station_mm": "Mitte der unteren Eckenspitze, von der Unterkante",
  "outline.lower_corner.reach_mm": "Mitte der unteren Eckenspitze, von der Mittellinie",
  "outline.lower_corner.width_mm": "Breite der unteren Eckenspitze",
  "outline.lower_corner.lean_deg": "Neigung der unteren Ecke zum Mittelbug",
  "outline.upper_end_fullness": "Völligkeit des oberen Endes: seitlicher Radius zur Höhe des Endbogens",
  "outline.lower_end_fullness": "Völligkeit des unteren Endes: seitlicher Radius zur Höhe des Endbogens",
  "outline.overhang_mm": "Überstand des Randes über die Zargen",
  "outline.bass.upper_half_width_mm": "Halbe Breite des Oberbugs auf der Bassseite",
  "outline.bass.waist_half_width_mm": "Halbe Breite des Mittelbugs auf der Bassseite",
  "outline.bass.lower_half_width_mm": "Halbe Breite des Unterbugs auf der Bassseite",
  "outline.bass.upper_corner.station_mm": "Mitte der oberen Eckenspitze auf der Bassseite, von der Unterkante",
  "outline.bass.upper_corner.reach_mm": "Mitte der oberen Eckenspitze auf der Bassseite, von der Mittellinie",
  "outline.bass.upper_corner.width_mm": "Breite der oberen Eckenspitze auf der Bassseite",
  "outline.bass.upper_corner.lean_deg": "Neigung der oberen Ecke auf der Bassseite zum Mittelbug",
  "outline.bass.lower_corner.station_mm": "Mitte der unteren Eckenspitze auf der Bassseite, von der Unterkante",
  "outline.bass.lower_corner.reach_mm": "Mitte der unteren Eckenspitze auf der Bassseite, von der Mittellinie",
  "outline.bass.lower_corner.width_mm": "Breite der unteren Eckenspitze auf der Bassseite",
  "outline.bass.lower_corner.lean_deg": "Neigung der unteren Ecke auf der Bassseite zum Mittelbug",
  "arching.edge_height_mm": "Höhe der Randoberseite über den Zargen",
  "arching.apex_height_mm": "Höhe des Scheitels über den Zargen",
  "arching.channel_depth_mm": "Tiefe der Hohlkehle unter der Randoberseite",
  "arching.channel_distance_mm": "Abstand der Hohlkehle vom Rand",
  "arching.long_arch_fullness": "Völligkeit der Längswölbung: ihre mittlere Höhe zur größten",
  "arching.cross_arches.upper_bout.fullness": "Völligkeit der Querwölbung am Oberbug",
  "arching.cross_arches.upper_corners.fullness": "Völligkeit der Querwölbung an den oberen Ecken",
  "arching.cross_arches.waist.fullness": "Völligkeit der Querwölbung am Mittelbug",
  "arching.cross_arches.lower_corners.fullness": "Völligkeit der Querwölbung an den unteren Ecken",
  "arching.cross_arches.lower_bout.fullness": "Völligkeit der Querwölbung am Unterbug",
  "arching.apex_station_mm": "Höchste Stelle der Längswölbung, von der Unterkante",
  "arching.long_arch.lower.*.place": PLACE,
  "arching.long_arch.lower.*.height": HEIGHT,
  "arching.long_arch.upper.*.place": PLACE,
  "arching.long_arch.upper.*.height": HEIGHT,
  "arching.cross_arches.*.curve.points.*.place": PLACE,
  "arching.cross_arches.*.curve.points.*.height": HEIGHT,
  "arching.cross_arches.*.bass.fullness": BASS_FULLNESS,
  "arching.cross_arches.*.bass.curve.points.*.place": PLACE,
  "arching.cross_arches.*.bass.curve.points.*.height": HEIGHT,
  "arching.extra_arches.*.station_mm": "Lage einer weiteren Querwölbung, von der Unterkante",
  "arching.extra_arches.*.arch.fullness": "Völligkeit einer weiteren Querwölbung",
  "arching.extra_arches.*.arch.curve.points.*.place": PLACE,
  "arching.extra_arches.*.arch.curve.points.*.height": HEIGHT,
  "arching.extra_arches.*.arch.bass.fullness": BASS_FULLNESS,
  "arching.extra_arches.*.arch.bass.curve.points.*.place": PLACE,
  "arching.extra_arches.*.arch.bass.curve.points.*.height": HEIGHT,
  "sound_holes.stop_mm": "Mensur, vom Rand am Hals bis zu den Kerben",
  "sound_holes.*.upper_eye_diameter_mm": "Durchmesser des oberen Auges",
  "sound_holes.*.upper_eye_to_centreline_mm": "Oberes Auge zur Mittellinie: der halbe Augenabstand",
  "sound_holes.*.upper_eye_station_mm": "Mitte des oberen Auges, von der Unterkante",
  "sound_holes.*.lower_eye_diameter_mm": "Durchmesser des unteren Auges",
  "sound_holes.*.lower_eye_to_edge_mm": "Unteres Auge zum Rand",
  "sound_holes.*.lower_eye_station_mm": "Mitte des unteren Auges, von der Unterkante",
  "sound_holes.*.stem_width_mm": "Breite des Schafts an den Kerben",
  "sound_holes.*.throat_width_mm": "Breite des Schlitzes, wo er ins Auge läuft",
  "sound_holes.*.upper_wing_width_mm": "Breite des oberen Flügels",
  "sound_holes.*.lower_wing_width_mm": "Breite des unteren Flügels",
  "sound_holes.*.wing_rounding_mm": "Radius, auf den eine Flügelspitze gerundet ist",
  "sound_holes.*.stem_at_hooks_mm": "Breite des Schafts, wo er in die Bögen läuft",
  "sound_holes.*.stem_steeper_deg": "Um wie viel der Schaft an den Kerben steiler steht als gerade von Bogen zu Bogen",
  "sound_holes.*.lower_wing_hollow_mm": "Tiefe der Kehlung im unteren Flügel",
  "sound_holes.*.lower_wing_hollow_reach": "Wie weit die Kehlung in den unteren Flügel reicht, 1 bis zu seiner Spitze",
  "sound_holes.*.nick_depth_mm": "Tiefe der Kerben, 0 für keine",
  "sound_holes.*.diameter_mm": "Durchmesser des runden Lochs",
  "sound_holes.*.centre_to_centreline_mm": "Mitte des Lochs von der Mittellinie",
  "sound_holes.*.centre_station_mm": "Mitte des Lochs, von der Unterkante",
  "sound_holes.*.length_mm": "Länge des Lochs von Ende zu Ende",
  "sound_holes.*.width_mm": "Breite des Lochs",
  "sound_holes.*.bow_mm": "Wie weit sich die Sichel zum Rand hin wölbt, nach innen unter null",
  "sound_holes.*.end_rounding_mm": "Radius, auf den die Hörner der Sichel gerundet sind",
  "sound_holes.*.lean_deg": "Neigung des oberen Lochendes zur Mittellinie",
  "graduation.centre_mm": "Stärke in der Mitte",
  "graduation.flank_mm": "Stärke der Flanken",
  "graduation.edge_mm": "Stärke des Randes",
  "graduation.upper_bout_mm": "Stärke des Oberbugs",
  "graduation.lower_bout_mm": "Stärke des Unterbugs",
  "graduation.channel_mm": "Stärke der Hohlkehle",
  "graduation.around_holes_mm": "Stärke rund um die F-Löcher",
  "graduation.wings_mm": "Stärke der Flügel",
  "graduation.*.*.place.across_mm": "Ort einer Stärke, von der Mittellinie",
  "graduation.*.*.place.station_mm": "Ort einer Stärke, von der Unterkante",
  "graduation.*.*.thickness_mm": "Eine Stärke",
  "graduation.painted.*.reach_mm": "Wie weit eine gemalte Stärke reicht",
  "wood.ring_angle_deg": "Neigung der Jahrringe gegen stehende",
  "bar.lower_end.across_mm": "Unteres Balkenende von der Mittellinie, Bassseite unter null",
  "bar.lower_end.station_mm": "Unteres Balkenende, von der Unterkante",
  "bar.upper_end.across_mm": "Oberes Balkenende von der Mittellinie, Bassseite unter null",
  "bar.upper_end.station_mm": "Oberes Balkenende, von der Unterkante",
  "bar.width_mm": "Breite des Balkens",
  "bar.height_mm": "Höhe des Balkens an seiner höchsten Stelle",
  "bar.highest_station_mm": "Höchste Stelle des Balkens, von der Unterkante",
  "bar.end_height_mm": "Höhe des Balkens an den Enden",
  "post.place.across_mm": "Stimme von der Mittellinie, Bassseite unter null",
  "post.place.station_mm": "Stimme, von der Unterkante",
  "post.diameter_mm": "Durchmesser der Stimme",
  "post.length_mm": "Länge der Stimme",
  "masses.*.place.across_mm": "Aufgesetzte Masse von der Mittellinie, Bassseite unter null",
  "masses.*.place.station_mm": "Aufgesetzte Masse, von der Unterkante",
  "masses.*.mass_g": "Eine aufgesetzte Masse",
  "rim.elastic.height_mm": "Höhe der Zargen",
  "rim.elastic.thickness_mm": "Stärke der Zargen",
  "rim.elastic.lining_height_mm": "Höhe jedes Reifchens, 0 für keines",
  "rim.elastic.lining_thickness_mm": "Stärke jedes Reifchens",
  "rim.elastic.across_gpa": "Elastizitätsmodul des Zargenholzes quer zur Faser",
  "rim.elastic.shear_gpa": "Schubmodul des Zargenholzes in seiner Fläche",
  "rim.elastic.end_block_reach_mm": "Reichweite von Ober- und Unterklotz, von der Mittellinie",
  "rim.elastic.corner_block_reach_mm": "Reichweite eines Eckklotzes, von der Eckenspitze",
  "rim.elastic.block_factor": "Wievielmal so steif wie eine Zarge ein Klotz ist",
};

/**
 * Parts of a design that hold measures, as refusals name them.
 * @type {Record<string, string>}
 */
const PARTS = {
  outline: "Umriss",
  "outline.bass": "Umriss der Bassseite",
  "arching.long_arch": "Längswölbung",
  "arching.long_arch.*": "Längswölbung",
  "arching.cross_arches.*": "Querwölbung",
  "arching.extra_arches.*": "Weitere Querwölbung",
  sound_holes: "F-Löcher",
  "sound_holes.bass": "F-Loch der Bassseite",
  "sound_holes.treble": "F-Loch der Diskantseite",
  "sound_holes.*.path": "Gezeichnetes Loch",
  graduation: "Ausarbeitung",
  "graduation.measured": "Gemessene Stärken",
  wood: "Holz",
  bar: "Bassbalken",
  "bar.wood": "Holz des Bassbalkens",
  post: "Stimme",
  "post.place": "Stimme",
  "post.wood": "Holz der Stimme",
  "masses.*.place": "Aufgesetzte Masse",
};

/** @type {typeof English.measureName} */
export function measureName(path, what) {
  return NAMES[path] ?? Object.entries({ ...NAMES, ...PARTS }).find(([pattern]) => stands(pattern, path))?.[1] ?? what;
}

/**
 * Whether a pattern stands for a path.
 * @param {string} pattern
 * @param {string} path
 */
function stands(pattern, path) {
  const [keys, found] = [pattern, path].map((text) => text.split("."));
  return keys.length === found.length && keys.every((key, at) => key === "*" || key === found[at]);
}

/** @type {typeof English.measureRange} */
export function measureRange(least, most, unit) {
  return `${least} bis ${most}${unit === "" ? "" : ` ${unit === "deg" ? "Grad" : unit}`} sind möglich.`;
}
