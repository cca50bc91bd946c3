// @ts-check
import assert from "node:assert/strict";
import { becomes, blank, GLASS_NAME, openPlace, pick, says, tap, tapOn, textOf, texts, TOTAL, unitOf, write } from "./page/places.mjs";
import { BITTERS, line, LOCK_GATE, openWith, RYE, SODA, spec, storedRecord } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const nth = (/** @type {number} */ at) => `.glass .lines > .line:nth-child(${at})`;
const costs = (/** @type {Session} */ session) => texts(session, ".glass .line .row-cost");
const shares = (/** @type {Session} */ session) => texts(session, ".glass .line .row-share");
const whats = (/** @type {Session} */ session) => texts(session, ".glass .line .what");

/** @param {Session} session @param {number} at @param {string} measure @param {string} name */
async function addFromShelf(session, at, measure, name) {
  await tap(session, "a bottle", ".glass .also");
  await write(session, blank(nth(at), "The measure"), measure);
  await session.run((/** @type {string} */ css) => /** @type {HTMLElement} */ (document.querySelector(css)).focus(), blank(nth(at), "Of what"));
  await tap(session, name, "#chips");
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a glass from two bottles and a straw: its total, and shares of a hundred",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS] });
      await openPlace(session, "glass");
      await write(session, GLASS_NAME, "Lock Gate");
      await addFromShelf(session, 1, "50 ml", "rye whisky");
      await becomes(() => textOf(session, TOTAL), "£2.24");
      await addFromShelf(session, 2, "2 dashes", "orange bitters");
      await becomes(() => textOf(session, TOTAL), "£2.58");

      await tap(session, "straw", ".glass .also");
      await becomes(() => costs(session), ["£2.24", "34p", "no price yet"]);
      await becomes(() => textOf(session, ".glass .without"), "without 1 line");
      await becomes(() => textOf(session, TOTAL), "£2.58");
      await becomes(() => shares(session), ["87 %", "13 %"]);

      await write(session, blank(`${nth(3)} .own`, "What you paid"), "4");
      await write(session, blank(`${nth(3)} .own`, "How much one bottle holds"), "100");
      await becomes(() => costs(session), ["£2.24", "34p", "4p"]);
      await becomes(() => textOf(session, ".glass .without"), "");
      await becomes(() => textOf(session, TOTAL), "£2.62");
      const parts = (await shares(session)).map((text) => parseInt(text, 10));
      assert.deepEqual([parts.length, parts.reduce((sum, part) => sum + part, 0)], [3, 100]);

      await tap(session, "Keep this glass on the shelf", ".glass");
      const [key] = await session.run(() => Object.keys(localStorage).filter((name) => name.startsWith("farthing:spec:")));
      await session.reload();
      await openPlace(session, "shelf");
      await says(session, ".shelf .of-spec .what", "Lock Gate");
      await becomes(() => textOf(session, ".shelf .of-spec .row-cost"), "£2.62");
      await becomes(async () => (await storedRecord(session, key)).record.lines.length, 3);
    },
  },
  {
    name: "what a line cannot read is told at the line",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE] });
      await openPlace(session, "glass");
      await addFromShelf(session, 1, "50 ml", "rye whisky");
      await becomes(() => textOf(session, TOTAL), "£2.24");
      await write(session, blank(nth(1), "The measure"), "10-5 ml");
      await says(session, `${nth(1)} .wrong:not([hidden])`, "“10-5 ml” begins with the larger number. Try it the other way round: 5-10, not 10-5.");
      await write(session, blank(nth(1), "The measure"), "2 pieces");
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css)?.textContent?.includes("pieces"), "a measure of another kind", `${nth(1)} .wrong:not([hidden])`);
      await write(session, blank(nth(1), "The measure"), "5-10 ml");
      await becomes(() => texts(session, `${nth(1)} .wrong:not([hidden])`), []);
    },
  },
  {
    name: "a line without a price is said to be missing, never nought",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE] });
      await openPlace(session, "glass");
      for (const thing of ["straw", "napkin", "ice"]) await tap(session, thing, ".glass .also");
      await becomes(() => costs(session), ["no price yet", "no price yet", "no price yet"]);
      await becomes(async () => [await textOf(session, TOTAL), await shares(session)], ["", []]);
      await addFromShelf(session, 4, "50 ml", "rye whisky");
      await becomes(() => costs(session), ["no price yet", "no price yet", "no price yet", "£2.24"]);
      await becomes(() => textOf(session, ".glass .without"), "without 3 lines");
      await becomes(() => shares(session), ["100 %"]);
      assert.doesNotMatch(await textOf(session, ".glass"), /£0|\b0p\b|NaN/);
      // A bottle of nothing is a price, and a different thing.
      await write(session, blank(`${nth(1)} .own`, "What you paid"), "0");
      await write(session, blank(`${nth(1)} .own`, "How much one bottle holds"), "100");
      await becomes(async () => (await costs(session))[0], "0p");
      await becomes(() => textOf(session, ".glass .without"), "without 2 lines");
    },
  },
  {
    name: "a bottle opened for one glass is charged whole or by what is poured, and the difference is seen",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, SODA], specs: [spec("towpath", "Towpath", [line("rye", "50", "ml"), line("soda", "150", "ml")])] });
      await openPlace(session, "glass");
      await becomes(() => textOf(session, TOTAL), "£3.14");
      await tapOn(session, `${nth(2)} .row`);
      const charge = `${nth(2)} select[aria-label='What is charged']`;
      await becomes(() => textOf(session, `${nth(2)} .fold .tail`), "the whole bottle would add 30p");
      await pick(session, charge, "whole");
      await becomes(() => textOf(session, `${nth(2)} .fold .tail`), "adds 30p for what is poured away");
      await becomes(async () => [await costs(session), await textOf(session, TOTAL)], [["£2.24", "£1.20"], "£3.44"]);
      await pick(session, charge, "poured");
      await becomes(async () => [await costs(session), await textOf(session, TOTAL)], [["£2.24", "90p"], "£3.14"]);
    },
  },
  {
    name: "a line taken out comes back as it was",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS, SODA], specs: [spec("towpath", "Towpath", [line("rye", "50", "ml"), line("bitters", "2", "dash"), line("soda", "150", "ml")])] });
      await openPlace(session, "glass");
      const before = [await whats(session), await costs(session), await textOf(session, TOTAL)];
      assert.deepEqual(before[0], ["50 ml of rye whisky", "2 dashes of orange bitters", "150 ml of soda water"]);
      await tapOn(session, `${nth(2)} .row`);
      await tap(session, "take out", nth(2));
      await becomes(() => whats(session), ["50 ml of rye whisky", "150 ml of soda water"]);
      await becomes(() => textOf(session, TOTAL), "£3.14");
      await says(session, "#notes p", "orange bitters is out.");
      await tap(session, "Undo", "#notes");
      await becomes(async () => [await whats(session), await costs(session), await textOf(session, TOTAL)], before);
      await tapOn(session, `${nth(2)} .row`);
      await tap(session, "down", nth(2));
      await becomes(() => whats(session), ["50 ml of rye whisky", "150 ml of soda water", "2 dashes of orange bitters"]);
    },
  },
  {
    name: "what a glass costs is readable as a list, and its picture needs no colour",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS], specs: [LOCK_GATE] });
      await openPlace(session, "glass");
      await becomes(() => texts(session, ".glass ol.lines .row"), ["50 ml of rye whisky£2.2487 %", "2 dashes of orange bitters34p13 %"]);
      const picture = await session.run(() => {
        const drawing = /** @type {Element} */ (document.querySelector(".glass svg.picture"));
        const layers = [...drawing.querySelectorAll("rect.layer + rect")];
        return {
          hidden: drawing.getAttribute("aria-hidden"),
          labels: [...drawing.querySelectorAll("text")].map((each) => (each.textContent ?? "").replace(/\s+/g, " ")),
          hatches: new Set(layers.map((each) => each.getAttribute("fill")?.replace(/^url\(#n\d+/, ""))).size,
          heights: layers.map((each) => Number(each.getAttribute("height"))),
          patterns: layers.map((each) => Boolean(document.querySelector(each.getAttribute("fill")?.slice(4, -1) ?? "none"))),
        };
      });
      assert.equal(picture.hidden, "true");
      assert.deepEqual(picture.labels.sort(), ["13 % orange bitters", "87 % rye whisky"]);
      assert.deepEqual([picture.hatches, picture.patterns], [2, [true, true]]);
      const [rye = 0, bitters = 1] = picture.heights;
      assert.ok(Math.abs(rye / (rye + bitters) - 0.87) < 0.001, `${picture.heights}`);
    },
  },
  {
    name: "a glass half written is there after a reload, with the unit that was read",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE] });
      await openPlace(session, "glass");
      await write(session, GLASS_NAME, "Half done");
      await tap(session, "a bottle", ".glass .also");
      await write(session, blank(nth(1), "The measure"), "5 cl");
      await becomes(() => session.value(unitOf(nth(1), "The measure")), "cl");
      await session.runAsync(() => new Promise((resolve) => setTimeout(resolve, 600)));
      await session.reload();
      await openPlace(session, "glass");
      await becomes(() => session.value(GLASS_NAME), "Half done");
      await becomes(() => whats(session), ["5 cl"]);
    },
  },
];
