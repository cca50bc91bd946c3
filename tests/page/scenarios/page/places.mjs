// @ts-check
/** How a person gets about on the page; the only file that knows its selectors. */

/** The places of the bar below, as their views are called. */
export const PLACES = ["sum", "glass", "shelf", "house"];

export const MEASURE = ".sum input[aria-label='The measure']";
export const ANSWER = ".sum output.answer";

/** Waits for the first figure. @param {import("../../webdriver.mjs").Session} session */
export const answered = (session) => session.waitFor((/** @type {string} */ css) =>
  /\d/.test(document.querySelector(css)?.textContent ?? ""), "an answer", ANSWER);

/** @param {import("../../webdriver.mjs").Session} session @param {string} place */
export async function openPlace(session, place) {
  await session.run((/** @type {number} */ at) => {
    const all = document.querySelectorAll("#places a, #places button");
    /** @type {HTMLElement} */ (all[at]).click();
  }, PLACES.indexOf(place));
  await session.waitFor((/** @type {string} */ name) => document.querySelector(`main .place.${name}`), `the place ${place}`, place);
}
