// @ts-check
/** The four places under the thumb, and the way back: the Back button closes what is open. */

import { draw, make } from "./page.js";
import { places as names } from "./words.js";
/** @typedef {keyof typeof names} Place */

/** Simple drawings of our own, one path each, on a 24 by 24 ground. @type {Record<Place, string>} */
const DRAWINGS = {
  sum: "M12 3.5c3 4.2 5 6.9 5 9.7a5 5 0 0 1-10 0c0-2.8 2-5.5 5-9.7zM9.5 13.5a2.5 2.5 0 0 0 2.5 2.5",
  glass: "M6 4h12l-1.6 16H7.6zM6.7 11h10.6",
  shelf: "M3 20h18M5 20v-8l1.5-3V4.5h2V9L10 12v8M14 20v-9.5l1.5-2V5h2v3.5l1.5 2V20",
  house: "M4 11.5 12 5l8 6.5M6 10v10h12V10M10.5 20v-5.5h3V20",
};

/** What is open above the place, innermost last. @type {(() => void)[]} */
const layers = [];
/** @type {Place} */
let current = "sum";
/** @type {(place: Place) => void} */
let show = () => {};
/** @type {(() => void) | undefined} what waits for what is open to be gone */
let next;

export const currentPlace = () => current;

/**
 * Fills the thumb bar.
 * @param {HTMLElement} bar
 * @param {(place: Place) => void} shower
 */
export function startPlaces(bar, shower) {
  show = shower;
  for (const [place, name] of /** @type {[Place, string][]} */ (Object.entries(names))) {
    const drawing = draw("svg", { viewBox: "0 0 24 24", "aria-hidden": "true" }, draw("path", { d: DRAWINGS[place] }));
    const link = make("a", { href: `#${place}`, "data-place": place }, drawing, name);
    link.addEventListener("click", (event) => (event.preventDefault(), go(place)));
    bar.append(link);
  }
  addEventListener("popstate", () => {
    closeTo(history.state?.depth ?? 0);
    // What is still open lies over its place.
    if (layers.length === 0) arrive(placeOfAddress());
    const then = next;
    next = undefined;
    then?.();
  });
  history.replaceState({ depth: 0 }, "", location.href);
  arrive(placeOfAddress());
}

/** The place that the address names; what names none, such as a link with a glass in it, leads nowhere else. @returns {Place} */
function placeOfAddress() {
  const place = location.hash.slice(1);
  if (place in names) return /** @type {Place} */ (place);
  return place ? current : "sum";
}

/** @param {Place} place */
export const addressOf = (place) => (place === "sum" ? location.pathname + location.search : `#${place}`);

/** @param {Place} place */
export function go(place) {
  closeTo(0);
  if (place !== placeOfAddress()) {
    // One step back leads to the sum from anywhere, however often a person looked around.
    const step = current === "sum" ? "pushState" : "replaceState";
    history[step]({ depth: 0 }, "", addressOf(place));
  }
  arrive(place);
  scrollTo(0, 0);
}

/** @param {Place} place */
function arrive(place) {
  current = place;
  for (const link of document.querySelectorAll("[data-place]")) {
    const here = /** @type {HTMLElement} */ (link).dataset.place === place;
    if (here) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  show(place);
}

/** Something opened; Back closes it. @param {() => void} close */
export function opened(close) {
  layers.push(close);
  history.pushState({ depth: layers.length }, "", location.href);
}

/** Lays something over the place; Back shows the place again as it was. @param {HTMLElement} element @param {() => void} closed */
export function openOver(element, closed) {
  const main = /** @type {HTMLElement} */ (document.getElementById("main"));
  const [below, from, at] = [[...main.childNodes], scrollY, document.activeElement];
  main.replaceChildren(element);
  opened(() => {
    main.replaceChildren(...below);
    closed();
    scrollTo(0, from);
    if (at instanceof HTMLElement) at.focus({ preventScroll: true });
  });
  scrollTo(0, 0);
}

/** Closes the innermost open thing, as the Back button would. @param {() => void} [then] */
export function shut(then) {
  if (layers.length === 0) return;
  next = then;
  history.back();
}

/** @param {number} depth */
function closeTo(depth) {
  while (layers.length > depth) layers.pop()?.();
}
