/** The workshop steps' worker: what each does to a design, and which lead to a target. */
import init, { StepBench, work_while } from "../wasm/drive.js";
import { StepsDesk } from "./steps_desk.js";
import { takeTurns } from "./worker_turns.js";

takeTurns(async (module, wanted) => {
  await init({ module_or_path: module });
  work_while(wanted);
  return new StepsDesk(StepBench);
});
