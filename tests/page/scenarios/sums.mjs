// @ts-check
import assert from "node:assert/strict";
import { KEYS } from "../webdriver.mjs";
import { speaks } from "./page/early.mjs";
import { ANSWER, answered, becomes, FACTS, HOLDS, MAT, MEASURE, NAME, OPEN_WORKING, pick, PRICE, says, SPOKEN, tap, textOf, texts, unitOf, write } from "./page/places.mjs";
import { BITTERS, openWith } from "./page/records.mjs";
import { STATES } from "./page/states.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

/** Between two keys of a quick thumb. */
const QUICK_KEY_MS = 80;

/** The blanks of the sum and what its answer becomes. @param {Session} session @param {string} price @param {string} holds @param {string} measure */
async function typeSum(session, price, holds, measure) {
  await write(session, PRICE, price);
  await write(session, HOLDS, holds);
  await write(session, MEASURE, measure);
}

const wrongs = (/** @type {Session} */ session) => texts(session, ".sum .wrong");

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "18.50 for 100 ml, 2 dashes: 34p, and the working says how",
    async play({ session, site }) {
      await openWith(session, site);
      await typeSum(session, "18.50", "100", "2");
      await says(session, ANSWER, "34p");
      await becomes(() => texts(session, FACTS), ["1.84 ml", "18.5p", "54"]);
      await session.click(OPEN_WORKING);
      await becomes(() => texts(session, `${MAT} .sum-line`), [
        "2 dashes × 0.92 ml = 1.84 ml",
        "18.50 × 1.84 ml ÷ 100 ml = 0.3404",
      ]);
      await becomes(() => textOf(session, `${MAT} .comes-to`), "34p0.3404, rounded half away from nought");
      assert.match(await textOf(session, `${MAT} .assumed`), /^A dash is taken as 0\.92 ml\. .*1\/32 of a US fluid ounce/);
      await tap(session, "Close", MAT);
      await becomes(() => texts(session, MAT), []);
    },
  },
  {
    name: "a first visit meets 34p with nothing typed",
    async play({ session, site }) {
      speaks(site, "en-GB");
      await session.go(site.address);
      await answered(session);
      await becomes(() => textOf(session, ANSWER), "34p");
      await becomes(() => session.value(PRICE), "18.50");
      await becomes(() => textOf(session, ".sum .sign"), "£");
    },
  },
  {
    name: "the answer moves with every key",
    async play({ session, site }) {
      await openWith(session, site);
      await typeSum(session, "", "100", "2");
      assert.equal(await textOf(session, ANSWER), "");
      const steps = [["1", "1.8p"], ["8", "33p"], [".", "33p"], ["5", "34p"], ["0", "34p"]];
      for (const [index, [key, answer]] of steps.entries()) {
        if (index === 0) await write(session, PRICE, String(key));
        else await session.press(String(key));
        assert.equal(await textOf(session, ANSWER), answer, `after ${steps.slice(0, index + 1).map(([typed]) => typed).join("")}`);
      }
      await write(session, MEASURE, "2");
      await session.press("5");
      assert.equal(await textOf(session, ANSWER), "£4.26");
      await session.press(KEYS.backspace, KEYS.backspace);
      assert.equal(await textOf(session, ANSWER), "");
    },
  },
  {
    name: "1,5 is one and a half, and never fifteen",
    async play({ session, site }) {
      await openWith(session, site);
      const answers = [];
      for (const price of ["1.5", "1,5", "15"]) {
        await typeSum(session, price, "100", "50 ml");
        await becomes(() => session.value(PRICE), price);
        answers.push(await textOf(session, ANSWER));
      }
      assert.deepEqual(answers, ["75p", "75p", "£7.50"]);
      await typeSum(session, "18.50", "100", "1,5 dashes");
      await becomes(() => session.value(MEASURE), "1,5 dashes");
      await becomes(async () => (await texts(session, FACTS))[0], "1.38 ml");
    },
  },
  {
    name: "where a comma stands before decimals, 1.5 is one and a half too",
    async play({ session, site }) {
      speaks(site, "de-DE");
      await openWith(session, site);
      const answers = [];
      for (const price of ["1.5", "1,5", "15"]) {
        await typeSum(session, price, "100", "50 ml");
        answers.push(await textOf(session, ANSWER));
      }
      assert.deepEqual(answers, ["75p", "75p", "7,50 £"]);
      await write(session, PRICE, "1.250");
      await becomes(() => wrongs(session), ["“1.250” could be 1,25 or 1250. Which is it?1,251250"]);
      await tap(session, "1,25", ".sum .wrong");
      await becomes(() => session.value(PRICE), "1,25");
      await becomes(() => wrongs(session), []);
    },
  },
  {
    name: "what could be two numbers is asked about beside its blank",
    async play({ session, site }) {
      await openWith(session, site);
      await typeSum(session, "1,250", "700", "50 ml");
      await becomes(() => wrongs(session), ["“1,250” could be 1.25 or 1250. Which is it?1.251250"]);
      await becomes(() => textOf(session, ".sum .wrong span"), "“1,250” could be 1.25 or 1250. Which is it?");
      await becomes(() => session.value(PRICE), "1,250");
      await becomes(() => textOf(session, ANSWER), "");
      const [amount, , many] = await texts(session, FACTS);
      assert.deepEqual([amount, many], ["50 ml", "14"]);
      // The question stands in the clause of its blank, and the blank names it.
      assert.ok(await session.run((/** @type {string} */ css) => {
        const field = /** @type {HTMLInputElement} */ (document.querySelector(css));
        const told = document.getElementById(field.getAttribute("aria-describedby") ?? "");
        return field.getAttribute("aria-invalid") === "true" && told?.closest(".clause") === field.closest(".clause");
      }, PRICE));
      await tap(session, "1250", ".sum .wrong");
      await becomes(async () => [await session.value(PRICE), await textOf(session, ANSWER)], ["1250", "£89.29"]);
      await becomes(() => wrongs(session), []);
      await becomes(() => session.run((/** @type {string} */ css) => document.querySelector(css)?.getAttribute("aria-invalid"), PRICE), null);
    },
  },
  {
    name: "half a number is no mistake of the other blanks",
    async play({ session, site }) {
      await openWith(session, site);
      await typeSum(session, "18.50", "100", "2");
      const halves = [
        ["18.", "33p", []],
        [".", "", ["“.” is not a number this page can read. Try 2, 1.5 or 1 1/2."]],
        ["-", "", ["Less than nothing cannot be paid or poured. Leave out the minus."]],
        ["1/", "", ["“1/” is not a number this page can read. Try 2, 1.5 or 1 1/2."]],
        ["1/0", "", ["“1/0” divides by nought. Try 1/2."]],
        ["abc", "", ["“abc” is not a number this page can read. Try 2, 1.5 or 1 1/2."]],
        ["", "", []],
        ["18 1/2", "34p", []],
      ];
      for (const [typed, answer, wrong] of halves) {
        await write(session, PRICE, String(typed));
        await becomes(() => session.value(PRICE), typed);
        await becomes(async () => [await textOf(session, ANSWER), await wrongs(session)], [answer, wrong], `for “${typed}”`);
        await becomes(async () => (await texts(session, FACTS))[0], "1.84 ml", `for “${typed}”`);
        assert.doesNotMatch(await textOf(session, ".sum"), /NaN|Infinity|undefined|null|−0/);
      }
      await write(session, MEASURE, "2 da");
      await becomes(() => wrongs(session), ["“da” is no measure this page knows. Try ml, cl, oz, dash or piece."]);
      await write(session, HOLDS, "0");
      await says(session, ".sum .wrong", "A bottle holds more than 0. Try what the label says: 700 ml.");
    },
  },
  {
    name: "taps alone give an answer",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [BITTERS] });
      await session.click(NAME);
      await tap(session, "orange bitters", "#chips");
      await tap(session, "2 dashes", "#chips");
      await becomes(() => textOf(session, ANSWER), "34p");
      await tap(session, "½ dropper", "#chips");
      await becomes(() => session.value(MEASURE), "½");
      await becomes(() => session.value(unitOf(".sum", "The measure")), "dropper");
      await session.click(HOLDS);
      await tap(session, "200 ml", "#chips");
      await becomes(() => session.value(HOLDS), "200");
      await session.click(MEASURE);
      await tap(session, "2 dashes", "#chips");
      await becomes(() => textOf(session, ANSWER), "17p");
    },
  },
  {
    name: "a unit in the text wins, and moves the picker beside it",
    async play({ session, site }) {
      await openWith(session, site);
      const unit = unitOf(".sum", "The measure");
      await typeSum(session, "18.50", "100", "5 cl");
      await becomes(() => session.value(unit), "cl");
      await becomes(() => textOf(session, ANSWER), "£9.25");
      await write(session, MEASURE, "2 dashes");
      await becomes(() => session.value(unit), "dash");
      await becomes(() => textOf(session, ANSWER), "34p");
      // The picker wins in turn when it is the one that is touched.
      await pick(session, unit, "ml");
      await becomes(async () => [await session.value(MEASURE), await textOf(session, ANSWER)], ["2", "37p"]);
      await write(session, HOLDS, "1 l");
      await becomes(() => session.value(unitOf(".sum", "How much one bottle holds")), "l");
    },
  },
  {
    name: "the caret stays where one types",
    async play({ session, site }) {
      await openWith(session, site);
      await typeSum(session, "1850", "100", "2");
      const caretAt = (/** @type {number} */ at) => session.run((/** @type {string} */ css, /** @type {number} */ place) => {
        const field = /** @type {HTMLInputElement} */ (document.querySelector(css));
        field.focus();
        field.setSelectionRange(place, place);
      }, PRICE, at);
      const state = () => session.run((/** @type {string} */ css) => {
        const field = /** @type {HTMLInputElement} */ (document.querySelector(css));
        return [field.value, field.selectionStart, field.selectionEnd, document.activeElement === field];
      }, PRICE);
      await caretAt(2);
      await session.press(".");
      await becomes(() => state(), ["18.50", 3, 3, true]);
      await caretAt(1);
      await session.press("9", "7");
      await becomes(() => state(), ["1978.50", 3, 3, true]);
      await session.press(KEYS.backspace);
      await becomes(() => state(), ["198.50", 2, 2, true]);
      // Nor does it jump when the page says something is wrong, or that it is right again.
      await caretAt(3);
      await session.press("x");
      await becomes(() => state(), ["198x.50", 4, 4, true]);
      await session.press(KEYS.backspace);
      await becomes(() => state(), ["198.50", 3, 3, true]);
    },
  },
  {
    name: "every blank for a number brings up the keypad, and no phone zooms in on it",
    async play({ session, site }) {
      await session.go(site.address);
      await answered(session);
      let seen = 0;
      for (const { name, open } of STATES) {
        await open(session);
        const { count, bad } = await session.run(() => {
          const shown = [...document.querySelectorAll("input:not([type=file]), select")].filter((each) => each.getClientRects().length > 0);
          const numbers = shown.filter((each) => each.matches("input.number"));
          const wanted = { inputmode: "decimal", type: "text", autocomplete: "off", autocapitalize: "none", spellcheck: "false" };
          const faults = (/** @type {Element} */ field) => [
            ...Object.entries(wanted).filter(([key, value]) => field.getAttribute(key) !== value).map(([key]) => key),
            ...(field.getAttribute("enterkeyhint") ? [] : ["enterkeyhint"]),
          ];
          return {
            count: numbers.length,
            bad: [
              ...numbers.flatMap((field) => faults(field).map((fault) => `${field.getAttribute("aria-label")}: ${fault}`)),
              ...shown.filter((field) => parseFloat(getComputedStyle(field).fontSize) < 16).map((field) => `${field.getAttribute("aria-label")}: small`),
              ...[...document.querySelectorAll("input[type=number]")].map(() => "type=number"),
            ],
          };
        });
        assert.deepEqual(bad, [], name);
        seen += count;
      }
      assert.ok(seen > 20, `only ${seen} blanks`);
    },
  },
  {
    name: "Enter leads to the next blank",
    async play({ session, site }) {
      await openWith(session, site);
      await write(session, PRICE, "18.50");
      await session.press(KEYS.enter);
      const here = () => session.run(() => document.activeElement?.getAttribute("aria-label"));
      await becomes(() => here(), "How much one bottle holds");
      await session.press("1", "0", "0", KEYS.enter, KEYS.enter, "2");
      await becomes(() => here(), "The measure");
      await becomes(() => textOf(session, ANSWER), "34p");
    },
  },
  {
    name: "ten quick keys are spoken once, when they have settled",
    async play({ session, site }) {
      await openWith(session, site);
      await typeSum(session, "18.50", "100", "1");
      await says(session, SPOKEN, "1 dash: 17p, between 3p and 23p");
      await session.run(() => {
        const heard = { count: 0, changes: 0 };
        const live = document.querySelectorAll("[role=status], [role=alert], [role=log], [aria-live]:not([aria-live=off]), output:not([aria-live=off])");
        for (const region of live) {
          new MutationObserver(() => (heard.count += 1)).observe(region, { childList: true, characterData: true, subtree: true });
        }
        const answer = /** @type {Element} */ (document.querySelector(".sum output.answer"));
        new MutationObserver(() => (heard.changes += 1)).observe(answer, { childList: true, characterData: true, subtree: true });
        Object.assign(window, { heardLive: heard });
      });
      for (const key of [...["5", "6", "7", "8"].flatMap((digit) => [digit, KEYS.backspace]), "9", "9"]) {
        await session.press(key);
        await new Promise((resolve) => setTimeout(resolve, QUICK_KEY_MS));
      }
      await says(session, SPOKEN, "199 dashes: £33.87, about £34, between £6 and £45");
      const { count, changes } = await session.run(() => /** @type {any} */ (window).heardLive);
      assert.ok(changes >= 8, `the answer moved ${changes} times`);
      assert.ok(count >= 1 && count <= 2, `${count} announcements`);
    },
  },
];
