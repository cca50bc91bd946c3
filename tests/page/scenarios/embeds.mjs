// @ts-check
/** A glass on somebody's page: where its lines come from, what a reader may change, what is kept of that. */
import assert from "node:assert/strict";
import { devNull } from "node:os";
import { axe } from "../look/axe.mjs";
import { smallTargets } from "../look/targets.mjs";
import { startSite } from "../site.mjs";
import { becomes, pick } from "./page/places.mjs";
import { BITTERS, LOCK_GATE, openWith, RYE, SODA } from "./page/records.mjs";
import { openSend } from "./page/states.mjs";

/** @typedef {import("../scenarios.mjs").Stage} Stage */
/** @typedef {import("../site.mjs").Site} Site */
/** @typedef {import("../webdriver.mjs").Session} Session */

const CODE = ".send textarea[aria-label='What is pasted into the page']";
/** WCAG 2.5.5. */
const BEST_TARGET_PX = 44;

const NO_SWITCH = "this engine has no switch for it";

const PRICES = "rye whisky: 28 for 70 cl at 40 %; orange bitters: 18.50 for 100 ml at 44%";
const LIST = "<h2>Lock Keeper</h2><ul><li>50 ml rye whisky</li><li>2 dashes orange bitters</li><li>Garnish: lemon twist</li></ul>";
const DATA = { "@context": "https://schema.org", "@graph": [{ "@type": "WebPage" }, { "@type": ["Recipe"], name: "Weir", recipeIngredient: ["50 ml rye whisky"] }] };

/** @param {string} attributes @param {string} inside */
const glass = (attributes = `currency="GBP" locale="en-GB" prices="${PRICES}"`, inside = LIST) => `<farthing-glass ${attributes}>${inside}</farthing-glass>`;

/** Opens a page of another host. @param {Stage} stage @param {string} body @param {(host: Site) => Promise<void>} act @param {Record<string, string>} files */
async function onHost({ session, site }, body, act, files = {}) {
  const host = await startSite(devNull, {});
  host.replace("index.html", `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>Below the Lock</title><link rel="icon" href="data:,">
    <script>window.heard = []; addEventListener("farthing-price", ({ detail }) => heard.push(detail))</script>
    <script type="module" src="${site.otherOrigin}${site.prefix}farthing-glass.js"></script>${body}`);
  for (const [path, text] of Object.entries(files)) host.replace(path, text);
  try {
    await session.go(host.address);
    await act(host);
  } finally {
    await host.stop();
  }
}

/** The texts of a part, of every glass. @param {Session} session @param {string} part @returns {Promise<string[]>} */
const parts = (session, part) => session.run((/** @type {string} */ name) =>
  [...document.querySelectorAll("farthing-glass")].flatMap((each) => [...(each.shadowRoot?.querySelectorAll(`[part~=${name}]`) ?? [])])
    .map((element) => (/** @type {HTMLElement} */ (element).innerText ?? "").replace(/\s+/g, " ").trim()), part);

/** @param {Session} session */
const costs = (session) => parts(session, "cost");

/** A person types into a blank of the first glass. @param {Session} session @param {string} label @param {string} text */
const types = (session, label, text) => session.run((/** @type {string} */ named, /** @type {string} */ typed) => {
  const root = document.querySelector("farthing-glass")?.shadowRoot;
  const blank = /** @type {HTMLInputElement | null | undefined} */ (root?.querySelector(`input[aria-label="${named}"]`));
  if (!blank) throw new Error(`no blank “${named}”`);
  blank.value = typed;
  blank.dispatchEvent(new Event("input", { bubbles: true }));
}, label, text);

/** Taps a button of the first glass. @param {Session} session @param {string} words */
const opens = (session, words) => session.run((/** @type {string} */ said) => {
  const buttons = [...(document.querySelector("farthing-glass")?.shadowRoot?.querySelectorAll("button") ?? [])];
  buttons.find((button) => button.textContent === said)?.click();
}, words);

