/**
 * The page's side of a worker: a promise for each request, and a new worker when one fails.
 */
/** @import { Exchange, Problem, Reply, Request, RequestKind } from "./messages.js" */
import { WORDS } from "#words/page.js";
import { callOff, sharedRecall } from "./recall.js";

/**
 * A worker that has not answered the request it is busy with after this long is taken for dead. The slowest honest
 * answer, a standard solve on an old phone, stays well below it; a person has stopped waiting long before.
 */
const SILENCE_MS = 60_000;

/** More restarts than this within a minute mean that starting again does not help. */
const RESTARTS_A_MINUTE = 3;

/** Thrown when a newer request of the same kind made this one pointless; callers let it pass. */
export class Superseded extends Error {}

/** Thrown when the core answered with a Problem. */
export class ProblemError extends Error {
  /** @param {Problem} problem */
  constructor(problem) {
    super(problem.message);
    /** @readonly */
    this.problem = problem;
  }
}

/**
 * @typedef {object} Waiting
 * @property {Request} request
 * @property {(value: any) => void} resolve
 * @property {(reason: Error) => void} reject
 */

/** Asks a worker, and keeps one alive. */
export class WorkshopClient {
  #worker_url;
  #module_url;
  /** @type {Worker | undefined} */
  #worker;
  /** @type {Map<number, Waiting>} */
  #waiting = new Map();
  #next_id = 1;
  #recall = sharedRecall();
  /** @type {number[]} */
  #restarts_ms = [];
  /** @type {number | undefined} */
  #silence_timer;
  #on_restart;

  /**
   * @param {URL} worker_url of the worker's script
   * @param {URL} module_url of its wasm file
   * @param {() => void} on_restart called after a failed worker was replaced
   */
  constructor(worker_url, module_url, on_restart) {
    this.#worker_url = worker_url;
    this.#module_url = module_url;
    this.#on_restart = on_restart;
    this.#startWorker();
  }

