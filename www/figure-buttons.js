// @ts-check
/** Figures that open their working when they are tapped: in a sentence, in a list, in a box; and parts that fold away. */

import { shown } from "./figures.js";
import { freshId, make, write } from "./page.js";
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {{ text: string, figure: Figure | null, title: string, told?: string[] }} Said what a button says, and the figure behind it */
/** @typedef {(title: string, figure: Figure, told?: string[]) => void} Open */

/** A percentage stays on one line. @param {string} text */
const firm = (text) => text.replaceAll(" %", "\u00a0%");

/** A figure that only has a text: what stands behind it is told in words. @param {string} text @param {string} unit @returns {Figure} */
export const bare = (text, unit) => ({ value: text, unit, shown: text, shown_minor: null, working: [], range: null });

/**
 * A button whose words change; while it has none it is not there.
 * @param {HTMLElement} element
 * @param {(text: string, figure: string) => void} put writes its words
 */
function opener(element, put) {
  /** @type {Said | null} */
  let now = null;
  return {
    element,
    /** @param {Said | null} said */
    show(said) {
      now = said?.figure ? said : null;
      if (now?.figure) put(firm(now.text), firm(shown(now.figure)));
      if (element.hidden !== !now) element.hidden = !now;
    },
    /** @param {Open} open */
    opens: (open) => now?.figure && open(now.title, now.figure, now.told),
  };
}

/** A whole sentence, in which the figure stands out. @param {Open} open */
export function sentenceButton(open) {
  const [before, figure, after] = [make("span"), make("b"), make("span")];
  const made = opener(make("button", { type: "button", class: "says", hidden: true, click: () => made.opens(open) }, before, figure, after), (text, mark) => {
    const at = text.lastIndexOf(mark);
    write(before, at < 0 ? text : text.slice(0, at));
    write(figure, at < 0 ? "" : mark);
    write(after, at < 0 ? "" : text.slice(at + mark.length));
  });
  return made;
}

/** A figure with its name below, in a row of several. @param {string} name @param {Open} open */
export function factButton(name, open) {
  const figure = make("b");
  const made = opener(make("button", { type: "button", class: "fact", hidden: true, click: () => made.opens(open) }, figure, make("span", {}, name)), (text) => write(figure, text));
  return made;
}

/** A row of a list: a name, and its figure at the end. @param {string} name @param {Said} said @param {Open} open */
export function rowButton(name, { text, figure, title, told }, open) {
  return make("li", {}, make("button", { type: "button", class: "told-row", click: () => figure && open(title, figure, told) },
    make("span", { class: "told-name", dir: "auto" }, name), make("span", { class: "dots" }), make("span", { class: "told-figure" }, firm(text))));
}

/**
 * A part that folds away: its name, and what of it one reads at a glance.
 * @param {string} name @param {(Node | string)[]} body @param {() => void} [opened]
 */
export function fold(name, body, opened = () => {}) {
  const glance = make("span", { class: "glance" });
  const inner = make("div", { class: "folded", id: freshId(), hidden: true }, ...body);
  const element = make("details", { class: "part" }, make("summary", {}, make("span", { class: "part-name" }, name), " ", glance), inner);
  element.addEventListener("toggle", () => {
    inner.hidden = !element.open;
    if (element.open) opened();
  });
  return {
    element,
    /** Says what one reads at a glance. @param {string} text @param {boolean} [quietly] */
    tell(text, quietly = false) {
      write(glance, firm(text));
      glance.classList.toggle("quietly", quietly);
    },
  };
}
