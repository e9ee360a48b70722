/**
 * How a worker takes turns: it owns a wasm module and answers one request at a time, the most urgent first.
 *
 * A failure inside the module is a value (a Problem). Anything else that is thrown means that the module's memory can't
 * be trusted any more: the worker says so and stops answering, and the page starts a new one.
 */
/** @import { Exchange, Problem, Reply, Request, RequestKind, Start } from "./messages.js" */
/** @import { Recall } from "./recall.js" */
import { isWanted } from "./recall.js";
import { RequestQueue } from "./request_queue.js";

/**
 * @typedef {object} Desk
 * @property {(request: Request) => Exchange[RequestKind]["get"]} answer may throw a Problem
 */

const queue = new RequestQueue();

/** @typedef {(module: WebAssembly.Module, wanted: () => boolean) => Promise<Desk>} Opening wanted: whether the request at hand still is */

/** @type {Opening | undefined} */
let opening;
/** @type {Recall | undefined} */
let recall;
/** The number of the request at hand. */
let at_hand = 0;
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
    recall = message.recall;
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
 * @param {Opening} open
 */
export function takeTurns(open) {
  opening = open;
}

/** @param {WebAssembly.Module} module */
async function start(module) {
  desk = await opening?.(module, () => isWanted(recall, at_hand));
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
  at_hand = request.id;
  if (isWanted(recall, at_hand)) {
    answer(desk, request);
  } else {
    say({ id: at_hand, outcome: "superseded" });
  }
  askTurn();
}

/**
 * @param {Desk} desk
 * @param {Request} request
 */
function answer(desk, request) {
  const { id } = request;
  try {
    const value = desk.answer(request);
    say({ id, outcome: "done", value }, arraysOf(value));
  } catch (thrown) {
    if (!isProblem(thrown)) {
      crashed = true;
      say({ id, outcome: "crashed", text: String(thrown) });
    } else if (isWanted(recall, id)) {
      say({ id, outcome: "problem", problem: thrown });
    } else {
      say({ id, outcome: "superseded" });
    }
  }
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
