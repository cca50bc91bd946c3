// @ts-check
/** A pasted recipe becomes a glass, and a glass a recipe. */
import assert from "node:assert/strict";
import { asOnPaper, uselessOnPaper } from "../look/print.mjs";
import { becomes, blank, fill, noted, pick, says, tap, texts, TOTAL, unitOf } from "./page/places.mjs";
import { choose } from "./page/files.mjs";
import { BITTERS, house, LOCK_GATE, openWith, RYE, SODA, stored } from "./page/records.mjs";
import { openOver, openSend, PASTED } from "./page/states.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const SHELF = { bottles: [RYE, BITTERS, SODA], specs: [LOCK_GATE] };
const PART = blank(".recipe", "How large one part is");
const NAME = blank(".recipe", "Name of the drink");
const rows = (/** @type {Session} */ session) => texts(session, ".recipe .offer .row");
const faces = (/** @type {Session} */ session) => texts(session, ".recipe .offer .face");
/** What a line is on the shelf. @param {number} at */
const is = (at) => `.recipe .offer:nth-child(${at}) select`;

/** @param {Session} session @param {string} text */
async function paste(session, text) {
  await openOver(session, "recipe");
  await fill(session, { [PASTED]: text });
}

/** @param {Session} session */
async function makeGlass(session) {
  await tap(session, "Make a glass of it", ".recipe");
  await session.waitFor(() => document.querySelector("main .place.glass .line"), "the glass");
}

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "lines of a recipe become a glass that costs, and nothing is kept before the glass is",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      const keys = async () => Object.keys(await stored(session)).filter((key) => key !== "farthing:draft").sort();
      const kept = await keys();
      await paste(session, "For the glass:\n50 ml rye whisky\n2 dashes orange bitters (optional)\n1 lemon twist, to garnish\n\n20 ml pear syrup");
      await becomes(() => rows(session), ["For the glass", "50 ml of rye whisky", "2 dashes of orange bitters", "1 piece of lemon twist", "20 ml of pear syrup"]);
      await becomes(() => texts(session, ".recipe .row-under"), ["a heading: nothing is poured", "may be left out", "garnish"]);
      await becomes(() => faces(session), ["rye whisky?", "orange bitters?", "something new, without a price", "something new, without a price"]);
      await becomes(() => texts(session, ".recipe .offer .lead"), ["is it", "is it", "is it", "is it"]);
      await pick(session, is(4), "out:");
      await fill(session, { [NAME]: "Weir" });
      await makeGlass(session);
      await becomes(() => session.value(blank(".glass", "Name of the glass")), "Weir");
      await becomes(() => texts(session, ".glass .line .what"), ["50 ml of rye whisky", "2 dashes of orange bitters (optional)", "20 ml of pear syrup"]);
      await says(session, TOTAL, "£2.58");
      await says(session, ".glass .without", "without 1 line");
      assert.deepEqual(await keys(), kept);
      await noted(session, "That is the glass. It is not kept yet.");
      await tap(session, "Undo", "#notes");
      await becomes(() => session.value(blank(".glass", "Name of the glass")), "Lock Gate");
      await openOver(session, "recipe");
      await becomes(() => faces(session), ["rye whisky?", "orange bitters?", "leave it out", "something new, without a price"]);
      await tap(session, "start over", ".recipe");
      await becomes(() => rows(session), []);
      await tap(session, "Undo", "#notes");
      await becomes(async () => (await rows(session)).length, 5);
    },
  },
  {
    name: "a recipe comes from a file too, what was typed can be had back, and a note stays with its line",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await paste(session, "20 ml gin");
      await becomes(() => rows(session), ["20 ml of gin"]);
      const data = { "@type": "Recipe", name: "Weir", recipeIngredient: ["50 ml rye whisky, chilled", "2 dashes orange bitters (optional)"] };
      await choose(session, JSON.stringify(data), ".recipe");
      await becomes(() => rows(session), ["50 ml of rye whisky", "2 dashes of orange bitters"]);
      await tap(session, "Undo", "#notes");
      await becomes(() => rows(session), ["20 ml of gin"]);
      await choose(session, JSON.stringify(data), ".recipe");
      await becomes(async () => (await rows(session)).length, 2);
      await makeGlass(session);
      const lines = () => texts(session, ".glass .line .what");
      await becomes(lines, ["50 ml of rye whisky (chilled)", "2 dashes of orange bitters (optional)"]);
      await session.run(() => /** @type {HTMLElement} */ (document.querySelector(".glass .line .row")).click());
      await fill(session, { [blank(".glass .line", "What else is said of it")]: "from the cellar" });
      await becomes(lines, ["50 ml of rye whisky (from the cellar)", "2 dashes of orange bitters (optional)"]);
      await tap(session, "Keep this glass on the shelf", ".glass");
      await becomes(async () => Object.values(await stored(session)).some((text) => text.includes('"note":"from the cellar"')), true);
      await openSend(session);
      await becomes(async () => (await session.value(".send textarea[aria-label='As recipe data']")).includes('["50 ml rye whisky (from the cellar)","2 dashes orange bitters (optional)"]'), true);
    },
  },
  {
    name: "a line of a recipe that is not understood stays, with what is wrong with it",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await paste(session, "50 ml rye whisky\nsomething of the garden\na pinch of soda water");
      await becomes(() => rows(session), ["50 ml of rye whisky", "something of the garden", "a pinch of soda water"]);
      await becomes(() => texts(session, ".recipe .flag"), ["How much of it goes in? Try 25 ml, 2 dashes or 1 piece.", "“pinch” is no measure this page knows. Try ml, cl, oz, dash or piece."]);
      await says(session, ".recipe .lines-read", "3 lines. 2 could not be read wholly.");
      await becomes(() => faces(session), ["rye whisky?", "a note, as it stands", "a note, as it stands"]);
      await makeGlass(session);
      await becomes(() => texts(session, ".glass .line .what"), ["50 ml of rye whisky", "something of the garden", "a pinch of soda water"]);
    },
  },
  {
    name: "what only shares a word with a bottle is not taken for it, and a bullet is no part of a name",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await paste(session, "- 50 ml rye\n- 100 ml tonic water\n- 1 orange twist, to garnish\n- ice");
      await becomes(() => rows(session), ["50 ml of rye", "100 ml of tonic water", "1 piece of orange twist", "ice"]);
      await becomes(() => faces(session), ["rye whisky?", "something new, without a price", "something new, without a price", "a note, as it stands"]);
      await makeGlass(session);
      await becomes(() => texts(session, ".glass .line .what"), ["50 ml of rye whisky", "100 ml of tonic water", "1 piece of orange twist (garnish)", "ice"]);
    },
  },
  {
    name: "a title is the name of the drink, and what is only said is poured into no glass, unless a person says so",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await paste(session, "Lock Keeper\nServes 2\n\n- 50 ml rye whisky\n- 2 dashes orange bitters\n\nStir with ice and strain.");
      await becomes(() => rows(session), ["Lock Keeper", "Serves 2", "50 ml of rye whisky", "2 dashes of orange bitters", "Stir with ice and strain."]);
      await becomes(() => faces(session), ["the name of the drink", "how many it makes", "rye whisky?", "orange bitters?", "what is said"]);
      await becomes(() => session.value(NAME), "Lock Keeper");
      await says(session, ".recipe .lines-read", "5 lines. It makes 2: this glass is all of them together.");
      await makeGlass(session);
      await becomes(() => session.value(blank(".glass", "Name of the glass")), "Lock Keeper");
      await becomes(() => texts(session, ".glass .line .what"), ["50 ml of rye whisky", "2 dashes of orange bitters"]);
      await openOver(session, "recipe");
      await fill(session, { [NAME]: "Weir" });
      await pick(session, is(5), "new:");
      await makeGlass(session);
      await becomes(() => session.value(blank(".glass", "Name of the glass")), "Weir");
      await becomes(() => texts(session, ".glass .line .what"), ["50 ml of rye whisky", "2 dashes of orange bitters", "Stir with ice and strain."]);
    },
  },
  {
    name: "the recipe data of a page are read, their name too; damaged data are told as such",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      const data = JSON.stringify({ "@context": "https://schema.org", "@graph": [{ "@type": "WebPage" }, { "@type": ["Recipe"], name: "Towpath", recipeIngredient: ["40 ml rye whisky", "100 ml soda water"] }] });
      await paste(session, data.slice(0, -2));
      await says(session, `${PASTED} + p`, "No recipe can be read in that, or it is damaged. Try its list of ingredients, as text.");
      await fill(session, { [PASTED]: data });
      await becomes(() => rows(session), ["40 ml of rye whisky", "100 ml of soda water"]);
      await becomes(() => texts(session, `${PASTED} + p`), []);
      await becomes(() => session.value(NAME), "Towpath");
      await fill(session, { [PASTED]: "" });
      await becomes(() => rows(session), []);
      await fill(session, { [PASTED]: `<!doctype html><title>x</title><script type="application/ld+json"><!-- ${data.replace("100 ml", "&frac12; cup")} --></script>` });
      await becomes(() => rows(session), ["40 ml of rye whisky", "½ cup, 250 ml of soda water"]);
      await fill(session, { [PASTED]: data });
      await becomes(() => rows(session), ["40 ml of rye whisky", "100 ml of soda water"]);
      await makeGlass(session);
      await says(session, TOTAL, "£2.39");
    },
  },
  {
    name: "a recipe in parts asks how large one part is",
    async play({ session, site }) {
      await openWith(session, site, SHELF);
      await paste(session, "2 parts rye whisky\n1 part soda water");
      await becomes(() => rows(session), ["2 parts rye whisky", "1 part soda water"]);
      await becomes(() => texts(session, ".recipe .flag"), ["How large is one part? Try 30 ml.", "How large is one part? Try 30 ml."]);
      await fill(session, { [PART]: "25" });
      await becomes(() => rows(session), ["50 ml of rye whisky", "25 ml of soda water"]);
      await pick(session, unitOf(".recipe", "How large one part is"), "cl");
      await becomes(() => rows(session), ["50 cl of rye whisky", "25 cl of soda water"]);
      await fill(session, { [PART]: "2.5 of them" });
      await says(session, ".recipe .wrong", "“of them” is no measure this page knows. Try ml, cl, oz, dash or piece.");
      await fill(session, { [PART]: "" });
      await becomes(async () => (await rows(session))[0], "2 parts rye whisky");
      await makeGlass(session);
      await says(session, ".glass .line .what", "2 parts of rye whisky");
    },
  },
  {
    name: "hostile text in a recipe is text, and a glass given out as recipe data is read again",
    async play({ session, site }) {
      const hostile = "<img src=x onerror=alert(1)>";
      await openWith(session, site, { ...SHELF, house: house(), bottles: [{ ...RYE, name: `rye ${hostile}` }, BITTERS] });
      await paste(session, `50 ml rye ${hostile}\n</textarea><script>alert(1)</script>`);
      await becomes(async () => (await rows(session)).length, 2);
      assert.match(String((await faces(session))[0]), /^rye <img/);
      await openSend(session);
      const GIVEN = ".send textarea[aria-label='As recipe data']";
      await session.waitFor((/** @type {string} */ css) => /** @type {HTMLTextAreaElement} */ (document.querySelector(css))?.value, "the recipe data", GIVEN);
      const given = await session.value(GIVEN);
      assert.equal(JSON.parse(given).name, "Lock Gate");
      await paste(session, given);
      await becomes(() => session.value(NAME), "Lock Gate");
      assert.equal((await faces(session))[1], "orange bitters?");
      assert.deepEqual(await session.run(() => document.querySelectorAll("main :is(img, script)").length), 0);
      await asOnPaper(session);
      await becomes(() => uselessOnPaper(session), []);
    },
  },
];
