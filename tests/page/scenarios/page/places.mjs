// @ts-check
/** How a person gets about on the page; with `states.mjs` the only file that knows its selectors. */

import assert from "node:assert/strict";
import { isDeepStrictEqual } from "node:util";
import { KEYS } from "../../webdriver.mjs";

/** @typedef {import("../../webdriver.mjs").Session} Session */
/** @typedef {import("../../site.mjs").Site} Site */

/** The places of the bar below, as their views are called. */
export const PLACES = ["sum", "glass", "shelf", "house"];

/** A blank, by what assistive technology calls it. @param {string} within @param {string} label */
export const blank = (within, label) => `${within} input[aria-label='${label}']`;
/** The unit beside a blank. @param {string} within @param {string} label */
export const unitOf = (within, label) => `${within} select[aria-label='${label}: unit']`;

export const PRICE = blank(".sum", "What you paid");
export const HOLDS = blank(".sum", "How much one bottle holds");
export const NAME = blank(".sum", "Of what");
export const MEASURE = blank(".sum", "The measure");
export const ANSWER = ".sum output.answer";
export const OPEN_WORKING = ".sum .cost button.opens";
/** The measure in ml, the cost of one ml, how many in the bottle. */
export const FACTS = ".sum .fact b";

export const GLASS_NAME = blank(".glass", "Name of the glass");
export const TOTAL = ".glass output.answer";
export const SEARCH = ".shelf input[type=search]";
export const SHELF_ROW = ".shelf .shelf-list .row";
export const EDITOR = ".editor";
export const MAT = "dialog.mat";
export const SPOKEN = "#spoken";

/** Waits for the first figure. @param {Session} session */
export const answered = (session) => session.waitFor((/** @type {string} */ css) =>
  /\d/.test(document.querySelector(css)?.textContent ?? ""), "an answer", ANSWER);

/** Waits until the page has begun and listens: the row of likely answers comes last. @param {Session} session */
export const begun = (session) => session.waitFor(() => document.querySelector("#chips[role=group]"), "the page to begin");

/** Waits until every part of the page that comes late is there, the offline worker too. @param {Session} session */
export const settled = (session) => session.waitFor(() => navigator.serviceWorker?.controller, "the offline worker");

/** @param {Session} session @param {string} place */
export async function openPlace(session, place) {
  await session.run((/** @type {number} */ at) => {
    const all = document.querySelectorAll("#places a, #places button");
    /** @type {HTMLElement} */ (all[at]).click();
  }, PLACES.indexOf(place));
  await session.waitFor((/** @type {string} */ name) => document.querySelector(`main .place.${name}`), `the place ${place}`, place);
}

/** Taps what carries exactly these words. @param {Session} session @param {string} words @param {string} within */
export const tap = (session, words, within = "body") => tapFound(session, `“${words}” to tap`, `:is(${within}) :is(button, a, summary)`, words);

/** Taps what a selector finds. @param {Session} session @param {string} css */
export const tapOn = (session, css) => tapFound(session, `${css} to tap`, css, null);

/** How long what is tapped stands still first: longer than the page takes to show what follows an answer. */
const STANDS_MS = 200;

/**
 * Taps in the middle of the screen, where neither the dock nor an answer that stays in sight lies
 * over things, and only once nothing does.
 * @param {Session} session @param {string} what @param {string} css @param {string | null} words
 */
async function tapFound(session, what, css, words) {
  await session.waitFor((/** @type {string} */ wanted, /** @type {string | null} */ text, /** @type {number} */ stands_ms) => {
    // What opened last lies above the rest.
    const found = [...document.querySelectorAll(wanted)].reverse()
      .find((each) => (text === null || each.textContent?.trim() === text) && each.getClientRects().length > 0);
    if (!found) return false;
    found.scrollIntoView({ block: "center", inline: "center" });
    const box = found.getBoundingClientRect();
    // A thumb takes aim: what comes a moment after the answer, such as the picture, is there by then.
    const [where, now] = [`${Math.round(box.left)} ${Math.round(box.top)}`, performance.now()];
    const aim = /** @type {any} */ (found).farthingAim;
    if (aim?.where !== where) Object.assign(found, { farthingAim: { where, since: now } });
    if (aim?.where !== where || now - aim.since < stands_ms) return false;
    const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    if (!top || !found.contains(top)) throw new Error(`${top?.outerHTML.slice(0, 80)} lies over it`);
    for (const old of document.querySelectorAll("[data-tapped]")) old.removeAttribute("data-tapped");
    found.setAttribute("data-tapped", "");
    Object.assign(found, { farthingAim: null });
    return true;
  }, what, css, words, STANDS_MS);
  await session.click("[data-tapped]");
}

