// @ts-check
/** What stands ready before the page's own scripts run. */

/** @typedef {import("../../site.mjs").Site} Site */
/** @typedef {import("../../webdriver.mjs").Session} Session */

const EARLY = "early-for-tests.js";

/** Runs a function before the page's own scripts, under the page's own policy. @param {Site} site @param {Function} script @param {unknown[]} args */
export function runEarly(site, script, ...args) {
  const before = site.replaced.has(EARLY) ? site.read(EARLY) : "";
  site.replace(EARLY, `${before}(${script}).apply(null, ${JSON.stringify(args)});\n`);
  if (before) return;
  const page = site.read("index.html");
  const next = page.replace("<link ", `<script src="${EARLY}"></script>\n<link `);
  if (next === page) throw new Error("index.html has no link before its scripts");
  site.replace("index.html", next);
}

/** The page believes that its person speaks this language; no engine but two has a switch for it. @param {Site} site @param {string} language */
export const speaks = (site, language) => runEarly(site, (/** @type {string} */ spoken) => {
  Object.defineProperty(Navigator.prototype, "language", { get: () => spoken });
}, language);

/** Writes down what the page's policy refused and what no one caught. @param {Site} site */
export const listensForFaults = (site) => runEarly(site, () => {
  /** @type {string[]} */
  const heard = [];
  Object.assign(window, { heard });
  document.addEventListener("securitypolicyviolation", (event) => heard.push(`policy: ${event.violatedDirective} ${event.blockedURI}`));
  addEventListener("error", (event) => {
    // An engine's way to say that a size is followed one frame later, which does no harm.
    if (!/^ResizeObserver loop/.test(event.message)) heard.push(`error: ${event.message ?? event.target}`);
  }, true);
  addEventListener("unhandledrejection", (event) => heard.push(`rejected: ${event.reason}`));
});

/** @param {Session} session @returns {Promise<string[]>} */
export const faults = (session) => session.run(() => /** @type {any} */ (window).heard);
