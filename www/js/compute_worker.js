/** The compute worker: owns the solver. */
import init, { Workshop, work_while } from "../wasm/compute.js";
import { takeTurns } from "./worker_turns.js";
import { WorkshopDesk } from "./workshop_desk.js";

takeTurns(async (module, wanted) => {
  await init({ module_or_path: module });
  work_while(wanted);
  return new WorkshopDesk(new Workshop(), Workshop.demo_design());
});
