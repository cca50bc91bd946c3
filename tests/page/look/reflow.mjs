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

/** Rules go into the page's own style sheet, which its policy allows. @type {Record<string, string[]>} */
const MANNERS = {
  plain: [],
  "200 % text": ["html { font-size: 200% !important }"],
  "wide spacing": [
    "* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important }",
    "p { margin-block-end: 2em !important }",
  ],
};

/**
 * What is too wide or cut off, as sentences. The session is left in the frame's page, on top.
 * @param {import("../webdriver.mjs").Session} session @param {import("../site.mjs").Site} site
 * @param {{ path?: string, width?: number, prepare?: () => Promise<unknown> }} options
 *   `prepare` brings the framed page into the state to look at
 * @returns {Promise<string[]>}
 */
export async function reflow(session, site, { path = "", width = NARROW_PX, prepare = async () => {} } = {}) {
  const found = [];
  for (const [manner, rules] of Object.entries(MANNERS)) {
    await session.go(site.frameAddress(width, HEIGHT_PX, path));
    await session.enterFrame("iframe");
    await session.waitFor(() => document.readyState === "complete" && location.href !== "about:blank", "the framed page");
    await prepare();
    await session.run(addRules, rules);
    found.push(...(await session.run(misfits)).map((/** @type {string} */ misfit) => `${manner}: ${misfit}`));
    await session.leaveFrame();
  }
  return found;
}

/** @param {string[]} rules */
function addRules(rules) {
  const sheet = document.styleSheets[0];
  for (const rule of rules) sheet?.insertRule(rule, sheet.cssRules.length);
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
