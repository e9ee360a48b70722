/** The driven top's worker: what a force of any frequency makes of a design. */
import init, { DrivenTop, work_while } from "../wasm/drive.js";
import { DriveDesk } from "./drive_desk.js";
import { takeTurns } from "./worker_turns.js";

takeTurns(async (module, wanted) => {
  await init({ module_or_path: module });
  work_while(wanted);
  return new DriveDesk(DrivenTop);
});
