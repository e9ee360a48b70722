/** The workshop steps' worker: what each does to a design, and which lead to a target. */
import init, { StepBench } from "../wasm/drive.js";
import { StepsDesk } from "./steps_desk.js";
import { takeTurns } from "./worker_turns.js";

takeTurns(async (module) => {
  await init({ module_or_path: module });
  return new StepsDesk(StepBench);
});
