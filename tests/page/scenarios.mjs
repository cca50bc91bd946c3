// @ts-check
/**
 * Plays one list of scenarios in every engine.
 *
 * Each scenario has a site of its own, and so an origin, a storage and a worker of its own.
 * Scenarios without wishes share one browser for each engine, whatever their list; a failure ends
 * that browser, so that the next scenario starts from a clean one.
 */

import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { after, describe, test } from "node:test";
import { engines, startEngine } from "./engines.mjs";
import { startSite } from "./site.mjs";

/** Engines that play at the same time: most of a scenario is waiting. */
const AT_ONCE = 2;

/** A scenario that takes longer hangs. */
const LIMIT_MS = 120_000;

/**
 * @typedef {object} Stage what a scenario plays on
 * @property {import("./webdriver.mjs").Session} session
 * @property {import("./site.mjs").Site} site
 * @property {string} engine
 * @property {import("./engines.mjs").Browser} browser
 * @property {(words: string) => void} say writes a line into the report
 */

/**
 * @typedef {object} Scenario
 * @property {string} name what holds, as a sentence
 * @property {(stage: Stage) => Promise<void>} play
 * @property {import("./engines.mjs").Wishes} [wishes]
 * @property {Record<string, string>} [leavesOut] engines that cannot play it, each with the reason
 * @property {string} [folder] a page instead of the built one
 */

/** Plays the lists of a folder, each a module, and holds them to what every list keeps. @param {URL} folder */
export async function playFolder(folder) {
  /** @type {Scenario[]} */
  const everything = [];
  for (const file of readdirSync(folder).filter((name) => name.endsWith(".mjs")).sort()) {
    const scenarios = (await import(new URL(file, folder).href)).default;
    everything.push(...scenarios);
    playAll(file.replace(".mjs", ""), scenarios);
  }

  test("an engine is left out only with a reason", (t) => {
    for (const { engine, name, reason } of leftOut(everything)) {
      t.diagnostic(`${engine} does not play “${name}”: ${reason}`);
      assert.match(reason, /\w+ \w+/);
    }
  });

  test("no two scenarios have the same name", () => {
    const names = everything.map(({ name }) => name);
    assert.deepEqual(names.filter((name, index) => names.indexOf(name) !== index), []);
  });
}

/** @param {string} title @param {Scenario[]} scenarios */
export function playAll(title, scenarios) {
  describe(title, { concurrency: AT_ONCE }, () => engines.forEach((engine) => {
    describe(`${title}, in ${engine}`, { concurrency: 1 }, () => {
      const shared = sharedBrowser(engine);
      for (const scenario of scenarios) {
        // A scenario that an engine cannot play is no test there; `leftOut` lists why.
        if (scenario.leavesOut?.[engine]) continue;
        test(scenario.name, { timeout: LIMIT_MS }, (t) => playTwice(scenario, engine, shared, (words) => t.diagnostic(words)));
      }
    });
  }));
}

/** Every scenario that leaves an engine out, with the reason. @param {Scenario[]} scenarios */
const leftOut = (scenarios) => scenarios.flatMap(({ name, leavesOut = {} }) =>
  Object.entries(leavesOut).map(([engine, reason]) => ({ engine, name, reason })));

/** What is said when a driver lost its browser or a call, which no page can bring about. */
const LOST = /^(the driver did not answer|timeout:|invalid session id:|session not created|\w+ did not start)/;

/**
 * An engine long out of its time stalls on a busy machine: in a whole run some two of two hundred
 * scenarios wait there in vain for what comes at once when they are played by themselves.
 * @type {Record<string, RegExp>}
 */
const STALLS = { wpe: /^waited in vain for/ };

/**
 * Drivers lose a call now and then on a busy machine: such a scenario is played once more, in a
 * clean browser, and the report says so. Nothing else is: a page that fails one time in twenty
 * fails a person as often.
 * @param {Scenario} scenario @param {string} engine @param {ReturnType<typeof sharedBrowser>} shared @param {Stage["say"]} say
 */
async function playTwice(scenario, engine, shared, say) {
  try {
    await play(scenario, engine, shared, say);
  } catch (error) {
    const isFault = (/** @type {RegExp | undefined} */ fault) => error instanceof Error && fault?.test(error.message);
    if (!isFault(LOST) && !isFault(STALLS[engine])) throw error;
    say(`played again, because the driver or the engine failed: ${/** @type {Error} */ (error).message}`);
    await play(scenario, engine, shared, say);
  }
}

/** @param {Scenario} scenario @param {string} engine @param {ReturnType<typeof sharedBrowser>} shared @param {Stage["say"]} say */
async function play(scenario, engine, shared, say) {
  const site = await startSite(scenario.folder);
  try {
    const playOn = (/** @type {import("./engines.mjs").Browser} */ browser) =>
      scenario.play({ session: browser.session, site, engine, browser, say });
    await (scenario.wishes ? withOwnBrowser(engine, scenario.wishes, playOn) : shared.lend(playOn));
  } finally {
    // A site that still listens would keep the tests from ending.
    await site.stop();
  }
}

/** @param {string} engine @param {import("./engines.mjs").Wishes} wishes @param {PlayOn} playOn */
async function withOwnBrowser(engine, wishes, playOn) {
  const browser = await startEngine(engine, wishes);
  try {
    await playOn(browser);
  } finally {
    await browser.stop();
  }
}

/** @typedef {(browser: import("./engines.mjs").Browser) => Promise<void>} PlayOn */

/** By engine. @type {Map<string, { lend: (playOn: PlayOn) => Promise<void>, stop: () => Promise<void> }>} */
const sharedBrowsers = new Map();
after(() => Promise.all([...sharedBrowsers.values()].map((shared) => shared.stop())));

/** @param {string} engine */
function sharedBrowser(engine) {
  const known = sharedBrowsers.get(engine);
  if (known) return known;
  /** @type {import("./engines.mjs").Browser | null} */
  let browser = null;
  const stop = async () => {
    const old = browser;
    browser = null;
    await old?.stop();
  };
  /** @param {PlayOn} playOn */
  const lend = async (playOn) => {
    try {
      browser ??= await startEngine(engine);
      await playOn(browser);
      await tidy(browser.session);
    } catch (error) {
      await stop();
      throw error;
    }
  };
  const shared = { lend, stop };
  sharedBrowsers.set(engine, shared);
  return shared;
}

/** Closes other windows and leaves the page, so that nothing of it runs on. @param {import("./webdriver.mjs").Session} session */
async function tidy(session) {
  const [first, ...others] = await session.windows();
  for (const other of others) {
    await session.switchTo(other);
    await session.closeWindow();
  }
  if (others.length > 0) await session.switchTo(first);
  await session.go("about:blank");
}
