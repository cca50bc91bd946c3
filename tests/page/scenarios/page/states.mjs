// @ts-check
/**
 * Every state that the page can be looked at in, each reached from any other. The shelf must hold
 * something: the worked example of a first visit will do.
 */

import { blank, fill, HOLDS, MAT, MEASURE, OPEN_WORKING, openPlace, PRICE, SHELF_ROW } from "./places.mjs";
import { readCases } from "../../golden.mjs";
import { bottle, fileOf, house, spec, line } from "./records.mjs";
import { choose } from "./files.mjs";

/** @typedef {import("../../webdriver.mjs").Session} Session */

/** Opens every clause that is folded away. @param {Session} session @param {string} within */
export const unfoldAll = (session, within) => session.run((/** @type {string} */ css) => {
  for (const button of document.querySelectorAll(`${css} .also [aria-expanded=false][data-key]`)) /** @type {HTMLElement} */ (button).click();
  for (const fold of document.querySelectorAll(`${css} details`)) /** @type {HTMLDetailsElement} */ (fold).open = true;
}, within);

/** Opens something by its words, however it lies on the screen: how it is hit is looked at elsewhere. @param {Session} session @param {string} words @param {string} within */
const open = (session, words, within) => session.run((/** @type {string} */ text, /** @type {string} */ css) => {
  const found = [...document.querySelectorAll(`${css} button`)].find((each) => each.textContent?.trim() === text);
  if (!found) throw new Error(`there is no “${text}”`);
  /** @type {HTMLElement} */ (found).click();
}, words, within);

/** @param {Session} session */
async function theSum(session) {
  await openPlace(session, "sum");
  await fill(session, { [PRICE]: "18.50", [HOLDS]: "100", [MEASURE]: "2 dashes" });
}

/** @param {Session} session */
async function theDoubt(session) {
  await theSum(session);
  await session.waitFor(() => document.querySelector(".sum .around:not([hidden]) button"), "a range");
  await session.run(() => /** @type {HTMLElement} */ (document.querySelector(".sum .around button")).click());
  await session.waitFor((/** @type {string} */ css) => document.querySelector(`${css} .parts`), "the doubt", MAT);
}

/** @param {Session} session @param {string} kind */
async function firstRow(session, kind) {
  await openPlace(session, "shelf");
  await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "a row of the shelf", `.of-${kind} .row`);
  await session.run((/** @type {string} */ css) => /** @type {HTMLElement} */ (document.querySelector(css)).click(), `.of-${kind} .row`);
}

/** Opens a view over the shelf. @param {Session} session @param {string} view */
export async function openOver(session, view) {
  await openPlace(session, "shelf");
  await session.run((/** @type {string} */ name) => /** @type {HTMLElement} */ (document.querySelector(`[data-leads=${name}]`)).click(), view);
  await session.waitFor((/** @type {string} */ name) => document.querySelector(`main .over.${name}`), view, view);
}

/** @param {Session} session */
async function theMenu(session) {
  await openOver(session, "menu");
  await session.waitFor(() => /\d/.test(document.querySelector(".menu-list .row-under")?.textContent ?? ""), "a glass that is reckoned");
  await session.run(() => /** @type {HTMLElement} */ (document.querySelector(".menu-list .row")).click());
}

/** @param {Session} session */
async function whatToBuy(session) {
  await openOver(session, "shopping");
  await session.run(() => document.querySelector(".counts input")?.setAttribute("data-first", ""));
  await fill(session, { ".counts [data-first]": "40" });
  await session.waitFor(() => document.querySelector(".bought .row"), "what to buy");
}

/** @param {Session} session */
async function theTable(session) {
  await openOver(session, "tasting");
  await session.run(() => /** @type {HTMLElement} */ (document.querySelector(".offers .row[aria-expanded=false]"))?.click());
  await fill(session, {
    [blank(".tasting", "What the glass sells at")]: "9.50", [blank(".offers > li:first-child", "What is offered")]: "Heron gin", [blank(".offers > li:first-child", "What is asked for it")]: "24.60",
  });
  await session.waitFor(() => document.querySelector(".offers .facts .fact"), "the offer weighed");
}

/** @param {Session} session */
async function whatSpoils(session) {
  await openOver(session, "keeping");
  await fill(session, {
    [blank(".keeping", "The first bottle")]: "rosemary syrup", [blank(".keeping", "The measure of the first bottle")]: "20", [blank(".keeping", "How many days the first keeps once open")]: "7",
    [blank(".keeping", "The second bottle")]: "orange bitters", [blank(".keeping", "The measure of the second bottle")]: "2 dashes",
  });
  await session.waitFor(() => document.querySelector(".keeping svg"), "the picture");
}

/** Where a recipe is pasted. */
export const PASTED = ".recipe textarea:not([readonly])";