  /**
   * @template {RequestKind} K
   * @param {K} kind
   * @param {Exchange[K]["send"]} content
   * @returns {Promise<Exchange[K]["get"]>} rejects with Superseded or ProblemError
   */
  ask(kind, content) {
    const request = /** @type {Request} */ ({ kind, id: this.#next_id++, ...content });
    return new Promise((resolve, reject) => {
      this.#waiting.set(request.id, { request, resolve, reject });
      if (this.#worker !== undefined) {
        this.#worker.postMessage(request);
        this.#listenForSilence();
      } else if (this.#mayStart()) {
        this.#startWorker();
      } else {
        this.#giveUp("too many restarts");
      }
    });
  }

  /**
   * The same where the answer only goes beside something else: nothing where there is none, because a newer request came or
   * because of a problem, which whoever shows the something tells.
   * @template {RequestKind} K
   * @param {K} kind
   * @param {Exchange[K]["send"]} content
   * @returns {Promise<Exchange[K]["get"] | undefined>}
   */
  async askBeside(kind, content) {
    try {
      return await this.ask(kind, content);
    } catch (reason) {
      if (reason instanceof ProblemError || reason instanceof Superseded) {
        return undefined;
      }
      throw reason;
    }
  }

  /**
   * Gives up everything that was asked, at once: the worker learns of it while it computes and goes on with what comes next. Where it can't
   * learn of it, another is started in its place; Chromium then lets the old one compute on for up to two seconds.
   * Whoever waits is told that it is superseded. Costs nothing when nothing was asked.
   */
  abandon() {
    if (this.#worker !== undefined && this.#waiting.size > 0) {
      const waiting = [...this.#waiting.values()];
      this.#waiting.clear();
      if (this.#recall === undefined) {
        this.#worker.terminate();
        this.#startWorker();
      } else {
        callOff(this.#recall, this.#next_id - 1);
        this.#listenForSilence();
      }
      for (const { reject } of waiting) {
        reject(new Superseded());
      }
    }
  }

  #startWorker() {
    const worker = new Worker(this.#worker_url, { type: "module" });
    this.#worker = worker;
    worker.addEventListener("message", (/** @type {MessageEvent<Reply>} */ event) => this.#hear(worker, event.data));
    worker.addEventListener("error", (event) => this.#fail(worker, event.message));
    worker.addEventListener("messageerror", () => this.#fail(worker, "unreadable message"));
    compiled(this.#module_url).then(
      (module) => worker.postMessage({ kind: "start", module, recall: this.#recall }),
      (reason) => this.#giveUp(String(reason)),
    );
    for (const { request } of this.#waiting.values()) {
      worker.postMessage(request);
    }
    this.#listenForSilence();
  }

  /**
   * @param {Worker} worker
   * @param {Reply} reply
   */
  #hear(worker, reply) {
    if (worker !== this.#worker) {
      return;
    }
    if (reply.outcome === "crashed") {
      this.#fail(worker, reply.text, reply.id);
      return;
    }
    const waiting = this.#waiting.get(reply.id);
    this.#waiting.delete(reply.id);
    this.#listenForSilence();
    if (reply.outcome === "done") {
      waiting?.resolve(reply.value);
    } else if (reply.outcome === "problem") {
      waiting?.reject(new ProblemError(reply.problem));
    } else {
      waiting?.reject(new Superseded());
    }
  }

  /**
   * Replaces a worker that failed. Requests that wait are asked again, except those about the design on which it failed:
   * computing is deterministic, so it would fail on it again.
   * @param {Worker} worker
   * @param {string} text what was heard of the failure
   * @param {number} [id] of the request that was being answered, where that is known
   */
  #fail(worker, text, id) {
    if (worker !== this.#worker) {
      return;
    }
    console.error(`worker failed: ${text}`);
    worker.terminate();
    const culprit = this.#waiting.get(id ?? -1);
    for (const waiting of [...this.#waiting.values()]) {
      if (culprit !== undefined && designOf(waiting.request) === designOf(culprit.request)) {
        this.#waiting.delete(waiting.request.id);
        waiting.reject(new ProblemError(WORDS.problems.crashed));
      }
    }
    if (this.#mayStart()) {
      this.#startWorker();
      this.#on_restart();
    } else {
      this.#giveUp(text);
    }
  }

  /** Whether one more restart is worth trying; counts it if so. */
  #mayStart() {
    const now_ms = performance.now();
    this.#restarts_ms = this.#restarts_ms.filter((at_ms) => now_ms - at_ms < 60_000);
    return this.#restarts_ms.length < RESTARTS_A_MINUTE && this.#restarts_ms.push(now_ms) > 0;
  }

  /** @param {string} text */
  #giveUp(text) {
    console.error(`computing has stopped: ${text}`);
    this.#worker?.terminate();
    this.#worker = undefined;
    clearTimeout(this.#silence_timer);
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of waiting) {
      reject(new ProblemError(WORDS.problems.no_compute));
    }
  }

  /** Starts the clock of silence again: any reply shows that the worker is alive. */
  #listenForSilence() {
    clearTimeout(this.#silence_timer);
    const worker = this.#worker;
    if (worker !== undefined && this.#waiting.size > 0) {
      const oldest = Math.min(...this.#waiting.keys());
      this.#silence_timer = setTimeout(() => this.#fail(worker, "no answer", oldest), SILENCE_MS);
    }
  }
}

/**
 * @param {Request} request
 * @returns {string | undefined} the text of the design that it is about
 */
function designOf(request) {
  return "json" in request ? request.json : "design" in request ? request.design : undefined;
}

/** @type {Map<string, Promise<WebAssembly.Module>>} by address: restarts and further workers share what is there */
const modules = new Map();

/**
 * @param {URL} url
 * @returns {Promise<WebAssembly.Module>}
 */
function compiled(url) {
  const module = modules.get(url.href) ?? compile(url);
  modules.set(url.href, module);
  module.catch(() => modules.delete(url.href));
  return module;
}

/**
 * Compiles while downloading where the host names the file's type rightly, and after it elsewhere.
 * @param {URL} url
 * @returns {Promise<WebAssembly.Module>}
 */
async function compile(url) {
  const response = await fetch(url);
  if (!response.ok) {
    throw new Error(`${url.pathname}: status ${response.status}`);
  }
  return response.headers.get("Content-Type") === "application/wasm"
    ? WebAssembly.compileStreaming(response)
    : WebAssembly.compile(await response.arrayBuffer());
}
