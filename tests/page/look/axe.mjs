// @ts-check
/** What axe-core finds wrong, in words that fit in an assertion. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { installed } from "../paths.mjs";

const RULES = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"];

const source = readFileSync(join(installed, "axe-core/axe.min.js"), "utf8");

/** Everything that breaks WCAG 2.2 AA or a good habit. @param {import("../webdriver.mjs").Session} session @returns {Promise<string[]>} */
export const axe = (session) => run(session, { runOnly: RULES });

/** Text with less contrast than 7:1, or 4.5:1 where it is large: a bar is dim. @param {import("../webdriver.mjs").Session} session @returns {Promise<string[]>} */
export const contrast = (session) => run(session, {
  // The stricter rule leaves what fails the plain one to it.
  runOnly: { type: "rule", values: ["color-contrast", "color-contrast-enhanced"] },
});

/** @param {import("../webdriver.mjs").Session} session @param {object} options */
async function run(session, options) {
  await session.run(`if (!window.axe) { ${source} }`);
  return session.runAsync(async (/** @type {object} */ wanted) => {
    const { violations } = await (/** @type {any} */ (window)).axe.run(document, wanted);
    return violations.map((/** @type {any} */ found) =>
      `${found.id}: ${found.nodes.map((/** @type {any} */ node) => node.target.join(" ")).join(", ")}`);
  }, options);
}
