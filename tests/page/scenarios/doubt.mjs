// @ts-check
/** How sure a figure is: its range, its doubt, and a bottle's own dash measured. */
import assert from "node:assert/strict";
import { axe } from "../look/axe.mjs";
import { enterFramed, reflow } from "../look/reflow.mjs";
import { asOnPaper, uselessOnPaper } from "../look/print.mjs";
import { answered, ANSWER, becomes, begun, blank, FACTS, fill, MAT, MEASURE, openPlace, openRow, pick, says, SPOKEN, tap, textOf, texts, TOTAL, unitOf, write } from "./page/places.mjs";
import { BITTERS, bottle, bottleKey, LOCK_GATE, openWith, RYE, seed, storageOf, storedRecord } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */
/** @typedef {import("../site.mjs").Site} Site */

const AROUND = ".sum .around";
const MEASURING = ".measuring";
const SIZE = `${MEASURING} output.answer`;
const reading = (/** @type {number} */ at) => blank(MEASURING, `Reading ${at}`);
const VESSEL = blank(MEASURING, "What the vessel holds");

/** A device that keeps the bitters and has two dashes of them in the sum. @param {object} [measured] */
const twoDashes = (measured = {}) => {
  const bitters = { ...BITTERS, measured };
  return { bottles: [RYE, bitters], specs: [LOCK_GATE], draft: { sum: { bottle: bitters, measure: { text: "2", unit: "dash" } } } };
};

/** Taps something by its selector, however it lies. @param {Session} session @param {string} css */
const click = (session, css) => session.run((/** @type {string} */ wanted) => /** @type {HTMLElement} */ (document.querySelector(wanted)).click(), css);

/** @param {Session} session */
async function openDoubt(session) {
  await session.waitFor(() => document.querySelector(".sum .around:not([hidden])"), "a range");
  await click(session, `${AROUND} button`);
  await session.waitFor((/** @type {string} */ css) => document.querySelector(`${css} .parts`), "the doubt", MAT);
}

/** From the sum to the measuring of its dash. @param {Session} session @param {Site} site @param {object} [measured] */
async function openMeasuring(session, site, measured) {
  await openWith(session, site, twoDashes(measured));
  await answered(session);
  await openDoubt(session);
  await tap(session, "Measure it", MAT);
  await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the measuring", MEASURING);
}

