// @ts-check
import assert from "node:assert/strict";
import { faults, listensForFaults, speaks } from "./page/early.mjs";
import { ANSWER, answered, becomes, begun, HOLDS, MEASURE, noted, openPlace, PLACES, PRICE, says, tap, textOf, write } from "./page/places.mjs";
import { bottleKey, BITTERS, openWith, stored } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const NO_WASM = "This browser does not run the part that does the sums (WebAssembly is off, perhaps by a lockdown or strict security setting). Allow it for this page, or open the page in another browser.";
const NOT_LOADED = "The part that does the sums did not arrive. What you typed stays. Try again when there is signal; after one full visit none is needed.";
const TRAPPED = "The sums stopped with a fault of ours. What you typed is kept; load the page again to go on.";
const SAYS_WITHIN_MS = 3_000;

/** A module whose one function, `trap`, stops as a fault in the core would. */
const TRAP = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 8, 1, 4, 116, 114, 97, 112, 0, 0, 10, 5, 1, 3, 0, 0, 11];

/** Waits for a note that stands from soon after the page's start on. @param {Session} session @param {string} text */
async function saysSoon(session, text) {
  await noted(session, text);
  const sinceStart_ms = await session.run(() => performance.now());
  assert.ok(sinceStart_ms < SAYS_WITHIN_MS, `said after ${Math.round(sinceStart_ms)} ms`);
}

/** @param {Session} session */
async function typeSum(session) {
  await write(session, PRICE, "18.50");
  await write(session, HOLDS, "100");
  await write(session, MEASURE, "2");
}

const typed = async (/** @type {Session} */ session) => [await session.value(PRICE), await session.value(HOLDS), await session.value(MEASURE)];

