// @ts-check
import assert from "node:assert/strict";
import { becomes, blank, EDITOR, MAT, openPlace, openRow, pick, says, tap, tapOn, textOf, texts, TOTAL, write } from "./page/places.mjs";
import { bottle, bottleKey, house, line, openWith, spec, specKey, storedRecord } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */
/** @typedef {import("../site.mjs").Site} Site */

const RYE = bottle("rye", "rye whisky", "31.40", "700", "ml", { strength: "45", spirit: "whisky" });
const GIN = bottle("gin", "dry gin", "24.60", "700", "ml", { strength: "41", spirit: "gin" });
const SYRUP = bottle("syrup", "rosemary syrup", "4.20", "500", "ml", { strength: "0", keeps_days: "21", allergens: ["sulphites"], warns: ["quinine"] });
const BITTERS = bottle("bitters", "orange bitters", "18.50", "100", "ml", { strength: "28" });
const GLASS = spec("lockgate", "Lock Gate", [line("rye", "50", "ml"), line("syrup", "10", "ml"), line("bitters", "2", "dash")]);

const CHARGE = ".glass > details.part";
const PRICE = blank(CHARGE, "What it sells at");
const TARGET = blank(CHARGE, "The margin you want, in percent");
const PACE = blank(CHARGE, "How many a week");
const TOLD_MORE = `${EDITOR} details.part > summary`;
const glance = (/** @type {Session} */ session) => textOf(session, `${CHARGE} > summary .glance`);
const verdict = (/** @type {Session} */ session) => textOf(session, `${CHARGE} .verdict`);
const sentences = (/** @type {Session} */ session) => texts(session, `${CHARGE} .says`);
const rungs = (/** @type {Session} */ session) => texts(session, `${CHARGE} .rung`);
const nth = (/** @type {number} */ at) => `.glass .lines > .line:nth-child(${at})`;

/** @param {Session} session @param {Site} site @param {object} terms @param {string} costs */
async function openGlass(session, site, terms = {}, costs = "£2.67") {
  await openWith(session, site, { bottles: [RYE, GIN, SYRUP, BITTERS], specs: [{ ...GLASS, ...terms }], house: house() });
  await openPlace(session, "glass");
  await becomes(() => textOf(session, TOTAL), costs);
}

/** A record as it was kept before there were prices. @param {object} record @param {string[]} keys */
const old = (record, keys) => /** @type {{ id: string }} */ (Object.fromEntries(Object.entries(record).filter(([key]) => keys.includes(key))));

