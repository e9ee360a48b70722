/**
 * A cut across the top, or along it: the wood's outline at true shape, moving in step with the stage, at rest behind it, with what
 * makers call each stretch of it.
 */
/** @import { RegionsAt } from "../messages.js" */
/** @import { Bench } from "../sections.js" */
/** @import { CutPiece, Plane } from "./plane_cut.js" */
import { CUT_WORDS as WORDS } from "#words/cut.js";
import { ChoiceField, group, note } from "./fields.js";
import { cutPieces, piecePath } from "./plane_cut.js";
import { RangeField } from "./range_field.js";
import { watchStage } from "./stage_watch.js";
import { stretchesOf, withHoles } from "./stretches.js";
import { SVG, svgLine } from "./svg_line.js";

const MARGIN_MM = 3;
/** Height of the names below the wood, as a share of the drawing's width: as large on the page however long the cut is. */
const LETTERS = 0.035;
/** A letter's width over its height, on average; more, so that names keep apart. */
const LETTER_WIDTH = 0.62;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const { stage } = bench;
  const sheet = document.createElementNS(SVG, "svg");
  sheet.setAttribute("class", "cut");
  sheet.setAttribute("role", "img");
  const rest = svgLine("rest", "");
  const moving = svgLine("moving", "");
  const names = document.createElementNS(SVG, "g");
  names.setAttribute("aria-hidden", "true");
  sheet.append(rest, moving, names);
  const list = document.createElement("ol");
  list.className = "stretches";

  /** @type {CutPiece[]} */
  let pieces = [];
  let drawn_exaggeration = Number.NaN;
  /** @type {Plane} */
  const plane = { across: true, at_mm: Number.NaN };

  const direction = new ChoiceField(WORDS.direction, "", WORDS.directions, (word) => {
    plane.across = word === "across";
    plane.at_mm = Number.NaN;
    cut();
  });
  const place = new RangeField((at_mm) => {
    plane.at_mm = at_mm;
    cut();
  });
  host.append(group(WORDS.title, direction.row, place.row), sheet, list, note(WORDS.about));

  const cut = () => {
    const { picture, motion } = stage;
    if (picture === undefined) {
      return;
    }
    const [least, most] = extent(picture.positions, plane.across ? 1 : 0);
    plane.at_mm = Math.min(Math.max(Number.isNaN(plane.at_mm) ? (least + most) / 2 : plane.at_mm, least + 1), most - 1);
    place.show({ label: WORDS.place[plane.across ? "across" : "along"], least, most, value: plane.at_mm });
    pieces = cutPieces(picture, motion, plane);
    sheet.setAttribute("aria-label", WORDS.drawing(plane, pieces.length));
    rest.setAttribute("d", pieces.map((piece) => piecePath(piece, 0, 0)).join(""));
    drawn_exaggeration = Number.NaN;
    draw();
    const { across, at_mm } = plane;
    stage.hold("cut", (view) => view.set_cut(across, at_mm));
    void name();
  };

  const draw = () => {
    const { exaggeration_mm } = stage;
    if (exaggeration_mm !== drawn_exaggeration) {
      drawn_exaggeration = exaggeration_mm;
      fit(sheet, pieces, exaggeration_mm);
    }
    moving.setAttribute("d", pieces.map((piece) => piecePath(piece, stage.phase_rad, exaggeration_mm)).join(""));
  };

  const name = async () => {
    const now = pieces;
    const tops = now.map(({ outside }) => outside);
    const places = tops.flatMap((us) => us.flatMap((u) => (plane.across ? [u, plane.at_mm] : [plane.at_mm, u])));
    const request = { design: bench.store.text, places_mm: Float32Array.from(places) };
    const regions = await bench.board().askBeside("regions_at", request);
    if (regions !== undefined && now === pieces) {
      showStretches(tops, regions);
    }
  };

  /**
   * @param {readonly number[][]} tops (piece, place) along the cut, mm
   * @param {RegionsAt} regions of all places
   */
  const showStretches = (tops, { keys, indices }) => {
    let first = 0;
    const of_pieces = tops.map((us) => {
      const own = Array.from(indices.subarray(first, first + us.length), (index) => keys[index]);
      first += us.length;
      return stretchesOf(us, own);
    });
    const stretches = withHoles(of_pieces);
    list.replaceChildren(
      ...stretches.map((stretch) => {
        const item = document.createElement("li");
        item.textContent = WORDS.stretch(stretch, plane.across);
        return item;
      }),
    );
    const below = Number(sheet.dataset.below);
    const letter_mm = LETTERS * sheet.viewBox.baseVal.width;
    names.replaceChildren(
      ...stretches.flatMap(({ key, from_mm, to_mm }, at) => {
        const line = svgLine(key === "hole" ? "gap" : "stretch", `M${from_mm + 0.4} ${below}H${to_mm - 0.4}`);
        const text = document.createElementNS(SVG, "text");
        text.setAttribute("x", String((from_mm + to_mm) / 2));
        text.setAttribute("y", String(below + 1.2 * letter_mm));
        text.setAttribute("font-size", String(letter_mm));
        const words = WORDS.region(key);
        // Where the name has no room its number in the list has.
        text.textContent = words.length * LETTER_WIDTH * letter_mm < to_mm - from_mm ? words : String(at + 1);
        return [line, text];
      }),
    );
  };

  watchStage(host, stage, { motion: cut, frame: draw }, (open) => {
    if (!open) {
      stage.hold("cut", (view) => view.set_cut(true, Number.NaN));
    }
  });
}

/**
 * @param {Float32Array} positions (vertex, xyz)
 * @param {number} axis
 * @returns {[number, number]} whole millimetres
 */
function extent(positions, axis) {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let at = axis; at < positions.length; at += 3) {
    least = Math.min(least, positions[at]);
    most = Math.max(most, positions[at]);
  }
  return [Math.ceil(least), Math.floor(most)];
}

/**
 * Gives the drawing room for the whole swing.
 * @param {SVGSVGElement} sheet
 * @param {readonly CutPiece[]} pieces
 * @param {number} exaggeration_mm
 */
function fit(sheet, pieces, exaggeration_mm) {
  const [us, vs] = [0, 1].map((axis) => pieces.flatMap(({ rest }) => [...rest.filter((_, k) => k % 2 === axis)]));
  const room = exaggeration_mm + MARGIN_MM;
  const [left, width] = [Math.min(...us) - room, Math.max(...us) - Math.min(...us) + 2 * room];
  const [top, below] = [-Math.max(...vs) - room, -Math.min(...vs) + room];
  sheet.dataset.below = String(below);
  sheet.setAttribute("viewBox", `${left} ${top} ${width} ${below - top + 2 * LETTERS * width}`);
}