/** @param {Session} session */
async function loadAgain(session) {
  await session.run(() => void Object.assign(window, { isOldPage: true }));
  await tap(session, "Load again", "#notes");
  await session.waitFor(() => !("isOldPage" in window) && document.readyState === "complete", "the page to load again");
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a browser without wasm says why, and keeps what is typed",
    wishes: { noWasm: true },
    leavesOut: { chromium: "it has no switch that takes wasm away" },
    async play({ session, site }) {
      listensForFaults(site);
      await session.go(site.address);
      await saysSoon(session, NO_WASM);
      await typeSum(session);
      for (const place of PLACES) await openPlace(session, place);
      await openPlace(session, "sum");
      await becomes(() => typed(session), ["18.50", "100", "2"]);
      await becomes(() => faults(session), []);
      await session.runAsync(() => new Promise((resolve) => setTimeout(resolve, 600)));
      await session.reload();
      await noted(session, NO_WASM);
      await session.waitFor((/** @type {string} */ css) => /** @type {HTMLInputElement} */ (document.querySelector(css)).value === "18.50", "what was typed", PRICE);
      await becomes(() => typed(session), ["18.50", "100", "2"]);
    },
  },
  {
    name: "without scripts the page still tells a worked example, and what it needs",
    wishes: { scriptsOff: true },
    leavesOut: {
      firefox: "its driver needs scripts itself", webkitgtk: "it has no switch for scripts", wpe: "it has no switch for scripts",
    },
    async play({ session, site }) {
      await session.go(site.address);
      const text = (await session.text("main")).replace(/\s+/g, " ");
      assert.match(text, /£18\.50 buys 100 ml of orange bitters\. .*2 dashes are 1\.84 ml and cost 18\.50 × 1\.84 ÷ 100 = 0\.3404: 34p\./);
      assert.match(text, /this page needs JavaScript: allow it for this page/);
    },
  },
  {
    name: "where the sums did not arrive, the page says so, and what was typed is there when they do",
    async play({ session, site }) {
      site.missing.add("farthing_bg.wasm");
      speaks(site, "en-GB");
      await session.go(site.address);
      await saysSoon(session, NOT_LOADED);
      await typeSum(session);
      await becomes(() => textOf(session, ANSWER), "");
      site.missing.clear();
      await loadAgain(session);
      await answered(session);
      await becomes(() => typed(session), ["18.50", "100", "2"]);
      await says(session, ANSWER, "34p");
    },
  },
  {
    name: "where the script of the sums did not arrive, it is the same",
    async play({ session, site }) {
      site.missing.add("farthing.js");
      await session.go(site.address);
      await saysSoon(session, NOT_LOADED);
      await typeSum(session);
      await becomes(() => typed(session), ["18.50", "100", "2"]);
    },
  },
  {
    name: "no view shows before its styles are there, and they are asked for again",
    async play({ session, site }) {
      site.missing.add("more.css");
      await openWith(session, site, { bottles: [BITTERS] });
      const asked = () => site.log.filter(({ path }) => path.endsWith("more.css")).length;
      const goTo = (/** @type {string} */ place) => session.run((/** @type {string} */ css) => /** @type {HTMLElement} */ (document.querySelector(css)).click(), `[data-place=${place}]`);
      await begun(session);
      const before = asked();
      await goTo("shelf");
      await becomes(async () => asked() > before, true);
      await becomes(() => session.run(() => document.querySelector("main > .place")?.className), "place sum");
      site.missing.clear();
      await goTo("sum");
      await openPlace(session, "shelf");
      assert.equal(await session.run(() => getComputedStyle(/** @type {Element} */ (document.querySelector(".thumb"))).position), "fixed");
    },
  },
  {
    name: "a fault in the sums stops them, and nothing that was typed or kept is lost",
    async play({ session, site }) {
      site.replace("sound.js", site.read("farthing.js"));
      site.replace("farthing.js", `
        import start, * as sound from "./sound.js";
        const trap = () => new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(${JSON.stringify(TRAP)}))).exports.trap();
        const called = (name) => (ask) => (globalThis.trapsNow && trap(), sound[name](ask));
        export const answer = called("answer"), moves = called("moves"), tables = called("tables"), shelf = called("shelf");
        export default start;`);
      await openWith(session, site, { bottles: [BITTERS] });
      await typeSum(session);
      await says(session, ANSWER, "34p");
      await session.run(() => void Object.assign(window, { trapsNow: true }));
      await write(session, MEASURE, "3");
      await noted(session, TRAPPED);
      // An answer to the measure before would be a wrong one.
      await becomes(() => textOf(session, ANSWER), "");
      await session.press("5");
      await becomes(() => typed(session), ["18.50", "100", "35"]);
      for (const place of PLACES) await openPlace(session, place);
      await openPlace(session, "sum");
      await becomes(() => typed(session), ["18.50", "100", "35"]);
      await loadAgain(session);
      await begun(session);
      await becomes(() => typed(session), ["18.50", "100", "35"]);
      await says(session, ANSWER, "£5.96");
      assert.ok((await stored(session))[bottleKey(BITTERS)]);
    },
  },
  ...["C", "xx-invalid-", "", "tlh"].map((language) => ({
    name: `a browser whose language is “${language}” is answered in plain figures`,
    /** @param {import("../scenarios.mjs").Stage} stage */
    async play({ session, site }) {
      speaks(site, language);
      listensForFaults(site);
      await openWith(session, site);
      await typeSum(session);
      await says(session, ANSWER, "34p");
      await write(session, PRICE, "1850.5");
      await says(session, ANSWER, "£34.05");
      for (const place of PLACES) await openPlace(session, place);
      await becomes(() => faults(session), []);
    },
  })),
  {
    name: "a computer with no language at all is answered",
    wishes: { env: { LANG: "C.UTF-8", LC_ALL: "C.UTF-8" } },
    leavesOut: {
      chromium: "it always names a language", firefox: "it always names a language", wpe: "it always says en-US",
    },
    async play({ session, site }) {
      await session.go(site.address);
      await becomes(() => session.run(() => navigator.language), "C");
      await answered(session);
      await becomes(() => textOf(session, ANSWER), "34p");
    },
  },
];
