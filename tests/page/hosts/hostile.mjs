// @ts-check
/** Pages of hosts that make it hard: their styles, their writing, their policies, their other scripts. */

import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { devNull, tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { becomes } from "../scenarios/page/places.mjs";
import { startSite } from "../site.mjs";
import { COST, costs, differences, enterFrame, fetched, frame, frameScript, glass, laysGlass, publishedAt, SCRIPT, script, seen, showsFrame, snippet, TEXTS, troubles, WASM } from "./rig/glass.mjs";

/** @typedef {import("../scenarios.mjs").Stage} Stage */
/** @typedef {import("../webdriver.mjs").Session} Session */

const POLICY = "What this glass costs cannot be shown here: the policy of this page does not allow it. Its keeper can: script-src and connect-src must name the place that Farthing comes from, and script-src needs 'wasm-unsafe-eval'.";

/** Nothing is to be fetched for this long once everything stands. */
const QUIET_MS = 700;

/** More than a screen of any engine, and of what is fetched ahead. */
const FAR = `<div style="block-size: 5000px"></div>`;

/** @param {{ html?: string, head?: string, body: string }} parts of a host's page */
const page = ({ html = 'lang="en"', head = "", body }) => `<!DOCTYPE html>
<html ${html}><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Below the Lock</title><link rel="icon" href="data:,">${head}</head>
<body><h1>The drink of the house</h1><p>The last boat is through.</p>${body}<p>Mind the <a href="#">step</a>.</p></body></html>`;

/** @param {string} rules */
const style = (rules) => `<style>${rules}</style>`;

/** Serves one page of a host. @param {string} html @param {(host: import("../site.mjs").Site) => Promise<void>} act @param {Record<string, string>} headers */
async function withHost(html, act, headers = {}) {
  const host = await startSite(devNull, { headers });
  host.replace("index.html", html);
  try {
    await act(host);
  } finally {
    await host.stop();
  }
}

/** The light list alone is seen, and nothing took its place. @param {Session} session */
async function showsListAlone(session) {
  await becomes(() => seen(session), TEXTS);
  assert.deepEqual(await costs(session), [""]);
}

const rest = () => new Promise((resolve) => setTimeout(resolve, QUIET_MS));

/** How each element that a glass lays is styled. @param {Session} session @returns {Promise<Record<string, Record<string, string>>>} */
const stylesWithin = (session) => session.run(() => {
  const root = /** @type {ShadowRoot} */ (document.querySelector("farthing-glass")?.shadowRoot);
  const laid = [...root.querySelectorAll("[part~=glass], [part~=glass] *")];
  return Object.fromEntries(laid.map((element, at) => {
    const style = getComputedStyle(element);
    return [`${element.localName} ${at}`, Object.fromEntries([...style].map((name) => [name, style.getPropertyValue(name)]))];
  }));
});

/** Plays on a page of a host under a policy. @param {Stage} stage @param {string} policy @param {() => Promise<void>} act */
const underPolicy = ({ session, site }, policy, act) =>
  withHost(page({ body: snippet(site) }), async (host) => {
    await session.go(host.address);
    await act();
  }, { "content-security-policy": policy });

/** Styles of the snippet's own line and pictures of the host are no matter of scripts. */
const STRICT = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "a plain page keeps its looks around a glass",
    play: (stage) => withHost(page({ body: snippet(stage.site) }), (host) => laysGlass(stage, host.address)),
  },
  {
    name: "a host that takes the styles of everything away still shows the list and the cost",
    play: (stage) => withHost(page({ head: style("* { all: unset !important }"), body: snippet(stage.site) }), async (host) => {
      await laysGlass(stage, host.address);
      assert.ok(await stage.session.run(() => {
        const root = document.querySelector("farthing-glass")?.shadowRoot;
        const box = root?.querySelector("[part~=cost]")?.getBoundingClientRect();
        return box && box.width > 0 && box.height > 0;
      }));
    }),
  },
  {
    name: "what a host says of everything says no more inside a glass than what it says of its text",
    async play({ session, site }) {
      const text = "color: red; font-size: 40px";
      const loud = `* { color: red !important; font-size: 40px !important; border: 7px solid lime !important; padding: 9px !important; opacity: .5 !important;
          font-style: italic !important; font-weight: 900 !important; letter-spacing: 3px !important; word-spacing: 9px !important; line-height: 3 !important;
          text-transform: uppercase !important; text-align: center !important; text-indent: 30px !important; white-space: pre !important }
        p, output, .cost { display: none !important } button { position: fixed !important }`;
      const here = async (/** @type {string} */ rules) => {
        /** @type {Record<string, Record<string, string>>} */
        let found = {};
        // The width is the host's to give: inside, the two pages are asked at the same.
        const width = "farthing-glass { display: block !important; inline-size: 500px !important; padding: 0 !important; border: 0 !important; opacity: 1 !important }";
        await withHost(page({ head: style(rules + width), body: snippet(site) }), async (host) => {
          await session.go(host.address);
          await becomes(() => costs(session), [COST]);
          found = await stylesWithin(session);
        });
        return found;
      };
      assert.deepEqual(differences(await here(loud), await here(`html, farthing-glass { ${text} }`)), []);
    },
  },
  {
    name: "from right to left and in letters of twice the size, a glass fits a phone",
    play: ({ session, site }) => withHost(page({
      html: 'lang="en" dir="rtl"', head: style("html { font-size: 200% } body { margin: 8px }"), body: snippet(site),
    }), async (host) => {
      await session.go(host.frameAddress(320, 740));
      await enterFrame(session);
      await becomes(() => costs(session), [COST]);
      assert.deepEqual(await session.run(() => [document.documentElement.scrollWidth <= innerWidth, document.dir]), [true, "rtl"]);
      await session.leaveFrame();
    }),
  },
  {
    name: "a policy that lets the script in and no more leaves the list, and the glass says why",
    async play(stage) {
      await underPolicy(stage, `${STRICT}; script-src ${stage.site.otherOrigin}`, async () => {
        await becomes(() => troubles(stage.session), [POLICY]);
        await showsListAlone(stage.session);
      });
    },
  },
  {
    name: "a policy that lets the sums in and not run leaves the list, and the glass says why",
    async play(stage) {
      const { otherOrigin } = stage.site;
      await underPolicy(stage, `${STRICT}; script-src ${otherOrigin}; connect-src ${otherOrigin}`, async () => {
        await becomes(() => troubles(stage.session), [POLICY]);
        await showsListAlone(stage.session);
      });
    },
  },
  {
    name: "a policy that lets the sums run is enough, with no word for styles of ours, and with trusted types",
    async play(stage) {
      const { otherOrigin } = stage.site;
      const grants = `script-src ${otherOrigin} 'wasm-unsafe-eval'; connect-src ${otherOrigin}`;
      for (const policy of [
        `default-src 'none'; ${grants}`,
        `default-src 'none'; ${grants}; require-trusted-types-for 'script'; trusted-types 'none'`,
      ]) await underPolicy(stage, policy, () => becomes(() => costs(stage.session), [COST]));
    },
  },
  {
    name: "a policy that only reports is not blamed for what did not arrive",
    play: ({ session, site }) => withHost(page({ body: snippet(site) }), async (host) => {
      site.missing.add(WASM);
      await session.go(host.address);
      await becomes(() => troubles(session), ["What this glass costs cannot be shown: a part of Farthing did not arrive. Load the page again."]);
      await showsListAlone(session);
    }, { "content-security-policy-report-only": "default-src 'none'" }),
  },
  {
    name: "a policy that lets frames in is enough for a frame",
    play: (stage) => withHost(page({ body: frame(stage.site) }), async (host) => {
      await stage.session.go(host.address);
      await enterFrame(stage.session);
      await becomes(() => costs(stage.session), [COST]);
      await stage.session.leaveFrame();
    }, { "content-security-policy": `${STRICT}; frame-src ${stage.site.otherOrigin}` }),
  },
  {
    name: "a frame is as high as it tells, and no message of another moves it",
    play: (stage) => withHost(page({ head: frameScript(stage.site), body: `${FAR}${frame(stage.site)}<iframe id="forger" srcdoc="" title="Another"></iframe>` }), async (host) => {
      await showsFrame(stage, host.address);
      const high = () => stage.session.run(() => [...document.querySelectorAll("iframe")].map((each) => each.style.blockSize));
      const before = await high();
      await stage.session.run(() => {
        const forger = /** @type {HTMLIFrameElement} */ (document.getElementById("forger"));
        for (const from of /** @type {any[]} */ ([forger.contentWindow, window])) {
          from.eval("top.postMessage({ farthing: 'height', height: 3999 }, '*')");
        }
      });
      await rest();
      assert.deepEqual(await high(), before);
    }),
  },
  {
    name: "a second copy of the script, of another version from elsewhere, changes nothing",
    async play({ session, site }) {
      const other = await startSite();
      other.replace(SCRIPT, `${other.read(SCRIPT)}\nwindow.otherRan = true;`);
      const head = `${script(site)}<script type="module" src="${publishedAt(site)}${SCRIPT}?again"></script>${script(other)}`;
      try {
        await withHost(page({ head: `<script>addEventListener("error", (event) => (window.failed = event.message))</script>${head}`, body: glass + glass }), async (host) => {
          await session.go(host.address);
          await becomes(() => costs(session), [COST, COST]);
          await session.waitFor(() => "otherRan" in window, "the other copy");
          await rest();
          assert.deepEqual(await session.run(() => /** @type {any} */ (window).failed ?? null), null);
          assert.deepEqual([fetched(site, WASM), fetched(other, WASM)], [1, 0]);
        });
      } finally {
        await other.stop();
      }
    },
  },
  {
    name: "where the script does not arrive, or a host of ours sends no leave to read it, the list is there",
    play: ({ session, site }) => withHost(page({ body: snippet(site) }), async (host) => {
      site.missing.add(SCRIPT);
      await session.go(host.address);
      await showsListAlone(session);
      site.missing.clear();
      site.headers = { "access-control-allow-origin": "https://elsewhere.invalid" };
      await session.go(host.address);
      await rest();
      await showsListAlone(session);
    }),
  },
  {
    name: "ten glasses on one page share one core",
    play: ({ session, site }) => withHost(page({ head: script(site), body: glass.repeat(10) }), async (host) => {
      await session.go(host.address);
      for (let at = 0; at < 10; at += 1) {
        await session.run((/** @type {number} */ which) => document.querySelectorAll("farthing-glass")[which]?.scrollIntoView(), at);
        await session.waitFor((/** @type {number} */ which) =>
          document.querySelectorAll("farthing-glass")[which]?.shadowRoot?.querySelector("[part~=cost]")?.textContent, `the cost of glass ${at}`, at);
      }
      assert.deepEqual(await costs(session), Array.from({ length: 10 }, () => COST));
      assert.equal(fetched(site, WASM), 1);
    }),
  },
  {
    name: "until a glass comes near the screen, its script is all that is fetched",
    play: ({ session, site }) => withHost(page({ body: FAR + snippet(site) }), async (host) => {
      await session.go(host.address);
      await session.waitFor(() => customElements.get("farthing-glass"), "the element");
      await rest();
      assert.deepEqual(site.log.map(({ path }) => path), [SCRIPT]);
      await session.run(() => document.querySelector("farthing-glass")?.scrollIntoView());
      await becomes(() => costs(session), [COST]);
      assert.equal(fetched(site, WASM), 1);
    }),
  },
  {
    name: "a page that is opened as a file shows the cost",
    async play({ session, site }) {
      const folder = mkdtempSync(join(tmpdir(), "farthing-file-"));
      const file = join(folder, "post.html");
      writeFileSync(file, page({ body: snippet(site) }));
      try {
        await session.go(pathToFileURL(file).href);
        await becomes(() => costs(session), [COST]);
        assert.deepEqual(await seen(session), TEXTS);
      } finally {
        rmSync(folder, { recursive: true });
      }
    },
  },
];
