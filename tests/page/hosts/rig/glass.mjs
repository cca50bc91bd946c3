// @ts-check
/** A glass on somebody's page: what its keeper pastes there, and what readers see of it. */

import assert from "node:assert/strict";
import { becomes } from "../../scenarios/page/places.mjs";

/** @typedef {import("../../site.mjs").Site} Site */
/** @typedef {import("../../webdriver.mjs").Session} Session */

/** What is pasted, in the order in which a reader without scripts reads it. */
export const TEXTS = ["Lock Keeper", "50 ml rye whisky", "2 dashes orange bitters"];
const [NAME, ...LINES] = TEXTS;
const PRICES = "rye whisky: 28 for 70 cl at 40%; orange bitters: 18.50 for 100 ml";

/** 50 ml of 28 for 700 ml are 2; two dashes are 1.84 ml and cost 0.3404. */
export const COST = "£2.34";

export const SCRIPT = "farthing-glass.js";
export const WASM = "farthing-embed_bg.wasm";

/** Kept free by the keeper, so that nothing moves when the glass is laid. */
const ROOM = "display: block; padding-block-end: clamp(10.8em, (36em - 100vw) * 99, 15.5em)";

/**
 * Where a page of others finds us: not under the address of its own, as `localhost` is to `127.0.0.1`.
 * @param {Site} site
 */
export const publishedAt = (site) => site.otherOrigin + site.prefix;

/** @param {Site} site */
export const script = (site) => `<script type="module" src="${publishedAt(site)}${SCRIPT}"></script>`;

/** A division around it: some editors put a paragraph around what they do not know. */
export const glass = `<div><farthing-glass style="${ROOM}" currency="GBP" prices="${PRICES}">
  <h3>${NAME}</h3>
  <ul>
${LINES.map((line) => `    <li>${line}</li>`).join("\n")}
  </ul>
</farthing-glass></div>`;

/** @param {Site} site */
export const snippet = (site) => `${script(site)}\n${glass}`;

/** @param {Site} site */
export function frame(site) {
  const fields = new URLSearchParams([
    ["v", "1"], ["currency", "GBP"], ["name", String(NAME)], ...LINES.map((line) => ["line", line]), ["prices", PRICES],
  ]);
  const address = `${publishedAt(site)}frame.html#${fields}`.replaceAll("&", "&amp;");
  return `<iframe sandbox="allow-scripts" src="${address}" title="What a ${NAME} costs" loading="lazy" style="inline-size: 100%; border: 0"></iframe>`;
}

/** A page that runs scripts may let its frames be as high as they tell. @param {Site} site */
export const frameScript = (site) => `<script type="module" src="${publishedAt(site)}farthing-frames.js"></script>`;

/** What each glass of the page says that it costs. @param {Session} session @returns {Promise<string[]>} */
export const costs = (session) => session.run(() =>
  [...document.querySelectorAll("farthing-glass")].map((each) => each.shadowRoot?.querySelector("[part~=cost]")?.textContent ?? ""));

/** What each glass says of why it cannot. @param {Session} session @returns {Promise<string[]>} */
export const troubles = (session) => session.run(() =>
  [...document.querySelectorAll("farthing-glass")].map((each) => each.shadowRoot?.querySelector("[part~=trouble]")?.textContent ?? ""));

/** What a reader sees of what was pasted. @param {Session} session @returns {Promise<string[]>} */
export const seen = (session) => session.run((/** @type {string[]} */ texts) => {
  const leaves = [...document.querySelectorAll("body *")].filter((each) => each.childElementCount === 0);
  return texts.filter((text) => leaves.some((each) => {
    const box = each.getBoundingClientRect();
    return each.textContent?.trim() === text && box.width > 0 && box.height > 0;
  }));
}, TEXTS);

/** The texts in their order, wherever else they stand. @param {string} text */
export const textsIn = (text) => TEXTS.filter((each, index) => {
  const before = TEXTS.slice(0, index).reduce((from, one) => text.indexOf(one, from), 0);
  return before >= 0 && text.indexOf(each, before) >= 0;
});

/** How often a file was fetched. @param {Site} site @param {string} file */
export const fetched = (site, file) => site.log.filter(({ path, status }) => path === file && status === 200).length;

