// @ts-check
/** Likely answers, ready under the thumb for the blank at hand. */

import { activate, whenActive } from "./blanks.js";
import { make } from "./page.js";
import { words } from "./words.js";
/** @typedef {import("./blanks.js").Blank} Blank */

/** @param {HTMLElement} row */
export function startChips(row) {
  row.setAttribute("role", "group");
  row.setAttribute("aria-label", words.likely);
  // A tap on a chip leaves the keypad as it is: up if it was up.
  row.addEventListener("mousedown", (event) => event.preventDefault());
  whenActive((blank) => show(row, blank));
}

/** @param {HTMLElement} row @param {Blank | null} blank */
function show(row, blank) {
  const likely = blank?.likely() ?? [];
  row.replaceChildren(
    ...likely.map(({ label, text, unit }) =>
      make("button", { type: "button", class: "chip", click: () => blank && take(blank, text, unit) }, make("bdi", {}, label)),
    ),
  );
  if (blank?.letters) row.append(make("button", { type: "button", class: "chip", "aria-label": words.letters, click: blank.letters }, "abc"));
  row.hidden = !row.firstChild;
  row.scrollLeft = 0;
}

/** Fills the blank, and goes on to the next that is empty. @param {Blank} blank @param {string} text @param {string} [unit] */
function take(blank, text, unit) {
  const typing = document.activeElement === blank.input;
  blank.fill(text, unit);
  const next = blank.next?.();
  if (!next) return;
  if (typing) next.input.focus();
  else activate(next);
}
