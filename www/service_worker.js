/**
 * Keeps the site in the browser, so that it works without a network once it has been visited.
 *
 * All but the pages lies in a folder named by its edition and never changes there, so it is taken from what is kept, whichever edition
 * it is of: a page that is open while another edition comes goes on with its own files until it is loaded again. A page itself is asked
 * for over the network first, so that a reload has the newest edition, and nobody who works on the site sees an old one.
 *
 * The build writes `SITE` before this: what there is to keep. It is a plain script, as not every browser takes a module here.
 */
/** @import { ExtendableEvent, FetchEvent, KeeperScope } from "./js/service_worker_types" */

const keeper = /** @type {KeeperScope} */ (/** @type {unknown} */ (globalThis));
const { scope } = keeper.registration;

/** Caches of this site, and of no other of the same host. */
const OURS = `bombatura ${new URL(scope).pathname} `;
/** An open page holds a lock of this name, so that its edition is not thrown away. */
const CACHE = OURS + SITE.edition;

/** Longer than a slow network takes for a page of some kilobytes. */
const PATIENCE_MS = 4000;

/** So many files at a time are asked for: the page that is open goes first. */
const AT_ONCE = 3;

/** A host that keeps only files may not send them: what the page shares with its workers needs them on both. */
const ISOLATION = { "Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Embedder-Policy": "require-corp" };

/** @param {string} path */
const address = (path) => new URL(path, scope).href;

/** Fetches all that is not there yet, of the views the one that this browser draws with. */
async function fill() {
  const cache = await caches.open(CACHE);
  const view = new URL(keeper.location.href).searchParams.get("view") ?? "";
  const missing = [...SITE.pages, ...SITE.files, ...(SITE.views[view] ?? [])];
  const next = async () => {
    for (let path = missing.shift(); path !== undefined; path = missing.shift()) {
      if ((await cache.match(address(path))) === undefined) {
        await cache.put(address(path), await fetched(path));
      }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, next));
}

/**
 * @param {string} path
 * @returns {Promise<Response>}
 */
async function fetched(path) {
  // What belongs to an edition the page has mostly fetched already, and the browser may still have it.
  const response = await fetch(address(path), { cache: path.startsWith(SITE.edition) ? "default" : "no-cache" });
  if (!response.ok) {
    throw new Error(`${path}: status ${response.status}`);
  }
  const body = await response.blob();
  if (SITE.pages.includes(path) && !(await body.text()).includes(SITE.edition)) {
    throw new Error(`${path} is of another edition by now`);
  }
  return isolated(response, body);
}

/**
 * Made anew: an answer that a host has led elsewhere may not stand for a page.
 * @param {Response} response
 * @param {BodyInit | null} body as it was read from it, packed no more
 */
function isolated(response, body) {
  const headers = new Headers(response.headers);
  for (const packed of ["Content-Encoding", "Content-Length", "Vary"]) {
    headers.delete(packed);
  }
  for (const [name, value] of Object.entries(ISOLATION)) {
    headers.set(name, value);
  }
  return new Response(body, { headers });
}

/** Throws editions away that no open page needs. */
async function tidy() {
  const locks = await navigator.locks?.query();
  if (locks === undefined) {
    return;
  }
  const needed = [CACHE, ...(locks.held ?? []).map(({ name }) => name)];
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && !needed.includes(name)) {
      await caches.delete(name);
    }
  }
}

/** Takes over at once: it serves every edition alike. */
async function begin() {
  await tidy();
  await keeper.clients.claim();
  for (const page of await keeper.clients.matchAll()) {
    page.postMessage({ edition: SITE.edition });
  }
}

/**
 * @param {string} path below the site's folder
 * @returns {string | undefined} the page that it stands for; hosts may leave its ending out
 */
function pageAt(path) {
  const name = path.replace(/(\.html|\/)?$/, "");
  return SITE.pages.find((page) => page === `${name === "" ? "index" : name}.html`);
}

/**
 * @param {Request} request
 * @param {string} page
 */
async function newest(request, page) {
  const kept = await caches.match(address(page), { cacheName: CACHE });
  if (kept === undefined) {
    return fetch(request);
  }
  try {
    const late = new Promise((_, reject) => setTimeout(() => reject(new Error("too slow")), PATIENCE_MS));
    const response = /** @type {Response} */ (await Promise.race([fetch(request), late]));
    if (response.ok) {
      return isolated(response, response.body);
    }
    return response.status < 500 ? response : kept;
  } catch {
    return kept;
  }
}

/** @param {Request} request */
async function kept(request) {
  const found = await caches.match(request, { ignoreSearch: true });
  if (found !== undefined) {
    return found;
  }
  const response = await fetch(request);
  const path = request.url.slice(scope.length);
  if (response.ok && Object.values(SITE.views).flat().includes(path)) {
    // Another view than the browser began with, after it lost its graphics device.
    const cache = await caches.open(CACHE);
    await cache.put(request, response.clone());
  }
  return response;
}

keeper.addEventListener("install", (/** @type {ExtendableEvent} */ event) => {
  event.waitUntil(fill().then(() => keeper.skipWaiting()));
});
keeper.addEventListener("activate", (/** @type {ExtendableEvent} */ event) => event.waitUntil(begin()));
keeper.addEventListener("fetch", (/** @type {FetchEvent} */ event) => {
  const { request } = event;
  const { origin, pathname, href } = new URL(request.url);
  if (request.method !== "GET" || !href.startsWith(scope)) {
    return;
  }
  const path = `${origin}${pathname}`.slice(scope.length);
  const page = request.mode === "navigate" ? pageAt(path) : undefined;
  if (page !== undefined) {
    event.respondWith(newest(request, page));
  } else if (path.startsWith("edition-") || SITE.files.includes(path)) {
    event.respondWith(kept(request));
  }
});
