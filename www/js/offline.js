/**
 * Makes the page work without a network and lets it be installed, once all that it needs now is there: the first visit waits for none of
 * it.
 */

import { OFFLINE_WORDS as WORDS } from "#words/offline.js";

/** Between looks for a newer edition, for a page that stays open. The browser looks by itself whenever a page is loaded. */
const LOOK_MS = 3_600_000;

/** The folder of this edition, and the site's. */
const EDITION = new URL("../", import.meta.url);
const SITE = new URL("../", EDITION);

/**
 * @param {(text: string) => void} say
 * @param {string} view what the page draws with
 */
export async function keepOffline(say, view) {
  addLink("manifest", `bombatura.${document.documentElement.lang.slice(0, 2)}.webmanifest`);
  addLink("apple-touch-icon", "icons/touch.png");
  // Not there in an insecure page or a private window.
  const { serviceWorker } = navigator;
  if (serviceWorker === undefined) {
    return;
  }
  const edition = EDITION.pathname.slice(SITE.pathname.length, -1);
  // Held as long as the page is open: what it may still have to load is not thrown away meanwhile.
  const lock = `bombatura ${SITE.pathname} ${edition}`;
  void navigator.locks?.request(lock, { mode: "shared" }, () => new Promise(() => undefined)).catch(() => undefined);
  serviceWorker.addEventListener("message", ({ data }) => {
    if (typeof data?.edition === "string" && data.edition !== edition) {
      say(WORDS.newer);
    }
  });
  try {
    await idle();
    const registration = await serviceWorker.register(new URL(`service_worker.js?view=${view}`, SITE));
    lookAgain(registration);
    await serviceWorker.ready;
    document.documentElement.dataset.offline = "ready";
  } catch (reason) {
    // Then it works as long as there is a network.
    console.warn("the page can't be kept for use without a network:", reason);
  }
}

/** @param {ServiceWorkerRegistration} registration */
function lookAgain(registration) {
  let last_ms = performance.now();
  const look = () => {
    if (document.visibilityState === "visible" && performance.now() - last_ms > LOOK_MS) {
      last_ms = performance.now();
      registration.update().catch(() => undefined);
    }
  };
  setInterval(look, LOOK_MS);
  document.addEventListener("visibilitychange", look);
}

/** @returns {Promise<unknown>} once the page has nothing better to do */
function idle() {
  return new Promise((resolve) => {
    setTimeout(() => ("requestIdleCallback" in window ? requestIdleCallback(resolve) : resolve(undefined)), 2000);
  });
}

/**
 * @param {string} rel
 * @param {string} path
 */
function addLink(rel, path) {
  const link = document.createElement("link");
  link.rel = rel;
  link.href = new URL(path, SITE).href;
  document.head.append(link);
}
