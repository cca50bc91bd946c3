// @ts-check
/** Names, files and records that mean harm. */
import assert from "node:assert/strict";
import { faults, listensForFaults } from "./page/early.mjs";
import { choose } from "./page/files.mjs";
import { becomes, begun, blank, NAME, openPlace, openRow, PRICE, says, tap, texts, write } from "./page/places.mjs";

import { bottle, fileOf, line, openWith, spec, stored } from "./page/records.mjs";

/** @typedef {import("../webdriver.mjs").Session} Session */

const HOSTILE = [
  `<img src=x onerror="window.pwned=1">`,
  `"><script>window.pwned=1</script>`,
  `' onfocus='window.pwned=1' x='`,
  `javascript:window.pwned=1`,
  `\u202Esrettib egnaro`,
  `nought\u0000inside`,
  `🍸🏽‍🍳 family 👨‍👩‍👧`,
  `</style><svg onload=window.pwned=1>`,
  `{{constructor.constructor("window.pwned=1")()}}`,
  `__proto__`,
];

const bottles = HOSTILE.map((name, at) => bottle(`h${at}`, name, "10", "700"));
const specs = HOSTILE.map((name, at) => spec(`g${at}`, name, [line(`h${at}`, "50", "ml"), line(`h${(at + 1) % HOSTILE.length}`, "2", "dash")]));

/** What the names did beyond being shown. @param {Session} session @returns {Promise<string[]>} */
async function harm(session) {
  const done = await session.run(() => [
    ...("pwned" in window ? ["a name ran"] : []),
    ...[...document.querySelectorAll("img, script:not([src]), [onerror], [onfocus], [onload], a[href^=javascript]")].map((each) => `a name became ${each.localName}`),
    ...(/** @type {any} */ ({}).x !== undefined || Object.keys(Object.prototype).length > 0 ? ["the prototype of everything changed"] : []),
    ...(document.documentElement.scrollWidth > innerWidth ? [`the page is ${document.documentElement.scrollWidth} wide`] : []),
  ]);
  return [...done, ...await faults(session)];
}

