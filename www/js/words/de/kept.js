/**
 * What the dialogue of kept designs says, in German.
 */
/** @import * as English from "../en/kept.js" */

/** @type {typeof English.KEPT_WORDS.time} */
const time = (kept_ms) => new Date(kept_ms).toLocaleString("de", { dateStyle: "medium", timeStyle: "short" });

/** @type {typeof English.KEPT_WORDS} */
export const KEPT_WORDS = {
  dialogue: `
    <h2 id="kept-title">Entwürfe in diesem Browser</h2>
    <p>Woran gearbeitet wird, bleibt von selbst erhalten und ist beim nächsten Mal wieder da. Ein Entwurf, auf den man zurückkommen will, wird unter einem Namen aufgehoben.</p>
    <form>
      <label for="kept-name">Name</label>
      <input type="text" id="kept-name" required maxlength="80" autocomplete="off">
      <button>Diesen Entwurf aufheben</button>
    </form>
    <p class="kept-status">
      <span class="kept-said" role="status"></span>
      <button type="button" class="kept-back" hidden>Zurückholen</button>
    </p>
    <div class="kept-list">
      <table>
        <caption class="visually-hidden">Aufgehobene Entwürfe</caption>
        <tbody></tbody>
      </table>
      <p class="kept-none">Noch keiner ist unter einem Namen aufgehoben.</p>
    </div>
    <p class="kept-caution">Sie bleiben auf diesem Gerät, wo ein Browser sie löschen kann: was zählt, als Datei speichern.</p>
    <button type="button" class="kept-close">Schließen</button>
  `,
  open: "Öffnen",
  remove: "Entfernen",
  time,
  label: (text, kept) => `${text}: „${kept.name}“ vom ${time(kept.kept_ms)}`,
  kept: (name) => `„${name}“ ist aufgehoben.`,
  opened: (name) => `„${name}“ ist geöffnet. Rückgängig bringt das Vorige zurück.`,
  removed: (name) => `„${name}“ ist entfernt.`,
  back: (name) => `„${name}“ ist wieder da.`,
  impossible:
    "Dieser Browser hebt hier nichts auf; in einem privaten Fenster ist das üblich. Den Entwurf stattdessen als Datei speichern.",
};
