// @ts-check
/** The views over the shelf: the menu, what to buy, the tasting table, what spoils. */
import assert from "node:assert/strict";
import { asOnPaper, uselessOnPaper } from "../look/print.mjs";
import { becomes, begun, blank, fill, MAT, noted, openPlace, pick, says, tap, tapOn, texts, textOf, write } from "./page/places.mjs";
import { BITTERS, bottle, bottleKey, line, LOCK_GATE, openWith, RYE, spec, stored, storedRecord } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const PUREE = bottle("puree", "pear puree", "6.80", "500", "ml", { keeps_days: "5" });
const PRICED = { ...LOCK_GATE, price: "9.50" };
const DEARER = { ...spec("sluice", "Sluice", [line("rye", "40", "ml")]), price: "12" };
const UNPRICED = spec("basin", "The Basin", [line("rye", "25", "ml"), line("nowhere", "10", "ml")]);
const SHELF = { bottles: [RYE, BITTERS, PUREE], specs: [PRICED, DEARER, UNPRICED] };

const COUNT = blank(".shopping", "How many of Lock Gate");
const offer = (/** @type {number} */ at, /** @type {string} */ label) => blank(`.offers > li:nth-child(${at})`, label);
const menuNames = (/** @type {Session} */ session) => texts(session, ".menu-list .what");
/** Opens a view by a real tap: Back passes over what no person asked for. @param {Session} session @param {string} view */
async function openOver(session, view) {
  await openPlace(session, "shelf");
  await tapOn(session, `[data-leads=${view}]`);
  await session.waitFor((/** @type {string} */ name) => document.querySelector(`main .over.${name}`), view, view);
}

const gone = (/** @type {Session} */ session) => session.waitFor(() => !document.querySelector(".over") && document.querySelector(".shelf .leads"), "the shelf again");

/** What the page copies, where a browser asks nobody: it is held in place of the clipboard. @param {Session} session */
const holdCopies = (session) => session.run(() => {
  /** @type {any} */ (window).copied = "";
  Object.defineProperty(navigator, "clipboard", { configurable: true, value: { writeText: async (/** @type {string} */ text) => void (/** @type {any} */ (window).copied = text) } });
});
const copied = (/** @type {Session} */ session) => session.run(() => /** @type {any} */ (window).copied);

