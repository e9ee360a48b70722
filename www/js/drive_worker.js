/** The driven top's worker: what a force of any frequency makes of a design. */
import init, { DrivenTop } from "../wasm/drive.js";
import { DriveDesk } from "./drive_desk.js";
import { takeTurns } from "./worker_turns.js";

takeTurns(async (module) => {
  await init({ module_or_path: module });
  return new DriveDesk(DrivenTop);
});
