// @ts-check
/** The page as one file, opened from a disk as who was sent it opens it. */

import assert from "node:assert/strict";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { otherHosts } from "../look/hosts.mjs";
import { builtPage } from "../paths.mjs";
import { ANSWER, answered, becomes, begun, HOLDS, MEASURE, noted, openPlace, PRICE, says, SHELF_ROW, tap, texts, write } from "./page/places.mjs";
import { savedBy } from "./page/files.mjs";
import { BITTERS, bottleKey, LOCK_GATE, openWith, RYE, storageOf, stored } from "./page/records.mjs";
import { STATES } from "./page/states.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const FILE = "one-file.html";
const OFFER = "keep this page in one file";
const GONE = "The file did not come: it needs signal, once. Try again when there is some.";
const HERE = "This page is one file. Send it on as it is: it fetches nothing and sends nothing. What you keep stays in this browser, not in the file: save it to a file before you move or rename this one.";
const REFUSED = "This browser keeps nothing for this page (a private window, or its settings). The sums go on; save to a file before you leave.";
const NO_WASM = "This browser does not run the part that does the sums (WebAssembly is off, perhaps by a lockdown or strict security setting). Allow it for this page, or open the page in another browser.";
const DAMAGED = "This copy of the page is damaged: an editor or a mail program changed it on the way. Nothing that you kept is lost. Get the file again: in a zip folder it arrives as it was.";

const built = () => readFileSync(join(builtPage, FILE));
/** As text, without its mark of byte order. */
const text = () => built().subarray(2).toString("utf16le");
const WITH_MARK = "\uFEFF";

