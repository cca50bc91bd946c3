// @ts-check
/** One step of a working as one would write it down: what it finds, its terms, what they come to. */

import { amount } from "./figures.js";
import { make } from "./page.js";
import { working as workingWords } from "./words.js";
/** @typedef {import("./records.js").Step} Step */
/** @typedef {import("./records.js").Term} Term */

/** @type {Record<string, string>} */
const SIGNS = { start: "", times: "×", over: "÷", plus: "+", less: "−" };

/** @param {string} text a decimal */
const shortest = (text) => (text.includes(".") ? text.replace(/\.?0+$/, "") : text);

/** Whether two decimals are one number. @param {string} one @param {string} other */
export const isSame = (one, other) => shortest(one) === shortest(other);

/**
 * @param {Step} step
 * @param {Record<string, string>} steps what a step finds, in words
 * @param {Record<string, string>} terms what an operand is
 */
export function stepLine(step, steps, terms) {
  const sum = make("span", { class: "sum-line", dir: "ltr" });
  for (const term of step.terms) sum.append(sign(term), operand(term), " ");
  const { rounded } = step;
  sum.append(make("span", { class: "equals" }, rounded === "no" && isSame(step.shown, step.result) ? "= " : "≈ "));
  sum.append(make("b", {}, amount(step.shown, step.unit)));
  const said = step.terms.map((term) => [SIGNS[term.does], terms[term.is] ?? term.is].filter(Boolean).join(" ")).join(" ");
  const tail = rounded === "down" || rounded === "up" ? workingWords.rounded[rounded] : "";
  return make("li", {}, make("span", { class: "finds" }, steps[step.finds] ?? step.finds), sum,
    make("span", { class: "said-of" }, said + tail));
}

/** @param {Term} term */
const sign = (term) => (SIGNS[term.does] ? `${SIGNS[term.does]} ` : "");

/** @param {Term} term */
const operand = (term) => make("span", { class: "operand" }, amount(term.shown, term.unit));
