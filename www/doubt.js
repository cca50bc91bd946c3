// @ts-check
/** How sure a figure is: what its doubt is made of, what would help most, how the range was made. */

import { amount, around, number, said } from "./figures.js";
import { draw, make } from "./page.js";
import { doubt as doubtWords, sources } from "./words.js";
/** @typedef {import("./records.js").Part} Part */

/**
 * @typedef {object} About whose figure it is
 * @property {boolean} [doubtFirst] whether the doubt stands before the working
 * @property {string[]} [told] what stands behind the figure, in words
 * @property {(part: Part) => string} [named] the bottle that a part belongs to
 * @property {(part: Pick<Part, "of" | "line" | "bottle">) => void} [measure] goes to where a part is measured
 */

/**
 * @param {import("./records.js").Figure} figure
 * @param {About} about
 * @param {(then: () => void) => void} leave
 */
export function doubtOf(figure, { named = () => "", measure }, leave) {
  const { range, unit } = figure;
  if (!range) return [];
  const parts = range.parts.map((part) =>
    make("li", {},
      make("span", {}, (doubtWords.parts[part.is] ?? String)(part.of, named(part))),
      make("b", {}, amount(String(part.share_percent), "percent")),
      bar(part.share_percent),
      make("span", { class: "said-of" }, [extent(part), doubtWords.moves(said(part.moves, unit))].filter(Boolean).join("; ")),
      ...(part.is === "rough_assumed" ? [make("span", { class: "said-of" }, sources[part.of] ?? "")] : [])));
  const helped = range.helps && range.parts[range.helps.part];
  const help = range.helps && helped && make("p", { class: "assumed" },
    doubtWords.helps[range.helps.how](helped.of, named(helped), range.helps.left_percent),
    measure && helped.of ? make("button", { type: "button", class: "quiet", click: () => leave(() => measure(helped)) }, doubtWords.measure) : null);
  return [
    make("h3", {}, doubtWords.heading),
    make("p", { class: "between" }, around(figure)),
    make("ol", { class: "parts" }, ...parts),
    ...(help ? [help] : []),
    make("p", { class: "said-of" }, doubtWords.made(
      said(range.middle, unit), said(range.standard, unit), number(range.factor), range.freedom, range.cut)),
  ];
}

/** From where to where a part may be. @param {Part} part */
const extent = ({ spread, best, least, most, unit }) =>
  least && most ? doubtWords.spreads[spread](best && number(best), number(least), amount(most, unit)) : "";

/** A share as a length: the number beside it says the same. @param {number} share */
const bar = (share) => draw("svg", { class: "bar", viewBox: "0 0 100 8", preserveAspectRatio: "none", "aria-hidden": "true" },
  draw("rect", { width: share, height: 8 }));