const folder = mkdtempSync(join(tmpdir(), "farthing-one-file-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
let count = 0;

/** A copy in a folder of its own, as engines keep a shelf for each file or for all. @param {Buffer} bytes @param {string} path */
function copy(bytes = built(), path = "farthing.html") {
  const place = join(folder, `${count += 1}`, path);
  mkdirSync(join(place, ".."), { recursive: true });
  writeFileSync(place, bytes);
  return pathToFileURL(place).href;
}

/** Opens a copy on a device that kept this and nothing else. @param {Session} session @param {Parameters<typeof storageOf>[0]} shelf */
async function openCopyWith(session, shelf, address = copy()) {
  await session.go(address);
  await begun(session);
  await session.run((/** @type {Record<string, string>} */ all) => {
    localStorage.clear();
    for (const [key, kept] of Object.entries(all)) localStorage.setItem(key, kept);
  }, storageOf(shelf));
  await session.go("about:blank");
  await session.go(address);
  await begun(session);
}

/** @param {Session} session */
async function reckons(session) {
  await write(session, PRICE, "18.50");
  await write(session, HOLDS, "100");
  await write(session, MEASURE, "2 dashes");
  await says(session, ANSWER, "34p");
  await write(session, MEASURE, "4 dashes");
  await says(session, ANSWER, "68p");
}

/** @param {Session} session */
const saysDamaged = (session) => session.waitFor((/** @type {string} */ words) => document.querySelector("#waiting > :first-child")?.textContent === words, "what is wrong", DAMAGED);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "the one file shows the worked example, reckons, and keeps a shelf of its own",
    async play({ session }) {
      const address = copy();
      await session.go(address);
      await answered(session);
      await becomes(() => texts(session, "#notes .note p"), []);
      await openCopyWith(session, { bottles: [BITTERS] }, address);
      await reckons(session);
      await openPlace(session, "shelf");
      await says(session, `${SHELF_ROW} .what`, "orange bitters");
      await says(session, ".one-file-about", HERE);
      assert.ok(!(await texts(session, ".file-tools button")).includes(OFFER));
      await session.back();
      await session.waitFor(() => document.querySelector("main .place.sum"), "the sum");
      await session.reload();
      await begun(session);
      await says(session, ANSWER, "68p");
      assert.ok((await stored(session))[bottleKey(BITTERS)]);
    },
  },
  {
    name: "everything that opens on the page opens in the one file",
    async play({ session }) {
      await openCopyWith(session, { bottles: [BITTERS, RYE], specs: [LOCK_GATE] });
      for (const { open } of STATES) await open(session);
      assert.deepEqual(await otherHosts(session), []);
    },
  },
  {
    name: "the one file sends nothing anywhere, even if a script in it tried",
    async play({ session, site }) {
      await session.go(copy());
      await begun(session);
      const refused = await session.runAsync(async (/** @type {string} */ address) => {
        /** @type {string[]} */
        const heard = [];
        document.addEventListener("securitypolicyviolation", (event) => heard.push(event.effectiveDirective));
        await fetch(address).then(() => heard.push("it was fetched"), () => {});
        document.createElement("img").src = address;
        await new Promise((resolve) => setTimeout(resolve, 300));
        return heard.sort();
      }, `${site.address}told`);
      assert.deepEqual(refused, ["connect-src", "img-src"]);
      assert.deepEqual(site.log, []);
    },
  },
  {
    name: "the one file reckons where storage is refused, and says so",
    wishes: { storageBlocked: true, language: "en-GB" },
    leavesOut: { webkitgtk: "it has no switch that refuses storage", wpe: "it has no switch that refuses storage" },
    async play({ session }) {
      await session.go(copy());
      await begun(session);
      await noted(session, REFUSED);
      await reckons(session);
    },
  },
  {
    name: "the one file says why it cannot reckon without wasm",
    wishes: { noWasm: true },
    leavesOut: { chromium: "it has no switch that takes wasm away" },
    async play({ session }) {
      await session.go(copy());
      await noted(session, NO_WASM);
    },
  },
  {
    name: "without scripts the one file still tells a worked example, and what it needs",
    wishes: { scriptsOff: true },
    leavesOut: { firefox: "its driver needs scripts itself", webkitgtk: "it has no switch for scripts", wpe: "it has no switch for scripts" },
    async play({ session }) {
      await session.go(copy());
      assert.match((await session.text("main")).replace(/\s+/g, " "), /2 dashes are 1\.84 ml and cost .*: 34p\..* this page needs JavaScript/);
    },
  },
  {
    name: "the one file works under any name, in any folder, and where its host calls it UTF-8",
    async play({ session, site }) {
      await openCopyWith(session, {}, copy(built(), "Bär & Söhne, 100 % #1/farthing (2)?.html"));
      await reckons(session);
      await openPlace(session, "shelf");
      await session.back();
      await session.waitFor(() => document.querySelector("main .place.sum"), "the sum");
      site.headers = { "content-security-policy": "", "content-disposition": "inline" };
      await session.go(`${site.address}${FILE}`);
      await answered(session);
    },
  },
  {
    name: "the one file survives an editor that saves it in another form",
    async play({ session }) {
      await session.go(copy(Buffer.from(WITH_MARK + text().replace(/\n/g, "\r\n"))));
      await answered(session);
    },
  },
  {
    name: "a damaged copy of the one file says so",
    async play({ session }) {
      const whole = text();
      const middle = Math.floor(whole.length / 2);
      const other = whole.charAt(middle) === "\u4e00" ? "\u4e01" : "\u4e00";
      const damaged = [
        Buffer.from(WITH_MARK + whole.slice(0, middle) + other + whole.slice(middle + 1), "utf16le"),
        Buffer.from(WITH_MARK + whole.slice(0, middle) + whole.slice(middle + 9), "utf16le"),
        // As an editor saves that has no letters but those of its country.
        Buffer.from(whole.replace(/[^\0-\x7f]/g, "?"), "latin1"),
      ];
      for (const bytes of damaged) {
        await session.go(copy(bytes));
        await saysDamaged(session);
        assert.match(await session.text("main"), /2 dashes are 1\.84 ml/);
      }
      // Cut short, it has no script that could say more than the page does from the start.
      await session.go(copy(built().subarray(0, built().length / 2)));
      assert.match(await session.text("main"), /part of it did not arrive/);
    },
  },
  {
    name: "the shelf offers the page as one file, and says when it does not come",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [BITTERS] });
      await openPlace(session, "shelf");
      const { name } = await savedBy(session, OFFER);
      assert.equal(name, "farthing.html");
      const saved = await session.runAsync(async () => {
        const reader = new FileReader();
        await new Promise((resolve) => {
          reader.onload = resolve;
          reader.readAsDataURL(/** @type {any} */ (window).savedFiles[0].blob);
        });
        return String(reader.result).split(",")[1];
      });
      assert.ok(Buffer.from(saved, "base64").equals(built()));
      site.missing.add(FILE);
      await tap(session, OFFER);
      await noted(session, GONE);
      await tap(session, "×", "#notes");
      await site.stop();
      await tap(session, OFFER);
      await noted(session, GONE);
    },
  },
];
