/**
 * One arch as numbers. What a change of family or of the turn comes to, the core says.
 */
/** @import { Design } from "../design_store.js" */
/** @import { Arch, ArchChange } from "../messages.js" */
/** @import { Bench } from "../sections.js" */

import { SECTION_WORDS } from "#words/sections.js";
import { archPath, at, changed, withBassArch, withoutExtraArch } from "./design_edits.js";
import { BoxField, button, ChoiceField, group, NumberField } from "./fields.js";
import { PointList } from "./point_list.js";

/** The fields of one arch. */
export class ArchFields {
  /** What is laid into the page. */
  set;
  #arch;
  #bench;
  #family;
  #fullness;
  #turn;
  /** @type {BoxField | undefined} */
  #own_bass;
  /** @type {NumberField | undefined} */
  #station;
  /** @type {PointList[]} */
  #points;

  /**
   * @param {string} arch as the core names it
   * @param {Bench} bench
   */
  constructor(arch, bench) {
    const words = SECTION_WORDS.arching;
    this.#arch = arch;
    this.#bench = bench;
    const title = words.title(arch);
    const long = arch === "long_arch";
    const bass = arch.endsWith(".bass");
    this.#family = new ChoiceField(words.family, title, words.families, (word) => {
      void this.#reshape({ family: /** @type {Arch["family"]} */ (word) });
    });
    this.#fullness = new NumberField({ label: words.fullness, group: title, unit: "" }, (value) => {
      this.#set(long ? "arching.long_arch_fullness" : `${archPath(arch)}.fullness`, value);
    });
    this.#turn = new NumberField({ label: words.turn(long), group: title, unit: "mm" }, (value) => {
      if (value !== undefined) {
        void this.#reshape({ inflection_mm: value });
      }
    });
    const lists = long
      ? [
          { path: "arching.long_arch.lower", name: words.lower },
          { path: "arching.long_arch.upper", name: words.upper },
        ]
      : [{ path: `${archPath(arch)}.curve.points`, name: "" }];
    this.#points = lists.map(
      ({ path, name }) => new PointList(title, name, long, (points) => this.#set(path, points), path),
    );
    this.set = group(
      title,
      this.#family.row,
      this.#fullness.row,
      this.#turn.row,
      ...this.#points.map((list) => list.set),
    );
    const index = /^extra\.(\d+)$/.exec(arch)?.[1];
    if (index !== undefined) {
      this.#station = new NumberField({ label: words.station, group: title, unit: "mm" }, (value) => {
        this.#set(`arching.extra_arches.${index}.station_mm`, value);
      });
      this.set.children[0].after(this.#station.row);
    }
    if (!long && !bass) {
      this.#own_bass = new BoxField(words.own_bass, title, (own) => {
        void bench.settle(withBassArch(bench.store.edited, arch, own));
      });
      this.set.append(this.#own_bass.row);
    }
    if (index !== undefined) {
      const remove = () => void bench.settle(withoutExtraArch(bench.store.edited, Number(index)));
      this.set.append(button(words.remove_arch, remove, `${title}: ${words.remove_arch}`));
    }
  }

  /**
   * @param {Arch} arch
   * @param {Design} design that it belongs to
   */
  show(arch, design) {
    const spline = arch.family === "spline";
    this.#family.show(arch.family);
    this.#fullness.row.hidden = this.#turn.row.hidden = spline;
    this.#fullness.show(arch.fullness);
    this.#turn.show(arch.inflection_mm);
    this.#station?.show(arch.station_mm);
    this.#own_bass?.show(at(design, `${archPath(this.#arch)}.bass`) !== undefined);
    this.#points.forEach((list, upper) => {
      // The long arch's upper half is as long as what is left between apex and channel.
      const span_mm = upper === 0 ? arch.half_span_mm : upperSpan(design, arch);
      list.show(at(design, list.path) ?? [], span_mm, arch.rise_mm);
    });
  }

  /**
   * @param {string} path
   * @param {unknown} value
   */
  #set(path, value) {
    void this.#bench.settle(changed(this.#bench.store.edited, path, value));
  }

  /** @param {ArchChange} change */
  #reshape(change) {
    const { attempt, board, store, settle } = this.#bench;
    return attempt(async () => {
      const design = JSON.stringify(store.edited);
      const { arching } = JSON.parse(await board().ask("reshape", { design, arch: this.#arch, change }));
      settle(changed(store.edited, "arching", arching));
    });
  }
}

/**
 * @param {Design} design
 * @param {Arch} long
 */
function upperSpan(design, long) {
  const length = at(design, "outline.length_mm");
  return length - at(design, "arching.channel_distance_mm") - long.station_mm;
}
