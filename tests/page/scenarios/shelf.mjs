// @ts-check
import assert from "node:assert/strict";
import { choose, savedBy } from "./page/files.mjs";
import { answered, becomes, begun, blank, EDITOR, HOLDS, MEASURE, NAME, noted, openPlace, openRow, PRICE, says, SEARCH, tap, textOf, texts, write } from "./page/places.mjs";
import { BITTERS, bottle, bottleKey, fileOf, house, HOUSE_KEY, line, LOCK_GATE, openWith, RYE, SODA, spec, specKey, stored, storedRecord } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const EDITED_PRICE = blank(EDITOR, "What you paid");
const names = (/** @type {Session} */ session) => texts(session, ".shelf .shelf-list .what");

/** Comes to the page as on another device. @param {Session} session @param {import("../site.mjs").Site} site */
async function startAfresh(session, site) {
  // Cleared from without: a page that is left keeps its draft.
  await session.go(`${site.address}nothing-is-here.txt`);
  await session.run(() => localStorage.clear());
  await session.go(site.address);
  await begun(session);
}

/** What is kept, without what is only being typed. @param {Session} session */
async function keptRecords(session) {
  const { "farthing:draft": _, ...records } = await stored(session);
  return records;
}

/** 500 bottles, as a large bar has them, among them a few that are hard to type behind a bar. */
const HARD_NAMES = ["Crème de Mûre", "ÉLIXIR DU CANAL", "Kümmel", "Çilek şurubu", "INCIR likörü", "Żółty miód", "Øl og snaps", "Straßenrum"];
const MANY = Array.from({ length: 500 }, (_, at) => bottle(`b${at}`, HARD_NAMES[at / 60] ?? `House bottle ${at}`, "20", "700"));

