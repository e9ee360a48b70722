/**
 * Tiny drawings that say which measure a field is: what it is measured on in thin lines, the measure itself lit. They say nothing that
 * the field's name doesn't, and are hidden from screen readers.
 */

const SVG = "http://www.w3.org/2000/svg";

/** What measures are taken on, in a square of 40: the neck end up, or a cut with the outside up. */
const DRAWN = {
  plan: "M20 2C27 2 29 7 28.5 11 28 14 27 15 28.8 17 25.5 18 25.5 23 28.8 25 31 26.5 32 29 32 31 32 36 27 38 20 38 13 38 8 36 8 31 8 29 9 26.5 11.2 25 14.5 23 14.5 18 11.2 17 13 15 12 14 11.5 11 11 7 13 2 20 2Z",
  arch: "M2 26C4 26 5 28 8 28 13 28 14 13 20 13 26 13 27 28 32 28 35 28 36 26 38 26V30C36 30 35 32 32 32 27 32 26 17 20 17 14 17 13 32 8 32 5 32 4 30 2 30ZM1 35H39",
  hole: "M3 2V38M37 2V38M16.4 6.2A2.6 2.6 0 1 0 15.5 9.4C19 11 18.4 16 18.6 20 18.8 25 18 33 24.6 35.6A3.4 3.4 0 1 0 25 30.2C21.6 28.5 22 24 22 20 22 15 23.5 8 16.4 6.2Z",
  slot: "M3 2V38M16 8A4 4 0 0 1 24 8L27 30A4 4 0 0 1 19 30Z",
  bar: "M3 31V27C12 15 16 13 20 13S28 15 37 27V31Z",
  rib: "M4 8H32V11H4ZM24 11V32H27V11M18 11H24V20ZM4 32H32V35H4Z",
  rings: "M4 13H36V27H4ZM10 13V27M16 13V27M28 13V27M34 13V27",
};
const BAR_FOOT = "M15.6 8L14.8 34H17.2L17.6 8Z";
const WITH_BAR = `${DRAWN.plan}${BAR_FOOT}`;

