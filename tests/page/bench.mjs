// @ts-check
/**
 * Times the built page in Chromium as on a slow phone: from a key to its painted answer, and from
 * an address to the first answer. Times differ by half between runs on a busy computer, so the
 * key is told beside a baseline of the same run. Nothing here passes or fails.
 */

import { startEngine } from "./engines.mjs";
import { startSite } from "./site.mjs";

/** What the page is asked and where it answers. */
const PAGE = {
  /** The field that is typed into; one more digit in it changes the answer. */
  field: ".sum input[aria-label='The measure']",
  /** Where the answer stands; it is there as soon as it has a digit. */
  answer: ".sum output.answer",
};

const BOTTLES = 500;
const SPECS = 200;
const KEYS = 60;
const REPEATS = 5;

/** A phone that is six times slower than this computer, behind a bar. */
const SLOW_PHONE = 6;
/** What page-speed tools take for a phone on slow 4G. */
const PHONE_ON_4G = { cpu: 4, latency_ms: 150, down_bits: 1.6e6, up_bits: 0.75e6 };

/** @typedef {import("./webdriver.mjs").Session} Session */

console.log(`${BOTTLES} bottles and ${SPECS} specs kept, ${SLOW_PHONE}x slower processor`);
await withPage(timeKeys);
console.log(`\n1.6 Mbit/s, 150 ms there and back, ${PHONE_ON_4G.cpu}x slower processor`);
await withBrowser(timeFirstAnswers);

/** @param {(session: Session) => Promise<void>} act */
async function withBrowser(act) {
  const browser = await startEngine("chromium", { phone: true });
  try {
    await act(browser.session);
  } finally {
    await browser.stop();
  }
}

/** @param {(session: Session) => Promise<void>} act */
async function withPage(act) {
  const site = await startSite();
  try {
    await withBrowser(async (session) => {
      await session.go(site.address);
      await answered(session);
      await session.runAsync(fillShelf, BOTTLES, SPECS);
      await session.reload();
      await answered(session);
      await act(session);
    });
  } finally {
    await site.stop();
  }
}

// From a key to its painted answer

/** @param {Session} session */
async function timeKeys(session) {
  await session.run(addBaseline);
  await session.cdp("Emulation.setCPUThrottlingRate", { rate: SLOW_PHONE });
  tell("a field copied to an output", await typeAndTime(session, "#baseline-field", "#baseline-answer"));
  tell("a key to its answer", await typeAndTime(session, PAGE.field, PAGE.answer));
}

/** A digit and its removal in turn, so that every key changes the answer. @param {Session} session @param {string} field @param {string} answer @returns {Promise<number[]>} */
async function typeAndTime(session, field, answer) {
  await session.run(recordKeys, field, answer);
  for (let count = 0; count < KEYS; count += 1) {
    await session.type(field, count % 2 === 0 ? "3" : "\uE003");
    await session.waitFor((/** @type {number} */ wanted) => /** @type {any} */ (window).keyTimes.length > wanted, `the answer to key ${count + 1}`, count);
  }
  return session.run(() => /** @type {any} */ (window).keyTimes);
}

/** Records, for every input event, the time until the frame after the answer changed. @param {string} fieldCss @param {string} answerCss */
function recordKeys(fieldCss, answerCss) {
  const field = /** @type {Element} */ (document.querySelector(fieldCss));
  const answer = /** @type {Element} */ (document.querySelector(answerCss));
  /** @type {number[]} */
  const times = [];
  let pressed = 0;
  Object.assign(window, { keyTimes: times });
  field.addEventListener("input", (event) => (pressed = event.timeStamp), { capture: true });
  new MutationObserver(() => {
    if (pressed === 0) return;
    const start = pressed;
    pressed = 0;
    requestAnimationFrame(() => requestAnimationFrame(() => times.push(performance.now() - start)));
  }).observe(answer, { childList: true, characterData: true, subtree: true });
}

/** The least that any page does: a field whose text is copied. */
function addBaseline() {
  const field = Object.assign(document.createElement("input"), { id: "baseline-field" });
  const answer = Object.assign(document.createElement("output"), { id: "baseline-answer" });
  field.addEventListener("input", () => (answer.textContent = field.value));
  document.body.append(field, answer);
}

