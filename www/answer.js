// @ts-check
/** The last line of a sentence: a figure, which opens its working, and below it how sure it is. */

import { around, shown } from "./figures.js";
import { make, mark, write } from "./page.js";
import { doubt as doubtWords, sum as sumWords } from "./words.js";
/** @typedef {import("./records.js").Figure} Figure */

/** @param {HTMLElement} element @param {boolean} hidden */
const hide = (element, hidden) => element.hidden !== hidden && (element.hidden = hidden);

/**
 * @param {string} hint what stands there while there is no figure
 * @param {(figure: Figure, doubtFirst: boolean) => void} open
 */
export function answerLine(hint, open) {
  /** @type {Figure | null} */
  let now = null;
  const openNow = (/** @type {boolean} */ doubtFirst) => now && open(now, doubtFirst);
  const lead = make("span", { class: "lead" });
  const output = make("output", { class: "answer", "aria-live": "off", "data-hint": hint });
  const opens = make("button", { type: "button", class: "opens", hidden: true, click: () => openNow(false) }, make("span", {}, sumWords.working));
  const range = make("span");
  const doubts = make("button", { type: "button", class: "opens", click: () => openNow(true) });
  const below = make("p", { class: "around", hidden: true }, range, doubts);
  const element = make("div", { class: "clause cost" }, lead, make("span", { class: "said" }, output, opens), below);

  return {
    element, lead,
    /** At a key. @param {Figure | null | undefined} figure */
    show(figure) {
      now = figure ?? null;
      const text = now ? shown(now) : "";
      const between = now ? around(now) : "";
      write(output, text);
      write(range, between);
      mark(output, "data-long", text.length > 9 ? "very" : text.length > 5 ? "rather" : "no");
      hide(opens, !now);
      hide(below, !between);
    },
    /** What it says aloud; names the buttons by it, a moment after the key. */
    spoken() {
      const [text, between] = [output.textContent ?? "", range.textContent ?? ""];
      mark(opens, "aria-label", sumWords.howReckoned(text));
      mark(doubts, "aria-label", doubtWords.howSure(between));
      return [text, between].filter(Boolean).join(", ");
    },
  };
}