/**
 * The style of the first of each kind of element around the glass. What an engine derives from
 * the height of a box is left out: a page grows when a glass is laid.
 * @param {Session} session @returns {Promise<Record<string, Record<string, string>>>}
 */
export const stylesAround = (session) => session.run(() => {
  const FROM_HEIGHT = /^(height|block-size|perspective-origin|transform-origin|inset.*|top|bottom)$/;
  /** @type {Record<string, Record<string, string>>} */
  const styles = {};
  for (const element of document.querySelectorAll("html, body, body *:not(farthing-glass, farthing-glass *, script, style)")) {
    const style = getComputedStyle(element);
    styles[element.localName] ??= Object.fromEntries([...style].filter((name) => !FROM_HEIGHT.test(name)).map((name) => [name, style.getPropertyValue(name)]));
  }
  return styles;
});

/** What two readings of styles do not share. @param {Record<string, Record<string, string>>} one @param {Record<string, Record<string, string>>} other */
export const differences = (one, other) => [...new Set([...Object.keys(one), ...Object.keys(other)])].flatMap((of) => {
  const [left = {}, right = {}] = [one[of], other[of]];
  const names = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...names].filter((name) => left[name] !== right[name]).map((name) => `${of}: ${name} is ${left[name]}, was ${right[name]}`);
});

/** Half of what page-speed tools call good; a reader sees nothing jump. */
const MOST_SHIFT = 0.05;

/** Nothing moved as the page came to stand. Only Chromium counts it. @param {Session} session */
export async function staysStill(session) {
  const shift = await session.runAsync(() => new Promise((resolve) => {
    let sum = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) sum += /** @type {any} */ (entry).value;
    }).observe({ type: "layout-shift", buffered: true });
    setTimeout(() => resolve(sum), 500);
  }));
  assert.ok(shift <= MOST_SHIFT, `a shift of ${shift}`);
}

/**
 * What holds of a glass on the page of any host: its list is served, and seen without the
 * script; with it the cost stands there, and nothing around it moves or looks otherwise.
 * @param {import("../../scenarios.mjs").Stage} stage @param {string} address
 */
export async function laysGlass({ session, site, engine }, address) {
  const served = await (await fetch(address)).text();
  assert.deepEqual(textsIn(served), TEXTS);
  site.missing.add(SCRIPT);
  await session.go(address);
  await becomes(() => seen(session), TEXTS);
  const before = await stylesAround(session);
  site.missing.clear();
  await session.go(address);
  await becomes(() => costs(session), [COST]);
  assert.deepEqual(await seen(session), TEXTS);
  assert.deepEqual(differences(await stylesAround(session), before), []);
  if (engine === "chromium") await staysStill(session);
}

/** A frame that waits until it is near begins a moment after that. @param {Session} session */
export async function enterFrame(session) {
  await becomes(() => session.enterFrame("iframe").then(() => "in", String), "in");
  await session.waitFor(() => document.readyState === "complete", "the frame");
}

/**
 * What holds of a frame on the page of any host: it works shut off from everything, and the page
 * may give it the height that it tells.
 * @param {import("../../scenarios.mjs").Stage} stage @param {string} address
 */
export async function showsFrame({ session }, address) {
  await session.go(address);
  await session.run(() => document.querySelector("iframe")?.scrollIntoView());
  await enterFrame(session);
  await becomes(() => costs(session), [COST]);
  assert.deepEqual(await seen(session), TEXTS);
  assert.equal(await session.run(() => {
    try {
      return typeof localStorage;
    } catch (error) {
      return /** @type {Error} */ (error).name;
    }
  }), "SecurityError");
  await session.leaveFrame();
  await session.waitFor(() => {
    const iframe = document.querySelector("iframe");
    return iframe && iframe.offsetHeight > 200 && iframe.style.blockSize === `${iframe.offsetHeight}px`;
  }, "the height of the frame");
  await enterFrame(session);
  // One that is too low shows a bar to scroll by.
  await becomes(() => session.run(() => document.documentElement.scrollHeight - innerHeight), 0);
  await session.leaveFrame();
}
