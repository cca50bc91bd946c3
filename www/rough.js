// @ts-check
/** The table of rough measures: what each is taken to be, on whose word, and a blank to change it. */

import { blank } from "./blanks.js";
import * as core from "./core.js";
import { number } from "./figures.js";
import { make } from "./page.js";
import { clause } from "./sentence.js";
import { rough as roughWords, roughNamed, sources } from "./words.js";
/** @typedef {import("./records.js").Written} Written */

/**
 * @param {Record<string, Written>} sizes changed in place; a size that is emptied is no longer one's own
 * @param {object} options
 * @param {(code: string, size: Written | null) => void} options.changed
 * @param {Record<string, Written>} [options.over] the sizes that hold where there is none here
 * @param {boolean} [options.sourced] whether each names its source
 */
export function roughTable(sizes, { changed, over = {}, sourced = false }) {
  /** @type {[string, import("./blanks.js").Blank][]} */
  const places = [];
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
    const source = sourced ? make("p", { class: "source" }, sources[unit.code] ?? "") : null;
    const line = clause(roughWords.is(roughNamed(unit.code)), [size]);
    if (source) line.append(source);
    return line;
  });
  return { element: make("div", { class: "rough-table" }, ...rows), places };
}
