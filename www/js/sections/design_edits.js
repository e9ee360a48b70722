/**
 * Designs with one thing changed, where that may be an item of a list or a key that is not there yet.
 */
/** @import { Design } from "../design_store.js" */

/**
 * @param {unknown} design
 * @param {string} path keys and places in lists, joined by dots
 * @returns {any} undefined where there is nothing
 */
export function at(design, path) {
  /** @type {any} */
  let value = design;
  for (const key of path.split(".")) {
    value = value?.[key];
  }
  return value;
}

/**
 * The design with another value at a path; undefined takes the key away.
 * @param {Design} design
 * @param {string} path
 * @param {unknown} value
 * @returns {Design}
 */
export function changed(design, path, value) {
  const copy = structuredClone(design);
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  const holder = keys.length === 0 ? copy : at(copy, keys.join("."));
  if (typeof holder !== "object" || holder === null) {
    return design;
  }
  if (value === undefined) {
    delete holder[last];
  } else {
    holder[last] = value;
  }
  return copy;
}

/**
 * @param {Design} design
 * @returns {number} where the bridge stands, mm from the bottom edge
 */
export function bridgeStation(design) {
  return at(design, "outline.length_mm") - at(design, "sound_holes.stop_mm");
}

/**
 * The outline with a bass side of its own, for now as the treble side is, or with both sides alike again.
 * @param {Design} design
 * @param {boolean} own
 */
export function withBassSide(design, own) {
  const outline = at(design, "outline");
  const bass = {
    upper_half_width_mm: outline.upper_width_mm / 2,
    waist_half_width_mm: outline.waist_width_mm / 2,
    lower_half_width_mm: outline.lower_width_mm / 2,
    upper_corner: outline.upper_corner,
    lower_corner: outline.lower_corner,
  };
  return changed(design, "outline.bass", own ? bass : undefined);
}

/**
 * Where a cross arch stands in the design.
 * @param {string} arch as the core names it: "waist", "waist.bass", "extra.0"
 * @returns {string}
 */
export function archPath(arch) {
  const [station, ...rest] = arch.split(".");
  return station === "extra"
    ? ["arching.extra_arches", rest[0], "arch", ...rest.slice(1)].join(".")
    : ["arching.cross_arches", station, ...rest].join(".");
}

/**
 * A cross arch with a shape of its own on the bass side, for now that of the treble side, or without.
 * @param {Design} design
 * @param {string} arch the treble side's name
 * @param {boolean} own
 */
export function withBassArch(design, arch, own) {
  const { fullness, curve } = at(design, archPath(arch));
  const bass = curve === undefined ? { fullness } : { fullness, curve };
  return changed(design, `${archPath(arch)}.bass`, own ? bass : undefined);
}

/**
 * One more cross arch, of the waist's fullness to begin with.
 * @param {Design} design
 * @param {number} station_mm
 */
export function withExtraArch(design, station_mm) {
  const arch = { fullness: at(design, "arching.cross_arches.waist.fullness") };
  const list = at(design, "arching.extra_arches") ?? [];
  return changed(design, "arching.extra_arches", [...list, { station_mm, arch }]);
}

/**
 * @param {Design} design
 * @param {number} index
 */
export function withoutExtraArch(design, index) {
  const list = at(design, "arching.extra_arches") ?? [];
  const left = list.filter((/** @type {unknown} */ _, /** @type {number} */ place) => place !== index);
  return changed(design, "arching.extra_arches", left.length > 0 ? left : undefined);
}