/** @type {(x: number, y: number, radius: number) => string} */
const ring = (x, y, radius) =>
  `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;

const UPPER_EYE = ring(14, 7.5, 2.6);
const LOWER_EYE = ring(26.7, 33, 3.4);

/** @type {Record<string, [drawn: string, lit: string]>} by the measure's path; the bass side's outline is drawn on the left */
const SKETCHES = {
  "outline.length_mm": [DRAWN.plan, "M20 2V38"],
  "outline.upper_width_mm": [DRAWN.plan, "M11.5 10H28.5"],
  "outline.waist_width_mm": [DRAWN.plan, "M13.6 21H26.4"],
  "outline.lower_width_mm": [DRAWN.plan, "M8 31H32"],
  "outline.upper_station_mm": [DRAWN.plan, "M20 38V10M15 10H25"],
  "outline.waist_station_mm": [DRAWN.plan, "M20 38V21M15 21H25"],
  "outline.lower_station_mm": [DRAWN.plan, "M20 38V31M15 31H25"],
  "outline.upper_corner.station_mm": [DRAWN.plan, "M28.8 38V17"],
  "outline.upper_corner.reach_mm": [DRAWN.plan, "M20 17H28.8"],
  "outline.upper_corner.width_mm": [DRAWN.plan, "M28.8 15.5V18.5"],
  "outline.upper_corner.lean_deg": [DRAWN.plan, ring(28.8, 17, 2.5)],
  "outline.lower_corner.station_mm": [DRAWN.plan, "M28.8 38V25"],
  "outline.lower_corner.reach_mm": [DRAWN.plan, "M20 25H28.8"],
  "outline.lower_corner.width_mm": [DRAWN.plan, "M28.8 23.5V26.5"],
  "outline.lower_corner.lean_deg": [DRAWN.plan, ring(28.8, 25, 2.5)],
  "outline.upper_end_fullness": [DRAWN.plan, "M12.3 6C14 3 17 2 20 2S26 3 27.7 6"],
  "outline.lower_end_fullness": [DRAWN.plan, "M9.5 35C11.5 37.2 15 38 20 38S28.5 37.2 30.5 35"],
  "outline.overhang_mm": [DRAWN.rib, "M27 9.5H32"],
  "outline.bass.upper_half_width_mm": [DRAWN.plan, "M11.5 10H20"],
  "outline.bass.waist_half_width_mm": [DRAWN.plan, "M13.6 21H20"],
  "outline.bass.lower_half_width_mm": [DRAWN.plan, "M8 31H20"],
  "outline.bass.upper_corner.station_mm": [DRAWN.plan, "M11.2 38V17"],
  "outline.bass.upper_corner.reach_mm": [DRAWN.plan, "M20 17H11.2"],
  "outline.bass.upper_corner.width_mm": [DRAWN.plan, "M11.2 15.5V18.5"],
  "outline.bass.upper_corner.lean_deg": [DRAWN.plan, ring(11.2, 17, 2.5)],
  "outline.bass.lower_corner.station_mm": [DRAWN.plan, "M11.2 38V25"],
  "outline.bass.lower_corner.reach_mm": [DRAWN.plan, "M20 25H11.2"],
  "outline.bass.lower_corner.width_mm": [DRAWN.plan, "M11.2 23.5V26.5"],
  "outline.bass.lower_corner.lean_deg": [DRAWN.plan, ring(11.2, 25, 2.5)],
  "arching.edge_height_mm": [DRAWN.arch, "M2.5 26V35"],
  "arching.apex_height_mm": [DRAWN.arch, "M20 13V35"],
  "arching.apex_station_mm": [DRAWN.plan, "M20 38V20M15 20H25"],
  "arching.channel_depth_mm": [DRAWN.arch, "M4 26H13M8 26V28"],
  "arching.channel_distance_mm": [DRAWN.arch, "M2 23H8M8 21V28"],
  "arching.long_arch_fullness": [DRAWN.arch, "M8 28C13 28 14 13 20 13S27 28 32 28"],
  "sound_holes.stop_mm": [DRAWN.plan, "M20 2V21M14 21H26"],
  "sound_holes.*.upper_eye_diameter_mm": [DRAWN.hole, UPPER_EYE],
  "sound_holes.*.upper_eye_to_centreline_mm": [DRAWN.hole, "M3 7.5H11.4"],
  "sound_holes.*.upper_eye_station_mm": [DRAWN.hole, "M14 38V7.5"],
  "sound_holes.*.lower_eye_diameter_mm": [DRAWN.hole, LOWER_EYE],
  "sound_holes.*.lower_eye_to_edge_mm": [DRAWN.hole, "M30.1 33H37"],
  "sound_holes.*.lower_eye_station_mm": [DRAWN.hole, "M26.7 38V33"],
  "sound_holes.*.stem_width_mm": [DRAWN.hole, "M18.6 20H22"],
  "sound_holes.*.throat_width_mm": [DRAWN.hole, "M16.2 9.6L18.6 7.4M22 32.5L23.6 29.6"],
  "sound_holes.*.upper_wing_width_mm": [DRAWN.hole, "M13 12H18.6"],
  "sound_holes.*.lower_wing_width_mm": [DRAWN.hole, "M22.2 27.5H28"],
  "sound_holes.*.wing_rounding_mm": [DRAWN.hole, `${ring(15.8, 9.8, 1.6)}${ring(24.6, 29.8, 1.6)}`],
  "sound_holes.*.nick_depth_mm": [DRAWN.hole, "M16.5 20H18.6M22 20H24.1"],
  "sound_holes.*.stem_at_hooks_mm": [DRAWN.hole, "M18.4 13H22.4M18.7 28H22.2"],
  "sound_holes.*.stem_steeper_deg": [DRAWN.hole, "M21.5 10L19.4 30"],
  "sound_holes.*.lower_wing_hollow_mm": [DRAWN.hole, "M22.4 27C25 29 27 28 29 25"],
  "sound_holes.*.lower_wing_hollow_reach": [DRAWN.hole, "M22.4 22C26 25 29 25 33 21"],
  "sound_holes.*.diameter_mm": [`M3 2V38${ring(20, 20, 9)}`, "M11 20H29"],
  "sound_holes.*.centre_to_centreline_mm": [DRAWN.slot, "M3 19H21.5"],
  "sound_holes.*.centre_station_mm": [DRAWN.slot, "M21.5 38V19"],
  "sound_holes.*.length_mm": [DRAWN.slot, "M19.5 4L23.5 34"],
  "sound_holes.*.width_mm": [DRAWN.slot, "M17 19.5L26 18.5"],
  "sound_holes.*.bow_mm": ["M14 4C26 12 26 28 14 36 20 28 20 12 14 4Z", "M14 20H24"],
  "sound_holes.*.end_rounding_mm": [
    "M14 4C26 12 26 28 14 36 20 28 20 12 14 4Z",
    `${ring(14.6, 5, 2)}${ring(14.6, 35, 2)}`,
  ],
  "sound_holes.*.lean_deg": [DRAWN.slot, "M23 34V8M23 34L19.5 6"],
  "graduation.centre_mm": [DRAWN.arch, "M20 13V17"],
  "graduation.flank_mm": [DRAWN.arch, "M11.5 24.5L14.6 26.6M28.5 24.5L25.4 26.6"],
  "graduation.edge_mm": [DRAWN.arch, "M2.5 26V30M37.5 26V30"],
  "graduation.channel_mm": [DRAWN.arch, "M8 28V32M32 28V32"],
  "graduation.upper_bout_mm": [DRAWN.plan, ring(20, 9, 5)],
  "graduation.lower_bout_mm": [DRAWN.plan, ring(20, 31, 6)],
  "graduation.around_holes_mm": [DRAWN.plan, `${ring(16, 22, 2.4)}${ring(24, 22, 2.4)}`],
  "graduation.wings_mm": [DRAWN.hole, "M13 12H18.6M22.2 27.5H28"],
  "bar.lower_end.across_mm": [WITH_BAR, "M20 34H16"],
  "bar.lower_end.station_mm": [WITH_BAR, "M16 38V34"],
  "bar.upper_end.across_mm": [WITH_BAR, "M20 8H16.6"],
  "bar.upper_end.station_mm": [WITH_BAR, "M16.6 38V8"],
  "bar.width_mm": [WITH_BAR, "M14 21H19"],
  "bar.height_mm": [DRAWN.bar, "M20 13V31"],
  "bar.highest_station_mm": [DRAWN.bar, "M3 34H20M20 31V13"],
  "bar.end_height_mm": [DRAWN.bar, "M3.5 27V31M36.5 27V31"],
  "post.place.across_mm": [`${DRAWN.plan}${ring(24, 23, 1.6)}`, "M20 23H24"],
  "post.place.station_mm": [`${DRAWN.plan}${ring(24, 23, 1.6)}`, "M24 38V23"],
  "post.diameter_mm": [DRAWN.plan, ring(24, 23, 2)],
  "post.length_mm": [DRAWN.arch, "M25 20V35"],
  "masses.*.mass_g": [DRAWN.plan, ring(24, 21, 2)],
  "masses.*.place.across_mm": [`${DRAWN.plan}${ring(24, 21, 1.6)}`, "M20 21H24"],
  "masses.*.place.station_mm": [`${DRAWN.plan}${ring(24, 21, 1.6)}`, "M24 38V21"],
  "rim.elastic.height_mm": [DRAWN.rib, "M30 11V32"],
  "rim.elastic.thickness_mm": [DRAWN.rib, "M24 24H27"],
  "rim.elastic.lining_height_mm": [DRAWN.rib, "M21 11V20"],
  "rim.elastic.lining_thickness_mm": [DRAWN.rib, "M18 12.5H24"],
  "rim.elastic.across_gpa": [DRAWN.rib, "M25.5 12V31"],
  "rim.elastic.shear_gpa": [DRAWN.rib, "M24.5 12L26.5 31"],
  "rim.elastic.end_block_reach_mm": [DRAWN.plan, "M16 3.5H24M15 36.5H25"],
  "rim.elastic.corner_block_reach_mm": [DRAWN.plan, "M25.5 17H28.8M25.5 25H28.8M11.2 17H14.5M11.2 25H14.5"],
  "rim.elastic.block_factor": [DRAWN.plan, [17, 25].map((y) => ring(28, y, 1.6) + ring(12, y, 1.6)).join("")],
  "wood.ring_angle_deg": [DRAWN.rings, "M20 27L24 13M20 27V13"],
};

/**
 * @param {string} path of a measure as the core lists it
 * @returns {SVGSVGElement | undefined} where it has one
 */
export function sketchOf(path) {
  const sketch = SKETCHES[path];
  if (sketch === undefined) {
    return undefined;
  }
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("viewBox", "0 0 40 40");
  svg.setAttribute("class", "sketch");
  svg.setAttribute("aria-hidden", "true");
  svg.append(
    ...sketch.map((d, index) => {
      const line = document.createElementNS(SVG, "path");
      line.setAttribute("d", d);
      line.setAttribute("class", index === 0 ? "drawn" : "lit");
      return line;
    }),
  );
  return svg;
}

/** The paths of all measures that have a sketch. */
export const SKETCHED = Object.keys(SKETCHES);
