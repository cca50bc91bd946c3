// @ts-check
import assert from "node:assert/strict";
import { becomes, begun, blank, EDITOR, noted, openPlace, openRow, says, tap, texts, write } from "./page/places.mjs";
import { BITTERS, bottleKey, openWith, RYE, storedRecord } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */
/** @typedef {import("../site.mjs").Site} Site */

const leavesOut = { wpe: "its driver loses the session with the second window" };

const EDITED = { price: blank(EDITOR, "What you paid"), name: blank(EDITOR, "Of what") };

/** Two tabs on one shelf, both with their shelf open. @param {Session} session @param {Site} site */
async function twoTabs(session, site) {
  await openWith(session, site, { bottles: [RYE, BITTERS] });
  await openPlace(session, "shelf");
  const first = await session.window();
  const second = await session.openWindow();
  await session.switchTo(second);
  await session.go(site.address);
  await begun(session);
  await openPlace(session, "shelf");
  return { first, second };
}

/** Opens a bottle in a tab. @param {Session} session @param {string} tab @param {string} name */
async function openIn(session, tab, name) {
  await session.switchTo(tab);
  await openRow(session, name);
  await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the bottle", EDITOR);
}

const keep = (/** @type {Session} */ session) => tap(session, "Keep the change", EDITOR);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "two tabs change two bottles, and both changes stand in both",
    leavesOut,
    async play({ session, site }) {
      const { first, second } = await twoTabs(session, site);
      await openIn(session, first, "rye whisky");
      await write(session, EDITED.price, "35");
      await openIn(session, second, "orange bitters");
      await write(session, EDITED.price, "20");
      await keep(session);
      await session.switchTo(first);
      // The other tab's change did not disturb what is being written here.
      await becomes(() => session.value(EDITED.price), "35");
      await keep(session);
      await becomes(async () => (await storedRecord(session, bottleKey(RYE))).record.paid.price, "35");
      await becomes(async () => (await storedRecord(session, bottleKey(BITTERS))).record.paid.price, "20");
      for (const tab of [first, second]) {
        await session.switchTo(tab);
        await session.waitFor(() => [...document.querySelectorAll(".shelf .row-cost")].map((each) => each.textContent).join() === "20p a ml,5p a ml", "both prices");
      }
    },
  },
  {
    name: "two tabs change two blanks of one bottle, and both changes stand",
    leavesOut,
    async play({ session, site }) {
      const { first, second } = await twoTabs(session, site);
      await openIn(session, first, "orange bitters");
      await openIn(session, second, "orange bitters");
      await write(session, EDITED.name, "bitter orange");
      await keep(session);
      await session.switchTo(first);
      await write(session, EDITED.price, "20");
      await keep(session);
      const { record, revision } = await storedRecord(session, bottleKey(BITTERS));
      assert.deepEqual([record.name, record.paid.price], ["bitter orange", "20"]);
      assert.ok(revision >= 3, `revision ${revision}`);
      for (const tab of [first, second]) {
        await session.switchTo(tab);
        await session.waitFor(() => document.querySelector(".shelf .of-bottle")?.textContent === "bitter orange20p a ml", "the merged bottle");
      }
    },
  },
  {
    name: "two tabs change the same blank, and the later one is told",
    leavesOut,
    async play({ session, site }) {
      const { first, second } = await twoTabs(session, site);
      await openIn(session, first, "orange bitters");
      await openIn(session, second, "orange bitters");
      await write(session, EDITED.price, "20");
      await keep(session);
      await session.switchTo(first);
      await write(session, EDITED.price, "30");
      await keep(session);
      await noted(session, "orange bitters: the price was changed in another tab too. What you kept here stands: 30.");
      const { record, earlier } = await storedRecord(session, bottleKey(BITTERS));
      assert.equal(record.paid.price, "30");
      assert.deepEqual(earlier.map((/** @type {any} */ was) => was.paid.price), ["20", "18.50"]);
      for (const tab of [first, second]) {
        await session.switchTo(tab);
        await says(session, ".shelf .of-bottle .row-cost", "30p a ml");
      }
    },
  },
  {
    name: "a bottle taken off in one tab goes from the other",
    leavesOut,
    async play({ session, site }) {
      const { first, second } = await twoTabs(session, site);
      await openIn(session, second, "orange bitters");
      await tap(session, "take it off the shelf", EDITOR);
      await session.switchTo(first);
      await session.waitFor(() => document.querySelectorAll(".shelf .row").length === 1, "one bottle less");
      await becomes(() => texts(session, ".shelf .what"), ["rye whisky"]);
      await session.switchTo(second);
      await tap(session, "Undo", "#notes");
      await session.switchTo(first);
      await session.waitFor(() => document.querySelectorAll(".shelf .row").length === 2, "the bottle again");
    },
  },
];