const NOT_HERE = "To be seen here, it needs a network, and a browser from 2023 or later.";
/** Whether a paragraph of these words is seen. @param {Session} session @param {string} words */
const seenParagraph = (session, words) => session.run((/** @type {string} */ said) =>
  [...document.querySelectorAll(".send p")].some((each) => each.textContent === said && each.getClientRects().length > 0), words);

/** What is kept for the site of the host. @param {Session} session */
const kept = (session) => session.run(() => Object.fromEntries(Object.entries(localStorage)));

/** @type {import("../scenarios.mjs").Scenario[]} */
export default [
  {
    name: "under a list on any page stands what the glass costs, how sure that is, and its sums",
    play: (stage) => onHost(stage, glass(`currency="GBP" locale="en-GB" method="stirred" prices="${PRICES}"`), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34"]);
      assert.deepEqual(await parts(session, "range"), ["between £2.06 and £2.46"]);
      assert.deepEqual(await parts(session, "whose"), ["at the writer’s prices"]);
      await opens(session, "line by line");
      await becomes(() => parts(session, "line"), ["50 ml rye whisky £2.00 85 %", "2 dashes orange bitters 34p 15 %", "Garnish: lemon twist"]);
      await opens(session, "strength");
      await becomes(async () => (await parts(session, "strength"))[0]?.split(" Stirred")[0], "About 27.7 % vol, between 27.5 and 27.9 as labels may be off. 16 g of alcohol in a glass.");
      await opens(session, "the sums");
      await becomes(async () => /28\.00 × 50 ml ÷ 700 ml = 2\.00.*A dash is taken as 0\.92 ml/.test((await parts(session, "working"))[0] ?? ""), true);
      assert.deepEqual(await session.run(() => [...document.querySelectorAll("farthing-glass li")].map((each) => each.checkVisibility?.() ?? true)), [true, true, true]);
    }),
  },
  {
    name: "a reader’s price counts in every glass of the page, is told to the page, and is there the next time",
    play: (stage) => onHost(stage, glass() + glass(undefined, "<ul><li>25 ml rye whisky</li></ul>"), async (host) => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34", "£1.00"]);
      await opens(session, "my prices");
      await types(session, "What you pay for rye whisky", "35");
      await becomes(() => costs(session), ["£2.84", "£1.25"]);
      await becomes(() => parts(session, "whose"), ["at your prices and the writer’s", "at your prices and the writer’s"]);
      assert.deepEqual(await session.run(() => /** @type {any} */ (window).heard), [{ bottle: "rye whisky", price: "35", holds: "", currency: "GBP", cost: "2.8404" }]);
      assert.deepEqual(Object.keys(await kept(session)), ["farthing-glass:GBP"]);
      await session.go(host.address);
      await becomes(() => costs(session), ["£2.84", "£1.25"]);
      await types(session, "What you pay for rye whisky", "");
      await becomes(() => costs(session), ["£2.34", "£1.00"]);
    }),
  },
  {
    name: "what a reader cannot mean is told beside the blank, and the other lines stand",
    play: (stage) => onHost(stage, glass(), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34"]);
      await opens(session, "my prices");
      await types(session, "What you pay for rye whisky", "dear");
      await becomes(() => costs(session), ["34p"]);
      await becomes(async () => /That is no price\. Try 24\.50/.test((await parts(session, "prices"))[0] ?? ""), true);
      assert.deepEqual(await parts(session, "whose"), ["at your prices and the writer’s, without 1 line"]);
      await types(session, "What you pay for rye whisky", "28");
      await types(session, "How much rye whisky that buys", "1 l");
      await becomes(() => costs(session), ["£1.74"]);
    }),
  },
  {
    name: "a page may ask that nothing is kept of a reader’s prices",
    play: (stage) => onHost(stage, glass(`currency="GBP" keep="no" prices="${PRICES}"`), async (host) => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34"]);
      await opens(session, "my prices");
      await types(session, "What you pay for rye whisky", "35");
      await becomes(async () => (await parts(session, "prices"))[0]?.endsWith("Not kept: it is gone when you leave this page."), true);
      assert.deepEqual(await kept(session), {});
      await session.go(host.address);
      await becomes(() => costs(session), ["£2.34"]);
    }),
  },
  {
    name: "what a newer version, or another script, kept under our key is not written over",
    play: (stage) => onHost(stage, glass(), async (host) => {
      const { session } = stage;
      for (const there of ['{"format":2,"prices":{"rye whisky":35}}', "not ours", '{"format":1,"prices":"?"}']) {
        await session.run((/** @type {string} */ text) => localStorage.setItem("farthing-glass:GBP", text), there);
        await session.go(host.address);
        await becomes(() => costs(session), ["£2.34"]);
        await types(session, "What you pay for rye whisky", "35");
        await becomes(() => costs(session), ["£2.84"]);
        assert.deepEqual(await kept(session), { "farthing-glass:GBP": there });
      }
    }),
  },
  {
    name: "a page that is gone back to takes up what was kept meanwhile, and may keep again what nobody else has",
    play: (stage) => onHost(stage, glass(), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34"]);
      /** Another page keeps this, while this one is set aside. @param {string | null} text */
      const meanwhile = (text) => session.run((/** @type {string | null} */ there) => {
        if (there === null) localStorage.clear();
        else localStorage.setItem("farthing-glass:GBP", there);
        dispatchEvent(new PageTransitionEvent("pageshow", { persisted: true }));
      }, text);
      await meanwhile('{"format":1,"prices":[{"name":"orange bitters","price":"37","holds":""}]}');
      await becomes(() => costs(session), ["£2.68"]);
      await types(session, "What you pay for rye whisky", "35");
      await becomes(() => costs(session), ["£3.18"]);
      assert.deepEqual((await kept(session))["farthing-glass:GBP"]?.match(/"name":"[^"]*"/g), ['"name":"orange bitters"', '"name":"rye whisky"']);
      await meanwhile('{"format":2}');
      await becomes(() => costs(session), ["£2.34"]);
      await meanwhile(null);
      await types(session, "What you pay for rye whisky", "35");
      await becomes(async () => Object.keys(await kept(session)), ["farthing-glass:GBP"]);
    }),
  },
  {
    name: "a price that was put in for a name in other letters stands in its blank, and can be taken back",
    play: (stage) => onHost(stage, glass(), async (host) => {
      const { session } = stage;
      await session.run(() => localStorage.setItem("farthing-glass:GBP", '{"format":1,"prices":[{"name":"Ry\u00e9-Whisky","price":"35","holds":""}]}'));
      await session.go(host.address);
      await becomes(() => costs(session), ["£2.84"]);
      assert.equal(await session.run(() => document.querySelector("farthing-glass")?.shadowRoot?.querySelector("input")?.value), "35");
      await types(session, "What you pay for rye whisky", "");
      await becomes(() => costs(session), ["£2.34"]);
    }),
  },
  {
    name: "of more prices than are kept the latest count",
    play: (stage) => onHost(stage, glass(), async (host) => {
      const { session } = stage;
      await session.run(() => localStorage.setItem("farthing-glass:GBP", JSON.stringify({
        format: 1, prices: Array.from({ length: 200 }, (_, at) => ({ name: `bottle ${at}`, price: "1", holds: "" })),
      })));
      await session.go(host.address);
      await becomes(() => costs(session), ["£2.34"]);
      await types(session, "What you pay for rye whisky", "35");
      await becomes(() => costs(session), ["£2.84"]);
      const names = (await kept(session))["farthing-glass:GBP"]?.match(/"name":"[^"]*"/g) ?? [];
      assert.deepEqual([names.length, names[0], names[199]], [200, '"name":"bottle 1"', '"name":"rye whisky"']);
    }),
  },
  {
    name: "a glass follows its attributes and its list: currency, locale, what it shows, what goes in",
    play: (stage) => onHost(stage, glass(`currency="EUR" locale="de-DE" show="lines" prices="rye whisky: 28,70 for 70 cl"`, "<ul><li>50 ml rye whisky</li></ul>"), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["2,05\u00a0€".replace("\u00a0", " ")]);
      const tabs = () => parts(session, "tabs");
      await becomes(tabs, ["line by line"]);
      await session.run(() => {
        const element = /** @type {HTMLElement} */ (document.querySelector("farthing-glass"));
        element.setAttribute("show", "prices lines");
        element.setAttribute("prices", "rye whisky: 14 for 70 cl");
        element.setAttribute("locale", "no such locale");
        element.setAttribute("currency", "usd");
        /** @type {Element} */ (element.querySelector("li")).textContent = "100 ml rye whisky";
      });
      await becomes(async () => (await costs(session))[0]?.includes("2.00") || (await costs(session))[0]?.includes("2,00"), true);
      await becomes(tabs, ["line by line my prices"]);
      await session.run(() => /** @type {HTMLElement} */ (document.querySelector("farthing-glass")).hidden = true);
      assert.equal(await session.run(() => document.querySelector("farthing-glass")?.getClientRects().length), 0);
    }),
  },
  {
    name: "what a writer means by ounces and by a comma is the writer’s, wherever the reader is",
    play: (stage) => onHost(stage, `<div lang="en-GB">${glass(`currency="GBP" show="lines" prices="rye whisky: 28 for 70 cl"`, "<ul><li>1 fl oz rye whisky</li></ul>")}</div>
      <div lang="en-US">${glass(`currency="GBP" show="lines" prices="rye whisky: 28 for 70 cl"`, "<ul><li>1 fl oz rye whisky</li></ul>")}</div>
      <div lang="de">${glass(`currency="GBP" show="lines" prices="Gin: 28,70 for 0,7 l"`, "<ul><li>2,5 cl Gin</li></ul>")}</div>`, async () => {
      // An imperial ounce is 28.41 ml, a US one 29.57 ml, at 4 a 100 ml; the last is 2.5 cl at 4.10 a 10 cl.
      await becomes(async () => (await costs(stage.session)).map((cost) => cost.replace(",", ".").replace(/[^\d.]/g, "")), ["1.14", "1.18", "1.03"]);
    }),
  },
  {
    name: "what goes in may come from a file, or from the page’s own recipe data",
    play: (stage) => onHost(stage, `<script type="application/ld+json">not data</script><script type="application/ld+json">${JSON.stringify(DATA)}</script>
      ${glass(`locale="en-GB" src="glass.json"`, "")}${glass(`locale="en-GB" src="recipe.json" currency="GBP" prices="gin: 14 for 70 cl"`, "")}
      ${glass(`locale="en-GB" currency="GBP" prices="${PRICES}"`, "<p>See above.</p>")}`, async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.00", "£1.00", "£2.00"]);
      assert.deepEqual(await session.run(() => [...document.querySelectorAll("farthing-glass")].map((each) => each.shadowRoot?.querySelector("[part~=glass]")?.getAttribute("aria-label"))),
        ["What a glass of Staircase costs", "What a glass of Pound costs", "What a glass of Weir costs"]);
      // Nothing else may say what is in these, so their lines stand open.
      await becomes(() => parts(session, "line"), ["50 ml rye whisky £2.00 100 %", "50 ml gin £1.00 100 %", "50 ml rye whisky £2.00 100 %"]);
    }, {
      "glass.json": JSON.stringify({ name: "Staircase", currency: "GBP", lines: ["50 ml rye whisky"], prices: ["rye whisky: 28 for 70 cl"] }),
      "recipe.json": JSON.stringify([{ "@type": "https://schema.org/Recipe", name: "Pound", recipeIngredient: ["50 ml gin"] }]),
    }),
  },
  {
    name: "a glass of which nothing can be known says so, and says what is missing",
    play: (stage) => onHost(stage, ["none.json", "other.json", "long.json", "http://["].map((file) => glass(`currency="GBP" src="${file}"`)).join("") + glass(`currency="GBP"`, ""), async () => {
      const { session } = stage;
      const file = "What goes into this glass cannot be read: its file did not arrive, or is no recipe.";
      await becomes(() => parts(session, "trouble"), [file, file, file, file, "Nothing tells what goes into this glass: it needs a list of lines, such as 50 ml rye whisky."]);
    }, { "other.json": '{"lines": {"length": 3}, "__proto__": {"lines": ["50 ml gin"]}}', "long.json": JSON.stringify({ lines: ["50 ml gin"], note: "x".repeat(1_000_000) }) }),
  },
  {
    name: "a writer’s mistake is told, and what can be reckoned is",
    play: (stage) => onHost(stage, `${glass(`currency="pounds" prices="${PRICES}"`)}${glass(`currency="GBP" locale="en-GB" prices="rye whisky 28"`)}`, async () => {
      const { session } = stage;
      await becomes(() => parts(session, "trouble"), [
        "The currency of this glass is none that ISO 4217 lists. Its writer can name one, such as GBP.",
        "The writer’s prices cannot be read. They look like this: rye whisky: 28 for 70 cl at 40 %; lime juice: 3 for 1 l.",
      ]);
      await opens(session, "my prices");
    }),
  },
  {
    name: "a glass whose list comes after it, or goes for a while, is told when it is there",
    play: (stage) => onHost(stage, glass(undefined, ""), async () => {
      const { session } = stage;
      const list = (/** @type {string} */ html) => session.run((/** @type {string} */ text) => {
        /** @type {Element} */ (document.querySelector("farthing-glass")).innerHTML = text;
      }, html);
      const nothing = ["Nothing tells what goes into this glass: it needs a list of lines, such as 50 ml rye whisky."];
      await becomes(() => parts(session, "trouble"), nothing);
      await list("<ul><li>50 ml rye whisky</li></ul>");
      await becomes(() => costs(session), ["£2.00"]);
      await list("");
      await becomes(() => parts(session, "trouble"), nothing);
      await list("<ul><li>25 ml rye whisky</li></ul>");
      await becomes(() => costs(session), ["£1.00"]);
      // What was wrong for less time than it takes to tell is never told.
      await session.run(async () => {
        const element = /** @type {Element} */ (document.querySelector("farthing-glass"));
        for (const html of ["", "<ul><li>50 ml rye whisky</li></ul>"]) {
          element.innerHTML = html;
          await new Promise((resolve) => setTimeout(resolve, 20));
        }
      });
      await session.run(() => new Promise((resolve) => setTimeout(resolve, 300)));
      assert.deepEqual(await costs(session), ["£2.00"]);
    }),
  },
  {
    name: "a glass that is moved, or taken out and put back, before and after it is laid, follows prices once",
    play: (stage) => onHost(stage, `${glass()}<main></main>`, async () => {
      const { session } = stage;
      const move = () => session.run(() => {
        const element = /** @type {Element} */ (document.querySelector("farthing-glass"));
        element.remove();
        document.querySelector("main")?.append(element);
      });
      for (let times = 0; times < 5; times += 1) await move();
      await becomes(() => costs(session), ["£2.34"]);
      await move();
      await types(session, "What you pay for rye whisky", "35");
      await becomes(() => costs(session), ["£2.84"]);
      assert.equal((await session.run(() => /** @type {any} */ (window).heard)).length, 1);
    }),
  },
  {
    name: "a list within a list is read once",
    play: (stage) => onHost(stage, glass(undefined, "<ul><li>For the mixing glass:<!-- 5 ml --><ul><li>50 ml <b>rye</b> whisky</li></ul></li></ul>"), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.00"]);
      await opens(session, "line by line");
      await becomes(() => parts(session, "line"), ["For the mixing glass:", "50 ml rye whisky £2.00 100 %"]);
    }),
  },
  {
    name: "a file is fetched once, however many glasses it fills and however often a price changes",
    play: (stage) => onHost(stage, glass(`locale="en-GB" src="glass.json"`, "").repeat(2), async (host) => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.00", "£2.00"]);
      for (const price of ["3", "35"]) await types(session, "What you pay for rye whisky", price);
      await becomes(() => costs(session), ["£2.50", "£2.50"]);
      assert.equal(host.log.filter(({ path }) => path === "glass.json").length, 1);
    }, { "glass.json": JSON.stringify({ currency: "GBP", lines: ["50 ml rye whisky"], prices: "rye whisky: 28 for 70 cl" }) }),
  },
  {
    name: "a glass on any ground is for everybody: by axe, and by a thumb in letters of any size",
    async play(stage) {
      const { session } = stage;
      // Grey letters on white have little contrast to lose; the dark page says nothing of its scheme.
      for (const look of ["color: #666; background: #fff; font-size: 14px", "color: #ddd; background: #111; font-size: 20px"]) {
        const themes = [undefined, "light", "dark"].map((theme) => glass(`${theme ? `theme="${theme}" ` : ""}currency="GBP" locale="en-GB" prices="${PRICES}"`, LIST));
        for (const one of themes) {
          await onHost(stage, `<style>body { ${look} }</style><main><h1>Below the Lock</h1>${one}</main>`, async () => {
            await becomes(() => costs(session), ["£2.34"]);
            for (const panel of ["line by line", "my prices", "strength", "the sums"]) {
              await opens(session, panel);
              assert.deepEqual([await axe(session), await smallTargets(session, BEST_TARGET_PX)], [[], []], `${look}, ${panel}`);
            }
          });
        }
      }
    },
  },
  {
    name: "a panel that is shut says so, however it was shut",
    play: (stage) => onHost(stage, glass(), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34"]);
      await opens(session, "line by line");
      const states = () => session.run(() => [...(document.querySelector("farthing-glass")?.shadowRoot?.querySelectorAll("button") ?? [])].map((button) => button.ariaExpanded));
      await becomes(states, ["true", "false", "false", "false"]);
      const show = (/** @type {string} */ panels) => session.run((/** @type {string} */ text) => document.querySelector("farthing-glass")?.setAttribute("show", text), panels);
      await show("prices");
      await becomes(() => parts(session, "tabs"), ["my prices"]);
      await show("lines");
      await becomes(() => parts(session, "tabs"), ["line by line"]);
      assert.deepEqual(await states(), ["false", "false", "false", "false"]);
    }),
  },
  {
    name: "a settled cost is said aloud once, by the glass in which it was typed",
    play: (stage) => onHost(stage, glass() + glass(), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34", "£2.34"]);
      const spoken = () => session.run(() => [...document.querySelectorAll("farthing-glass")].map((each) => [
        each.shadowRoot?.querySelector("output")?.getAttribute("aria-live"), each.shadowRoot?.querySelector(".unseen[role=status]")?.textContent,
      ]));
      for (const price of ["3", "35"]) await types(session, "What you pay for rye whisky", price);
      await becomes(spoken, [["off", "£2.84, a glass, between £2.56 and £2.96, at your prices and the writer’s"], ["off", ""]]);
    }),
  },
  {
    name: "names and lines are text on a page of others, whatever they hold",
    play: (stage) => {
      const name = "<img src=x onerror=window.ran=1>\u202e\u0000";
      const data = { name, currency: "GBP", lines: [`50 ml ${name}`], prices: `${name}: 28 for 70 cl` };
      return onHost(stage, glass(`locale="en-GB" src="glass.json"`, ""), async () => {
        const { session } = stage;
        await becomes(() => costs(session), ["£2.00"]);
        for (const panel of ["line by line", "my prices", "the sums"]) await opens(session, panel);
        assert.deepEqual(await session.run(() => [document.querySelector("farthing-glass")?.shadowRoot?.querySelectorAll("img").length, "ran" in window]), [0, false]);
      }, { "glass.json": JSON.stringify(data) });
    },
  },
  {
    name: "what is copied for a page costs there what it costs here, as a part of the page and as a frame",
    async play(stage) {
      const { session, site } = stage;
      const bitters = { ...BITTERS, name: 'bitters; <b>"orange"</b>', rough: { dash: { text: "0.8", unit: "ml" } } };
      const named = { ...LOCK_GATE, name: 'Lock & "Gate"' };
      await openWith(session, site, { bottles: [RYE, bitters, SODA], specs: [named] });
      await openSend(session);
      const cost = /^Costs (\S+) to make/m.exec(await session.value(".send textarea[aria-label='As text']"))?.[1];
      const code = () => session.value(CODE);
      // The oldest engine cannot adopt styles: there the page says so, and shows no glass.
      const shows = async (/** @type {(string | undefined)[]} */ expected) => stage.engine === "wpe"
        ? becomes(() => seenParagraph(session, NOT_HERE), true)
        : becomes(() => costs(session), expected);
      await shows([cost]);
      const element = await code();
      await pick(session, ".send select[aria-label='How it stands on the page']", "frame");
      await becomes(async () => (await code()).startsWith("<iframe sandbox="), true);
      const frame = await code();
      await pick(session, ".send select[aria-label='Whether its prices go along']", "without");
      await shows([""]);
      assert.ok(!(await code()).includes("prices="));
      // Another host, and so another origin than the page of the code.
      const there = (/** @type {string} */ text) => text.replaceAll(site.origin, site.otherOrigin);
      await onHost(stage, there(element), async () => {
        await becomes(() => costs(session), [cost]);
        assert.equal(await session.text("farthing-glass h3"), named.name);
        assert.equal(await session.run(() => document.querySelectorAll("farthing-glass b").length), 0);
      });
      await onHost(stage, there(frame), async () => {
        await session.enterFrame("iframe");
        await becomes(() => costs(session), [cost]);
        await session.leaveFrame();
      });
    },
  },
  {
    name: "without a network the code for a page is made all the same, and its look is said to need one",
    async play({ session, site }) {
      await openWith(session, site, { bottles: [RYE, BITTERS, SODA], specs: [LOCK_GATE] });
      site.missing.add("farthing-glass.js");
      await openSend(session);
      await becomes(async () => (await session.value(CODE)).includes("<li>50 ml rye whisky</li>"), true);
      await becomes(() => seenParagraph(session, NOT_HERE), true);
    },
  },
  {
    name: "a frame reckons from its address alone, follows it, and refuses what it cannot know",
    async play({ session, site }) {
      const go = (/** @type {[string, string][]} */ ...fields) => session.run((/** @type {string} */ hash) => void (location.hash = hash), `${new URLSearchParams(fields)}`);
      await session.go(`${site.address}frame.html#v=1&currency=GBP&locale=en-GB&name=Lock+Keeper&line=50+ml+rye+whisky&prices=rye+whisky:+28+for+70+cl`);
      await becomes(() => costs(session), ["£2.00"]);
      await go(["currency", "GBP"], ["locale", "en-GB"], ["line", "25 ml gin"], ["prices", "gin: 14 for 70 cl"]);
      await becomes(() => costs(session), ["50p"]);
      await go(["v", "2"], ["line", "25 ml gin"]);
      const said = () => session.run(() => document.getElementById("glass")?.textContent?.trim());
      await becomes(said, "This glass was written for a newer version of this frame. Its link can be copied anew where it was made.");
      await go(["v", "1"], ["line", "x".repeat(20_000)]);
      await becomes(said, "What goes into this glass is too long to be read.");
    },
  },
  {
    name: "where a browser keeps nothing, a reader’s price counts till the page is left, and that is said",
    wishes: { storageBlocked: true },
    leavesOut: { webkitgtk: NO_SWITCH, wpe: NO_SWITCH },
    play: (stage) => onHost(stage, glass(), async () => {
      const { session } = stage;
      await becomes(() => costs(session), ["£2.34"]);
      await opens(session, "my prices");
      await types(session, "What you pay for rye whisky", "35");
      await becomes(() => costs(session), ["£2.84"]);
      await becomes(async () => (await parts(session, "prices"))[0]?.endsWith("Not kept: it is gone when you leave this page."), true);
    }),
  },
  {
    name: "where WebAssembly is switched off, the list stands and the glass says why",
    wishes: { noWasm: true },
    leavesOut: { chromium: NO_SWITCH },
    play: (stage) => onHost(stage, glass(), async () => {
      const { session } = stage;
      await becomes(() => parts(session, "trouble"), ["What this glass costs cannot be shown: this browser does not run WebAssembly, or it is switched off."]);
      assert.equal(await session.text("farthing-glass li"), "50 ml rye whisky");
    }),
  },
];
