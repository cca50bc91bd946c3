// @ts-check
/** The page with the keypad up, and on its side. */
import assert from "node:assert/strict";
import { enterFramed } from "../look/reflow.mjs";
import { becomes, begun, blank, MEASURE, openPlace, PRICE, tap, tapOn, write } from "./page/places.mjs";
import { BITTERS, LOCK_GATE, RYE, seed, storageOf } from "./page/records.mjs";
import { unfoldAll } from "./page/states.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

/** What is left of a phone's height above its keypad. */
const KEYPAD_UP = { width: 360, height: 360 };
const ON_ITS_SIDE = { width: 740, height: 360 };

/** Which of these are not wholly seen: outside the screen, or under something else. @param {Session} session @param {string[]} all @returns {Promise<string[]>} */
const unseen = (session, ...all) => session.runAsync(async (/** @type {string[]} */ wanted) => {
  await new Promise((resolve) => setTimeout(resolve, 120));
  return wanted.flatMap((css) => {
    const element = [...document.querySelectorAll(css)].find((each) => each.getClientRects().length > 0);
    if (!element) return [`${css} is not there`];
    const box = element.getBoundingClientRect();
    const where = `${Math.round(box.top)} to ${Math.round(box.bottom)} of ${innerHeight}`;
    // The upper part of a blank is empty.
    if (box.top < -9 || box.bottom > innerHeight + 1) return [`${css} is off the screen, ${where}`];
    const x = box.left + Math.min(box.width / 2, 20);
    const covered = [box.top + 10, (box.top + box.bottom) / 2, box.bottom - 4].some((y) => {
      const top = document.elementFromPoint(x, y);
      return !top || !(element.contains(top) || top.contains(element) || top.parentElement?.contains(element));
    });
    return covered ? [`${css} is covered, ${where}`] : [];
  });
}, all);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "with the keypad up, the blank at hand and the answer are both seen",
    async play({ session, site }) {
      const draft = { sum: { bottle: BITTERS, measure: { text: "2", unit: "dash" } } };
      await seed(session, site, storageOf({ bottles: [RYE, BITTERS], specs: [LOCK_GATE], draft }));
      await enterFramed(session, site, KEYPAD_UP.width, KEYPAD_UP.height);
      await begun(session);
      await unfoldAll(session, ".sum");
      const labels = await session.run(() => [...document.querySelectorAll(".sum .clause input")].filter((each) => each.getClientRects().length > 0).map((each) => each.getAttribute("aria-label")));
      assert.ok(labels.length >= 8, labels.join());
      const found = [];
      // Down the page and up again: a blank comes into view from either side.
      for (const label of [...labels, ...labels.reverse()]) {
        const css = blank(".sum", label);
        await session.run((/** @type {string} */ wanted) => /** @type {HTMLElement} */ (document.querySelector(wanted)).focus(), css);
        found.push(...await unseen(session, css, ".sum output.answer"));
      }
      assert.deepEqual(found, []);
      await write(session, MEASURE, "3");
      await becomes(() => unseen(session, MEASURE, ".sum output.answer"), []);
    },
  },
  {
    name: "with the keypad up, a line of a glass and the total are both seen",
    async play({ session, site }) {
      await seed(session, site, storageOf({ bottles: [RYE, BITTERS], specs: [LOCK_GATE] }));
      await enterFramed(session, site, KEYPAD_UP.width, KEYPAD_UP.height);
      await begun(session);
      await openPlace(session, "glass");
      for (const at of [1, 2]) {
        const lineCss = `.glass .line:nth-child(${at})`;
        await tapOn(session, `${lineCss} .row`);
        for (const label of ["The measure", "Of what"]) {
          const css = blank(lineCss, label);
          await session.run((/** @type {string} */ wanted) => /** @type {HTMLElement} */ (document.querySelector(wanted)).focus(), css);
          await becomes(() => unseen(session, css, ".glass output.answer"), []);
        }
      }
    },
  },
  {
    name: "on its side, a phone still leads to every place",
    async play({ session, site }) {
      await seed(session, site, storageOf({ bottles: [RYE] }));
      await enterFramed(session, site, ON_ITS_SIDE.width, ON_ITS_SIDE.height);
      await begun(session);
      await session.run(() => /** @type {HTMLElement} */ (document.activeElement)?.blur());
      await becomes(() => unseen(session, "#places a[data-place=sum]", "#places a[data-place=glass]", "#places a[data-place=shelf]", "#places a[data-place=house]"), []);
      await tap(session, "Shelf", "#places");
      await session.waitFor(() => document.querySelector("main .place.shelf"), "the shelf");
      await tap(session, "Dash", "#places");
      await write(session, PRICE, "5");
      await becomes(() => unseen(session, PRICE), []);
    },
  },
];
