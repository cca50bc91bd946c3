// @ts-check
/**
 * What a glass does to the page around it: the same post of a blog with its script and without,
 * loaded in turns as on a slow phone. Nothing here passes or fails.
 */

import { startEngine } from "./engines.mjs";
import { builtBlog } from "./hosts/rig/eleventy.mjs";
import { costs, COST, publishedAt, SCRIPT } from "./hosts/rig/glass.mjs";
import { becomes } from "./scenarios/page/places.mjs";
import { startSite } from "./site.mjs";

const LOADS = 9;
/** What page-speed tools take for a phone on slow 4G. */
const PHONE_ON_4G = { cpu: 4, latency_ms: 150, down_bits: 1.6e6, up_bits: 0.75e6 };
/** Everything that a glass loads has come by then, and nothing is painted after it. */
const SETTLED_MS = 2_500;

const POST = "posts/lock-keeper/";
const PLAIN = "plain.html";

const site = await startSite();
const built = builtBlog(publishedAt(site));
const blog = await startSite(built.folder);
const browser = await startEngine("chromium", { phone: true });
try {
  const { session } = browser;
  const post = blog.read(`${POST}index.html`);
  blog.replace(PLAIN, post.split("\n").filter((line) => !line.includes(SCRIPT)).join("\n"));
  await session.cdp("Network.enable");
  await session.cdp("Network.setCacheDisabled", { cacheDisabled: true });
  await session.cdp("Network.emulateNetworkConditions", {
    offline: false, latency: PHONE_ON_4G.latency_ms,
    downloadThroughput: PHONE_ON_4G.down_bits / 8, uploadThroughput: PHONE_ON_4G.up_bits / 8,
  });
  await session.cdp("Emulation.setCPUThrottlingRate", { rate: PHONE_ON_4G.cpu });
  /** @type {Record<"with" | "without", { paint: number[], shift: number[] }>} */
  const found = { with: { paint: [], shift: [] }, without: { paint: [], shift: [] } };
  const load = async (/** @type {"with" | "without"} */ how) => {
    await session.go("about:blank");
    await session.go(blog.address + (how === "with" ? POST : PLAIN));
    await becomes(() => costs(session), [how === "with" ? COST : ""]);
    const { paint, shift } = await session.runAsync(measure, SETTLED_MS);
    found[how].paint.push(paint);
    found[how].shift.push(shift);
  };
  // The first of each warms what is started once.
  for (let count = 0; count <= LOADS; count += 1) {
    await load(count % 2 === 0 ? "without" : "with");
    await load(count % 2 === 0 ? "with" : "without");
  }
  console.log(`a post with a glass in its first screen, 1.6 Mbit/s, 150 ms there and back, ${PHONE_ON_4G.cpu}x slower processor`);
  for (const how of /** @type {const} */ (["without", "with"])) {
    console.log(`${how} the script: largest paint ${spread(found[how].paint.slice(1), 0)} ms, layout shift ${spread(found[how].shift.slice(1), 4)}`);
  }
} finally {
  await browser.stop();
  await blog.stop();
  built.remove();
  await site.stop();
}

/** Runs in the page. @param {number} settled_ms @returns {Promise<{ paint: number, shift: number }>} */
function measure(settled_ms) {
  let paint = 0;
  let shift = 0;
  const each = (/** @type {string} */ type, /** @type {(entry: any) => void} */ take) =>
    new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true });
  each("largest-contentful-paint", (entry) => (paint = entry.startTime));
  each("layout-shift", (entry) => (shift += entry.value));
  return new Promise((resolve) => setTimeout(() => resolve({ paint, shift }), settled_ms));
}

/** @param {number[]} all @param {number} digits */
function spread(all, digits) {
  const sorted = [...all].sort((a, b) => a - b);
  const at = (/** @type {number} */ share) => Number(sorted[Math.round((sorted.length - 1) * share)]).toFixed(digits);
  return `median ${at(0.5)}, half between ${at(0.25)} and ${at(0.75)}, all between ${at(0)} and ${at(1)}`;
}