/** @param {Session} session */
async function thePastedRecipe(session) {
  await openOver(session, "recipe");
  await fill(session, { [PASTED]: "For the glass:\n50 ml dry gin\n2 parts lemon juice, freshly pressed and strained\n2 dashes orange bitters (optional)\n1 lemon twist, to garnish\nsomething of the garden" });
  await session.waitFor(() => document.querySelectorAll(".recipe .offer").length === 6, "six lines");
}

/** Opens the view that sends the glass at hand. @param {Session} session */
export async function openSend(session) {
  await openPlace(session, "glass");
  await session.waitFor(() => [...document.querySelectorAll("main > .glass > .quiet")].some((each) => each.textContent === "send it" && each.getClientRects().length > 0), "a glass to send");
  await open(session, "send it", "main > .glass");
  await session.waitFor(() => /\n.*\n/.test(/** @type {HTMLTextAreaElement} */ (document.querySelector(".send textarea"))?.value ?? ""), "the glass as text");
}

/** A glass as it was sent once, with prices and without: these links stand in the golden cases too. */
export const [SENT, SENT_WITHOUT] = readCases().filter(({ call }) => call === "linked").map(({ ask }) => /** @type {{ fragment: string }} */ (ask).fragment);

/** Opens a link on the page as it stands. @param {Session} session @param {string} fragment */
export async function openLink(session, fragment) {
  await session.run((/** @type {string} */ hash) => void (location.hash = hash), fragment);
  await session.waitFor(() => document.querySelector("main > .over.sent"), "what was sent");
}

/** @type {{ name: string, open: (session: Session) => Promise<void> }[]} */
export const STATES = [
  { name: "the sum", open: theSum },
  {
    name: "the sum with every clause",
    async open(session) {
      await theSum(session);
      await unfoldAll(session, ".sum");
    },
  },
  {
    name: "the sum with problems",
    async open(session) {
      await theSum(session);
      await fill(session, { [PRICE]: "1,250", [MEASURE]: "2 of them" });
      await session.waitFor(() => document.querySelectorAll(".sum .wrong:not([hidden])").length === 2, "two problems");
    },
  },
  {
    name: "a working on its mat",
    async open(session) {
      await theSum(session);
      await session.run((/** @type {string} */ css) => /** @type {HTMLElement} */ (document.querySelector(css)).click(), OPEN_WORKING);
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "the mat", MAT);
    },
  },
  { name: "the doubt of a sum", open: theDoubt },
  {
    name: "a dash being measured",
    async open(session) {
      await theDoubt(session);
      await open(session, "Measure it", MAT);
      await session.waitFor(() => document.querySelector(".measuring"), "the measuring");
    },
  },
  {
    name: "a glass",
    async open(session) {
      await firstRow(session, "spec");
      await session.waitFor(() => document.querySelector("main .place.glass .line"), "the glass");
    },
  },
  {
    name: "a glass with a line unfolded and one without a price",
    async open(session) {
      await firstRow(session, "spec");
      await session.waitFor(() => document.querySelector("main .place.glass .line"), "the glass");
      await session.run(() => {
        const rows = document.querySelectorAll(".glass .line > .row[aria-expanded=false]");
        /** @type {HTMLElement} */ (rows[0])?.click();
      });
      await open(session, "straw", ".glass .also");
      await unfoldAll(session, ".glass");
    },
  },
  {
    name: "the shelf",
    async open(session) {
      await openPlace(session, "shelf");
      await session.waitFor((/** @type {string} */ css) => document.querySelector(css), "a row of the shelf", SHELF_ROW);
    },
  },
  {
    name: "what a file would change",
    async open(session) {
      await openPlace(session, "shelf");
      await choose(session, fileOf({
        bottles: [bottle("new", "a bottle with a long name from far away, for a narrow screen", "10", "700")],
        specs: [spec("fresh", "A fresh glass", [line("new", "50", "ml")])], house: house({ tax_percent: "21" }),
      }));
      await session.waitFor(() => document.querySelector(".file-about p"), "what the file would change");
    },
  },
  {
    name: "a bottle of the shelf, unfolded",
    async open(session) {
      await firstRow(session, "bottle");
      await session.waitFor(() => document.querySelector("main .editor"), "the bottle");
      await unfoldAll(session, ".editor");
    },
  },
  { name: "the menu at a glance, one glass unfolded", open: theMenu },
  { name: "what to buy", open: whatToBuy },
  { name: "a tasting table", open: theTable },
  { name: "what spoils", open: whatSpoils },
  { name: "a pasted recipe", open: thePastedRecipe },
  {
    name: "a glass to send",
    async open(session) {
      await firstRow(session, "spec");
      await openSend(session);
    },
  },
  { name: "a glass that was sent", open: (session) => openLink(session, SENT) },
  {
    name: "a link that is cut off",
    open: (session) => openLink(session, SENT.slice(0, -9)),
  },
  { name: "the house", open: (session) => openPlace(session, "house") },
  {
    name: "a note that offers to undo",
    async open(session) {
      await theSum(session);
      await open(session, "start over", ".sum");
      await session.waitFor(() => document.querySelector("#notes .note button"), "the note");
    },
  },
];
