// What the five built wasm modules give, for the type check; the modules themselves exist only in a built site.

declare module "*/wasm/compute.js" {
  export default function init(options: { module_or_path: WebAssembly.Module }): Promise<unknown>;
  export function work_while(wanted: () => boolean): void;
  export const Workshop: { demo_design: () => string } & (new () => import("./workshop_desk.js").WorkshopCore);
}

declare module "*/wasm/board.js" {
  export default function init(options: { module_or_path: WebAssembly.Module | URL }): Promise<unknown>;
  export const DrawingBoard: import("./board_desk.js").BoardClass &
    (new (
      json: string,
    ) => import("./board_desk.js").Board);
  type Wishes = import("./sections/import_messages.js").Wishes;
  type ImportFit = import("./sections/import_messages.js").ImportFit;
  export function read_outline(design: string, file: Uint8Array, wishes: Wishes): ImportFit;
  export function read_heights(design: string, file: Uint8Array, scan: boolean, wishes: Wishes): ImportFit;
}

declare module "*/wasm/drive.js" {
  export default function init(options: { module_or_path: WebAssembly.Module }): Promise<unknown>;
  export function work_while(wanted: () => boolean): void;
  export const DrivenTop: import("./drive_desk.js").TopClass & (new (json: string) => import("./drive_desk.js").Top);
  export const StepBench: new (json: string) => import("./steps_desk.js").StepBench;
}

declare module "*/wasm/view_webgpu.js" {
  const start: import("./view_backends.js").ViewModule["default"];
  export default start;
  export const Stage: import("./view_backends.js").ViewModule["Stage"];
}

declare module "*/wasm/view_webgl2.js" {
  const start: import("./view_backends.js").ViewModule["default"];
  export default start;
  export const Stage: import("./view_backends.js").ViewModule["Stage"];
}
