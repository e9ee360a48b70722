/** The compute worker: owns the solver. */
import init, { Workshop } from "../wasm/compute.js";
import { takeTurns } from "./worker_turns.js";
import { WorkshopDesk } from "./workshop_desk.js";

takeTurns(async (module) => {
  await init({ module_or_path: module });
  return new WorkshopDesk(new Workshop(), Workshop.demo_design());
});