/** A thousand glasses over three hundred bottles, as the largest bar may have them. */
const MANY_BOTTLES = Array.from({ length: 300 }, (_, at) => bottle(`b${at}`, `House bottle ${at}`, "20", "700"));
const MANY_SPECS = Array.from({ length: 1000 }, (_, at) => ({
  ...spec(`s${at}`, `Glass ${at}`, [0, 1, 2, 3].map((step) => line(`b${(at * 7 + step * 41) % 300}`, "20", "ml"))), price: String(6 + (at % 7)),
}));

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "the menu tells cost, price, margin and what is under the wanted one, in any order",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await openOver(session, "menu");
      await says(session, ".tally", "3 glasses. 1 under the wanted margin. 1 without a price. 1 not wholly reckoned.");
      await becomes(() => texts(session, ".menu-list .row"), [
        "Lock Gate£9.50costs £2.58 · margin 67.4 %Under the wanted 75 %", "Sluice£12.00costs £1.79 · margin 82.1 %",
        "The Basinno pricecosts £1.12 · without 1 line",
      ]);
      const ORDER = ".menu select[aria-label='In what order']";
      await pick(session, ORDER, "margin down");
      await becomes(() => menuNames(session), ["Sluice", "Lock Gate", "The Basin"]);
      await pick(session, ORDER, "price up");
      await becomes(() => menuNames(session), ["Lock Gate", "Sluice", "The Basin"]);
      await write(session, ".menu input[type=search]", "LOCK");
      await becomes(() => menuNames(session), ["Lock Gate"]);
      await says(session, ".tally", "1 of 3 glasses. 1 under the wanted margin.");
      await tapOn(session, ".menu-list .row");
      await tap(session, "£2.58costs", ".menu-list .facts");
      await says(session, `${MAT} h2`, "Lock Gate: costs");
      await session.back();
      await session.waitFor((/** @type {string} */ css) => !document.querySelector(css), "the mat to close", MAT);
      await tap(session, "open this glass", ".menu");
      await session.waitFor(() => document.querySelector("main .place.glass"), "the glass");
      await becomes(() => session.value(blank(".glass", "Name of the glass")), "Lock Gate");
    },
  },
  {
    name: "the menu is copied as a table, without a formula in it, and printed as one",
    async play({ session, site }) {
      await openWith(session, site, { ...SHELF, specs: [PRICED, { ...DEARER, name: "=1+1" }] });
      await openOver(session, "menu");
      await becomes(() => menuNames(session), ["=1+1", "Lock Gate"]);
      await holdCopies(session);
      await tap(session, "copy it", ".menu");
      await becomes(() => copied(session), [
        "Glass\tCost, GBP\tPrice, GBP\tMargin, %\tWanted, %\tStrength, % vol\tRemark",
        "'=1+1\t1.79\t12.00\t82.1\t75\t\t", "Lock Gate\t2.58\t9.50\t67.4\t75\t\tUnder the wanted 75 %",
      ].join("\n"));
      await session.run(() => void Object.defineProperty(navigator, "clipboard", { configurable: true, value: undefined }));
      await tap(session, "copy it", ".menu");
      await becomes(async () => (await session.value(".by-hand")).split("\n").length, 3);
      await asOnPaper(session);
      await becomes(() => texts(session, ".paper tbody tr"), ["=1+11.7912.0082.175", "Lock Gate2.589.5067.475Under the wanted 75 %"]);
      await becomes(() => uselessOnPaper(session), []);
    },
  },
  {
    name: "on paper what to buy, a tasting table and what spoils have their figures and no controls",
    async play({ session, site }) {
      await openWith(session, site, {
        ...SHELF,
        draft: {
          shopping: { counts: { lockgate: "40" } }, keeping: { sides: [{ id: "puree", measure: { text: "20", unit: "ml" }, days: "5" }, { id: "bitters", measure: { text: "2", unit: "dash" }, days: "" }], most: "" },
          tasting: { wanted: { measure: { text: "50", unit: "ml" }, rest: "", price: "9.50", target_percent: "" }, offers: [{ name: "Heron gin", price: "20" }], open: false },
        },
      });
      const wanted = { shopping: [".each", "£2.82 for each glass"], keeping: [".paces tbody tr:first-child", "1£3.9734p"], tasting: [".offers > li:first-child .row", "1. Heron gin£1.43 a pourFits: may cost up to £27.71£20.00 a bottle"] };
      for (const [view, [css, text]] of Object.entries(wanted)) {
        await openOver(session, view);
        await asOnPaper(session);
        await says(session, String(css), String(text));
        await becomes(() => uselessOnPaper(session), [], view);
        await session.reload();
        await begun(session);
      }
    },
  },
  {
    name: "a tasting table outlives another tab that never saw it",
    leavesOut: { wpe: "its driver loses the session with the second window" },
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      const [first] = await session.windows();
      const second = await session.openWindow();
      await session.switchTo(second);
      await session.go(site.address);
      await begun(session);
      await session.switchTo(first);
      await openOver(session, "tasting");
      await write(session, offer(1, "What is offered"), "Reed rye");
      const named = async () => JSON.parse((await stored(session))["farthing:draft"] ?? "{}").tasting?.offers[0].name;
      await becomes(named, "Reed rye");
      await session.switchTo(second);
      await write(session, blank(".sum", "What you paid"), "7.77");
      await becomes(async () => JSON.parse((await stored(session))["farthing:draft"] ?? "{}").sum?.bottle.paid.price, "7.77");
      await becomes(() => named(), "Reed rye");
    },
  },
  {
    name: "a thousand glasses over three hundred bottles stand in the menu soon, and are found at once",
    async play({ session, site, say }) {
      await openWith(session, site, { bottles: MANY_BOTTLES, specs: MANY_SPECS });
      await openPlace(session, "shelf");
      const [all_ms, longest_ms] = await session.runAsync(async () => {
        const start = performance.now();
        let [last, longest] = [start, 0];
        /** @type {HTMLElement} */ (document.querySelector("[data-leads=menu]")).click();
        const done = () => /^1000 glasses\.(?!.*reckoning)/.test(document.querySelector(".tally")?.textContent ?? "");
        while (!done() && performance.now() - start < 20_000) {
          await new Promise((resolve) => setTimeout(resolve));
          longest = Math.max(longest, performance.now() - last);
          last = performance.now();
        }
        return [performance.now() - start, longest];
      });
      say(`the whole menu after ${Math.round(all_ms)} ms, at most ${Math.round(longest_ms)} ms in one go`);
      assert.ok(all_ms < 10_000, `${all_ms} ms`);
      assert.ok((await menuNames(session)).length < 200, "more rows are drawn than a phone shows");
      await session.run(() => scrollTo(0, document.documentElement.scrollHeight));
      await session.waitFor(() => document.querySelectorAll(".menu-list > li").length > 60, "more rows");
      await session.run(() => dispatchEvent(new Event("beforeprint")));
      assert.equal((await session.findAll(".paper tbody tr")).length, 1000);
      await write(session, ".menu input[type=search]", "glass 999");
      await becomes(() => menuNames(session), ["Glass 999"]);
    },
  },
  {
    name: "what to buy tells bottles, what is left and the outlay, and is there after a reload",
    async play({ session, site }) {
      const has = { ...RYE, have: { text: "400", unit: "ml" } };
      await openWith(session, site, { ...SHELF, bottles: [has, BITTERS, PUREE] });
      await openOver(session, "shopping");
      await write(session, COUNT, "40");
      await says(session, ".shopping output.answer", "£112.70");
      await becomes(() => texts(session, ".bought li"), [
        "3 × rye whisky (700 ml)£94.20needs 2,000 ml · 400 ml is there · leaves 500 ml",
        "1 × orange bitters (100 ml)£18.50needs 73.6 ml · leaves 26.4 ml",
      ]);
      await says(session, ".shopping .each", "£2.82 for each glass");
      await becomes(async () => (await texts(session, ".falls tbody tr"))[0], "1£49.90£49.90");
      await holdCopies(session);
      await tap(session, "copy it", ".shopping");
      await becomes(async () => (await copied(session)).replace(/\u00a0/g, " ").split("\n").slice(1, 4), ["For 40 Lock Gate.", "", "3 × rye whisky (700 ml): £94.20 – needs 2,000 ml · 400 ml is there · leaves 500 ml"]);
      await write(session, COUNT, "1");
      await says(session, ".bought .small", "So much is laid out for a first glass; what is left in the bottles serves the next.");
      await write(session, COUNT, "1.5");
      await says(session, ".counts .wrong:not([hidden])", "“1.5” must be a whole number. Try 6 or 12.");
      await write(session, COUNT, "25");
      await becomes(async () => JSON.parse((await stored(session))["farthing:draft"] ?? "{}").shopping?.counts.lockgate, "25");
      await session.reload();
      await begun(session);
      await openOver(session, "shopping");
      await becomes(() => session.value(COUNT), "25");
      await session.back();
      await gone(session);
    },
  },
  {
    name: "a tasting table ranks offers, says what fits, and outlives a reload",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await openOver(session, "tasting");
      await fill(session, { [blank(".tasting", "What the rest of the glass costs")]: "0.20", [blank(".tasting", "What the glass sells at")]: "9.50" });
      await write(session, offer(1, "What is offered"), "Reed rye");
      await write(session, offer(1, "What is asked for it"), "41");
      await write(session, offer(1, "The deal, such as 3 for 2"), "3 for 2");
      await becomes(() => textOf(session, ".offers > li:first-child .row"), "1. Reed rye£1.95 a pourToo dear: may cost up to £37.36£27.33 a bottle · 3 bottles at once");
      await tap(session, "keep", ".offers > li:first-child");
      await tapOn(session, ".offers > li:first-child .row");
      await tapOn(session, ".offers > li:nth-child(2) .row");
      await write(session, offer(2, "What is offered"), "Heron gin");
      await write(session, offer(2, "What is asked for it"), "20");
      await write(session, offer(2, "What you think of it"), "clean");
      await becomes(() => textOf(session, ".offers > li:nth-child(2) .row"), "1. Heron gin£1.43 a pourFits: may cost up to £24.91£20.00 a bottle · clean");
      // What is filled in stands still; the cheapest comes first once it is folded.
      await tap(session, "keep", ".offers > li:nth-child(2)");
      await tapOn(session, ".offers > li:nth-child(2) .row");
      await becomes(() => texts(session, ".offers .what"), ["1. Heron gin", "2. Reed rye"]);
      await becomes(async () => JSON.parse((await stored(session))["farthing:draft"] ?? "{}").tasting?.offers.length, 2);
      await session.reload();
      await begun(session);
      // It is open again, as it was left.
      await becomes(() => texts(session, ".offers .what"), ["1. Heron gin", "2. Reed rye"]);
      await tap(session, "Put the 2 kept on the shelf", ".tasting");
      await noted(session, "2 are on the shelf.");
      await tap(session, "Back", ".tasting");
      await gone(session);
      await becomes(async () => (await texts(session, ".shelf-list .of-bottle .what")).sort(), ["Heron gin", "Reed rye", "orange bitters", "pear puree", "rye whisky"]);
      const { tasting } = JSON.parse((await stored(session))["farthing:draft"] ?? "{}");
      const { record } = await storedRecord(session, bottleKey(tasting.offers[0]));
      assert.deepEqual([record.name, record.paid.price, record.paid.bottles, record.holds.text], ["Reed rye", "82", "3", "700"]);
      await session.reload();
      await begun(session);
      await openPlace(session, "shelf");
      assert.equal(await session.run(() => document.querySelector(".over")), null);
    },
  },
  {
    name: "an offer that cannot be read says what to mend, and one taken off comes back",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await openOver(session, "tasting");
      await write(session, offer(1, "What is asked for it"), "1,250");
      await says(session, ".offers .wrong:not([hidden]) span", "“1,250” could be 1.25 or 1250. Which is it?");
      await write(session, offer(1, "The deal, such as 3 for 2"), "some off");
      await becomes(async () => (await texts(session, ".offers .wrong")).length, 2);
      await write(session, offer(1, "What is offered"), "<b>Odd</b>");
      await tap(session, "take it off", ".offers > li:first-child");
      await noted(session, "<b>Odd</b> is off the table.");
      assert.equal((await session.findAll(".offers > li")).length, 1);
      await tap(session, "Undo", "#notes");
      await becomes(async () => (await session.findAll(".offers > li")).length, 2);
    },
  },
  {
    name: "what spoils is laid beside another bottle, in words, as a picture and as a table",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await openOver(session, "keeping");
      // The bottle that spoils stands there already.
      await becomes(() => session.value(blank(".keeping", "The first bottle")), "pear puree");
      await write(session, blank(".keeping", "The measure of the first bottle"), "20");
      await write(session, blank(".keeping", "The second bottle"), "orange bitters");
      await write(session, blank(".keeping", "The measure of the second bottle"), "2 dashes");
      await says(session, ".finding", "Under 27.1 glasses a week the cheaper one is orange bitters; above that, pear puree.");
      await becomes(() => texts(session, ".paces thead th"), ["a week", "pear puree", "orange bitters"]);
      await becomes(async () => (await texts(session, ".paces tbody tr")).length, 7);
      await becomes(() => session.run(() => [...document.querySelectorAll(".keeping .pace-line")].map((each) => each.getAttribute("stroke-dasharray"))), [null, null, "8 6", "8 6"]);
      await tap(session, "27ppear puree, if it never spoilt", ".keeping");
      await says(session, `${MAT} h2`, "pear puree, if it never spoilt");
      await session.back();
      await write(session, blank(".keeping", "How many days the first keeps once open"), "");
      await says(session, ".keeping .fact span", "pear puree, which does not spoil");
      await write(session, blank(".keeping", "The second bottle"), "nothing of the kind");
      await says(session, ".keeping .apart", "No bottle of the shelf is called “nothing of the kind”. Tap one of the likely ones below.");
      await becomes(async () => JSON.parse((await stored(session))["farthing:draft"] ?? "{}").keeping?.sides[0].measure.text, "20");
      await session.reload();
      await begun(session);
      await openOver(session, "keeping");
      await becomes(() => session.value(blank(".keeping", "The measure of the first bottle")), "20");
    },
  },
];
