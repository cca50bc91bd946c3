// @ts-check
/** The rig itself, on two small pages: every look passes a good page and can fail a bad one. */

import assert from "node:assert/strict";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { askInBrowser, compare } from "./golden.mjs";
import { engines, startEngine } from "./engines.mjs";
import { axe, contrast } from "./look/axe.mjs";
import { otherHosts } from "./look/hosts.mjs";
import { installErrors } from "./look/install.mjs";
import { missed, walk } from "./look/keyboard.mjs";
import { reflow } from "./look/reflow.mjs";
import { smallTargets } from "./look/targets.mjs";
import { playAll } from "./scenarios.mjs";
import { startSite } from "./site.mjs";

/** A module that exports `answer`, which returns 42. */
const WASM = Buffer.from("0061736d010000000105016000017f03020100070a0106616e7377657200000a06010400412a0b", "hex");

const MANIFEST = {
  name: "Good", short_name: "Good", id: "./", start_url: "./", scope: "./", display: "standalone",
  icons: [{ src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
};

const GOOD = {
  "index.html": `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Good</title>
    <meta name="viewport" content="width=device-width, initial-scale=1"><link rel="manifest" href="app.webmanifest">
    <link rel="stylesheet" href="page.css"><script type="module" src="page.js"></script></head>
    <body><main><h1>Good</h1><label for="amount">Amount</label> <input id="amount" inputmode="decimal">
    <button type="button">Save</button> <output for="amount">…</output></main></body></html>`,
  "page.css": "body { color: #111; background: #fff; overflow-wrap: anywhere } input, button { box-sizing: border-box; font: inherit; max-width: 100%; min-height: 48px; min-width: 48px }",
  "page.js": `import { load } from "./farthing.js";
    const core = await load();
    document.querySelector("output").textContent = core.answer();`,
  // It looks from outside like the generated module: a default export that loads, and a call.
  "farthing.js": `let core;
    export const load = async () => (core ??= (await WebAssembly.instantiateStreaming(fetch("farthing_bg.wasm"))).instance.exports);
    export default load;
    export const answer = (ask) => JSON.stringify({ asked: JSON.parse(ask), answer: core.answer() });`,
  "farthing_bg.wasm": WASM,
  "farthing-more.js": "export default async () => {};",
  "farthing-embed.js": "export default async () => {};",
  "app.webmanifest": JSON.stringify(MANIFEST),
  "icon.svg": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>`,
  "_headers": "/*\n  Content-Security-Policy: default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'\n",
};

const BAD = {
  "index.html": `<!DOCTYPE html><html><head><title>Bad</title><link rel="stylesheet" href="page.css"></head>
    <body><h1>Bad</h1><input> <button>x</button> <button class="hidden-focus">Long enough to hit</button>
    <p class="pale">Pale</p><p class="dim">Dim</p><p class="cut">Cut off by its own height</p><p class="wide">Wide</p>
    <img src="icon.svg"></body></html>`,
  "page.css": `.pale { color: #bbb; background: #fff } .dim { color: #666; background: #fff } .cut { height: 8px; overflow: hidden } .wide { width: 600px }
    .hidden-focus:focus { outline: none }`,
};

const good = write("good", GOOD);
const bad = write("bad", BAD);
after(() => [good, bad].forEach((folder) => rmSync(folder, { recursive: true })));

playAll("a good page", [
  {
    name: "loads a module and wasm, and reads back",
    folder: good,
    async play({ session, site }) {
      await session.go(site.address);
      await session.waitFor(() => document.querySelector("output")?.textContent === "42", "the answer");
      await session.type("#amount", "1,5");
      assert.equal(await session.value("#amount"), "1,5");
      assert.deepEqual(await otherHosts(session), []);
      assert.ok(site.log.some(({ path, status }) => path === "farthing_bg.wasm" && status === 200));
      const one = { name: "one", call: "answer", ask: { a: "é" }, reply: { asked: { a: "é" }, answer: 42 } };
      compare([one], await askInBrowser(session, [one]));
      assert.throws(() => compare([one], [{ asked: { a: "e" }, answer: 42 }]));
    },
  },
  {
    name: "passes every look",
    folder: good,
    async play({ session, site }) {
      await session.go(site.address);
      assert.deepEqual(await axe(session), []);
      assert.deepEqual(await contrast(session), []);
      assert.deepEqual(await smallTargets(session), []);
      const stops = await walk(session);
      assert.deepEqual(await missed(session), []);
      assert.ok(stops.every(({ isShown }) => isShown), JSON.stringify(stops));
      assert.deepEqual(await reflow(session, site), []);
    },
  },
  {
    name: "can be installed",
    folder: good,
    leavesOut: {
      firefox: "it has no command that tells",
      webkitgtk: "it has no command that tells",
      wpe: "it has no command that tells",
    },
    async play({ session, site }) {
      await session.go(site.address);
      assert.deepEqual(await installErrors(session), []);
    },
  },
]);

playAll("a bad page", [
  {
    name: "fails every look",
    folder: bad,
    async play({ session, site }) {
      await session.go(site.address);
      const broken = (await axe(session)).map((found) => found.split(":")[0]);
      for (const rule of ["color-contrast", "html-has-lang", "image-alt", "label"]) assert.ok(broken.includes(rule), `${rule} in ${broken}`);
      assert.deepEqual((await contrast(session)).sort(), ["color-contrast-enhanced: .dim", "color-contrast: .pale"]);
      assert.match((await smallTargets(session)).join(), /button “x” \d+x\d+/);
      const elsewhere = `${site.otherOrigin}/page.css`;
      await session.runAsync((/** @type {string} */ address) => fetch(address, { mode: "no-cors" }).then(() => {}), elsewhere);
      assert.deepEqual(await otherHosts(session), [elsewhere]);
      assert.ok((await walk(session)).some(({ isShown }) => !isShown));
      await session.run(() => document.querySelector("button")?.removeAttribute("data-walked"));
      assert.deepEqual(await missed(session), ["button “x”"]);
      const misfits = (await reflow(session, site)).join("\n");
      assert.match(misfits, /plain: 6\d\d px wide in 320: .*p\.wide/);
      assert.match(misfits, /plain: p\.cut cuts its content off/);
    },
  },
]);

const KNOWS_NO_SUCH = "it has no switch for it";

playAll("a wish", [
  {
    name: "a dark scheme, less motion and a language are granted",
    folder: good,
    wishes: { scheme: "dark", lessMotion: true, language: "de-DE" },
    leavesOut: { webkitgtk: KNOWS_NO_SUCH, wpe: KNOWS_NO_SUCH },
    async play({ session, site }) {
      await session.go(site.address);
      assert.deepEqual(await session.run(() => [
        matchMedia("(prefers-color-scheme: dark)").matches,
        matchMedia("(prefers-reduced-motion: reduce)").matches,
        navigator.language,
      ]), [true, true, "de-DE"]);
    },
  },
  {
    name: "forced colours and blocked storage are granted",
    folder: good,
    wishes: { forcedColours: true, storageBlocked: true },
    leavesOut: { webkitgtk: KNOWS_NO_SUCH, wpe: KNOWS_NO_SUCH },
    async play({ session, site }) {
      await session.go(site.address);
      assert.deepEqual(await session.run(() => {
        let storage = "there";
        try {
          localStorage.getItem("x");
        } catch (error) {
          storage = /** @type {Error} */ (error).name;
        }
        return [matchMedia("(forced-colors: active)").matches, storage];
      }), [true, "SecurityError"]);
    },
  },
  {
    name: "a dark screen is granted",
    folder: good,
    wishes: { scheme: "dark", phone: true },
    leavesOut: { wpe: KNOWS_NO_SUCH },
    async play({ session, site, engine }) {
      await session.go(site.address);
      assert.ok(await session.run(() => matchMedia("(prefers-color-scheme: dark)").matches));
      if (engine === "chromium") assert.equal(await session.run(() => innerWidth), 360);
      else assert.ok(await session.run(() => innerWidth <= 500));
    },
  },
  {
    name: "a browser without wasm is granted",
    folder: good,
    wishes: { noWasm: true },
    leavesOut: { chromium: KNOWS_NO_SUCH },
    async play({ session, site }) {
      await session.go(site.address);
      assert.equal(await session.run(() => typeof WebAssembly), "undefined");
    },
  },
  {
    name: "a browser without scripts is granted",
    folder: good,
    wishes: { scriptsOff: true },
    leavesOut: { firefox: KNOWS_NO_SUCH, webkitgtk: KNOWS_NO_SUCH, wpe: KNOWS_NO_SUCH },
    async play({ session, site }) {
      await session.go(site.address);
      assert.equal(await session.text("output"), "…");
    },
  },
]);

const profiles = mkdtempSync(join(tmpdir(), "farthing-profiles-"));
after(() => rmSync(profiles, { recursive: true }));

/** Both engines write what a page stored to the disk within this time; a crash before it loses it. */
const WRITTEN_WITHIN_MS = 7_000;

for (const engine of engines.filter((name) => ["chromium", "firefox"].includes(name))) {
  test(`a profile outlives its browser, closed or crashed, in ${engine}`, async () => {
    const profile = join(profiles, engine);
    mkdirSync(profile);
    const site = await startSite(good);
    const holding = async () => {
      const browser = await startEngine(engine, { profile });
      await browser.session.go(site.address);
      return { browser, typed: await browser.session.run(() => localStorage.getItem("typed")) };
    };
    const store = (/** @type {import("./engines.mjs").Browser} */ { session }, /** @type {string} */ text) =>
      session.run((/** @type {string} */ typed) => localStorage.setItem("typed", typed), text);
    try {
      const { browser: first } = await holding();
      await store(first, "1,5");
      await first.stop();
      const { browser: second, typed } = await holding();
      assert.equal(typed, "1,5");
      await store(second, "2,5");
      await new Promise((resolve) => setTimeout(resolve, WRITTEN_WITHIN_MS));
      second.crash();
      const { browser: third, typed: last } = await holding();
      await third.stop();
      assert.equal(last, "2,5");
    } finally {
      await site.stop();
    }
  });
}

/** @param {string} name @param {Record<string, string | Buffer>} files */
function write(name, files) {
  const folder = mkdtempSync(join(tmpdir(), `farthing-${name}-`));

  for (const [path, content] of Object.entries(files)) writeFileSync(join(folder, path), content);
  return folder;
}
