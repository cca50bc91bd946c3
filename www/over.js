// @ts-check
/** What the views over the shelf have in common: the way back, figures that open, copying. */

import { activate } from "./blanks.js";
import { shown } from "./figures.js";
import { freshId, make, note } from "./page.js";
import { openOver, shut } from "./places.js";
import { over as overWords } from "./words-menu.js";
/** @typedef {import("./records.js").Figure} Figure */
/** @typedef {(title: string, figure: Figure, about?: import("./doubt.js").About) => void} OpenWorking */
/** @typedef {{ refill: () => void }} Laid a view that lies over the shelf */

/**
 * A view over its place.
 * @param {string} kind @param {string} title @param {() => void} closed
 */
export function sheet(kind, title, closed) {
  const heading = make("h1", { id: freshId(), tabindex: "-1" }, title);
  const element = make("section", { class: `place over ${kind}`, "aria-labelledby": heading.id },
    make("div", { class: "over-head" }, heading, make("button", { type: "button", class: "quiet", click: () => shut() }, overWords.back)));
  element.addEventListener("keydown", (event) => {
    const searching = event.target instanceof HTMLInputElement && event.target.type === "search" && event.target.value;
    if (event.key === "Escape" && !searching) shut();
  });
  return {
    element,
    lay() {
      openOver(element, () => (activate(null), closed()));
      activate(null);
      heading.focus({ preventScroll: true });
    },
  };
}

/**
 * A figure with what it is; one with a working opens it.
 * @param {string} label @param {Figure} figure @param {string} title @param {OpenWorking} open
 */
export function fact(label, figure, title, open) {
  const parts = [make("b", {}, shown(figure)), make("span", {}, label)];
  if (figure.working.length === 0) return make("div", { class: "fact" }, ...parts);
  return make("button", { type: "button", class: "fact", click: () => open(title, figure) }, ...parts);
}

/**
 * Tells each blank what is wrong with it; one that stands at several places tells the first of them.
 * @param {[string, import("./blanks.js").Blank][]} places @param {import("./records.js").Problem[]} problems
 * @returns {import("./records.js").Problem[]} those that no blank is for
 */
export function tellBlanks(places, problems) {
  const wrong = new Map(places.map(([, blank]) => [blank, /** @type {import("./records.js").Problem | undefined} */ (undefined)]));
  const left = problems.filter((problem) => {
    const blank = places.find(([place]) => place === problem.place)?.[1];
    if (blank && !wrong.get(blank)) wrong.set(blank, problem);
    return !blank;
  });
  for (const [blank, problem] of wrong) blank.tell(problem);
  return left;
}

/** The tools of a list: to copy it and to print it. @param {() => void} copies */
export const listTools = (copies) => make("div", { class: "line-tools" },
  make("button", { type: "button", class: "quiet", click: copies }, overWords.copy),
  make("button", { type: "button", class: "quiet", click: () => print() }, overWords.print));

/**
 * Copies a text, and as a table too where the browser can; else it stands there to be selected.
 * @param {string} text @param {Element | null} table @param {Element} place
 */
export async function copyOut(text, table, place) {
  place.replaceChildren();
  try {
    await copied(text, table);
    note("done", overWords.copied);
  } catch {
    const area = make("textarea", { class: "by-hand", readonly: true, rows: 8, "aria-label": overWords.byHand });
    area.value = text;
    place.replaceChildren(make("p", { class: "small" }, overWords.byHand), area);
    area.focus();
    area.select();
  }
}

/** @param {string} text @param {Element | null} table */
async function copied(text, table) {
  const { clipboard } = navigator;
  if (table && typeof ClipboardItem === "function") {
    const typed = (/** @type {string} */ type, /** @type {string} */ content) => [type, new Blob([content], { type })];
    const both = Object.fromEntries([typed("text/plain", text), typed("text/html", new XMLSerializer().serializeToString(table))]);
    try {
      return await clipboard.write([new ClipboardItem(both)]);
    } catch {
      // The plain text alone, then.
    }
  }
  await clipboard.writeText(text);
}

/** A cell that no spreadsheet takes for a formula, and that stays one cell. @param {string} text */
export const cell = (text) => (/^\s*[=+\-@＝＋－＠]/u.test(text) ? `'${text}` : text).replace(/[\t\r\n]+/g, " ");

/** A plain table. @param {string[]} heads @param {(string | Node)[][]} rows @param {string} [caption] */
export const table = (heads, rows, caption) => make("table", {},
  caption ? make("caption", {}, caption) : null,
  make("thead", {}, make("tr", {}, ...heads.map((head) => make("th", { scope: "col" }, head)))),
  make("tbody", {}, ...rows.map(([first, ...rest]) => make("tr", {}, make("th", { scope: "row", dir: "auto" }, first), ...rest.map((each) => make("td", {}, each))))));