/** Keeps many bottles and specs through the page's own core. @param {number} bottles @param {number} specs */
async function fillShelf(bottles, specs) {
  // The page loaded it already: this is the same core.
  const core = await import(new URL("farthing.js", document.baseURI).href);
  const keep = (/** @type {string} */ kind, /** @type {object} */ after) =>
    core.shelf(JSON.stringify({ wish: "keep", kind, before: null, after, on: "2026-01-31" }));
  for (let count = 0; count < bottles; count += 1) {
    keep("bottle", {
      id: `bottle${count}`, name: `Bottle ${count}`,
      paid: { price: `${10 + count % 40}.50` }, holds: { text: "700", unit: "ml" },
    });
  }
  for (let count = 0; count < specs; count += 1) {
    const line = (/** @type {number} */ step, /** @type {string} */ text, /** @type {string} */ unit) =>
      ({ bottle: `bottle${(count * 7 + step) % bottles}`, measure: { text, unit } });
    keep("spec", { id: `spec${count}`, name: `Spec ${count}`, lines: [line(0, "50", "ml"), line(1, "25", "ml"), line(2, "2", "dash")] });
  }
  const kept = Object.keys(localStorage).length;
  if (kept < bottles + specs) throw new Error(`only ${kept} records were kept`);
}

// From an address to the first answer

/** @param {Session} session */
async function timeFirstAnswers(session) {
  await session.cdp("Page.addScriptToEvaluateOnNewDocument", { source: `(${recordFirstAnswer})(${JSON.stringify(PAGE.answer)})` });
  await session.cdp("Network.enable");
  await session.cdp("Network.emulateNetworkConditions", {
    offline: false,
    latency: PHONE_ON_4G.latency_ms,
    downloadThroughput: PHONE_ON_4G.down_bits / 8,
    uploadThroughput: PHONE_ON_4G.up_bits / 8,
  });
  await session.cdp("Emulation.setCPUThrottlingRate", { rate: PHONE_ON_4G.cpu });
  /** @type {Record<"cold" | "warm" | "offline", number[]>} */
  const times = { cold: [], warm: [], offline: [] };
  let visit = "";
  for (let count = 0; count < REPEATS; count += 1) {
    // A site of its own is an origin of its own: nothing of it is cached.
    const site = await startSite();
    times.cold.push(await firstAnswer(session, site.address));
    visit = await session.run(transferred);
    await session.waitFor(() => navigator.serviceWorker.controller !== null, "the offline worker");
    times.warm.push(await firstAnswer(session, site.address));
    await site.stop();
    times.offline.push(await firstAnswer(session, site.address));
  }
  tell(`first answer, cold (${visit})`, times.cold);
  tell("first answer, warm", times.warm);
  tell("first answer, offline", times.offline);
}

/** @param {Session} session @param {string} address @returns {Promise<number>} */
async function firstAnswer(session, address) {
  await session.go("about:blank");
  await session.go(address);
  return session.waitFor(() => /** @type {any} */ (window).firstAnswer, "the first answer");
}

/** Runs before the page's own scripts. @param {string} css */
function recordFirstAnswer(css) {
  const look = new MutationObserver(() => {
    if (!/\d/.test(document.querySelector(css)?.textContent ?? "")) return;
    look.disconnect();
    requestAnimationFrame(() => requestAnimationFrame(() => Object.assign(window, { firstAnswer: performance.now() })));
  });
  look.observe(document, { childList: true, characterData: true, subtree: true });
}

function transferred() {
  const entries = /** @type {PerformanceResourceTiming[]} */ ([
    ...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource"),
  ]);
  const bytes = entries.reduce((sum, entry) => sum + entry.transferSize, 0);
  return `${entries.length} requests, ${Math.round(bytes / 1024)} KiB by then`;
}

// Telling

/** @param {Session} session */
function answered(session) {
  return session.waitFor((/** @type {string} */ css) =>
    /\d/.test(document.querySelector(css)?.textContent ?? ""), "an answer", PAGE.answer);
}

/** @param {string} what @param {number[]} times_ms */
function tell(what, times_ms) {
  const sorted = [...times_ms].sort((a, b) => a - b);
  const at = (/** @type {number} */ share) => Math.round(Number(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]));
  console.log(`${what}: median ${at(0.5)} ms, 95 % within ${at(0.95)} ms, of ${sorted.length}`);
}
