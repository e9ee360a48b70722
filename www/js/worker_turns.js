/**
 * How a worker takes turns: it owns a wasm module and answers one request at a time, the most urgent first.
 *
 * A failure inside the module is a value (a Problem). Anything else that is thrown means that the module's memory can't
 * be trusted any more: the worker says so and stops answering, and the page starts a new one.
 */
/** @import { Exchange, Problem, Reply, Request, RequestKind, Start } from "./messages.js" */
import { RequestQueue } from "./request_queue.js";

/**
 * @typedef {object} Desk
 * @property {(request: Request) => Exchange[RequestKind]["get"]} answer may throw a Problem
 */

const queue = new RequestQueue();

/** @type {((module: WebAssembly.Module) => Promise<Desk>) | undefined} */
let opening;
/** @type {Desk | undefined} */
let desk;
let turn_asked = false;
let crashed = false;

// Between two requests the worker goes back to its event loop, so that newer messages can replace waiting ones. A
// message channel is not slowed down by the browser's minimum delay for nested timers.
const turns = new MessageChannel();
turns.port1.onmessage = takeTurn;

self.addEventListener("message", (/** @type {MessageEvent<Start | Request>} */ event) => {
  const message = event.data;
  if (message.kind === "start") {
    // Reported, an error reaches the page as the worker's error event; a rejected promise would not.
    start(message.module).catch(reportError);
    return;
  }
  const replaced = queue.add(message);
  if (replaced !== undefined) {
    say({ id: replaced.id, outcome: "superseded" });
  }
  askTurn();
});

/**
 * Answers what the page asks, once it has sent the module.
 * @param {(module: WebAssembly.Module) => Promise<Desk>} open
 */
export function takeTurns(open) {
  opening = open;
}

/** @param {WebAssembly.Module} module */
async function start(module) {
  desk = await opening?.(module);
  askTurn();
}

function askTurn() {
  if (!turn_asked && desk !== undefined && !crashed) {
    turn_asked = true;
    turns.port2.postMessage(undefined);
  }
}

function takeTurn() {
  turn_asked = false;
  const request = queue.take();
  if (request === undefined || desk === undefined) {
    return;
  }
  try {
    const value = desk.answer(request);
    say({ id: request.id, outcome: "done", value }, arraysOf(value));
  } catch (thrown) {
    if (isProblem(thrown)) {
      say({ id: request.id, outcome: "problem", problem: thrown });
    } else {
      crashed = true;
      say({ id: request.id, outcome: "crashed", text: String(thrown) });
    }
  }
  askTurn();
}

/**
 * @param {Reply} reply
 * @param {Transferable[]} [transfer]
 */
function say(reply, transfer = []) {
  self.postMessage(reply, { transfer });
}

/**
 * @param {unknown} thrown
 * @returns {thrown is Problem}
 */
function isProblem(thrown) {
  return typeof thrown === "object" && thrown !== null && "kind" in thrown && "message" in thrown;
}

/**
 * Every typed array's memory inside a value, to be handed over instead of copied.
 * @param {unknown} value
 * @returns {Transferable[]}
 */
function arraysOf(value) {
  if (ArrayBuffer.isView(value)) {
    return [/** @type {ArrayBuffer} */ (value.buffer)];
  }
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(arraysOf) : [];
}
