// @ts-check
/**
 * The page as paper would show it. Only two engines print to a file, so the rules for paper are
 * made to hold on the screen instead.
 */

/** @typedef {import("../webdriver.mjs").Session} Session */

/** Makes the rules for paper hold, and tells the page that it is about to be printed. @param {Session} session */
export const asOnPaper = (session) => session.run(() => {
  dispatchEvent(new Event("beforeprint"));
  /** @param {CSSRuleList} rules */
  const turn = (rules) => {
    for (const rule of rules) {
      if (!(rule instanceof CSSMediaRule)) continue;
      rule.media.mediaText = rule.media.mediaText.replace(/\bprint\b/, "screen");
      turn(rule.cssRules);
    }
  };
  for (const sheet of document.styleSheets) turn(sheet.cssRules);
});

/** What on paper is of no use or not readable: controls, and any ground but white. @param {Session} session @returns {Promise<string[]>} */
export const uselessOnPaper = (session) => session.run(() => {
  const shown = (/** @type {Element} */ element) => element.getClientRects().length > 0 && getComputedStyle(element).visibility !== "hidden";
  const name = (/** @type {Element} */ element) => `${element.localName}.${element.className} “${(element.textContent ?? "").trim().slice(0, 30)}”`;
  const controls = [...document.querySelectorAll("#dock, button:not(.row, .fact, .opens), input[type=file], input[type=search], nav")].filter(shown);
  const grounds = [document.documentElement, document.body, ...document.querySelectorAll("main *")].filter(shown)
    .filter((element) => !["rgba(0, 0, 0, 0)", "rgb(255, 255, 255)"].includes(getComputedStyle(element).backgroundColor));
  const texts = [...document.querySelectorAll("main *")].filter(shown)
    .filter((element) => [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim()))
    .filter((element) => getComputedStyle(element).color !== "rgb(0, 0, 0)");
  const moves = [...document.querySelectorAll("body *")].filter(shown).filter((element) => /fixed|sticky/.test(getComputedStyle(element).position));
  return [
    ...controls.map((element) => `a control: ${name(element)}`), ...grounds.map((element) => `a dark ground: ${name(element)}`),
    ...texts.map((element) => `pale text: ${name(element)}`), ...moves.map((element) => `stands still: ${name(element)}`),
  ];
});
