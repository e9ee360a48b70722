/**
 * Measured tops: an outline or heights are read, shown with how well they fit, put right, and taken over only when the maker says
 * so. Until then the design is as it was.
 */
/** @import { Design } from "../design_store.js" */
/** @import { ImportFit, ImportKind, Wishes } from "./import_messages.js" */
/** @import { Bench } from "../sections.js" */

import { MEASURED_WORDS } from "#words/measured.js";
import { told } from "#words/problems.js";
import { ProblemError, Superseded } from "../workshop_client.js";
import { Corrections } from "./corrections.js";
import { at } from "./design_edits.js";
import { button, chooser, group, NumberField, note } from "./fields.js";
import { fitPicture, fitReport } from "./fit_report.js";
import { ImportClient } from "./import_client.js";
import { largestPathOfSvg } from "./svg_path.js";

/** Half a millimetre is what a template drawn round with a pencil holds. */
const TOLERANCE_MM = 0.5;

/** @typedef {{ kind: ImportKind, name: string, file: Blob, wishes: Wishes }} Job what is being read */

/**
 * @param {HTMLElement} host
 * @param {Bench} bench
 */
export function build(host, bench) {
  const words = MEASURED_WORDS;
  const client = new ImportClient();
  const region = document.createElement("div");
  region.className = "result";
  region.setAttribute("role", "region");
  region.setAttribute("aria-label", words.result);
  const waiting = document.createElement("div");
  waiting.setAttribute("role", "status");
  const result = document.createElement("div");
  result.className = "result";
  region.append(waiting, result);
  let tolerance_mm = TOLERANCE_MM;
  /** @type {Job | undefined} */
  let job;

  const leave = () => {
    job = undefined;
    client.stop();
    waiting.replaceChildren();
    result.replaceChildren();
  };

  /** @param {Job} now */
  const read = async (now) => {
    // Put right, a file's result stays until the next one is there.
    if (job?.file !== now.file) {
      result.replaceChildren();
    }
    job = now;
    waiting.replaceChildren(note(words.reading(now.name)), button(words.stop, leave));
    const { kind, file } = now;
    try {
      const wishes = { ...now.wishes, tolerance_mm };
      const fit = await client.read({ kind, design: bench.store.text, file, wishes });
      waiting.replaceChildren(note(words.read(now.name)));
      show(now, fit);
    } catch (reason) {
      if (reason instanceof Superseded) {
        return;
      }
      if (!(reason instanceof ProblemError)) {
        throw reason;
      }
      waiting.replaceChildren();
      if (reason.problem.kind === "looks_like_inches") {
        ask(now, told(reason.problem).message);
      } else {
        bench.warn(reason.problem);
        // What was put right wrongly can be put right again.
        put(...(now.wishes === FIRST_WISHES ? [] : [corrections(now), button(words.leave, leave)]));
      }
    }
  };

  /**
   * Shows something else as the result; what had the focus has it again if it is there again.
   * @param {...HTMLElement} parts
   */
  const put = (...parts) => {
    const fields = () => [...result.querySelectorAll("label")];
    const before = fields().find((label) => label.contains(document.activeElement))?.textContent;
    result.replaceChildren(...parts);
    const again = fields().find((label) => label.textContent === before);
    again?.querySelector("input")?.focus();
  };

  /**
   * @param {Job} now
   * @param {string} question
   */
  const ask = (now, question) => {
    const said = (/** @type {"mm" | "in"} */ unit) => void read({ ...now, wishes: { ...now.wishes, unit } });
    const inches = button(words.inches, () => said("in"));
    result.replaceChildren(
      note(question),
      inches,
      button(words.millimetres, () => said("mm")),
      button(words.leave, leave),
    );
    inches.focus();
  };

  /** @param {Job} now */
  const corrections = (now) => new Corrections(now.kind, now.wishes, (wishes) => void read({ ...now, wishes })).set;

  /**
   * @param {Job} now
   * @param {ImportFit} fit
   */
  const show = (now, fit) => {
    const take = button(words.take, async () => {
      const name = now.kind === "outline" ? words.outline : words.heights;
      if (await bench.settle(takenOver(bench.store.edited, JSON.parse(fit.design), now.kind))) {
        leave();
        bench.say(words.taken(name));
      }
    });
    put(
      fitPicture(now.kind, fit, tolerance_mm),
      ...fitReport(now.kind, fit, tolerance_mm),
      corrections(now),
      take,
      button(words.leave, leave),
    );
  };

  const tolerance = new NumberField({ label: words.tolerance, unit: "mm" }, (value) => {
    tolerance_mm = Math.max(value ?? TOLERANCE_MM, 0.01);
    tolerance.show(tolerance_mm);
    if (job?.kind === "outline") {
      void read(job);
    }
  });
  tolerance.show(tolerance_mm);
  const outline_file = chooser(words.outline_file, ".csv,.txt,.tsv,.svg,text/csv,image/svg+xml", async (file) => {
    /** @type {Job} */
    const now = { kind: "outline", name: file.name, file, wishes: FIRST_WISHES };
    if (!/svg/i.test(`${file.name.split(".").at(-1)} ${file.type}`)) {
      await read(now);
      return;
    }
    const found = largestPathOfSvg(await file.text());
    if (found === undefined) {
      bench.warn(words.no_path);
    } else {
      const wishes = { mm_from_path: found.mm_from_path };
      await read({ ...now, file: new Blob([found.d]), wishes });
    }
  });
  const heights_file = chooser(words.heights_file, ".csv,.txt,.tsv,.stl,text/csv,model/stl", (file) => {
    const kind = /\.stl$/i.test(file.name) ? "scan" : "table";
    void read({ kind, name: file.name, file, wishes: FIRST_WISHES });
  });
  host.append(
    group(words.outline, outline_file, tolerance.row, note(words.outline_about)),
    group(words.heights, heights_file, note(words.heights_about)),
    region,
  );
}

/** @type {Wishes} */
const FIRST_WISHES = {};

/**
 * The design at hand with what was read in it. It may have changed since the file was read; only what was measured goes over.
 * @param {Design} design
 * @param {Design} read
 * @param {ImportKind} kind
 * @returns {Design}
 */
export function takenOver(design, read, kind) {
  return kind === "outline"
    ? { ...design, outline: read.outline, sound_holes: read.sound_holes }
    : { ...design, arching: at(read, "arching") };
}