/** @param {Session} session @param {string[]} counts */
async function count(session, counts) {
  await fill(session, { [VESSEL]: "30" });
  for (const [at, typed] of counts.entries()) await fill(session, { [reading(at + 1)]: typed });
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a pour from five to ten says between what it costs, aloud too",
    async play({ session, site }) {
      await openWith(session, site, twoDashes());
      await write(session, MEASURE, "5-10 ml");
      await becomes(() => textOf(session, ANSWER), "£1.39");
      await becomes(() => textOf(session, AROUND), "between 93p and £1.85");
      await says(session, SPOKEN, "5-10 ml of orange bitters: £1.39, between 93p and £1.85");
      await becomes(() => texts(session, ".sum .fact span"), ["the measure", "a ml", "in the bottle: 10 to 20"]);
      await becomes(async () => (await texts(session, FACTS))[0], "7.5 ml");
      // Another unit keeps both ends.
      await pick(session, unitOf(".sum", "The measure"), "dash");
      await becomes(() => session.value(MEASURE), "5-10");
      await write(session, MEASURE, "about 10 ml");
      await becomes(() => textOf(session, AROUND), "between £1.55 and £2.15");
      await write(session, MEASURE, "10 ml");
      await becomes(() => texts(session, AROUND), []);
      await write(session, MEASURE, "10-5 ml");
      await becomes(() => texts(session, ".sum .wrong"), ["“10-5 ml” begins with the larger number. Try it the other way round: 5-10, not 10-5."]);
    },
  },
  {
    name: "a blank that takes words brings up a keypad with letters",
    async play({ session, site }) {
      await openWith(session, site, twoDashes());
      await session.click(MEASURE);
      const mode = () => session.run((/** @type {string} */ css) => {
        const input = /** @type {HTMLInputElement} */ (document.querySelector(css));
        return [input.inputMode, document.activeElement === input];
      }, MEASURE);
      await becomes(mode, ["decimal", true]);
      await tap(session, "abc", "#chips");
      await becomes(mode, ["text", true]);
    },
  },
  {
    name: "the doubt says what it is made of, in shares that add up, and Back closes it",
    async play({ session, site }) {
      await openWith(session, site, twoDashes());
      await write(session, MEASURE, "2-3 dashes");
      await becomes(() => textOf(session, ANSWER), "43p");
      await openDoubt(session);
      const parts = await texts(session, `${MAT} .parts li > span:first-child`);
      assert.deepEqual(parts, ["the size of a dash of orange bitters, assumed", "the pour of orange bitters"]);
      const shares = (await texts(session, `${MAT} .parts b`)).map((text) => Number(text.replace(" %", "")));
      assert.equal(shares.reduce((sum, share) => sum + share), 100);
      const widths = await session.run((/** @type {string} */ css) => [...document.querySelectorAll(css)].map((bar) => Number(bar.getAttribute("width"))), `${MAT} .bar rect`);
      assert.deepEqual(widths, shares);
      assert.match((await texts(session, `${MAT} .parts .said-of`)).join("|"), /^0\.15 to 1\.23 ml, anywhere between; .*\|2 to 3 dashes, anywhere between; /);
      assert.match(await textOf(session, `${MAT} .assumed`), /Measure the dash of orange bitters\. That would bring the doubt down to about a/);
      await session.back();
      await session.waitFor((/** @type {string} */ css) => !document.querySelector(css), "the doubt to close", MAT);
      await becomes(() => textOf(session, ANSWER), "43p");
    },
  },
  {
    name: "the total of a glass has its range, and leads to measuring its dash",
    async play({ session, site }) {
      await openWith(session, site, twoDashes());
      await openPlace(session, "shelf");
      await openRow(session, "Lock Gate");
      await becomes(() => textOf(session, TOTAL), "£2.58");
      await becomes(() => textOf(session, ".glass .around"), "between £2.30 and £2.70");
      await click(session, ".glass .around button");
      await tap(session, "Measure it", MAT);
      await becomes(() => textOf(session, `${MEASURING} h1`), "A dash of orange bitters");
      await count(session, ["32", "33"]);
      await tap(session, "Use it", MEASURING);
      await tap(session, "Keep the change", ".editor");
      await becomes(async () => (await storedRecord(session, bottleKey(BITTERS))).record.measured.dash.readings, ["32", "33"]);
    },
  },
  {
    name: "a dash is measured by counting, changes the answer, and is there after a reload",
    async play({ session, site }) {
      await openMeasuring(session, site);
      await count(session, ["32"]);
      await becomes(() => textOf(session, SIZE), "0.938 ml");
      await becomes(async () => (await textOf(session, `${MEASURING} .told`)).slice(0, 25), "One reading does not tell");
      await fill(session, { [reading(2)]: "33", [reading(3)]: "31" });
      await becomes(() => texts(session, `${MEASURING} .shut`), ["×", "×", "×"]);
      await says(session, SPOKEN, `A dash of orange bitters: ${await textOf(session, SIZE)}, ${await textOf(session, `${MEASURING} .around`)}`);
      await tap(session, "Use it", MEASURING);
      await becomes(() => textOf(session, ANSWER), "35p");
      await tap(session, "Keep the change on the shelf", ".sum");
      await becomes(async () => {
        const { dash } = (await storedRecord(session, bottleKey(BITTERS))).record.measured;
        return dash && [dash.way, dash.vessel.text, dash.readings];
      }, ["count", "30", ["32", "33", "31"]]);
      await session.reload();
      await begun(session);
      await becomes(() => textOf(session, ANSWER), "35p");
      await openPlace(session, "shelf");
      await openRow(session, "orange bitters");
      await becomes(async () => (await textOf(session, ".editor .rough-table .source")).slice(0, 24), "Measured: 0.938 ml, betw");
      // The working leads to what was measured.
      await openPlace(session, "sum");
      await click(session, ".sum .cost .opens");
      await becomes(async () => (await textOf(session, `${MAT} .assumed`)).slice(0, 65), "A dash is taken as 0.9375 ml. That was measured with this bottle.");
      await tap(session, "See how", MAT);
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the measuring", reading(3));
      await becomes(() => session.value(reading(3)), "31");
    },
  },
  {
    name: "a reading that stands out is told and counts all the same, until it is taken out",
    async play({ session, site }) {
      await openMeasuring(session, site);
      await count(session, ["32", "34", "31", "33", "32", "70"]);
      const flagged = () => session.run(() => [...document.querySelectorAll(".readings .clause")].flatMap((row, at) =>
        row.querySelector(".apart:not([hidden])") ? [at + 1] : []));
      await becomes(flagged, [6]);
      await becomes(() => textOf(session, SIZE), "0.776 ml");
      await click(session, "[aria-label='Take out reading 6']");
      await becomes(() => textOf(session, SIZE), "0.926 ml");
      await becomes(flagged, []);
      await tap(session, "Undo", "#notes");
      await becomes(flagged, [6]);
      await click(session, "[aria-label='Take out reading 6']");
      await tap(session, "clear the measuring", MEASURING);
      await becomes(async () => [await textOf(session, SIZE), await session.value(VESSEL)], ["", ""]);
      await tap(session, "Back", MEASURING);
      await becomes(() => textOf(session, ANSWER), "34p");
    },
  },
  {
    name: "a dash is weighed by its strength or by a known volume, and squeezes are read off marks",
    async play({ session, site }) {
      await openMeasuring(session, site);
      await pick(session, `${MEASURING} select[aria-label='How it is measured']`, "weigh");
      await fill(session, {
        [blank(MEASURING, "How many each time")]: "10", [blank(MEASURING, "The step of the scale or the marks")]: "0.1",
        [blank(MEASURING, "Strength in percent by volume")]: "45", [reading(1)]: "8.2",
      });
      await becomes(async () => /^0\.8\d+ ml$/.test(await textOf(session, SIZE)), true);
      await pick(session, `${MEASURING} select[aria-label='From what the liquid’s weight is known']`, "true");
      await becomes(() => session.value(blank(MEASURING, "Strength in percent by volume")), "");
      await fill(session, { [blank(MEASURING, "A known volume of it")]: "50", [blank(MEASURING, "What that volume weighs in grams")]: "41" });
      await becomes(() => textOf(session, SIZE), "1 ml");
      await fill(session, { [blank(MEASURING, "What that volume weighs in grams")]: "4" });
      await becomes(() => texts(session, `${MEASURING} .wrong`), ["No drink is as light or as heavy as that. Look again at the volume and what it weighs."]);
      await pick(session, `${MEASURING} select[aria-label='How it is measured']`, "read");
      await fill(session, { [blank(MEASURING, "How many each time")]: "1", [reading(1)]: "0.9" });
      await becomes(() => textOf(session, SIZE), "0.9 ml");
    },
  },
  {
    name: "a measuring that is not finished says so where one comes back to",
    async play({ session, site }) {
      await openMeasuring(session, site);
      await fill(session, { [reading(1)]: "32" });
      await session.back();
      await says(session, "#notes .note p", "The measuring of a dash is not finished, so it does not count yet.");
    },
  },
  {
    name: "what the law lets a bottle be short of is doubted only if the house says so",
    async play({ session, site }) {
      await openWith(session, site, twoDashes());
      await write(session, MEASURE, "25 ml");
      await becomes(() => texts(session, AROUND), []);
      await openPlace(session, "house");
      await pick(session, ".house select[aria-label^='Whether a doubt counts']", "true");
      await openPlace(session, "sum");
      await becomes(async () => (await texts(session, AROUND)).length, 1);
      await openDoubt(session);
      await becomes(() => texts(session, `${MAT} .parts li > span:first-child`), ["what the law lets one bottle of orange bitters be short of its label"]);
    },
  },
  {
    name: "the doubt and the measuring are for everybody: narrow, large, right to left, on paper, by axe",
    async play({ session, site }) {
      const measured = { dash: { way: "count", readings: ["32", "33", "70", "31", "32", "33"], number: "", vessel: { text: "30", unit: "ml" }, step: "", strength: "", celsius: "", known_volume: { text: "", unit: "ml" }, known_weight: "" } };
      const bottles = [{ ...BITTERS, measured }, bottle("other", "rosemary syrup", "4.20", "500", "ml", { measured })];
      const before = storageOf({ ...twoDashes(measured), bottles });
      await seed(session, site, before);
      const states = [
        { name: "the doubt", open: async (/** @type {Session} */ shown) => (await begun(shown), openDoubt(shown)) },
        {
          name: "the measuring",
          async open(/** @type {Session} */ shown) {
            await openPlace(shown, "shelf");
            await openRow(shown, "orange bitters");
            await click(shown, ".editor [aria-label='measure it: a dash']");
            await shown.waitFor(() => document.querySelector(".measuring .apart:not([hidden])"), "the measuring");
          },
        },
        {
          name: "the weighing",
          open: (/** @type {Session} */ shown) => pick(shown, ".measuring select[aria-label='How it is measured']", "weigh"),
        },
      ];
      assert.deepEqual(await reflow(session, site, { states }), []);
      await seed(session, site, before);
      await enterFramed(session, site, 1000, 3000);
      for (const { name, open } of states) {
        await open(session);
        assert.deepEqual(await axe(session), [], name);
      }
      await asOnPaper(session);
      await becomes(() => uselessOnPaper(session), []);
      await session.leaveFrame();
    },
  },
];
