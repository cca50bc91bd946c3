// @ts-check
/** The table of rough measures: what each is taken to be, on whose word, and a blank to change it. */

import { blank } from "./blanks.js";
import * as core from "./core.js";
import { number } from "./figures.js";
import { make, write } from "./page.js";
import { clause } from "./sentence.js";
import { rough as roughWords, roughNamed } from "./words.js";
/** @typedef {import("./records.js").Written} Written */

/**
 * @param {Record<string, Written>} sizes changed in place; a size that is emptied is no longer one's own
 * @param {object} options
 * @param {(code: string, size: Written | null) => void} options.changed
 * @param {Record<string, Written>} [options.over] the sizes that hold where there is none here
 * @param {(unit: import("./records.js").UnitRow) => string} options.about what stands below a size
 * @param {(code: string) => void} [options.measure] goes to measure it
 */
export function roughTable(sizes, { changed, over = {}, about, measure }) {
  /** @type {[string, import("./blanks.js").Blank][]} */
  const places = [];
  /** @type {(() => void)[]} */
  const tells = [];
  const rows = (core.tables()?.units ?? []).filter((unit) => unit.rough).map((unit) => {
    const own = over[unit.code]?.text ? over[unit.code] : null;
    const size = blank({
      label: roughWords.sizeOf(roughNamed(unit.code)),
      text: sizes[unit.code]?.text ?? "", unit: sizes[unit.code]?.unit || own?.unit || "ml", offered: "volume",
      hint: own?.text ?? number(unit.amount),
      changed(text, chosen) {
        changed(unit.code, text.trim() ? { text, unit: chosen } : null);
      },
    });
    places.push([unit.code, size]);
    const told = make("span");
    tells.push(() => write(told, about(unit)));
    const line = clause(roughWords.is(roughNamed(unit.code)), [size]);
    line.append(make("p", { class: "source" }, told, measure
      ? make("button", { type: "button", class: "quiet", "aria-label": roughWords.measure(roughNamed(unit.code)), click: () => measure(unit.code) }, roughWords.measureIt) : null));
    return line;
  });
  const tell = () => tells.forEach((each) => each());
  tell();
  return { element: make("div", { class: "rough-table" }, ...rows), places, tell };
}