/** A name that a file and a page must carry as it is. */
const ODD = "Œuf “à la” <b>neige</b> \u202e 🍸";

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a change that one walks away from can be taken up again",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [BITTERS] });
      await openPlace(session, "shelf");
      await openRow(session, "orange bitters");
      await write(session, EDITED_PRICE, "21.75");
      await openPlace(session, "sum");
      await tap(session, "Undo", "#notes");
      await becomes(() => session.value(EDITED_PRICE), "21.75");
      await tap(session, "Keep the change", EDITOR);
      assert.equal((await storedRecord(session, bottleKey(BITTERS))).record.paid.price, "21.75");
      // What was not changed, or was kept, is left without a word.
      await openRow(session, "orange bitters");
      await session.back();
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the shelf", SEARCH);
      assert.deepEqual(await texts(session, "#notes .note p"), ["orange bitters is on the shelf."]);
    },
  },
  {
    name: "a bottle that is kept is there after a reload",
    async play({ session, site }) {
      await openWith(session, site);
      await write(session, PRICE, "18.50");
      await write(session, HOLDS, "100");
      await write(session, NAME, "orange bitters");
      await tap(session, "Keep this bottle on the shelf", ".sum");
      await noted(session, "orange bitters is on the shelf.");
      await session.reload();
      await begun(session);
      await openPlace(session, "shelf");
      await says(session, ".shelf .what", "orange bitters");
      await becomes(() => textOf(session, ".shelf .row-cost"), "18.5p a ml");
      await openRow(session, "orange bitters");
      await tap(session, "reckon with it", EDITOR);
      await write(session, MEASURE, "2 dashes");
      await says(session, ".sum output.answer", "34p");
    },
  },
  {
    name: "a new price shows the glasses it moves, and keeps the old one with its day",
    async play({ session, site }) {
      const dry = spec("dry", "Dry Dock", [line("rye", "50", "ml")]);
      const twice = spec("twice", "Twice Round", [line("bitters", "4", "dash"), line("soda", "1", "bottle")]);
      await openWith(session, site, { bottles: [RYE, BITTERS, SODA], specs: [LOCK_GATE, dry, twice] });
      await openPlace(session, "shelf");
      await openRow(session, "orange bitters");
      await write(session, EDITED_PRICE, "20");
      await says(session, ".moved h2", "Glasses this moves");
      await becomes(async () => (await texts(session, ".moved .row")).sort(), ["Lock Gate£2.58, now £2.61+2.8p", "Twice Round£1.88, now £1.94+5.5p"]);
      await tap(session, "Keep the change", EDITOR);
      await openRow(session, "orange bitters");
      const [earlier = ""] = await texts(session, ".earlier li");
      const year = new Date().getFullYear();
      assert.match(earlier, new RegExp(`^£18\\.50 for 100 ml, until \\w.*${year}$`));
      const { revision, record, earlier: kept } = await storedRecord(session, bottleKey(BITTERS));
      assert.deepEqual([revision, record.paid.price, kept.length, kept[0].paid.price], [2, "20", 1, "18.50"]);
    },
  },
  {
    name: "a bottle taken off comes back as it was",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS], specs: [LOCK_GATE] });
      const before = await keptRecords(session);
      await openPlace(session, "shelf");
      await openRow(session, "orange bitters");
      await tap(session, "take it off the shelf", EDITOR);
      await noted(session, "orange bitters is off the shelf.");
      await becomes(() => names(session), ["Lock Gate", "rye whisky"]);
      await becomes(async () => (await keptRecords(session))[bottleKey(BITTERS)], undefined);
      await becomes(async () => (await texts(session, ".of-spec .row-cost"))[0], "£2.24, without 1 line");
      await tap(session, "Undo", "#notes");
      await becomes(() => names(session), ["Lock Gate", "orange bitters", "rye whisky"]);
      await becomes(() => keptRecords(session), before);
    },
  },
  {
    name: "search finds among 500 bottles, whatever the accents and capitals",
    async play({ session, site }) {
      await openWith(session, site, { bottles: MANY });
      await openPlace(session, "shelf");
      await session.waitFor(() => document.querySelectorAll(".shelf .row").length >= 30, "the first rows");
      assert.ok((await names(session)).length < 200, "more rows are drawn than a phone shows");
      const searches = {
        "creme de mure": "Crème de Mûre", "CRÈME": "Crème de Mûre", elixir: "ÉLIXIR DU CANAL", "kummel": "Kümmel",
        cilek: "Çilek şurubu", incir: "INCIR likörü", "bottle 499": "House bottle 499",
      };
      /** @type {Record<string, string[]>} */
      const missed = {};
      for (const [typed, name] of Object.entries(searches)) {
        await write(session, SEARCH, typed);
        const found = await names(session);
        if (found.length !== 1 || found[0] !== name) missed[typed] = found;
      }
      assert.deepEqual(missed, {});
      await write(session, SEARCH, "nothing like it");
      await becomes(async () => [await names(session), await textOf(session, ".shelf .empty")], [[], "Nothing here by that name. Try fewer letters."]);
      await write(session, SEARCH, "house bottle 48");
      await openRow(session, "House bottle 48");
      await session.back();
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the shelf again", SEARCH);
      await becomes(() => session.value(SEARCH), "house bottle 48");
    },
  },
  {
    name: "search finds letters that are no accented ones: ł, ø, ß",
    async play({ session, site }) {
      await openWith(session, site, { bottles: MANY });
      await openPlace(session, "shelf");
      for (const [typed, name] of [["zolty miod", "Żółty miód"], ["ol og", "Øl og snaps"], ["strassen", "Straßenrum"], ["żółty", "Żółty miód"]]) {
        await write(session, SEARCH, String(typed));
        await becomes(() => names(session), [name], typed);
      }
    },
  },
  {
    name: "as one scrolls, every one of 500 bottles comes",
    async play({ session, site }) {
      await openWith(session, site, { bottles: MANY });
      await openPlace(session, "shelf");
      await session.waitFor(() => {
        scrollTo(0, document.documentElement.scrollHeight);
        return document.querySelectorAll(".shelf .row").length === 500;
      }, "the last row");
    },
  },
  {
    name: "on a screen taller than the first rows, the others come too",
    leavesOut: { webkitgtk: "its window becomes no taller than its screen", wpe: "its window has one size" },
    async play({ session, site }) {
      const { width, height } = await session.rect();
      await session.resize(width, 3500);
      try {
        await openWith(session, site, { bottles: MANY });
        await openPlace(session, "shelf");
        assert.ok(await session.run(() => innerHeight) > 3000);
        await session.waitFor(() => document.querySelectorAll(".shelf .row").length > 70, "rows down to the end of the screen");
      } finally {
        await session.resize(width, height);
      }
    },
  },
  {
    name: "saved to a file, cleared and brought back, the shelf saves the same file",
    async play({ session, site }) {
      await openWith(session, site, {
        bottles: [RYE, BITTERS, SODA, bottle("odd", ODD, "1 1/2", "½", "l", { rough: { dash: { text: "0,8", unit: "ml" } } })],
        specs: [LOCK_GATE], house: house({ tax_percent: "25,5", reclaims_tax: true, rough: { splash: { text: "6", unit: "ml" } } }),
      });
      await openPlace(session, "shelf");
      await openRow(session, "orange bitters");
      await write(session, EDITED_PRICE, "20");
      await tap(session, "Keep the change", EDITOR);
      const before = await keptRecords(session);
      const first = await savedBy(session, "save everything to a file");
      assert.match(first.name, /^farthing-\d{4}-\d\d-\d\d\.json$/);

      await startAfresh(session, site);
      await session.waitFor(() => localStorage.getItem("farthing:draft")?.includes("example"), "the example to be remembered");
      await openPlace(session, "shelf");
      await choose(session, first.text);
      await says(session, ".file-about p", "That file would add 6 and change 0. Nothing has changed yet.");
      await tap(session, "Bring them in", ".file-about");
      await noted(session, "They are on the shelf.");
      await becomes(() => keptRecords(session), before);
      const second = await savedBy(session, "save everything to a file");
      assert.equal(second.text, first.text);
      await session.reload();
      await begun(session);
      await openPlace(session, "shelf");
      // Where Œ stands among the names is the engine's affair.
      await becomes(async () => (await names(session)).sort(), ["Lock Gate", ODD, "orange bitters", "rye whisky", "soda water"].sort());
    },
  },
  {
    name: "what a file would change is said before it is",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS] });
      const before = await keptRecords(session);
      const file = fileOf({ bottles: [{ ...BITTERS, paid: { ...BITTERS.paid, price: "21" } }, RYE, SODA], specs: [LOCK_GATE] });
      await openPlace(session, "shelf");
      await choose(session, file);
      await says(session, ".file-about p", "That file would add 2 and change 1. Nothing has changed yet.");
      await becomes(() => texts(session, ".file-about li"), ["orange bitters – changed", "soda water – new", "Lock Gate – new"]);
      await becomes(() => keptRecords(session), before);
      await tap(session, "leave it", ".file-about");
      await becomes(async () => [await keptRecords(session), await textOf(session, ".file-about")], [before, ""]);

      await choose(session, file);
      await tap(session, "Bring them in", ".file-about");
      await becomes(() => names(session), ["Lock Gate", "orange bitters", "rye whisky", "soda water"]);
      const { record, earlier } = await storedRecord(session, bottleKey(BITTERS));
      assert.deepEqual([record.paid.price, earlier[0].paid.price], ["21", "18.50"]);
      await choose(session, file);
      await says(session, ".file-about p", "Everything in that file is here already.");
      assert.ok((await keptRecords(session))[specKey(LOCK_GATE)]);
    },
  },
  {
    name: "a file that is none of ours changes nothing, and why is said",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE] });
      const before = await keptRecords(session);
      const whole = fileOf({ bottles: [BITTERS] });
      const unreadable = "That file is not one saved from here, or it is damaged. Nothing was changed. Try another.";
      const files = {
        "": unreadable, "{}": unreadable, "[1,2": unreadable, [whole.slice(0, -9)]: unreadable,
        [whole.replace("farthing shelf", "another shelf")]: unreadable,
        [whole.replace('"format":3', '"format":4')]: "That file was saved by a newer version. Load the page again, then try once more.",
        [" ".repeat(10_000_001)]: "That file is larger than any saved from here. Nothing was changed.",
      };
      await openPlace(session, "shelf");
      for (const [text, sentence] of Object.entries(files)) {
        await choose(session, text);
        await says(session, ".file-about p", sentence);
        await becomes(() => keptRecords(session), before);
        await session.run(() => document.querySelector(".file-about")?.replaceChildren());
      }
    },
  },
  {
    name: "the example goes with one tap, and stays away",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      await begun(session);
      await becomes(() => textOf(session, "#top-note p"), "A worked example, from a bar we made up: the Slow Heron.");
      await openPlace(session, "shelf");
      assert.ok((await names(session)).includes("Lock Gate"));
      await tap(session, "Clear it", "#top-note");
      await becomes(async () => [await names(session), await textOf(session, "#top-note")], [[], ""]);
      await openPlace(session, "sum");
      await becomes(async () => [await session.value(PRICE), await session.value(MEASURE)], ["", ""]);
      await session.reload();
      await begun(session);
      await openPlace(session, "shelf");
      await becomes(async () => [await names(session), await textOf(session, "#top-note")], [[], ""]);
      await becomes(() => textOf(session, ".shelf .empty"), "Nothing stands here yet. What you keep stays on this device, and only there.");
      await becomes(async () => Object.keys(await keptRecords(session)), [HOUSE_KEY]);
    },
  },
];
