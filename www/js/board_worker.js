/** The drawing board's worker: draws while the other one solves. */
import init, { DrawingBoard } from "../wasm/board.js";
import { BoardDesk } from "./board_desk.js";
import { takeTurns } from "./worker_turns.js";

takeTurns(async (module) => {
  await init({ module_or_path: module });
  return new BoardDesk(DrawingBoard);
});
