// What the four built wasm modules give, for the type check; the modules themselves exist only in a built site.

declare module "*/wasm/compute.js" {
  export default function init(options: { module_or_path: WebAssembly.Module }): Promise<unknown>;
  export const Workshop: new () => import("./workshop_desk.js").WorkshopCore;
}

declare module "*/wasm/board.js" {
  export default function init(options: { module_or_path: WebAssembly.Module }): Promise<unknown>;
  export const DrawingBoard: new (json: string) => import("./board_desk.js").Board;
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
