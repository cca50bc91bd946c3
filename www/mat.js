// @ts-check
/** The beer mat: a figure's arithmetic, line by line, as one would write it down, and how sure it is. */

import { isSame, stepLine } from "./arithmetic.js";
import { doubtOf } from "./doubt.js";
import { amount, number, shown } from "./figures.js";
import { freshId, make } from "./page.js";
import { go, opened, shut } from "./places.js";
import { roughNamed, sources, steps as firstSteps, terms as firstTerms, working as workingWords } from "./words.js";
import { steps as lateSteps, terms as lateTerms } from "./words-price.js";
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {import("./records.js").Step} Step */

/** @type {Record<string, string>} */
const steps = { ...lateSteps, ...firstSteps };
/** @type {Record<string, string>} */
const terms = { ...lateTerms, ...firstTerms };

/**
 * @param {string} title
 * @param {Figure} figure
 * @param {import("./doubt.js").About} [about]
 */
export function openMat(title, figure, about = {}) {
  const heading = make("h2", { id: freshId(), tabindex: "-1", autofocus: true }, title);
  const lines = make("ol", { class: "arithmetic" }, ...figure.working.map((step) => stepLine(step, steps, terms)));
  /** @type {(() => void) | undefined} what to do once it is gone */
  let then;
  const leave = (/** @type {() => void} */ next) => ((then = next), mat.close());
  const told = (about.told ?? []).map((text) => make("p", { class: "assumed" }, text));
  const reckoned = [lines, result(figure), ...told, ...assumptions(figure.working, about, leave)];
  const doubted = doubtOf(figure, about, leave);
  const mat = make(
    "dialog",
    { class: "mat", "aria-labelledby": heading.id },
    make("div", { class: "stitched" }, heading, ...(about.doubtFirst ? [...doubted, make("h3", {}, workingWords.heading), ...reckoned] : [...reckoned, ...doubted]),
      make("button", { type: "button", class: "wide", click: () => mat.close() }, workingWords.close)),
  );
  document.body.append(mat);
  // Back, Esc, the button and a tap beside the mat all end here.
  let byBack = false;
  opened(() => ((byBack = true), mat.close()));
  mat.addEventListener("close", () => {
    mat.remove();
    if (!byBack) shut(then);
  });
  mat.addEventListener("click", (event) => event.target === mat && mat.close());
  mat.showModal();
}

/** The figure as shown, and how it was rounded. @param {Figure} figure */
function result(figure) {
  const how = isSame(figure.shown, figure.value) ? "" : workingWords.shownAs(number(figure.value));
  return make("p", { class: "comes-to" }, make("strong", {}, shown(figure)), how && make("span", {}, how));
}

/**
 * Every assumption in the working, with its source and the way to change it: where it was measured,
 * or the table of rough measures.
 * @param {Step[]} working @param {import("./doubt.js").About} about @param {(then: () => void) => void} leave
 */
function assumptions(working, { measure }, leave) {
  const named = new Map();
  for (const step of working) {
    for (const term of step.terms) {
      const rough = step.terms[0]?.unit ?? "";
      if (term.is.startsWith("rough_")) named.set(`${rough} ${term.is}`, [rough, term]);
    }
  }
  return [...named.values()].map(([rough, term]) => {
    const again = term.is === "rough_measured" && measure;
    const change = () => leave(again ? () => again({ of: rough, line: null, bottle: "" }) : () => go("house"));
    return make("p", { class: "assumed" },
      workingWords.taken(roughNamed(rough), amount(term.shown, term.unit)),
      " ", term.is === "rough_assumed" ? sources[rough] ?? "" : workingWords.yours[term.is] ?? "",
      " ", make("button", { type: "button", class: "quiet", click: change }, again ? workingWords.again : workingWords.change));
  });
}
