// @ts-check
/**
 * Whether everything fits a narrow screen, with large text and wide spacing too
 * (WCAG 1.4.10, 1.4.4 and 1.4.12).
 *
 * No engine's window goes down to 320 pixels everywhere, so the page is looked at in a frame.
 */

/** WCAG's narrow screen: 1280 pixels at 400 %. */
const NARROW_PX = 320;
const HEIGHT_PX = 740;

/** Rules go into the page's own style sheet, which its policy allows. @type {Record<string, { rules?: string[], direction?: "rtl" }>} */
const MANNERS = {
  plain: {},
  "200 % text": { rules: ["html { font-size: 200% !important }"] },
  "wide spacing": {
    rules: [
      "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important }",
      "p { margin-block-end: 2em !important }",
    ],
  },
  "right to left": { direction: "rtl" },
};

/** @typedef {{ name: string, open: (session: import("../webdriver.mjs").Session) => Promise<unknown> }} State what to look at, and how to get there */

/** @type {State} */
const AS_LOADED = { name: "as it loads", open: async () => {} };

/**
 * What is too wide or cut off, as sentences. The session is left in the frame's page, on top.
 * @param {import("../webdriver.mjs").Session} session @param {import("../site.mjs").Site} site
 * @param {{ path?: string, width?: number, states?: State[] }} options
 * @returns {Promise<string[]>}
 */
export async function reflow(session, site, { path = "", width = NARROW_PX, states = [AS_LOADED] } = {}) {
  const found = [];
  await enterFramed(session, site, width, HEIGHT_PX, path);
  for (const { name, open } of states) {
    await open(session);
    for (const [manner, { rules = [], direction = "" }] of Object.entries(MANNERS)) {
      await session.run(dress, rules, direction);
      // What follows the size of something else follows a moment later.
      await session.runAsync(() => new Promise((resolve) => setTimeout(resolve, 60)));
      found.push(...(await session.run(misfits)).map((/** @type {string} */ misfit) => `${name}, ${manner}: ${misfit}`));
      await session.run(undress, rules.length);
    }
  }
  await session.leaveFrame();
  return found;
}

/**
 * Goes into a page in a frame of this size; no engine's window is as small as every phone.
 * @param {import("../webdriver.mjs").Session} session @param {import("../site.mjs").Site} site
 * @param {number} width @param {number} height @param {string} path
 */
export async function enterFramed(session, site, width, height, path = "") {
  await session.go(site.frameAddress(width, height, path));
  await session.enterFrame("iframe");
  await session.waitFor(() => document.readyState === "complete" && location.href !== "about:blank", "the framed page");
}

/** @param {string[]} rules @param {string} direction */
function dress(rules, direction) {
  const sheet = document.styleSheets[0];
  for (const rule of rules) sheet?.insertRule(rule, sheet.cssRules.length);
  document.documentElement.dir = direction;
}

/** @param {number} count of the rules that were put in */
function undress(count) {
  const sheet = document.styleSheets[0];
  for (let left = count; left > 0; left -= 1) sheet?.deleteRule(sheet.cssRules.length - 1);
  document.documentElement.removeAttribute("dir");
}

function misfits() {
  const root = document.documentElement;
  const name = (/** @type {Element} */ element) =>
    `${element.localName}${element.id && `#${element.id}`}${element.className && `.${element.className}`}`;
  const visible = [...document.body.querySelectorAll("*")].filter((element) => {
    const box = element.getBoundingClientRect();
    // What is one pixel large is meant for the ear only.
    return box.width > 1 && box.height > 1;
  });
  const found = [];
  if (root.scrollWidth > innerWidth) {
    const sticksOut = (/** @type {Element} */ element) => element.getBoundingClientRect().right > innerWidth + 1
      || (getComputedStyle(element).overflowX === "visible" && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0);
    // The innermost ones say where to look.
    const culprits = visible.filter((element) => sticksOut(element) && ![...element.children].some(sticksOut));
    found.push(`${root.scrollWidth} px wide in ${innerWidth}: ${culprits.slice(0, 5).map(name).join(", ")}`);
  }
  for (const element of visible) {
    const { overflowX, overflowY } = getComputedStyle(element);
    const hides = (/** @type {string} */ how) => how === "hidden" || how === "clip";
    const isField = element.matches("input, select, textarea");
    const cutX = hides(overflowX) && element.scrollWidth > element.clientWidth + 1;
    const cutY = hides(overflowY) && element.scrollHeight > element.clientHeight + 1;
    if (!isField && (cutX || cutY)) found.push(`${name(element)} cuts its content off`);
  }
  return found;
}
