// @ts-check
import assert from "node:assert/strict";
import { savedBy } from "./page/files.mjs";
import { ANSWER, answered, becomes, begun, blank, EDITOR, HOLDS, MEASURE, NAME, noted, notes, openPlace, openRow, PRICE, says, tap, textOf, texts, write } from "./page/places.mjs";
import { BITTERS, bottleKey, LOCK_GATE, openWith, RYE, seed, SODA, storageOf, stored } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const REFUSED = "This browser keeps nothing for this page (a private window, or its settings). The sums go on; save to a file before you leave.";
const FULL = "This device has no room left, so the last change is not kept. Save to a file, then take something away.";
const ASIDE = "Something kept here could not be read. It was set aside, not deleted: find it under Shelf, as a file.";
const NEWER = "Something kept here was written by a newer version. It was left alone; load the page again to get that version.";

const NO_SWITCH = "it has no switch that refuses storage";

/** Types a sum of a named bottle and reads its answer. @param {Session} session */
async function reckonsOn(session) {
  await openPlace(session, "sum");
  await write(session, PRICE, "18.50");
  await write(session, HOLDS, "100");
  await write(session, NAME, "new bitters");
  await write(session, MEASURE, "2 dashes");
  await says(session, ANSWER, "34p");
}

/** Leaves not one more letter of room. @param {Session} session */
const fillUp = (session) => session.run(() => {
  let chunk = "x".repeat(1 << 20);
  for (let count = 0; chunk.length > 0; count += 1) {
    try {
      localStorage.setItem(`filler ${count}`, chunk);
    } catch {
      chunk = chunk.slice(0, Math.floor(chunk.length / 2));
    }
  }
});

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "where storage is refused, the page says so, reckons, and saves to a file",
    wishes: { storageBlocked: true, language: "en-GB" },
    leavesOut: { webkitgtk: NO_SWITCH, wpe: NO_SWITCH },
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      await begun(session);
      await noted(session, REFUSED);
      await reckonsOn(session);
      await tap(session, "Keep this bottle on the shelf", ".sum");
      await openPlace(session, "shelf");
      await says(session, ".shelf .what", "new bitters");
      await openPlace(session, "sum");
      await openPlace(session, "shelf");
      const { text } = await savedBy(session, "save everything to a file");
      assert.deepEqual(JSON.parse(text).bottles.map((/** @type {any} */ kept) => kept.record.name), ["new bitters"]);
    },
  },
  {
    name: "where there is no room left, the page says so, reckons, and loses nothing",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE], specs: [LOCK_GATE] });
      await fillUp(session);
      const before = await stored(session);
      await reckonsOn(session);
      await noted(session, FULL);
      await tap(session, "Keep this bottle on the shelf", ".sum");
      await noted(session, FULL);
      // What is not kept must not be said to be.
      await becomes(() => notes(session).then((all) => all.filter((note) => note.includes("is on the shelf"))), []);
      const after = await stored(session);
      for (const [key, text] of Object.entries(before)) assert.equal(after[key], text, key);
      assert.ok(await session.run(() => localStorage.getItem("filler 0")?.length === 1 << 20));
      await openPlace(session, "shelf");
      const { text } = await savedBy(session, "save everything to a file");
      const names = JSON.parse(text).bottles.map((/** @type {any} */ kept) => kept.record.name);
      assert.deepEqual(names.sort(), ["new bitters", "rye whisky"]);
    },
  },
  {
    name: "where there is no room left, a change to a bottle leaves the old one whole",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE] });
      await fillUp(session);
      const before = await stored(session);
      await openPlace(session, "shelf");
      await openRow(session, "rye whisky");
      await write(session, blank(EDITOR, "What you paid"), "1234.56");
      await tap(session, "Keep the change", EDITOR);
      await noted(session, FULL);
      await becomes(async () => (await stored(session))[bottleKey(RYE)], before[bottleKey(RYE)]);
      // What is not kept must not be said to be.
      await becomes(async () => (await notes(session)).filter((note) => note.includes("is on the shelf")), []);
    },
  },
  {
    name: "a damaged record is set aside and offered as a file; everything else is there",
    async play({ session, site }) {
      const damaged = `{"format":1,"revision":3,"record":{"id":"bitters","na`;
      const strange = JSON.stringify({ format: 1, revision: 1, kept_on: "2026-01-31", record: { id: "soda", surprise: 1 }, earlier: [] });
      await seed(session, site, { ...storageOf({ bottles: [RYE] }), [bottleKey(BITTERS)]: damaged, [bottleKey(SODA)]: strange });
      await session.go(site.address);
      await begun(session);
      await noted(session, ASIDE);
      await openPlace(session, "shelf");
      await becomes(() => texts(session, ".shelf .what"), ["rye whisky"]);
      const { name, text } = await savedBy(session, "2 records were set aside: save them as a file");
      assert.equal(name, "farthing-set-aside.txt");
      assert.deepEqual(JSON.parse(text).map((/** @type {any} */ aside) => aside.text).sort(), [damaged, strange].sort());
      assert.ok(Object.values(await stored(session)).includes(damaged));
      await reckonsOn(session);
      await session.reload();
      await begun(session);
      assert.ok(Object.values(await stored(session)).includes(damaged));
      // It is told once; later it is still to be found.
      await openPlace(session, "shelf");
      await savedBy(session, "2 records were set aside: save them as a file");
    },
  },
  {
    name: "a damaged draft or house stops nothing",
    async play({ session, site }) {
      await seed(session, site, { ...storageOf({ bottles: [BITTERS] }), "farthing:draft": `{"sum":{"bottle":`, "farthing:house:": "[]" });
      await session.go(site.address);
      await begun(session);
      await noted(session, ASIDE);
      await openPlace(session, "shelf");
      await says(session, ".shelf .what", "orange bitters");
      assert.ok(Object.values(await stored(session)).includes("[]"));
    },
  },
  {
    name: "a draft of another form stops nothing",
    async play({ session, site }) {
      for (const draft of [`{"sum":5}`, `{"sum":{"bottle":null}}`, `[1,2]`, `"text"`, `null`, `{"glass":{"lines":7},"bottle":{"record":{}}}`]) {
        await seed(session, site, { ...storageOf({ bottles: [RYE] }), "farthing:draft": draft });
        await session.go(site.address);
        await begun(session);
        await write(session, PRICE, "18.50");
        await write(session, HOLDS, "100 ml");
        await write(session, MEASURE, "2 dashes");
        await becomes(() => textOf(session, ANSWER), "34p", draft);
        for (const place of ["glass", "shelf", "house"]) await openPlace(session, place);
      }
    },
  },
  {
    name: "a record of a newer version is left alone, and that is said",
    async play({ session, site }) {
      const newer = JSON.stringify({ format: 4, revision: 9, kept_on: "2027-01-01", record: { id: "bitters", name: "orange bitters", flavour: "orange" } });
      await seed(session, site, { ...storageOf({ bottles: [RYE], specs: [LOCK_GATE] }), [bottleKey(BITTERS)]: newer });
      await session.go(site.address);
      await begun(session);
      await noted(session, NEWER);
      await reckonsOn(session);
      await openPlace(session, "shelf");
      await becomes(() => texts(session, ".shelf .of-bottle .what"), ["rye whisky"]);
      await openRow(session, "rye whisky");
      await write(session, blank(EDITOR, "What you paid"), "30");
      await tap(session, "Keep the change", EDITOR);
      await becomes(async () => (await stored(session))[bottleKey(BITTERS)], newer);
      await session.reload();
      await begun(session);
      await noted(session, NEWER);
      await becomes(async () => (await stored(session))[bottleKey(BITTERS)], newer);
    },
  },
];