/** Goes into a blank and writes over what stands there, key by key. @param {Session} session @param {string} css @param {string} text */
export async function write(session, css, text) {
  await session.waitFor((/** @type {string} */ wanted) => document.querySelector(wanted), css, css);
  await session.run((/** @type {string} */ wanted) => {
    const field = /** @type {HTMLInputElement} */ (document.querySelector(wanted));
    field.focus();
    field.select();
  }, css);
  await session.press(...(text === "" ? [KEYS.backspace] : [...text]));
}

/** Fills blanks at once, where how it comes about does not matter. @param {Session} session @param {Record<string, string>} texts by selector */
export const fill = (session, texts) => session.run((/** @type {Record<string, string>} */ all) => {
  for (const [css, text] of Object.entries(all)) {
    const field = /** @type {HTMLInputElement} */ (document.querySelector(css));
    field.focus();
    field.value = text;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  }
}, texts);

/** Picks from a choice as the device's own picker does. @param {Session} session @param {string} css @param {string} value */
export const pick = (session, css, value) => session.run((/** @type {string} */ wanted, /** @type {string} */ chosen) => {
  const select = /** @type {HTMLSelectElement} */ (document.querySelector(wanted));
  select.value = chosen;
  if (select.value !== chosen) throw new Error(`${wanted} does not offer ${chosen}`);
  select.dispatchEvent(new Event("change", { bubbles: true }));
}, css, value);

/** Every text that a selector finds, with plain spaces, of what is shown. @param {Session} session @param {string} css @returns {Promise<string[]>} */
export const texts = (session, css) => session.run((/** @type {string} */ wanted) =>
  [...document.querySelectorAll(wanted)].filter((each) => each.getClientRects().length > 0)
    .map((each) => (each.textContent ?? "").replace(/\s+/g, " ").trim()), css);

/** The text of one element, with plain spaces. @param {Session} session @param {string} css @returns {Promise<string>} */
export const textOf = async (session, css) => (await texts(session, css)).join(" | ");

/** Waits until an element says exactly this. @param {Session} session @param {string} css @param {string} text */
export async function says(session, css, text) {
  await session.waitFor((/** @type {string} */ wanted, /** @type {string} */ words) =>
    [...document.querySelectorAll(wanted)].some((each) => (each.textContent ?? "").replace(/\s+/g, " ").trim() === words),
  `${css} to say “${text}”`, css, text).catch(async (error) => {
    throw new Error(`${error.message}; it says “${await textOf(session, css)}”`);
  });
}

/** What is shown besides the answer follows it within this time, on a busy computer too. */
const FOLLOWS_WITHIN_MS = 20_000;

/**
 * Holds as soon as a reading is as wanted: the page shows an answer at once and the rest a moment later.
 * @param {() => Promise<unknown>} read @param {unknown} wanted @param {string} [what]
 */
export async function becomes(read, wanted, what) {
  const end = Date.now() + FOLLOWS_WITHIN_MS;
  let found = await read();
  while (!isDeepStrictEqual(found, wanted) && Date.now() < end) {
    await new Promise((resolve) => setTimeout(resolve, 30));
    found = await read();
  }
  assert.deepEqual(found, wanted, what);
}

/** What the page says above its bar, without the labels of the buttons there. @param {Session} session @returns {Promise<string[]>} */
export const notes = (session) => texts(session, "#notes .note p");

/** Waits for a note that says exactly this. @param {Session} session @param {string} text */
export const noted = (session, text) => says(session, "#notes .note p", text);

/** Taps a row of the shelf by the name on it. @param {Session} session @param {string} name */
export async function openRow(session, name) {
  await session.waitFor((/** @type {string} */ css, /** @type {string} */ wanted) => {
    const row = [...document.querySelectorAll(css)].find((each) => each.querySelector(".what")?.textContent === wanted);
    if (row) /** @type {HTMLElement} */ (row).click();
    return Boolean(row);
  }, `${name} on the shelf`, SHELF_ROW, name);
}