/** The rows of what follows from a line, by their names. @param {Session} session @param {number} at @returns {Promise<Record<string, string>>} */
async function trimmed(session, at) {
  const figures = await texts(session, `${nth(at)} .trim .told-figure`);
  return Object.fromEntries((await texts(session, `${nth(at)} .trim .told-name`)).map((name, index) => [name, figures[index] ?? ""]));
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a price typed says what is kept of it, what the tax makes it look like, and what the glass may cost",
    async play({ session, site }) {
      await openGlass(session, site);
      await becomes(() => glance(session), "£12.80 for 75 %");
      await tapOn(session, `${CHARGE} > summary`);
      await becomes(() => sentences(session), ["To keep 75 %, ask £12.80."]);
      await write(session, PRICE, "9.50");
      await becomes(() => verdict(session), "Under target: 66.3 % is kept, and you want 75 %.");
      await becomes(() => texts(session, `${CHARGE} .fact`), ["£5.25kept of it", "66.3 %margin (GP)", "33.7 %pour cost", "197 %markup"]);
      await becomes(() => sentences(session), [
        "To keep 75 %, ask £12.80.",
        "On the price with tax it would look like 71.9 %. But £1.58 of it is tax, and never yours.",
        "At £9.50 and 75 % this glass may cost £1.98.",
      ]);
      await write(session, TARGET, "60");
      await becomes(() => verdict(session), "On target: 66.3 % is kept, and you want 60 %.");
      await becomes(() => glance(session), "£9.50 keeps 66.3 %");
      await write(session, PRICE, "1,250");
      await says(session, `${CHARGE} .wrong span`, "“1,250” could be 1.25 or 1250. Which is it?");
      await becomes(() => verdict(session), "");
    },
  },
  {
    name: "what was kept before there were prices is priced as the house starts out, and is no change",
    async play({ session, site }) {
      const bottles = [RYE, SYRUP, BITTERS].map((each) => old(each, ["id", "name", "paid", "holds", "wastage_percent", "rough"]));
      const ofHouse = old(house(), ["currency", "decimal_mark", "kitchen", "tax_percent", "reclaims_tax", "rough"]);
      await openWith(session, site, { bottles, specs: [old(GLASS, ["id", "name", "lines"])], house: ofHouse });
      await openPlace(session, "glass");
      await becomes(() => glance(session), "£12.80 for 75 %");
      await becomes(() => textOf(session, ".glass > .wide"), "");
      await openPlace(session, "house");
      await becomes(() => session.value(blank(".house", "The margin you want of a glass, in percent")), "75");
      await openPlace(session, "shelf");
      await openRow(session, "rye whisky");
      await becomes(() => textOf(session, `${EDITOR} > .wide`), "");
    },
  },
  {
    name: "every figure of a price opens its working, in words",
    async play({ session, site }) {
      await openGlass(session, site, { price: "9.50", a_week: "6" });
      await tapOn(session, `${CHARGE} > summary`);
      await becomes(async () => (await texts(session, `${CHARGE} .fact`)).length, 4);
      for (const at of [2, 4]) {
        await tapOn(session, `${CHARGE} .fact:nth-child(${at})`);
        await becomes(async () => (await texts(session, `${MAT} .finds`)).length, 3);
        const said = (await texts(session, `${MAT} .finds, ${MAT} .said-of`)).join(" ");
        assert.doesNotMatch(said, /_|\bnet\b/, said);
        await tap(session, "Close", MAT);
      }
    },
  },
  {
    name: "a rung of the ladder takes its price, says in words whether it is on target, and can be undone",
    async play({ session, site }) {
      await openGlass(session, site);
      await tapOn(session, `${CHARGE} > summary`);
      await becomes(() => rungs(session), [
        "£14.00keeps 77.1 %on target", "£13.50keeps 76.3 %on target", "£13.00keeps 75.4 %on target", "£12.50keeps 74.4 %under", "£12.00keeps 73.3 %under", "£11.50keeps 72.2 %under",
      ]);
      await tapOn(session, `${CHARGE} .ladder li:nth-child(3) .rung`);
      await becomes(() => session.value(PRICE), "13.00");
      await becomes(() => verdict(session), "On target: 75.4 % is kept, and you want 75 %.");
      await becomes(() => texts(session, `${CHARGE} .rung[aria-pressed=true]`), ["£13.00keeps 75.4 %on target"]);
      await tapOn(session, `${CHARGE} .ladder li:nth-child(4) .rung`);
      await becomes(() => verdict(session), "Under target: 74.4 % is kept, and you want 75 %.");
      await tap(session, "Undo", "#notes");
      await becomes(() => session.value(PRICE), "13.00");

      // What a price brings with it stands above the ladder: the rung stays under the thumb.
      await write(session, PRICE, "");
      await becomes(() => verdict(session), "");
      const top = () => session.run((/** @type {string} */ css) => /** @type {Element} */ (document.querySelector(css)).getBoundingClientRect().top, `${CHARGE} .rung`);
      await session.run((/** @type {string} */ css) => document.querySelector(css)?.scrollIntoView({ block: "center" }), `${CHARGE} .ladder`);
      const before = await top();
      await session.run((/** @type {string} */ css) => /** @type {HTMLElement} */ (document.querySelector(css)).click(), `${CHARGE} .rung`);
      await becomes(() => session.value(PRICE), "14.00");
      await becomes(async () => [(await texts(session, `${CHARGE} .fact`)).length, Math.abs(await top() - before) < 3], [4, true]);
    },
  },
  {
    name: "tax added at the till and other price points come from the house",
    async play({ session, site }) {
      await openGlass(session, site, { price: "10" });
      await openPlace(session, "house");
      await pick(session, "select[aria-label='How tax stands in your prices']", "added");
      await pick(session, "select[aria-label='Which prices you ask']", "whole");
      await write(session, blank(".house", "The margin you want of a glass, in percent"), "70");
      await openPlace(session, "glass");
      await tapOn(session, `${CHARGE} > summary`);
      await becomes(() => verdict(session), "On target: 73.3 % is kept, and you want 70 %.");
      await becomes(async () => (await sentences(session)).includes("With tax at the till the guest pays £12.00."), true);
      await becomes(async () => (await rungs(session))[0], "£11.00keeps 75.8 %on target");
      await openPlace(session, "house");
      await write(session, blank(".house", "The margin you want of a glass, in percent"), "100");
      await says(session, ".house .wrong span", "A percentage here lies between 0 and 100.");
    },
  },
  {
    name: "what spoils is in the true cost at a pace, and a glass of old is without a pace",
    async play({ session, site }) {
      await openGlass(session, site);
      await tapOn(session, `${CHARGE} > summary`);
      await write(session, PACE, "2");
      await becomes(async () => (await sentences(session)).at(-1), "At that pace, with what spoils, it truly costs £3.18.");
    },
  },
  {
    name: "a line by itself: what leaving it out saves, what its bottle may cost, what the same money buys",
    async play({ session, site }) {
      await openGlass(session, site, { price: "12.00", method: "stirred" });
      await tapOn(session, `${nth(1)} .row`);
      await tapOn(session, `${nth(1)} .trim > summary`);
      await becomes(async () => {
        const rows = await trimmed(session, 1);
        return [rows["leaving it out saves"], rows["the glass then costs"], rows["one bottle not to buy"], rows["rosemary syrup"]];
      }, ["£2.24", "42p", "£31.40", "267 ml"]);
      assert.match((await trimmed(session, 1))["and is then"] ?? "", /^\d+(\.\d+)? % vol$/);
      assert.match((await trimmed(session, 1))["its bottle may cost, for 75 %"] ?? "", /^£2\d\.\d\d$/);
    },
  },
  {
    name: "another bottle in a line shows its change in money and strength first, goes in on a tap and can be undone",
    async play({ session, site }) {
      await openGlass(session, site, { method: "stirred" });
      await tapOn(session, `${nth(1)} .row`);
      await tapOn(session, `${nth(1)} .trim > summary`);
      await write(session, blank(nth(1), "Another bottle in its place"), "dry gin");
      await becomes(async () => (await texts(session, `${nth(1)} .trim .told-row`)).slice(-4).map((row) => row.replace(/ %.*/, "")),
        ["with it, the glass costs£2.18", "the change-49p", "strength25.9", "its bottle, to be bought£24.60"]);
      await becomes(() => textOf(session, TOTAL), "£2.67");
      await tap(session, "Put it in", nth(1));
      await becomes(() => textOf(session, TOTAL), "£2.18");
      await becomes(() => textOf(session, `${nth(1)} .what`), "50 ml of dry gin");
      await says(session, "#notes p", "dry gin is in, in place of rye whisky.");
      await tap(session, "Undo", "#notes");
      await becomes(() => textOf(session, TOTAL), "£2.67");
      await becomes(() => textOf(session, `${nth(1)} .what`), "50 ml of rye whisky");
    },
  },
  {
    name: "how strong a glass is: by volume, in grams and units, with the water of the ice, and what has no strength told",
    async play({ session, site }) {
      await openGlass(session, site);
      const fold = ".parts-below > details:nth-child(1)";
      await becomes(async () => /^\d\d(\.\d)? % vol, 2(\.\d+)? UK units$/.test(await textOf(session, `${fold} .glance`)), true);
      await tapOn(session, `${fold} > summary`);
      const percent = async () => parseInt((await texts(session, `${fold} .fact b`))[0] ?? "", 10);
      await becomes(percent, 37);
      await pick(session, `${fold} select[aria-label='How it is mixed']`, "stirred");
      await becomes(percent, 25);
      await becomes(async () => (await texts(session, `${fold} .says`)).some((text) => /^The ice adds 2\d(\.\d)? ml of water\.$/.test(text)), true);
      await write(session, blank(fold, "Water that the ice adds, if you measured it"), "60");
      await becomes(percent, 18);
      await tap(session, "What it is elsewhere", fold);
      await becomes(async () => (await texts(session, `${fold} .told-row`)).length, 8);
      await tapOn(session, `${fold} .fact:nth-child(1)`);
      await becomes(async () => (await texts(session, `${MAT} .assumed`)).length, 2);
      await tap(session, "Close", MAT);
      assert.match(await textOf(session, fold), /14 UK units a week regularly.*3 days or more.*November/);

      await openPlace(session, "shelf");
      await openRow(session, "rye whisky");
      await tapOn(session, TOLD_MORE);
      await write(session, blank(EDITOR, "Strength in percent by volume"), "");
      await tap(session, "Keep the change", EDITOR);
      await session.waitFor(() => !document.querySelector("main .editor"), "the bottle to be kept");
      await openPlace(session, "glass");
      await becomes(async () => /^1 liquid in it has no strength told/.test(await textOf(session, `${fold} .verdict`)), true);
    },
  },
  {
    name: "what to mind is said with where it comes from, and stops nothing",
    async play({ session, site }) {
      await openGlass(session, site, { price: "1.00", lines: [line("rye", "40", "ml"), line("syrup", "10", "ml"), line("bitters", "2", "dash")] }, "£2.22");
      const fold = ".parts-below > details:nth-child(2)";
      await becomes(() => textOf(session, `${fold} .glance`), "sulphites; 2 things to mind");
      await tapOn(session, `${fold} > summary`);
      await becomes(async () => (await texts(session, `${fold} li`)).length, 3);
      const said = (await texts(session, `${fold} li`)).join("\n");
      assert.match(said, /quinine.*1169\/2011/);
      assert.match(said, /minimum price of 65p a unit.*: £1\.\d\d for this glass/);
      assert.match(said, /carry sulphites\./);
      assert.match(await textOf(session, fold), /local ones, and how your licence is practised, go first\. Nothing here stops you/);
      await tapOn(session, `${nth(2)} .row`);
      await tap(session, "take out", nth(2));
      await becomes(async () => (await texts(session, `${fold} li`)).some((text) => /This pours 40 ml of whisky\..*SI 1988\/2039/.test(text)), true);
    },
  },
  {
    name: "the terms of a glass and what a bottle tells are kept, and there after a reload",
    async play({ session, site }) {
      await openGlass(session, site);
      await tapOn(session, `${CHARGE} > summary`);
      await write(session, PRICE, "11.50");
      await write(session, TARGET, "72");
      await tap(session, "Keep the change on the shelf", ".glass");
      await becomes(async () => {
        const { price, target_percent } = (await storedRecord(session, specKey(GLASS))).record;
        return [price, target_percent];
      }, ["11.50", "72"]);
      await openPlace(session, "shelf");
      await openRow(session, "dry gin");
      await tapOn(session, TOLD_MORE);
      await write(session, blank(EDITOR, "How many days it keeps once open"), "x");
      await says(session, `${EDITOR} .wrong span`, "“x” is not a number this page can read. Try 2, 1.5 or 1 1/2.");
      await write(session, blank(EDITOR, "How many days it keeps once open"), "90");
      await write(session, blank(EDITOR, "What is there of it already"), "2");
      await tapOn(session, `${EDITOR} .tick:nth-of-type(3)`);
      await tap(session, "Keep the change", EDITOR);
      await becomes(async () => {
        const { keeps_days, have, allergens, strength } = (await storedRecord(session, bottleKey(GIN))).record;
        return [keeps_days, have, allergens, strength];
      }, ["90", { text: "2", unit: "bottle" }, ["eggs"], "41"]);
      await session.reload();
      await openPlace(session, "glass");
      await becomes(() => session.value(PRICE), "11.50");
      await becomes(() => glance(session), "£11.50 keeps 72.2 %");
    },
  },
];
