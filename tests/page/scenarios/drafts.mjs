// @ts-check
import assert from "node:assert/strict";
import { ANSWER, begun, blank, EDITOR, HOLDS, MEASURE, NAME, openPlace, openRow, PRICE, says, write } from "./page/places.mjs";
import { BITTERS, openWith, stored } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

/** A crash this long after a key loses nothing that the page could have kept. */
const KEPT_WITHIN_MS = 500;

const wait = (/** @type {Session} */ session, /** @type {number} */ time_ms) =>
  session.runAsync((/** @type {number} */ ms) => new Promise((resolve) => setTimeout(resolve, ms)), time_ms);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "what was typed is there after a reload",
    async play({ session, site }) {
      await openWith(session, site);
      for (const [css, text] of [[PRICE, "18.50"], [HOLDS, "100 ml"], [NAME, "a bottle"], [MEASURE, "1 1/2 da"]]) await write(session, String(css), String(text));
      await wait(session, 600);
      await session.reload();
      await begun(session);
      const values = [];
      for (const css of [PRICE, HOLDS, NAME, MEASURE]) values.push(await session.value(css));
      assert.deepEqual(values, ["18.50", "100 ml", "a bottle", "1 1/2 da"]);
      await write(session, MEASURE, "2");
      await says(session, ANSWER, "34p");
    },
  },
  {
    name: "half a second after a key, the key is kept",
    async play({ session, site }) {
      await openWith(session, site);
      for (const text of ["1", "18.", "18.5"]) {
        await write(session, PRICE, text);
        await wait(session, KEPT_WITHIN_MS);
        const draft = JSON.parse((await stored(session))["farthing:draft"] ?? "{}");
        assert.equal(draft.sum?.bottle.paid.price, text);
      }
    },
  },
  {
    name: "a page that is left in the middle of a word keeps it",
    async play({ session, site }) {
      await openWith(session, site);
      // In one go, so that the page has no time to keep it before it is left.
      await session.run((/** @type {string} */ css) => {
        const field = /** @type {HTMLInputElement} */ (document.querySelector(css));
        field.focus();
        field.value = "77.7";
        field.dispatchEvent(new InputEvent("input", { bubbles: true, data: "7" }));
        setTimeout(() => location.assign("nothing-is-here.txt"), 0);
      }, PRICE);
      await session.waitFor(() => location.pathname.endsWith(".txt"), "another page");
      await session.go(site.address);
      await begun(session);
      assert.equal(await session.value(PRICE), "77.7");
    },
  },
  {
    name: "a page that comes back by the Back button is as it was left",
    async play({ session, site }) {
      await openWith(session, site);
      await write(session, PRICE, "66.6");
      await session.run(() => setTimeout(() => location.assign("nothing-is-here.txt"), 0));
      await session.waitFor(() => location.pathname.endsWith(".txt"), "another page");
      await session.back();
      await begun(session);
      assert.equal(await session.value(PRICE), "66.6");
    },
  },
  {
    name: "a bottle being changed is still open, as changed, after a reload",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [BITTERS] });
      await openPlace(session, "shelf");
      await openRow(session, "orange bitters");
      await write(session, blank(EDITOR, "What you paid"), "19.9");
      await wait(session, 600);
      const edited = async () => {
        await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the bottle, still open", EDITOR);
        return session.value(blank(EDITOR, "What you paid"));
      };
      await session.reload();
      await begun(session);
      assert.equal(await edited(), "19.9");
      // The same from the home screen, which starts at the sum.
      await session.go("about:blank");
      await session.go(site.address);
      await begun(session);
      await openPlace(session, "shelf");
      assert.equal(await edited(), "19.9");
      // What is on the shelf is as it was until the change is kept.
      assert.equal(JSON.parse((await stored(session))["farthing:bottle:bitters"] ?? "").record.paid.price, "18.50");
    },
  },
];
