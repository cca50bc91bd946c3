// @ts-check
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { begun, blank, GLASS_NAME, MEASURE, noted, notes, openPlace, PRICE, settled, tap, write } from "./page/places.mjs";
import { openWith } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */
/** @typedef {import("../site.mjs").Site} Site */

const READY = "A new version is ready.";

/** A custom section behind a wasm module, which changes nothing but its length. */
const WASM_MARK = Buffer.from([0x00, 0x02, 0x01, 0x76]);

/** A second version, which bears a mark in each of its files. @param {Site} site */
function playMarkedVersion(site) {
  site.replace("farthing_bg.wasm", Buffer.concat([readFileSync(join(site.folder, "farthing_bg.wasm")), WASM_MARK]));
  site.playNewVersion({
    "index.html": site.read("index.html").replace("</title>", " 2</title>"),
    "page.css": `${site.read("page.css")}\n:root { --version: 2 }`,
    "main.js": `${site.read("main.js")}\n;document.documentElement.dataset.main = "2";`,
    "farthing.js": `${site.read("farthing.js")}\n;document.documentElement.dataset.glue = "2";`,
  });
}

/** Which version each part of the page is of, as it runs and as it would be fetched. @param {Session} session @param {Site} site @returns {Promise<string[]>} */
function versions(session, site) {
  const bytes = readFileSync(join(site.folder, "farthing_bg.wasm")).length;
  return session.runAsync(async (/** @type {number} */ firstBytes) => {
    const fetched = async (/** @type {string} */ path) => (await fetch(path)).text();
    const root = document.documentElement;
    const wasm = (await (await fetch("farthing_bg.wasm")).arrayBuffer()).byteLength;
    return [
      document.title.endsWith(" 2"), getComputedStyle(root).getPropertyValue("--version").trim() === "2",
      root.dataset.main === "2", root.dataset.glue === "2", wasm !== firstBytes,
      (await fetched("./")).includes(" 2</title>"), (await fetched("page.css")).includes("--version"),
      (await fetched("main.js")).includes("dataset.main"), (await fetched("farthing.js")).includes("dataset.glue"),
    ].map((isSecond) => (isSecond ? "second" : "first"));
  }, bytes);
}

const lookForUpdate = (/** @type {Session} */ session) => session.runAsync(async () => {
  await (await navigator.serviceWorker.getRegistration())?.update();
});

/** @param {Session} session @param {string} css */
const held = (session, css) => session.run((/** @type {string} */ wanted) => {
  const field = /** @type {HTMLInputElement} */ (document.querySelector(wanted));
  return [field.value, field.selectionStart, field.selectionEnd, document.activeElement === field];
}, css);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a first visit speaks of no new version",
    async play({ session, site }) {
      // Engines tell of a worker's steps in another order now and then: each of these is a first visit.
      const visits = ["/a/", "/b/", "/c/"].flatMap((prefix) => [site.origin, site.otherOrigin].map((origin) => ({ prefix, origin })));
      for (const { prefix, origin } of visits) {
        site.prefix = prefix;
        await session.go(origin + prefix);
        await begun(session);
        await settled(session);
        await session.runAsync(() => new Promise((resolve) => setTimeout(resolve, 300)));
        assert.deepEqual(await notes(session), []);
      }
    },
  },
  {
    name: "a new version waits; nothing that is being typed moves until it is taken",
    async play({ session, site }) {
      await openWith(session, site);
      await settled(session);
      await openPlace(session, "glass");
      await write(session, GLASS_NAME, "Half a na");
      await openPlace(session, "sum");
      await write(session, MEASURE, "2 dash");
      await write(session, PRICE, "1850");
      await session.run((/** @type {string} */ css) => /** @type {HTMLInputElement} */ (document.querySelector(css)).setSelectionRange(2, 3), PRICE);
      const before = await held(session, PRICE);
      assert.deepEqual(before, ["1850", 2, 3, true]);

      playMarkedVersion(site);
      await lookForUpdate(session);
      await noted(session, READY);
      await session.runAsync(() => new Promise((resolve) => setTimeout(resolve, 500)));
      assert.deepEqual(await held(session, PRICE), before);
      assert.deepEqual(new Set(await versions(session, site)), new Set(["first"]));
      await session.press(".");
      assert.deepEqual(await held(session, PRICE), ["18.0", 3, 3, true]);

      await session.run(() => void Object.assign(window, { isOldPage: true }));
      await tap(session, "Use it", "#notes");
      await session.waitFor(() => !("isOldPage" in window), "the new version");
      await begun(session);
      assert.deepEqual(new Set(await versions(session, site)), new Set(["second"]));
      assert.deepEqual([await session.value(PRICE), await session.value(MEASURE)], ["18.0", "2 dash"]);
      await openPlace(session, "glass");
      assert.equal(await session.value(GLASS_NAME), "Half a na");
      assert.deepEqual((await notes(session)).filter((note) => note === READY), []);
    },
  },
  {
    name: "a new version that nobody takes leaves every load whole",
    async play({ session, site }) {
      await openWith(session, site);
      await settled(session);
      playMarkedVersion(site);
      await lookForUpdate(session);
      await noted(session, READY);
      await session.reload();
      await begun(session);
      const after = new Set(await versions(session, site));
      assert.equal(after.size, 1, `one page of two versions: ${[...after]}`);
      await noted(session, READY);
      // Without a network it is the same.
      await site.stop();
      await session.reload();
      await begun(session);
      assert.deepEqual(new Set(await versions(session, site)), after);
      await write(session, blank(".sum", "What you paid"), "5");
    },
  },
  {
    name: "only caches of this page are cleared",
    async play({ session, site }) {
      await openWith(session, site);
      await settled(session);
      await session.runAsync(async () => {
        const other = await caches.open("of another page");
        await other.put("x", new Response("kept"));
      });
      playMarkedVersion(site);
      await lookForUpdate(session);
      await session.run(() => void Object.assign(window, { isOldPage: true }));
      await noted(session, READY);
      await tap(session, "Use it", "#notes");
      await session.waitFor(() => !("isOldPage" in window), "the new version");
      await begun(session);
      await session.waitFor(async () => {
        const names = await caches.keys();
        return names.length === 2 && names.includes("of another page");
      }, "one cache of ours and the other page's");
    },
  },
];