/** Names as they stand, spaces and all. @param {Session} session @param {string} css @returns {Promise<string[]>} */
const named = (session, css) => session.run((/** @type {string} */ wanted) => [...document.querySelectorAll(wanted)].map((each) => each.textContent), css);

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "hostile names are shown as they are, everywhere, and do nothing",
    async play({ session, site }) {
      listensForFaults(site);
      await openWith(session, site, { bottles, specs });
      await openPlace(session, "shelf");
      await becomes(async () => (await named(session, ".shelf .of-bottle .what")).sort(), [...HOSTILE].sort());
      await becomes(async () => (await named(session, ".shelf .of-spec .what")).sort(), [...HOSTILE].sort());
      for (const name of HOSTILE.slice(0, 6)) {
        await openPlace(session, "shelf");
        await session.run((/** @type {string} */ wanted) => {
          const row = [...document.querySelectorAll(".shelf .of-bottle .row")].find((each) => each.querySelector(".what")?.textContent === wanted);
          /** @type {HTMLElement} */ (row).click();
        }, name);
        const field = blank(".editor", "Of what");
        await becomes(() => session.value(field), name);
        await write(session, blank(".editor", "What you paid"), "11");
        await session.waitFor(() => document.querySelectorAll(".moved .row").length === 2, "the glasses it moves");
        await becomes(() => harm(session), [], name);
      }
      await openPlace(session, "shelf");
      await openRow(session, String(HOSTILE[0]));
      await session.waitFor(() => document.querySelector("main .place.glass .line"), "the glass");
      await becomes(() => harm(session), []);
      assert.ok((await texts(session, ".glass .what"))[0]?.includes(String(HOSTILE[0])));
      // The likely answers and the notes carry names too.
      await openPlace(session, "sum");
      await session.click(NAME);
      assert.ok((await named(session, "#chips bdi")).includes(HOSTILE[0]));
      await tap(session, String(HOSTILE[1]), "#chips");
      await write(session, PRICE, "12");
      await tap(session, "Keep the change on the shelf", ".sum");
      await becomes(() => harm(session), []);
    },
  },
  {
    name: "a hostile name that is typed is kept and found as it is",
    async play({ session, site }) {
      listensForFaults(site);
      await openWith(session, site);
      await write(session, PRICE, "10");
      await write(session, blank(".sum", "How much one bottle holds"), "700");
      await write(session, NAME, String(HOSTILE[0]));
      await tap(session, "Keep this bottle on the shelf", ".sum");
      await session.reload();
      await begun(session);
      await openPlace(session, "shelf");
      await becomes(() => named(session, ".shelf .what"), [HOSTILE[0]]);
      await becomes(() => harm(session), []);
    },
  },
  {
    name: "a name of ten thousand letters is refused in words, and breaks nothing",
    async play({ session, site }) {
      listensForFaults(site);
      const long = "x".repeat(10_000);
      await openWith(session, site, { bottles: [bottle("fair", "a fair bottle", "10", "700")] });
      await session.run((/** @type {string} */ css, /** @type {string} */ text) => {
        const field = /** @type {HTMLInputElement} */ (document.querySelector(css));
        field.value = text;
        field.dispatchEvent(new InputEvent("input", { bubbles: true }));
      }, NAME, long);
      await says(session, ".sum .wrong", "That name is longer than is kept. Try 80 letters or fewer.");
      await becomes(() => harm(session), []);
      const before = await stored(session);
      await openPlace(session, "shelf");
      await choose(session, fileOf({ bottles: [bottle("long", long, "10", "700")] }));
      await session.waitFor(() => document.querySelector(".file-about p"), "an answer to the file");
      assert.match((await texts(session, ".file-about p")).join(), /Nothing was changed|80 letters/);
      const { "farthing:draft": _, ...after } = await stored(session);
      assert.deepEqual(after, Object.fromEntries(Object.entries(before).filter(([key]) => key !== "farthing:draft")));
      await becomes(() => harm(session), []);
    },
  },
  {
    name: "a hostile file changes nothing but what it says",
    async play({ session, site }) {
      listensForFaults(site);
      await openWith(session, site);
      await openPlace(session, "shelf");
      const good = fileOf({ bottles, specs });
      const deep = "[".repeat(100_000);
      for (const text of [
        `{"__proto__":{"x":1}}`, `{"constructor":{"prototype":{"x":1}}}`, good.replace('"rough":{}', '"rough":{"__proto__":{"x":1}}'),
        good.replace('"id":"h0"', '"id":"h0","__proto__":{"x":1}'), deep, `${deep}${"]".repeat(100_000)}`,
      ]) {
        await choose(session, text);
        await session.waitFor(() => document.querySelector(".file-about p"), "an answer to the file");
        assert.match((await texts(session, ".file-about p")).join(), /Nothing was changed/, text.slice(0, 60));
        await becomes(() => harm(session), []);
        await session.run(() => document.querySelector(".file-about")?.replaceChildren());
      }
      await choose(session, good);
      await session.waitFor(() => document.querySelectorAll(".file-about li").length >= 20, "what the file would change");
      assert.ok((await named(session, ".file-about bdi")).includes(HOSTILE[0]));
      await tap(session, "Bring them in", ".file-about");
      await becomes(async () => (await named(session, ".shelf .of-bottle .what")).sort(), [...HOSTILE].sort());
      await becomes(() => harm(session), []);
    },
  },
  {
    name: "records under the names of the language's own things are records like others",
    async play({ session, site }) {
      listensForFaults(site);
      const ids = ["__proto__", "constructor", "toString", "a:b", "../x", "<b>"];
      await openWith(session, site, { bottles: ids.map((id) => bottle(id, `bottle ${id}`, "7", "700")), specs: ids.map((id) => spec(id, `glass ${id}`, [line(id, "50", "ml")])) });
      await openPlace(session, "shelf");
      await becomes(async () => (await texts(session, ".shelf .of-spec .row")).sort(), ids.map((id) => `glass ${id}50p`).sort());
      await openRow(session, "bottle __proto__");
      await write(session, blank(".editor", "What you paid"), "14");
      await tap(session, "Keep the change", ".editor");
      await says(session, ".shelf .of-spec .row", "glass __proto__£1.00");
      await becomes(() => harm(session), []);
    },
  },
];
