// @ts-check
/** Where the Tab key leads. */

import { KEYS } from "../webdriver.mjs";

/** A page with more stops than this is no page for a keyboard. */
const MOST_STOPS = 200;

/**
 * @typedef {object} Stop
 * @property {string} name
 * @property {boolean} isShown whether the focus can be seen: an outline, a shadow or another border
 * @property {number} top @property {number} left in pixels, from the top of the page
 */

/**
 * Walks from the start of the page until the focus leaves it or comes round.
 * @param {import("../webdriver.mjs").Session} session @returns {Promise<Stop[]>}
 */
export async function walk(session) {
  await session.run(() => {
    for (const walked of document.querySelectorAll("[data-walked]")) walked.removeAttribute("data-walked");
    // Something may have left the page for the browser's own controls, where nothing here has the focus.
    window.focus();
    // A place to start from, as engines remember where the focus was even when nothing has it; and one
    // to end at, as the browser's own bar does not give it back.
    const [start, end] = [0, 1].map(() => document.createElement("span"));
    start.tabIndex = -1;
    end.tabIndex = 0;
    start.dataset.walkEnd = end.dataset.walkEnd = "";
    const within = document.querySelector("dialog[open]") ?? document.body;
    within.prepend(start);
    within.append(end);
    start.focus({ preventScroll: true });
    scrollTo(0, 0);
  });
  /** @type {Stop[]} */
  const stops = [];
  for (let count = 0; count < MOST_STOPS; count += 1) {
    await session.press(KEYS.tab);
    const stop = await session.run(currentStop, count);
    if (!stop) {
      await session.run(() => document.querySelectorAll("[data-walk-end]").forEach((each) => each.remove()));
      return stops;
    }
    stops.push(stop);
  }
  throw new Error(`still walking after ${MOST_STOPS} stops: ${stops.slice(-5).map((stop) => stop.name).join(", ")}`);
}

/**
 * Visible controls that the last walk did not reach. (It may well reach more: some engines stop
 * at whatever scrolls.) While a dialog lies over the page, only what is in it counts.
 * @param {import("../webdriver.mjs").Session} session @returns {Promise<string[]>}
 */
export const missed = (session) => session.run(() => {
  const within = document.querySelector("dialog[open]") ?? document;
  const controls = [...within.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")];
  /** A group of radio buttons is one stop. */
  const reached = new Set(controls.filter((control) => control.hasAttribute("data-walked") && control.matches("[type=radio]"))
    .map((control) => control.getAttribute("name")));
  return controls.filter((control) => {
    const box = control.getBoundingClientRect();
    const isOff = control.matches(":disabled, [tabindex='-1'], [type=hidden]") || getComputedStyle(control).visibility === "hidden";
    const isReached = control.hasAttribute("data-walked") || (control.matches("[type=radio]") && reached.has(control.getAttribute("name")));
    return !isOff && !isReached && box.width > 0 && box.height > 0;
  }).map((control) => `${control.localName}${control.id && `#${control.id}`} “${(control.getAttribute("aria-label") || control.textContent || "").trim().slice(0, 30)}”`);
});

/** @param {number} count */
function currentStop(count) {
  let element = document.activeElement;
  while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
  if (!element || element === document.body || element === document.documentElement) return null;
  if (element.matches("[data-walked], [data-walk-end]")) return null;
  element.setAttribute("data-walked", `${count}`);
  const focused = getComputedStyle(element);
  const box = element.getBoundingClientRect();
  const text = element.getAttribute("aria-label") || element.textContent || element.getAttribute("name") || "";
  return {
    name: `${element.localName}${element.id && `#${element.id}`} “${text.trim().slice(0, 30)}”`,
    isShown: (focused.outlineStyle !== "none" && parseFloat(focused.outlineWidth) > 0) || focused.boxShadow !== "none",
    top: Math.round(box.top + scrollY),
    left: Math.round(box.left + scrollX),
  };
}
