/**
 * The mode as a picture in sand: grains lie where little moves outwards, over the plan.
 */
/** @import { Bench } from "../sections.js" */
import { SAND_WORDS } from "#words/sand.js";
import { outsideTriangles } from "../picture_nodes.js";
import { button, note } from "./fields.js";
import { nodeMotion } from "./node_motion.js";
import { grains } from "./sand_grains.js";
import { watchStage } from "./stage_watch.js";

/** Grains on a whole top: lines are closed, and single grains still seen. */
const GRAINS = 18000;
/** Millimetres round the top. */
const MARGIN_MM = 4;
/** Of the drawing, pixels to a millimetre: sharp on dense screens. */
const PX_PER_MM = 4;
const GRAIN_PX = 1.7;

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const { stage } = bench;
  const canvas = document.createElement("canvas");
  canvas.className = "sand";
  canvas.setAttribute("role", "img");
  let from_inside = false;
  const turn = button(SAND_WORDS.turn, () => {
    from_inside = !from_inside;
    turn.textContent = from_inside ? SAND_WORDS.back : SAND_WORDS.turn;
    draw();
  });
  host.append(canvas, turn, note(SAND_WORDS.about));

  const draw = () => {
    const { picture, motion } = stage;
    const paper = canvas.getContext("2d");
    if (picture === undefined || motion === undefined || paper === null) {
      return;
    }
    canvas.setAttribute("aria-label", SAND_WORDS.picture(bench.session.title));
    const { nodes, re, im } = nodeMotion(picture, motion);
    const [xs, ys] = [0, 1].map((axis) => nodes.filter((_, k) => k % 3 === axis));
    const [left, right] = [Math.min(...xs) - MARGIN_MM, Math.max(...xs) + MARGIN_MM];
    const [low, high] = [Math.min(...ys) - MARGIN_MM, Math.max(...ys) + MARGIN_MM];
    canvas.width = (right - left) * PX_PER_MM;
    canvas.height = (high - low) * PX_PER_MM;
    const style = getComputedStyle(canvas);
    const across = from_inside ? -1 : 1;
    const start = from_inside ? right : left;
    paper.setTransform(across * PX_PER_MM, 0, 0, -PX_PER_MM, -across * start * PX_PER_MM, high * PX_PER_MM);
    paper.fillStyle = style.getPropertyValue("--plate");
    paper.beginPath();
    for (const corners of outsideTriangles(picture.triangles, nodes.length / 3)) {
      corners.forEach((node, k) => {
        paper[k === 0 ? "moveTo" : "lineTo"](nodes[3 * node], nodes[3 * node + 1]);
      });
      paper.closePath();
    }
    paper.fill();
    // Neighbouring triangles' edges would show through.
    paper.strokeStyle = paper.fillStyle;
    paper.lineWidth = 0.3;
    paper.stroke();
    paper.fillStyle = style.getPropertyValue("--grain");
    const size_mm = GRAIN_PX / PX_PER_MM;
    for (const [x, y] of grains({ nodes, re, im, triangles: picture.triangles }, GRAINS)) {
      paper.fillRect(x - size_mm / 2, y - size_mm / 2, size_mm, size_mm);
    }
  };
  watchStage(host, stage, { motion: draw });
}
