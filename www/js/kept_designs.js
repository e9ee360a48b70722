/**
 * Designs kept in this browser: the one worked on, and those kept under a name. All of it stays on this device.
 */

/**
 * @typedef {object} Kept
 * @property {number} id in the order of keeping
 * @property {string} name
 * @property {string} text the design's document
 * @property {number} kept_ms since 1970
 */

const DATABASE = "bombatura";
const VERSION = 1;
/** The design worked on, at the one key. */
const NOW = "now";
/** Those with names, by number. */
const NAMED = "named";

/** Every method fails where the browser keeps nothing, as in some private windows. */
export class KeptDesigns {
  /** @type {Promise<IDBDatabase> | undefined} */
  #database;

  /** @returns {Promise<string | undefined>} what was worked on last */
  now() {
    return this.#ask(NOW, "readonly", (store) => store.get(NOW));
  }

  /** @param {string} text */
  keepNow(text) {
    return this.#ask(NOW, "readwrite", (store) => store.put(text, NOW));
  }

  /** @returns {Promise<Kept[]>} the last one first */
  async list() {
    /** @type {Kept[]} */
    const kept = await this.#ask(NAMED, "readonly", (store) => store.getAll());
    return kept.reverse();
  }

  /**
   * Keeps one more: those kept under the same name before stay.
   * @param {string} name
   * @param {string} text
   */
  keep(name, text) {
    return this.#ask(NAMED, "readwrite", (store) => store.add({ name, text, kept_ms: Date.now() }));
  }

  /** @param {Kept} kept one that was removed */
  putBack(kept) {
    return this.#ask(NAMED, "readwrite", (store) => store.put(kept));
  }

  /** @param {number} id */
  remove(id) {
    return this.#ask(NAMED, "readwrite", (store) => store.delete(id));
  }

  /**
   * @template T
   * @param {string} store
   * @param {IDBTransactionMode} mode
   * @param {(store: IDBObjectStore) => IDBRequest<T>} request
   * @returns {Promise<T>} once it is safely kept
   */
  async #ask(store, mode, request) {
    this.#database ??= open();
    const database = await this.#database;
    return new Promise((resolve, reject) => {
      const transaction = database.transaction(store, mode);
      const asked = request(transaction.objectStore(store));
      transaction.oncomplete = () => resolve(asked.result);
      transaction.onabort = () => reject(transaction.error);
    });
  }
}

/** @returns {Promise<IDBDatabase>} */
function open() {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(DATABASE, VERSION);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore(NOW);
      asked.result.createObjectStore(NAMED, { keyPath: "id", autoIncrement: true });
    };
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
}
